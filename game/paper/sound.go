package paper

import (
	"cmp"
	"slices"

	"groundbeat/audio"
	"groundbeat/audio/clock"
)

// Sound is the stream as a device plays it. What is scheduled is taken block by block,
// as the device wants it, and sounds when the device has come so far.
type Sound struct {
	*device
	hits []audio.Hit // still to be rendered, ascending

	Lead, Bass, Loudness float64 // as they were set last, 0 to 1
	Stands               audio.Stage
}

// A Strike is one stroke as it is heard.
type Strike struct {
	At    float64 // performance time, ms
	Voice audio.Voice
	Epoch int

	context int64 // the context's frame
}

// Low reports whether it is a dum of the drum that holds the base.
func (s Strike) Low() bool { return s.Voice == audio.BassDum }

// Base reports whether it is of the drum that holds the base.
func (s Strike) Base() bool { return s.Voice == audio.BassDum || s.Voice == audio.BassTek }

func newSound(d *device) *Sound {
	s := &Sound{device: d}
	d.take = s.render
	return s
}

// Schedule adds hits; as in the stream, none where one of them is past.
func (s *Sound) Schedule(hits ...audio.Hit) error {
	for _, h := range hits {
		switch {
		case h.Frame < s.frame:
			return &audio.HitError{Hit: h, Err: audio.ErrPast}
		case h.Voice > audio.BassTek:
			return &audio.HitError{Hit: h, Err: audio.ErrVoice}
		case !(h.Strength > 0 && h.Strength <= 1):
			return &audio.HitError{Hit: h, Err: audio.ErrStrength}
		}
	}
	s.hits = append(s.hits, hits...)
	slices.SortStableFunc(s.hits, func(a, b audio.Hit) int { return cmp.Compare(a.Frame, b.Frame) })
	return nil
}

// Drop forgets the hits from a frame on.
func (s *Sound) Drop(from int64) { s.hits = s.hits[:s.at(from)] }

// at is where among the hits those of a frame and later begin.
func (s *Sound) at(frame int64) int {
	i, _ := slices.BinarySearchFunc(s.hits, frame, func(h audio.Hit, f int64) int { return cmp.Compare(h.Frame, f) })
	return i
}

// render takes the hits before a frame out of the stream.
func (s *Sound) render(to int64) []audio.Hit {
	n := s.at(to)
	taken := slices.Clone(s.hits[:n])
	s.hits = slices.Delete(s.hits, 0, n)
	return taken
}

// Next is the next frame to be rendered.
func (s *Sound) Next() int64 { return s.frame }

// Heard asks the clock.
func (s *Sound) Heard(at float64) (clock.Position, error) {
	if s.none {
		return s.pictured(at), nil
	}
	return s.clock.Heard(at)
}

// Whole asks the clock.
func (s *Sound) Whole(epoch int, from, to int64) bool {
	return s.none || s.clock.Whole(epoch, from, to)
}

// Balance notes the levels of the drums.
func (s *Sound) Balance(lead, bass float64) { s.Lead, s.Bass = lead, bass }

// Stage notes where the drums stand.
func (s *Sound) Stage(stage audio.Stage) { s.Stands = stage }

// Volume notes the loudness.
func (s *Sound) Volume(v float64) { s.Loudness = v }

// Audible is false once it has turned out that there is no sound.
func (s *Sound) Audible() bool { return !s.None || !s.asked }
