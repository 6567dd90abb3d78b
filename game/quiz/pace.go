package quiz

import (
	"math/rand/v2"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// pacedCycles is over how many cycles of a riff its strokes are counted: a question
// and its answer, with their fills.
const pacedCycles = 8

// strokes returns how many strokes the lead drum plays in one cycle: at the levels
// that chance decides about, in the mean of one riff, to the nearest whole number.
func Strokes(c *rhythm.Cycle, level riff.Level) int {
	cycles := pacedCycles
	if level <= riff.Filled {
		cycles = 1 // all are alike
	}
	part, err := riff.Play(c, level, cycles, 0)
	if err != nil {
		panic("quiz: " + err.Error()) // the level has been checked
	}
	return (len(part.Lead) + cycles/2) / cycles
}

// A pace is a range of densities: from few to many strokes in so many minutes.
// A whole number of minutes is chosen such that the ends are exact.
type pace struct{ few, many, minutes int }

// commonPace returns the paces at which every member of a group can be played
// within its own tempi:
//
//	few  = max(slow · strokes · minutes / beats)
//	many = min(fast · strokes · minutes / beats)
//
// over the members, with strokes and beats of a cycle. There is none where few
// is above many.
func (g Group) commonPace() pace {
	all := pace{minutes: 1}
	for _, p := range g {
		all.minutes = lcm(all.minutes, p.Beats())
	}
	for i, p := range g {
		perBeat := p.strokes * all.minutes / p.Beats()
		if i == 0 {
			all.few, all.many = p.Slow*perBeat, p.Fast*perBeat
		}
		all.few, all.many = max(all.few, p.Slow*perBeat), min(all.many, p.Fast*perBeat)
	}
	return all
}

// hasCommonPace reports whether there is a pace that all members can be played
// at, each at a whole number of beats a minute. A group at a fixed tempo has no
// need of one.
func (g Group) hasCommonPace() bool {
	all := g.commonPace()
	for _, p := range g {
		if slowest, fastest := all.tempi(p); slowest > fastest && !p.fixed {
			return false
		}
	}
	return true
}

// tempi returns the slowest and the fastest whole number of beats a minute of a
// member within the pace.
func (a pace) tempi(p Candidate) (slowest, fastest int) {
	perBeat := p.strokes * a.minutes / p.Beats()
	return (a.few + perBeat - 1) / perBeat, a.many / perBeat
}

// any draws a number of strokes in the pace's minutes.
func (a pace) any(r *rand.Rand) int {
	if a.few >= a.many { // a fixed tempo, or one pace only
		return a.few
	}
	return a.few + r.IntN(a.many-a.few+1)
}

// tempo returns the beats a minute of a member at so many strokes in the pace's
// minutes: the nearest whole number within the pace.
func (a pace) tempo(p Candidate, strokes int) int {
	if p.fixed {
		return p.Slow
	}
	perBeat := p.strokes * a.minutes / p.Beats()
	slowest, fastest := a.tempi(p)
	return min(max((2*strokes+perBeat)/(2*perBeat), slowest), fastest)
}

func lcm(a, b int) int { return a / gcd(a, b) * b }

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
