package stat

import (
	"math"

	"groundbeat/scoring"
)

// LeastSeries is the least number of values for what depends on their order:
// with 8 the interval of [Lag] is ± 0.87 about 0, with fewer it holds nearly the
// whole scale and tells nothing.
const LeastSeries = 8

// Lag returns how alike neighbours are in values that follow one another: the
// autocorrelation at lag 1,
//
//	r₁ = Σ dᵢ dᵢ₊₁ / Σ dᵢ²,  dᵢ = xᵢ − x̄
//
// + where one who is late once is late next time, 0 where each tap stands for
// itself, − where she overcorrects. The interval is about r₁ less its bias in
// small samples (Marriott and Pope, see [Mean]),
//
//	ρ = r₁ + (1+3r₁)/n,  ρ ± t(n−2) √((1−ρ²)/n + 9ρ²/n²)
//
// (for an autoregressive process of first order; Bartlett, On the theoretical
// specification and sampling properties of autocorrelated time-series,
// Supplement to the JRSS 8, 27–41, 1946; the term 9ρ²/n² is of White,
// Asymptotic expansions for the mean and variance of the serial correlation
// coefficient, Biometrika 48, 85–94, 1961, from memory), from −1 to 1, so r₁ is
// not in its middle. A drift makes neighbours alike.
//
// It is not known where all values are alike.
func Lag(x []float64) scoring.Estimate { return lag(x, nil) }

// lag is Lag for values at whole places, of which some may be missing.
func lag(x []float64, at []int) scoring.Estimate {
	mustBeFinite("values", x)
	r, ok := correlation(deviations(x, average(x)), at)
	if len(x) < LeastSeries || !ok {
		return scoring.Unknown(len(x), LeastSeries)
	}
	n := float64(len(x))
	rho := min(max(r+(1+3*r)/n, -1), 1)
	half := student(n-2) * math.Sqrt((1-rho*rho)/n+9*rho*rho/(n*n))
	return scoring.Estimated(r, max(rho-half, -1), min(rho+half, 1), len(x), LeastSeries)
}

// correlation returns the autocorrelation at lag 1 of deviations. at are their
// places, ascending whole numbers, nil for 0, 1, 2, …: only those at places
// that follow one another are neighbours. Where some are missing it is the
// mean product of the neighbours over the mean square of all (Parzen, On
// spectral analysis with missing observations and amplitude modulation,
// Sankhyā A 25, 383–392, 1963). There is none without neighbours, and none
// where all deviations are 0.
func correlation(d []float64, at []int) (r float64, ok bool) {
	var products, squares float64
	neighbours := 0
	for i, v := range d {
		squares += v * v
		if i > 0 && (at == nil || at[i] == at[i-1]+1) {
			products += v * d[i-1]
			neighbours++
		}
	}
	if neighbours == 0 || squares == 0 {
		return 0, false
	}
	return products / squares * float64(len(d)-1) / float64(neighbours), true
}

// stretch returns by how much the variance of an estimate of so many
// parameters (1 for a mean, 2 for a line) grows because residuals are like
// their neighbours: (1+h)/(1−h), as [Mean] says; 1 where there are none.
func stretch(residuals []float64, at []int, parameters int) float64 {
	r, ok := correlation(residuals, at)
	if !ok {
		return 1
	}
	n, p := float64(len(residuals)), float64(parameters)
	h := min(max((n*r+p)/(n-3-p), 0), .9)
	return (1 + h) / (1 - h)
}
