package quiz

import "math"

// How fast the offset of a rhythm is learnt. One answer at the target says where the
// threshold lies with a standard deviation of 0.13 (tapped) to 0.23 (one of two) of
// hide, at a graduality of 0.06, and rhythms lie 0.07 apart (chosen): so the n-th answer
// would move the offset by one part in n + 0.18²/0.07² ≈ n + 7 of what it alone would
// say, if the staircase stood still; it wanders, so it is one in n + 12. What one alone
// would say is (right − target)/slope: after a right answer 0.13 to 0.14 of hide
// whatever the choices.
const (
	offsetPrior = 12
	rightSays   = 1350 // ten-thousandths
	mostOffset  = 2500
)

// offset is how much more of a rhythm's riff is heard through, in ten-thousandths of
// hide, after so many answers.
type offset struct{ more, answers int }

// offsets are those of rhythms, by id.
type Offsets map[string]offset

// learn takes an answer that should have been right with probability target, had the
// riff not hidden off hundredths more than was to be asked. The share of each answer
// falls with their number, so that it becomes a mean that is drawn towards none, as in
// rating systems with falling gain (Pelánek 2016).
func (o Offsets) Learn(rhythm string, right bool, target float64, off int) {
	says := rightSays
	if !right {
		says = -int(math.Round(rightSays * target / (1 - target)))
	}
	of := o[rhythm]
	of.answers++
	moved := (says + 100*off) / (of.answers + offsetPrior)
	of.more = min(max(of.more+moved, -mostOffset), mostOffset)
	o[rhythm] = of
}

// of returns the offset of a rhythm from the mean of all, in thousandths; 0 for one
// that was not met.
func (o Offsets) Of(rhythm string) int {
	of, met := o[rhythm]
	if !met {
		return 0
	}
	sum := 0
	for _, other := range o {
		sum += other.more
	}
	return (of.more - sum/len(o)) / 10
}
