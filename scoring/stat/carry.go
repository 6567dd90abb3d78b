package stat

import (
	"math"
	"time"

	"groundbeat/scoring"
)

// LeastIntervals is the least number of intervals, over all spells together,
// from which clock and hand are told apart. With 40, clock 20 ms and hand 10 ms,
// the standard errors are 5 and 4 ms, and one in five samples is still [Unclear];
// with fewer it is more.
const LeastIntervals = 40

// Spell is a stretch that a player carried on by herself: what she was to
// tap, in time, and what she tapped. The drums are silent in it.
type Spell struct {
	Strokes []time.Duration // ascending
	Pairs   []scoring.Pair  // of Strokes, ascending; strokes left out have none
}

// Fault says how taps contradict Wing and Kristofferson's model.
type Fault uint8

const (
	// Holds: nothing contradicts it.
	Holds Fault = iota
	// TooFew: there are fewer than [LeastIntervals] intervals.
	TooFew
	// Unclear: a variance comes out at 0 or below, but no further than chance
	// takes it: there is little of clock or of hand, or too few intervals.
	Unclear
	// Drifts: an interval longer than it should be is followed by another one
	// (the lag-1 autocovariance is above 0, the hand's variance negative by
	// more than chance): the tempo wandered.
	Drifts
	// Corrects: a long interval is followed by a short one more than the hand's
	// delays explain (the autocorrelation is below −½, the clock's variance
	// negative by more than chance): each tap was corrected for the one before.
	Corrects
)

// Carry tells how steadily a player carries on, and what makes her unsteady.
type Carry struct {
	// Clock is the standard deviation, in ms, of the intervals that her inner
	// clock gives, for an interval as long as the root mean square of those expected.
	Clock scoring.Estimate
	// Motor is the standard deviation, in ms, of the delay from clock to tap.
	Motor scoring.Estimate
	// Slower is by how much of an interval her own are longer than they
	// should be: 0.02 is 2 % slower, below 0 is faster. Spells are its
	// observations.
	Slower scoring.Estimate
	// Fault is why Clock and Motor are not known, or Holds.
	Fault Fault
}

// Carried splits the unsteadiness of taps that were carried on without the
// drums into that of an inner clock and that of the hand, after Wing and
// Kristofferson (Response delays and the timing of discrete motor responses,
// Perception & Psychophysics 14, 5–12, 1973): the clock gives intervals C, each
// tap comes a delay M after it, all independent, so the intervals between taps
// are
//
//	Iₙ = Cₙ + Mₙ₊₁ − Mₙ
//	γ(0) = σC² + 2σM², γ(1) = −σM², γ(k) = 0 for k ≥ 2
//
// # Uneven intervals
//
// Dums do not come at equal intervals. Let E be the expected ones. The clock's
// standard deviation grows with the interval (Ivry and Hazeltine, Perception
// and production of temporal intervals across a range of durations, JEP:HPP 21,
// 3–18, 1995: variance linear in the square of the interval), the hand's does
// not: dividing I by E would make the hand seem steadier in long intervals.
// So here
//
//	e = I − kE,  var e = σC² (E/E₀)² + 2σM²,  cov(eₙ, eₙ₊₁) = −σM²
//
// (were it linear in the interval itself, clock and hand would come out up to
// 7 % wrong) with E₀ = Reference and her own tempo k by least squares, Σ IE/Σ E², for each
// spell; from twelve intervals on a steady change of tempo is taken off as well.
//
// # Short spells
//
// An eight has few dums, and what k takes off is missing in the variances. The
// sums Σe² and Σeₙeₙ₊₁ are quadratic forms of the intervals; their expectations
// are linear in σC² and σM² with factors that are known exactly. These two
// equations, summed over all spells, are solved: the variances are unbiased for
// spells of any length from three intervals on. For many equal intervals they
// become the model's own, σM² = −γ(1), σC² = γ(0) + 2γ(1).
//
// Their standard errors are those of quadratic forms of normally distributed
// values, 2 tr(AΣBΣ), at the variances found.
//
// Strokes and pairs are those of [scoring.Match]; it panics on others.
func Carried(spells []Spell) Carry {
	parts := make([]part, 0, len(spells))
	e0 := reference(spells)
	for _, s := range spells {
		if p, ok := newPart(s, e0); ok {
			parts = append(parts, p)
		}
	}
	c := Carry{Slower: slower(parts)}
	n := 0
	for _, p := range parts {
		n += len(p.left)
	}
	c.Clock, c.Motor, c.Fault = split(parts, n)
	return c
}

// reference returns the root mean square of the expected intervals, in ms.
func reference(spells []Spell) float64 {
	var squares float64
	n := 0
	for _, s := range spells {
		for i := 1; i < len(s.Pairs); i++ {
			e := milliseconds(s.Strokes[s.Pairs[i].Stroke] - s.Strokes[s.Pairs[i-1].Stroke])
			squares += e * e
			n++
		}
	}
	if n == 0 {
		return 0
	}
	return math.Sqrt(squares / float64(n))
}

func milliseconds(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

// split solves for the variances.
func split(parts []part, n int) (clock, motor scoring.Estimate, fault Fault) {
	clock, motor = scoring.Unknown(n, LeastIntervals), scoring.Unknown(n, LeastIntervals)
	if n < LeastIntervals {
		return clock, motor, TooFew
	}
	var m, q sums
	for _, p := range parts {
		m.add(p.expected())
		q.add(p.found())
	}
	det := m[0]*m[3] - m[1]*m[2]
	if det == 0 { // intervals that cannot tell one from the other
		return clock, motor, Unclear
	}
	vc, vm := (m[3]*q[0]-m[1]*q[1])/det, (m[0]*q[1]-m[2]*q[0])/det
	var v sums
	for _, p := range parts {
		v.add(p.variances(max(0, vc), max(0, vm)))
	}
	sc := math.Sqrt(m[3]*m[3]*v[0]-2*m[3]*m[1]*v[1]+m[1]*m[1]*v[3]) / math.Abs(det)
	sm := math.Sqrt(m[2]*m[2]*v[0]-2*m[2]*m[0]*v[1]+m[0]*m[0]*v[3]) / math.Abs(det)
	switch {
	case vm < -oneSided*sm:
		return clock, motor, Drifts
	case vc < -oneSided*sc:
		return clock, motor, Corrects
	case vm <= 0 || vc <= 0:
		return clock, motor, Unclear
	}
	return deviation(vc, sc, n), deviation(vm, sm, n), Holds
}

// oneSided is Φ⁻¹(0.95): one in twenty samples in which a variance is 0 has it
// below −oneSided standard errors.
const oneSided = 1.6448536269514722

// deviation returns the standard deviation for a variance with its standard
// error; the ends of the interval are the roots of the variance's.
func deviation(variance, err float64, n int) scoring.Estimate {
	half := normal * err
	return scoring.Estimated(math.Sqrt(variance),
		math.Sqrt(max(0, variance-half)), math.Sqrt(variance+half), n, LeastIntervals)
}

// sums are up to four numbers that add up over spells.
type sums [4]float64

func (s *sums) add(t sums) {
	for i := range s {
		s[i] += t[i]
	}
}

func slower(parts []part) scoring.Estimate {
	k := make([]float64, len(parts))
	for i, p := range parts {
		k[i] = p.tempo - 1
	}
	return meanApart(k, LeastRounds)
}
