package stat

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"groundbeat/scoring"
)

// tail is what an interval leaves out at each end.
const tail = (1 - scoring.Confidence) / 2

// normal is the quantile of the standard normal distribution at the upper end
// of an interval, Φ⁻¹(0.975).
const normal = 1.959963984540054

// student returns the quantile of Student's t distribution with so many
// degrees of freedom, which need not be whole, at the upper end of an interval.
// From 8 on it is the expansion in the normal quantile x,
//
//	x + g₁/ν + g₂/ν² + g₃/ν³ + g₄/ν⁴
//
// (Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 26.7.5),
// right to 2·10⁻⁵ and ten times as fast (a diary has thousands of rounds); below
// it is the incomplete beta function's, inverted (26.5.27).
func student(freedom float64) float64 {
	if freedom < 8 {
		return studentAt(freedom, 2*tail)
	}
	const (
		x  = normal
		x2 = x * x
		g1 = (x2 + 1) * x / 4
		g2 = ((5*x2+16)*x2 + 3) * x / 96
		g3 = (((3*x2+19)*x2+17)*x2 - 15) * x / 384
		g4 = ((((79*x2+776)*x2+1482)*x2-1920)*x2 - 945) * x / 92160
	)
	n := freedom
	return x + (g1+(g2+(g3+g4/n)/n)/n)/n
}

// chiSquared returns the quantiles of the χ² distribution at the lower and at
// the upper end of an interval.
func chiSquared(freedom float64) (low, high float64) {
	return 2 * mathext.GammaIncRegInv(freedom/2, tail), 2 * mathext.GammaIncRegInv(freedom/2, 1-tail)
}

// mustBeFinite panics on NaN and infinities: a measurement has none, and they
// would spread.
func mustBeFinite(what string, x []float64) {
	for _, v := range x {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			panic("stat: " + what + " are not finite")
		}
	}
}
