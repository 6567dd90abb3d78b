package riff

import (
	"slices"
	"time"

	"groundbeat/game/rhythm"
)

// A shape is what a rhythm gives the drummer to play with. Places in a cycle are
// ticks from its first step.
type shape struct {
	cycle  *rhythm.Cycle
	length int   // of a cycle
	beat   int   // from one beat to the next
	cell   int   // from one stroke of a plain run to the next: about a sixteenth
	chunks []int // where what is felt together begins, from 0; and length
	phrase int   // cycles
	twice  bool  // two strokes in a cell can be played
	thrice bool  // three strokes in two cells can be played, again and again
}

// shapeOf looks at a rhythm. How fine its strokes may be comes from its fastest
// tempo, so that a riff is the same at every tempo, to practise slowly and then at
// full speed.
func shapeOf(c *rhythm.Cycle) *shape {
	s := &shape{cycle: c, length: c.Steps() * TicksPerStep, beat: c.StepsPerBeat() * TicksPerStep}
	s.cell = s.beat
	for _, ticks := range []int{TicksPerStep / 2, TicksPerStep, 2 * TicksPerStep} {
		if ticks < s.beat && s.lasts(ticks) >= HandGap {
			s.cell = ticks
			break
		}
	}
	s.twice = s.cell%2 == 0 && s.lasts(s.cell/2) >= TwoHandsGap
	s.thrice = s.cell%3 == 0 && s.lasts(s.cell*2/3) >= TwoHandsGap
	s.chunks = chunks(c, s.beat)
	s.phrase = 4
	if !c.Odd() && c.Beats() >= 8 {
		s.phrase = 2
	}
	return s
}

// lasts is how long some ticks last at the rhythm's fastest tempo.
func (s *shape) lasts(ticks int) time.Duration {
	return s.cycle.At(ticks, s.cycle.Tempo.Fast*TicksPerStep)
}

// chunks are the groups of the metre where it has some, else pairs of beats.
func chunks(c *rhythm.Cycle, beat int) []int {
	starts := []int{0}
	if c.Grouping != nil {
		for i, beats := range c.Grouping {
			starts = append(starts, starts[i]+beats*beat)
		}
		return starts
	}
	end := c.Beats() * beat
	for at := 2 * beat; at < end; at += 2 * beat {
		starts = append(starts, at)
	}
	return append(starts, end)
}

// base is the stroke of the skeleton at a tick, or a rest.
func (s *shape) base(tick int) rhythm.Stroke {
	if tick%TicksPerStep != 0 {
		return rhythm.Rest
	}
	return s.cycle.Skeleton[tick/TicksPerStep]
}

// dum reports whether the base has a dum at a tick.
func (s *shape) dum(tick int) bool { return s.base(tick).Low() }

// beside reports whether a tick lies within a step of a dum of the base, but not
// on one. The next cycle's first dum counts.
func (s *shape) beside(tick int) bool {
	if s.dum(tick) {
		return false
	}
	for d := 1; d <= TicksPerStep; d++ {
		if s.dum((tick+d)%s.length) || s.dum((tick-d+s.length)%s.length) {
			return true
		}
	}
	return false
}

// alone reports whether nothing else is struck nearer than a cell to a tick, so
// that any stroke can be played there.
func (s *shape) alone(l line, at int) bool {
	for i := max(0, at-s.cell+1); i < min(len(l), at+s.cell); i++ {
		if i != at && l[i].force > 0 {
			return false
		}
	}
	return true
}

// tail is where the last chunks of a cycle begin that last so many ticks or more:
// the whole cycle if it has no more.
func (s *shape) tail(ticks int) int {
	for i := len(s.chunks) - 2; i > 0; i-- {
		if s.length-s.chunks[i] >= ticks {
			return s.chunks[i]
		}
	}
	return 0
}

// led is where the short fill of a riff begins: with the last chunk, or in the
// middle of the only one.
func (s *shape) led() int {
	if from := s.chunks[len(s.chunks)-2]; from > 0 {
		return from
	}
	return s.length - max(s.beat, s.length/2/s.beat*s.beat)
}

// onBeat reports whether six strokes in the time of four cells may begin at a tick.
func (s *shape) onBeat(at int) bool { return s.thrice && at%min(s.beat, 4*s.cell) == 0 }

// seam reports whether a fill, break or roll could begin between two ticks, so
// that nothing that must be heard to its end may lie across.
func (s *shape) seam(from, to int) bool {
	inside := func(at int) bool { return from < at && at < to }
	return inside(s.led()) || slices.ContainsFunc(s.chunks, inside)
}
