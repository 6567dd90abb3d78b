package stat

import (
	"math"

	"groundbeat/scoring"
)

// Beside returns, of each of a few single values, how far it lies from the mean of a
// sample of others, where so many looks are taken in all: at these values, and at whatever
// else. The intervals hold 0 for all of them together with [scoring.Confidence] if they are
// values like the sample's: of k looks each is
//
//	(xᵢ − x̄) ± t s √(1 + 1/N)
//
// with Student's t for N−1 degrees of freedom, which leaves out the k-th part of what it
// would for one (the prediction interval of Whitmore, Prediction limits for a univariate
// normal observation, The American Statistician 40, 141–143, 1986; Bonferroni's
// inequality). So a single value can be told to be unlike the others, though nothing of
// what it will be the next time. Of fewer than [LeastTaps] others nothing is known, nor of
// others that are all alike. It panics if there are fewer looks than values.
func Beside(x []float64, others Group, looks int) []scoring.Estimate {
	mustBeFinite("values", x)
	if looks < len(x) {
		panic("stat: a look at each value is one")
	}
	all := make([]scoring.Estimate, len(x))
	for i, v := range x {
		all[i] = scoring.Unknown(others.N, LeastTaps)
		if others.N >= LeastTaps && others.Spread > 0 {
			half := studentAt(float64(others.N-1), 2*tail/float64(looks)) * others.Spread * math.Sqrt(1+1/float64(others.N))
			d := v - others.Mean
			all[i] = scoring.Estimated(d, d-half, d+half, others.N, LeastTaps)
		}
	}
	return all
}

// LeastHabit is from how many values on [Against] tells something. Own choice: two may
// be alike by chance.
const LeastHabit = 3

// Against returns how far the mean of a few values lies from that of a sample of others,
// whose spread may be another, with an interval that is never too narrow:
//
//	(x̄₁ − x̄₂) ± t(ν) √(s₁²/n₁ + s₂²/n₂),  ν = min(n₁, n₂) − 1
//
// (Mickey and Brown, Bounds on the distribution functions of the Behrens–Fisher statistic,
// Annals of Mathematical Statistics 37, 639–642, 1966; with Welch's degrees of freedom it
// left out 7 instead of 5 of 100 where n₁ is 3.) It takes [LeastHabit] values and
// [LeastTaps] others; of values that are all alike nothing is known.
func Against(x []float64, others Group) scoring.Estimate {
	mustBeFinite("values", x)
	if len(x) < LeastHabit || others.N < LeastTaps {
		return scoring.Unknown(len(x), LeastHabit)
	}
	m, s := meanDeviation(x)
	n, rest := float64(len(x)), float64(others.N)
	v1, v2 := s*s/n, others.Spread*others.Spread/rest
	if v1+v2 == 0 {
		return scoring.Unknown(len(x), LeastHabit)
	}
	half := studentAt(min(n, rest)-1, 2*tail) * math.Sqrt(v1+v2)
	d := m - others.Mean
	return scoring.Estimated(d, d-half, d+half, len(x), LeastHabit)
}

// GroupOf is a sample as far as its middle and its spread go.
func GroupOf(x []float64) Group {
	switch len(x) {
	case 0:
		return Group{}
	case 1:
		return Group{N: 1, Mean: x[0]}
	}
	g := Group{N: len(x)}
	g.Mean, g.Spread = meanDeviation(x)
	return g
}
