package stat

import (
	"math"

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
