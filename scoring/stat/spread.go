package stat

import (
	"math"
	"slices"

	"groundbeat/scoring"
)

// Spread returns the standard deviation (n−1) of independent values. The
// interval is the one for normally distributed values,
//
//	s √((n−1)/χ²)
//
// with the quantiles of χ² with n−1 degrees of freedom; with strays among the
// values it is too narrow.
func Spread(x []float64) scoring.Estimate {
	mustBeFinite("values", x)
	return SpreadOf(GroupOf(x))
}

// SpreadOf is [Spread] of a sample of which no more is known.
func SpreadOf(g Group) scoring.Estimate {
	if g.N < LeastTaps {
		return scoring.Unknown(g.N, LeastTaps)
	}
	n := float64(g.N)
	few, many := chiSquared(n - 1)
	return scoring.Estimated(g.Spread, g.Spread*math.Sqrt((n-1)/many), g.Spread*math.Sqrt((n-1)/few), g.N, LeastTaps)
}

// madToSD is 1/Φ⁻¹(3/4), and robustSD the standard deviation, times √n, of the
// logarithm of the median distance from the median, for normally distributed
// values (the efficiency is 36.8 %: 1/√(2·0.368); Rousseeuw and Croux,
// Alternatives to the median absolute deviation, JASA 88, 1273–1283, 1993).
const (
	madToSD  = 1.482602218505602
	robustSD = 1.1664
)

// Robust returns a spread that single strays do not move:
//
//	1.4826 n/(n−0.8) · median |x − median x|
//
// which for normally distributed values estimates the same as Spread. The
// factor takes off what small samples lack (Croux and Rousseeuw, Time-efficient
// algorithms for two highly robust estimators of scale, Computational
// Statistics 1, 411–428, 1992, for n > 9); scoring.Timing.Robust is without it.
// The interval is Robust · exp(± t(n−1) 1.1664/√n), for values that are
// normally distributed but for their strays.
func Robust(x []float64) scoring.Estimate {
	mustBeFinite("values", x)
	if len(x) < LeastTaps {
		return scoring.Unknown(len(x), LeastTaps)
	}
	s, n := robustValue(x), float64(len(x))
	wider := math.Exp(student(n-1) * robustSD / math.Sqrt(n))
	return scoring.Estimated(s, s/wider, s*wider, len(x), LeastTaps)
}

// robustValue is Robust without its interval.
func robustValue(x []float64) float64 {
	n := float64(len(x))
	return madToSD * n / (n - .8) * medianDistance(x)
}

// medianDistance returns the median distance from the median.
func medianDistance(x []float64) float64 {
	s := sorted(x)
	m := middle(s)
	for i, v := range s {
		s[i] = math.Abs(v - m)
	}
	slices.Sort(s)
	return middle(s)
}
