package rhythm

import (
	"fmt"
	"math"
	"slices"
)

// StepForStep lays two forms side by side cycle against cycle, as they stand on
// paper: 8 steps of 2/4 on 8 of 4/4, as if played at half the tempo. Both
// results are on one grid and have the metre of the longer. They are for
// comparing: where one has 8 steps and the other 9, the grid has 72, and a beat
// more steps than there are counts for.
func StepForStep(a, b Form) (Form, Form) {
	metre := a.Metre
	if b.Metre.Beats > metre.Beats {
		metre = b.Metre
	}
	steps := lcm(a.Steps(), b.Steps())
	return Form{metre, a.Pattern.refined(steps / a.Steps())}, Form{metre, b.Pattern.refined(steps / b.Steps())}
}

// CommonPulse lays two forms side by side beat against beat, as they sound at
// the same number of beats a minute: 8 steps of 2/4 last half as long as 8 of
// 4/4 and so stand there twice. Both results are on one grid and have the same
// metre, of as many beats as both cycles go into evenly (4/4 and 9/8: 36), and
// the unit of a.
func CommonPulse(a, b Form) (Form, Form) {
	beats := lcm(a.Metre.Beats, b.Metre.Beats)
	perBeat := lcm(a.StepsPerBeat(), b.StepsPerBeat())
	spread := func(f Form) Form {
		fine := f.Pattern.refined(perBeat / f.StepsPerBeat())
		return Form{Metre{beats, a.Metre.Unit}, slices.Repeat(fine, beats/f.Metre.Beats)}
	}
	return spread(a), spread(b)
}

// What a difference costs in Distance. Dums weigh more: they carry the rhythm,
// and listeners time themselves by the lower of two voices (Hove et al. 2014,
// PNAS, Superior time perception for lower musical pitch). The figures are
// chosen, from no source.
const (
	dumCost   = 2.0 // a dum too many, or moved by a beat
	otherCost = 1.0 // any other stroke too many, or moved by a beat
	voiceCost = 1.0 // a dum where the other has a tek
)

// Distance returns how unlike two forms sound, as the least cost of turning the
// strokes of one into those of the other, for each stroke of the fuller. Adding
// or removing a stroke costs 2 for a dum and 1 for any other, moving it as much
// for each beat, and making a tek of a dum or a dum of a tek 1. It is 0 if and
// only if both have the same low and the same other strokes in the same places;
// tek, slap and ka count alike. It is symmetric.
//
// This is an edit distance of strokes in time (Victor & Purpura 1996, J.
// Neurophysiol. 76, for one voice; Aronov et al. 2003, J. Neurophysiol. 89, for
// voices), here with heavier dums and strokes that keep their order. Edit
// distance over strings of dum, tak and rest has been compared with listeners'
// judgements (Toussaint et al. 2012, J. Interdisciplinary Music Studies 6(1));
// this one with these costs has not. It is for choosing wrong answers.
//
// Lay the forms side by side first, by [StepForStep] or [CommonPulse]; it panics
// if their cycles do not have the same number of beats.
func Distance(a, b Form) float64 {
	mustMatch(a.Metre.Beats, b.Metre.Beats)
	from, to := a.struck(), b.struck()
	if len(from)+len(to) == 0 {
		return 0
	}
	return turn(from, to) / float64(max(len(from), len(to)))
}

// Apart returns how unlike two rhythms are for a listener who does not know the
// tempo: the smaller [Distance] of their skeletons, step for step or on a common
// pulse. It is 0 for maqsum and fallahi, which are the same but for speed. Step
// for step they are compared only if one cycle's beats go evenly into the
// other's, since nobody hears nine beats as eight.
func Apart(a, b *Cycle) float64 {
	apart := Distance(CommonPulse(a.Base(), b.Base()))
	if a.Beats()%b.Beats() == 0 || b.Beats()%a.Beats() == 0 {
		apart = min(apart, Distance(StepForStep(a.Base(), b.Base())))
	}
	return apart
}

// struck is one stroke of a form, at so many beats from the start.
type struck struct {
	at  float64
	low bool
}

func (f Form) struck() []struck {
	var all []struck
	for _, step := range f.Pattern.Pulses(Stroke.Sounds).Onsets() {
		at := float64(step) / float64(f.StepsPerBeat())
		all = append(all, struck{at, f.Pattern[step].Low()})
	}
	return all
}

// cost is what it costs to add or remove the stroke.
func (s struck) cost() float64 {
	if s.low {
		return dumCost
	}
	return otherCost
}

// become is what it costs to make another stroke of this one.
func (s struck) become(t struck) float64 {
	beats := math.Abs(s.at - t.at)
	if s.low != t.low {
		return voiceCost + otherCost*beats
	}
	return s.cost() * beats
}

// turn returns the least cost of turning one run of strokes into another, by the
// recursion of Levenshtein.
func turn(from, to []struck) float64 {
	row := make([]float64, len(to)+1) // from the strokes so far to the first j of to
	for j, t := range to {
		row[j+1] = row[j] + t.cost()
	}
	for _, f := range from {
		before := row[0]
		row[0] += f.cost()
		for j, t := range to {
			best := min(before+f.become(t), row[j+1]+f.cost(), row[j]+t.cost())
			before, row[j+1] = row[j+1], best
		}
	}
	return row[len(to)]
}

// mustMatch panics unless two lengths are equal.
func mustMatch(a, b int) {
	if a != b {
		panic(fmt.Sprintf("rhythm: lengths %d and %d", a, b))
	}
}

func lcm(a, b int) int { return a / gcd(a, b) * b }

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
