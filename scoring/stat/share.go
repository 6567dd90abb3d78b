package stat

import (
	"math"

	"groundbeat/scoring"
)

// LeastTrials is the least number of trials for a share: from 12 on Wilson's
// interval is never wider than half of the scale, z/√(n+z²) < ½.
const LeastTrials = 12

// Share returns k of n as a part, 0 to 1, with [Wilson]'s interval. It panics
// unless 0 ≤ k ≤ n.
func Share(k, n int) scoring.Estimate {
	low, high := Wilson(k, n)
	if n < LeastTrials {
		return scoring.Unknown(n, LeastTrials)
	}
	return scoring.Estimated(float64(k)/float64(n), low, high, n, LeastTrials)
}

// Wilson returns the interval of a share of k in n,
//
//	(p + z²/2n ± z √(p(1−p)/n + z²/4n²)) / (1 + z²/n),  p = k/n
//
// (Wilson, Probable inference, the law of succession, and statistical
// inference, JASA 22, 209–212, 1927; NIST/SEMATECH e-Handbook of Statistical
// Methods, 7.2.4.1), without correction for continuity. Of no trials it is 0 to
// 1. It panics unless 0 ≤ k ≤ n.
func Wilson(k, n int) (low, high float64) {
	if k < 0 || k > n {
		panic("stat: more right answers than trials")
	}
	if n == 0 {
		return 0, 1
	}
	return wilson(float64(k)/float64(n), float64(n))
}

// wilson returns the interval of a share p of n trials, which need not be whole.
func wilson(p, n float64) (low, high float64) {
	centre := p + normal*normal/(2*n)
	half := normal * math.Sqrt(p*(1-p)/n+normal*normal/(4*n*n))
	all := 1 + normal*normal/n
	low, high = max(0, (centre-half)/all), min(1, (centre+half)/all)
	if p == 0 {
		low = 0
	}
	if p == 1 {
		high = 1
	}
	return low, high
}
