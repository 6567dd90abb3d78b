package session

import (
	"time"

	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/game/host"
	"groundbeat/game/round"
)

const (
	// margin is how far behind the stream's next frame a passage begins, in
	// frames: the engine may take a block before the hits are in.
	margin = 1024
	// tries is how often a passage is begun anew if the stream overtakes it.
	tries = 8
	// patience is how long a passage waits for its first frame to be heard, ms.
	patience = 8000
)

// player plays one passage and knows what of it is heard.
type player struct {
	sound   host.Sound
	out     *host.Outputs
	passage *round.Passage
	base    int64   // stream frame of the passage's first
	epoch   int     // epoch in which it is heard; 0 before
	begun   float64 // performance time of its start, ms
}

func newPlayer(d *desk) player { return player{sound: d.Sound, out: &d.outputs} }

// play starts a passage; what sounded before is cut.
func (p *player) play(passage *round.Passage, now float64) {
	p.passage, p.epoch, p.begun = passage, 0, now
	p.sound.Drop(0)
	var err error
	for range tries {
		p.base = p.sound.Next() + margin
		if err = p.sound.Schedule(passage.Hits(audio.Rate, p.base)...); err == nil {
			p.sound.Play(p.base)
			return
		}
		// The stream was read on while the hits were made: begin later.
	}
	panic(err)
}

// stop silences the passage and forgets what is left of it.
func (p *player) stop() {
	p.sound.Stop()
	p.sound.Drop(p.base)
}

// heard is the time in the passage that is heard at a performance time, with
// the clock's own word for it. Where it is not known, why says what is wrong,
// or nothing while the first frame is still to come.
func (p *player) heard(at float64) (t time.Duration, position clock.Position, why string) {
	position, err := p.sound.Heard(at)
	switch {
	case err != nil && p.epoch == 0 && at-p.begun > patience:
		return 0, position, host.WhySilent
	case err != nil:
		return -1, position, ""
	case p.epoch == 0 && position.Frame >= float64(p.base):
		p.epoch = position.Epoch
	case p.epoch != 0 && position.Epoch != p.epoch:
		return -1, position, host.WhyGap
	}
	return p.span(position), position, ""
}

// seen is the time in the passage that live pictures show while at is heard, as
// the clock has it: a wireless output is late by more than the browser knows, and
// the player has set by how much. Pictures alone ask for it; taps and scores are
// placed by heard.
func (p *player) seen(at time.Duration) time.Duration {
	if at < 0 { // nothing is heard yet
		return at
	}
	return at - time.Duration(p.out.Adjustment().Later)*time.Millisecond
}

// span is the time in the passage of a position in the stream.
func (p *player) span(position clock.Position) time.Duration {
	frames := position.Frame - float64(p.base)
	return time.Duration(frames / float64(audio.Rate) * float64(time.Second))
}

// second is the time in the stream, in s, of a time in the passage.
func (p *player) second(at time.Duration) float64 {
	return float64(p.base+audio.Rate.Frame(at)) / float64(audio.Rate)
}

// whole reports whether all of the passage was heard without a gap.
func (p *player) whole() bool { return p.wholeTo(p.passage.End()) }

// wholeTo is whole up to a time in the passage.
func (p *player) wholeTo(end time.Duration) bool {
	return p.sound.Whole(p.epoch, p.base, p.base+audio.Rate.Frame(end))
}
