package stat

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"groundbeat/scoring"
)

// LeastTaps is the least number of values for the middle and for the spread of
// a sample: of 5 values no two enclose the median with 95 % (2·2⁻⁵ > 5 %), of 6
// the first and the last do.
const LeastTaps = 6

// Mean returns the mean of values that follow one another, with Student's
// interval
//
//	x̄ ± t(n′−1) s/√n′,  n′ = n (1−h)/(1+h)
//
// Where neighbours are alike there are fewer independent values n′ than
// values: h is their correlation as [Lag] finds it, less its bias in small
// samples, h = (n r₁ + 1)/(n−4), from 0 to 0.9 (Bayley and Hammersley, The
// "effective" number of independent observations in an autocorrelated time
// series, Supplement to the JRSS 8, 184–197, 1946, for an autoregressive
// process of first order; the correction inverts the bias of Marriott and
// Pope, Bias in the estimation of autocorrelations, Biometrika 41, 390–402,
// 1954). Neighbours that are unlike (h < 0) do not narrow it.
//
// It panics on values that are not finite, as all functions here do.
func Mean(x []float64) scoring.Estimate { return mean(x, nil) }

// mean is Mean for values at whole places, of which some may be missing.
func mean(x []float64, at []int) scoring.Estimate {
	mustBeFinite("values", x)
	if len(x) < LeastTaps {
		return scoring.Unknown(len(x), LeastTaps)
	}
	m, s := meanDeviation(x)
	n := max(2, float64(len(x))/stretch(deviations(x, m), at, 1))
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

// Median returns the median of independent values, with the interval between
// two of them that needs no distribution: from the k-th smallest to the k-th
// largest, with the largest k such that P(B < k) ≤ 2.5 % for B of binomial
// distribution (n, ½) (Conover, Practical Nonparametric Statistics, 3rd ed.,
// 1999, §3.2).
func Median(x []float64) scoring.Estimate {
	mustBeFinite("values", x)
	if len(x) < LeastTaps {
		return scoring.Unknown(len(x), LeastTaps)
	}
	s := sorted(x)
	k := signRank(len(s))
	return scoring.Estimated(middle(s), s[k-1], s[len(s)-k], len(s), LeastTaps)
}

// signRank returns the k of [Median] for n ≥ 6 values.
func signRank(n int) int {
	k := max(1, int(float64(n)/2-math.Sqrt(float64(n))))
	for k > 1 && heads(n, k-1) > tail {
		k--
	}
	for heads(n, k) <= tail {
		k++
	}
	return k
}

// heads returns the probability that of n fair coins at most k < n fall on one
// side (Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 26.5.24).
func heads(n, k int) float64 { return mathext.RegIncBeta(float64(n-k), float64(k+1), .5) }

// Centre returns the middle of symmetrically distributed independent values
// as Hodges and Lehmann estimate it, the median of the means of all pairs (a
// value and itself included), with the interval that belongs to Wilcoxon's
// signed-rank test: from the k-th smallest to the k-th largest such mean
// (Hodges and Lehmann, Estimates of location based on rank tests, Annals of
// Mathematical Statistics 34, 598–611, 1963; Hollander and Wolfe,
// Nonparametric Statistical Methods, 2nd ed., 1999, §3.2 and 3.3). Strays
// hardly move it, and for normally distributed values it is nearly as good as
// the mean (efficiency 3/π = 95 %).
//
// k is exact up to 50 values, beyond by the normal approximation.
func Centre(x []float64) scoring.Estimate {
	mustBeFinite("values", x)
	if len(x) < LeastTaps {
		return scoring.Unknown(len(x), LeastTaps)
	}
	s, pairs := sorted(x), len(x)*(len(x)+1)/2
	k := signedRank(len(s))
	value := (pairMean(s, (pairs+1)/2) + pairMean(s, pairs/2+1)) / 2
	return scoring.Estimated(value, pairMean(s, k), pairMean(s, pairs+1-k), len(s), LeastTaps)
}

// signedRank returns the k of [Centre] for n ≥ 6 values.
func signedRank(n int) int {
	if n > 50 {
		f := float64(n)
		return max(1, int(math.Round(f*(f+1)/4-normal*math.Sqrt(f*(f+1)*(2*f+1)/24))))
	}
	// ways[t] is in how many ways the ranks 1 to n, each taken or not, sum to t.
	ways := make([]float64, n*(n+1)/2+1)
	ways[0] = 1
	for rank := 1; rank <= n; rank++ {
		for t := rank * (rank + 1) / 2; t >= rank; t-- {
			ways[t] += ways[t-rank]
		}
	}
	all, below, k := math.Exp2(float64(n)), ways[0], 1
	for below+ways[k] <= tail*all {
		below += ways[k]
		k++
	}
	return k
}

// pairMean returns the k-th smallest (k from 1) of the means of all pairs of
// ascending values, in time n: it halves the range in which it lies until no
// number is left between the ends.
func pairMean(x []float64, k int) float64 {
	low, high := x[0], x[len(x)-1]
	if pairsUpTo(x, low) >= k {
		return low
	}
	for {
		v := low + (high-low)/2
		if v <= low || v >= high {
			return high
		}
		if pairsUpTo(x, v) >= k {
			high = v
		} else {
			low = v
		}
	}
}

// pairsUpTo counts the pairs of ascending values whose mean is v at most.
func pairsUpTo(x []float64, v float64) int {
	count, j := 0, len(x)-1
	for i := range x {
		for j >= i && x[i]+x[j] > 2*v {
			j--
		}
		if j < i {
			break
		}
		count += j - i + 1
	}
	return count
}
