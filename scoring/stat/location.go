package stat

import (
	"math"

	"groundbeat/scoring"
)

// LeastTaps is the least number of values for the mean and for the spread of
// a sample: of 5 values no two enclose the median with 95 % (2·2⁻⁵ > 5 %), of 6
// the first and the last do.
const LeastTaps = 6

// mean returns the mean of values that follow one another, with Student's
// interval. at are their places, ascending whole numbers, of which some may be
// missing; nil for 0, 1, 2, ….
//
//	x̄ ± t(n′−1) s/√n′,  n′ = n (1−h)/(1+h)
//
// Where neighbours are alike there are fewer independent values n′ than
// values: h is their [correlation], less its bias in small
// samples, h = (n r₁ + 1)/(n−4), from 0 to 0.9 (Bayley and Hammersley, The
// "effective" number of independent observations in an autocorrelated time
// series, Supplement to the JRSS 8, 184–197, 1946, for an autoregressive
// process of first order; the correction inverts the bias of Marriott and
// Pope, Bias in the estimation of autocorrelations, Biometrika 41, 390–402,
// 1954). Neighbours that are unlike (h < 0) do not narrow it.
//
// It panics on values that are not finite, as all functions here do.
func mean(x []float64, at []int) scoring.Estimate {
	mustBeFinite("values", x)
	if len(x) < LeastTaps {
		return scoring.Unknown(len(x), LeastTaps)
	}
	m, s := meanDeviation(x)
	n := max(2, float64(len(x))/stretch(deviations(x, m), at))
	half := student(n-1) * s / math.Sqrt(n)
	return scoring.Estimated(m, m-half, m+half, len(x), LeastTaps)
}

// meanApart returns the mean of independent values with Student's interval.
func meanApart(x []float64, least int) scoring.Estimate {
	if len(x) < least {
		return scoring.Unknown(len(x), least)
	}
	m, s := meanDeviation(x)
	half := student(float64(len(x)-1)) * s / math.Sqrt(float64(len(x)))
	return scoring.Estimated(m, m-half, m+half, len(x), least)
}
