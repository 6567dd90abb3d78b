package threshold

import (
	"fmt"
	"math"
)

// Rule says how a [Staircase] goes.
type Rule struct {
	Start     float64 // level of the first trial
	Low, High float64 // levels stay within
	// Harder is the step after Run right answers in a row. Its sign says which
	// way is harder: + where higher levels are harder.
	Harder float64
	// Run is how many right answers in a row make it harder, 1 or more.
	Run int
	// Target is the share of right answers at which it settles, between 0 and
	// 1. One wrong answer makes it easier by
	//
	//	Harder · q/(1−q),  q = Target^Run
	//
	// so that at the target steps in both ways cancel out: for Run 1 the
	// weighted up-down method (Kaernbach, Simple adaptive testing with the
	// weighted up-down method, Perception & Psychophysics 49, 227–229, 1991; for
	// 75 % the step to the easier side is three times the other); with q = ½
	// steps are equal, the transformed up-down method (Levitt, Transformed
	// up-down methods in psychoacoustics, JASA 49, 467–477, 1971; see [Equal]).
	Target float64
	// Sizes are factors on the steps: the first until the first reversal, the
	// next until the next, the last from then on. nil is 1.
	Sizes []float64
	// Eager makes each right answer count as Run of them until the first
	// reversal.
	Eager bool
}

// Halfway returns the share of right answers half way between chance, for so
// many choices, and best, which is 1 less the lapses.
func Halfway(choices int) float64 { return (1/float64(choices) + 1 - Lapses) / 2 }

// Staircase chooses the level of the next trial from the answers so far. The
// same answers give the same levels, to the last bit.
type Staircase struct {
	// Rule may be changed between trials: where the number of choices varies,
	// set Target to [Halfway] for each.
	Rule      Rule
	Reversals int // how often it turned
	level     float64
	run       int // right answers in a row
	way       int // of the last step: 1 harder, −1 easier, 0 none yet
}

// Begin returns a staircase at its start. It panics on a rule that cannot be
// followed.
func Begin(r Rule) *Staircase {
	r.check()
	return &Staircase{Rule: r, level: r.Start}
}

func (r Rule) check() {
	switch {
	case !(r.Low <= r.Start && r.Start <= r.High) || math.IsInf(r.High-r.Low, 0):
		panic(fmt.Sprintf("threshold: start %v beyond %v to %v", r.Start, r.Low, r.High))
	case r.Harder == 0 || math.IsNaN(r.Harder) || math.IsInf(r.Harder, 0):
		panic("threshold: a step of no size")
	case r.Run < 1:
		panic("threshold: no right answer makes it harder")
	case !(r.Target > 0 && r.Target < 1):
		panic(fmt.Sprintf("threshold: a target of %v", r.Target))
	}
	for _, size := range r.Sizes {
		if !(size > 0) || math.IsInf(size, 0) {
			panic(fmt.Sprintf("threshold: a step of size %v", size))
		}
	}
}

// Level is the level of the next trial.
func (s *Staircase) Level() float64 { return s.level }

// Answer takes the answer to the trial at Level.
func (s *Staircase) Answer(right bool) {
	s.Rule.check()
	switch {
	case !right:
		s.run = 0
		q := math.Pow(s.Rule.Target, float64(s.Rule.Run))
		s.step(-1, -s.Rule.Harder*q/(1-q))
	case s.run+1 >= s.Rule.Run || s.Rule.Eager && s.Reversals == 0:
		s.run = 0
		s.step(1, s.Rule.Harder)
	default:
		s.run++
	}
}

// step goes one way by a size, which a reversal may make smaller first.
func (s *Staircase) step(way int, size float64) {
	if s.way == -way {
		s.Reversals++
	}
	s.way = way
	s.level = min(max(s.level+size*s.size(), s.Rule.Low), s.Rule.High)
}

// size is the factor on the steps now.
func (s *Staircase) size() float64 {
	if len(s.Rule.Sizes) == 0 {
		return 1
	}
	return s.Rule.Sizes[min(s.Reversals, len(s.Rule.Sizes)-1)]
}
