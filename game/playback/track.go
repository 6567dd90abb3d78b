// Package playback is a passage as it is heard: a track of the sound that knows what of it
// comes from the loudspeaker when, a loop of cycles, the taps that are placed in it, help
// for the ear, and the pictures that move with it.
package playback

import (
	"time"

	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/game/host"
	"groundbeat/game/round"
)

const (
	// Margin is how far behind the stream's next frame a passage begins, in
	// frames: the engine may take a block before the hits are in.
	Margin = 1024
	// tries is how often a passage is begun anew if the stream overtakes it.
	tries = 8
	// patience is how long a passage waits for its first frame to be heard, ms.
	patience = 8000
)

// Track plays one passage and knows what of it is heard.
type Track struct {
	sound   host.Sound
	outputs *host.Outputs
	Passage *round.Passage
	base    int64   // stream frame of the passage's first
	Epoch   int     // epoch in which it is heard; 0 before
	begun   float64 // performance time of its start, ms
}

// NewTrack is a track over a sound, whose pictures wait as is set for the output in use.
func NewTrack(sound host.Sound, outputs *host.Outputs) Track {
	return Track{sound: sound, outputs: outputs}
}

// Play starts a passage; what sounded before is cut.
func (p *Track) Play(passage *round.Passage, now float64) {
	p.Passage, p.Epoch, p.begun = passage, 0, now
	p.sound.Drop(0)
	var err error
	for range tries {
		p.base = p.sound.Next() + Margin
		if err = p.sound.Schedule(passage.Hits(audio.Rate, p.base)...); err == nil {
			p.sound.Play(p.base)
			return
		}
		// The stream was read on while the hits were made: begin later.
	}
	panic(err)
}

// Stop silences the passage and forgets what is left of it.
func (p *Track) Stop() {
	p.sound.Stop()
	p.sound.Drop(p.base)
}

// Heard is the time in the passage that is heard at a performance time, with
// the clock's own word for it. Where it is not known, why says what is wrong,
// or nothing while the first frame is still to come.
func (p *Track) Heard(at float64) (t time.Duration, position clock.Position, why string) {
	position, err := p.sound.Heard(at)
	switch {
	case err != nil && p.Epoch == 0 && at-p.begun > patience:
		return 0, position, host.WhySilent
	case err != nil:
		return -1, position, ""
	case p.Epoch == 0 && position.Frame >= float64(p.base):
		p.Epoch = position.Epoch
	case p.Epoch != 0 && position.Epoch != p.Epoch:
		return -1, position, host.WhyGap
	}
	return p.Span(position), position, ""
}

// Seen is the time in the passage that live pictures show while at is heard, as
// the clock has it: a wireless output is late by more than the browser knows, and
// the player has set by how much. Pictures alone ask for it; taps and scores are
// placed by Heard.
func (p *Track) Seen(at time.Duration) time.Duration {
	if at < 0 { // nothing is heard yet
		return at
	}
	return at - time.Duration(p.outputs.Adjustment().Later)*time.Millisecond
}

// Span is the time in the passage of a position in the stream.
func (p *Track) Span(position clock.Position) time.Duration {
	frames := position.Frame - float64(p.base)
	return time.Duration(frames / float64(audio.Rate) * float64(time.Second))
}

// Settled is what is heard at a performance time as the clock knows it by now, if it
// was of this track: where readings are noisy, it has learnt since.
func (p *Track) Settled(at float64) (position clock.Position, ok bool) {
	position, err := p.sound.Heard(at)
	return position, err == nil && position.Epoch == p.Epoch
}

// Second is the time in the stream, in s, of a time in the passage.
func (p *Track) Second(at time.Duration) float64 {
	return float64(p.base+audio.Rate.Frame(at)) / float64(audio.Rate)
}

// Whole reports whether all of the passage was heard without a gap.
func (p *Track) Whole() bool { return p.WholeTo(p.Passage.End()) }

// WholeTo is whole up to a time in the passage.
func (p *Track) WholeTo(end time.Duration) bool {
	return p.sound.Whole(p.Epoch, p.base, p.base+audio.Rate.Frame(end))
}
