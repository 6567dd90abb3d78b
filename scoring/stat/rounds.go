package stat

import "groundbeat/scoring"

// ShareInRounds returns the share of dums that were tapped, k[i] of n[i] in the ith
// round. Its observations are the rounds: whoever loses her place misses many dums, so
// that they tell less than as many that are independent.
//
// The interval is that of [Wilson], for as many independent dums n′ as tell as much:
//
//	n′ = N/d · (z/t)²,  d = max(1, m/(m−1) Σ(kᵢ − p nᵢ)² / (N p (1−p)))
//
// with m rounds of N dums in all, of which the share p were tapped, the normal quantile
// z and Student's t with m−1 degrees of freedom: d is how much larger the variance of p
// is than if dums were independent (Kish, Survey Sampling, 1965, for d; Korn and
// Graubard, Confidence intervals for proportions with small expected number of positive
// counts estimated from survey data, Survey Methodology 24, 193–201, 1998, for n′, there
// with Clopper and Pearson's interval).
//
// It takes [LeastRounds] rounds with a dum in them. It panics unless 0 ≤ k ≤ n in each,
// and if the lists differ in length.
func ShareInRounds(k, n []int) scoring.Estimate {
	if len(k) != len(n) {
		panic("stat: as many shares as rounds are needed")
	}
	rounds, right, of := 0, 0, 0
	for i := range n {
		if k[i] < 0 || k[i] > n[i] {
			panic("stat: more right answers than trials")
		}
		right, of = right+k[i], of+n[i]
		if n[i] > 0 {
			rounds++
		}
	}
	if rounds < LeastRounds {
		return scoring.Unknown(rounds, LeastRounds)
	}
	p, m := float64(right)/float64(of), float64(rounds)
	narrower := normal / student(m-1)
	low, high := wilson(p, float64(of)/alikeness(k, n, p, m)*narrower*narrower)
	return scoring.Estimated(p, low, high, rounds, LeastRounds)
}

// alikeness is the d of [ShareInRounds].
func alikeness(k, n []int, p, rounds float64) float64 {
	var squares, of float64
	for i := range n {
		off := float64(k[i]) - p*float64(n[i])
		squares += off * off
		of += float64(n[i])
	}
	alone := of * p * (1 - p)
	if alone == 0 {
		return 1
	}
	return max(1, rounds/(rounds-1)*squares/alone)
}
