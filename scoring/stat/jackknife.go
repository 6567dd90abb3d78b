package stat

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"groundbeat/scoring"
)

// within returns the root of the mean of variances, weighted with their degrees
// of freedom, with the interval of the jackknife on the logarithm: the
// logarithm of the mean is taken n times, each time without one of them.
func within(variances, freedoms []float64) scoring.Estimate {
	n := len(variances)
	if n < LeastRounds {
		return scoring.Unknown(n, LeastRounds)
	}
	sum, freedom := floats.Dot(variances, freedoms), floats.Sum(freedoms)
	value := math.Sqrt(sum / freedom)
	logs := make([]float64, n)
	for i := range n {
		rest := sum - variances[i]*freedoms[i]
		if rest <= 0 { // all the others are 0: there is no scatter to speak of
			return scoring.Unknown(n, LeastRounds)
		}
		logs[i] = math.Log(rest/(freedom-freedoms[i])) / 2
	}
	f := float64(n)
	_, s := meanDeviation(logs)
	width := (f - 1) * s / math.Sqrt(f)
	wider := math.Exp(student(f-1) * width)
	return scoring.Estimated(value, value/wider, value*wider, n, LeastRounds)
}
