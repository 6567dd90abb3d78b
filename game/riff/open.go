package riff

import "groundbeat/game/rhythm"

// A declared break or roll ends a phrase. Both drums play it together.

// openBeats is how long, in beats of the tempo, a break or a roll lasts at least
// where the cycle has as many.
const openBeats = 4

// breaks are the accents of a break, in steps from its start; the last is the
// stop. (Common practice, no source.)
var breaks = [][]int{{0}, {0, 2}, {0, 3}, {0, 1}, {0, 3, 4}, {0, 3, 4}, {0, 2, 3}, {0, 2, 4}, {0, 1, 3}, {0, 2, 3, 4}}

// opened is where a cycle opens: on a step.
func (s *shape) opened() int { return s.tail(openBeats * s.beat) }

// stops reports whether a break fits into so many steps: at least half of them are
// left for silence, and both drummers' strong hands have time between any two.
func (s *shape) stops(accents []int, steps int) bool {
	for i, step := range accents[1:] {
		if 2*s.lasts((step-accents[i])*TicksPerStep) < 3*HandGap {
			return false
		}
	}
	return 2*accents[len(accents)-1] <= steps
}

// breakOff lets both drums strike a few accents together, the last a slap, and be
// silent to the end of the cycle.
func (s *shape) breakOff(l line, c chance) played {
	from := s.opened()
	var fit [][]int
	for _, b := range breaks {
		if s.stops(b, (s.length-from)/TicksPerStep) {
			fit = append(fit, b)
		}
	}
	accents := one(c, fit)
	l.clear(from, len(l))
	bass := make(line, s.length)
	for i, step := range accents {
		at := from + step*TicksPerStep
		l.put(at, rhythm.Dum, firmForce)
		if i > 0 && i == len(accents)-1 {
			l.put(at, rhythm.Sak, firmForce)
		}
		bass.put(at, rhythm.Dum, firmForce)
	}
	return played{l, bass, &Span{from / TicksPerStep, s.cycle.Steps(), Break}}
}

// roll lets both drums strike once; from there the lead drum rolls, louder and
// louder, to the end of the cycle.
func (s *shape) roll(l line) played {
	from := s.opened()
	l.clear(from, len(l))
	l[from] = struck{sound: rhythm.Tek, force: 350, roll: s.length - from, swell: 950}
	bass := make(line, s.length)
	bass.put(from, rhythm.Dum, firmForce)
	return played{l, bass, &Span{from / TicksPerStep, s.cycle.Steps(), Roll}}
}
