package stat

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// The functions that follow are those of gonum's stat, which is not used
// here: it brings matrices and their solvers along, 540 kB of the page as it
// is sent. The tests compare with it.

// average returns the mean.
func average(x []float64) float64 { return floats.Sum(x) / float64(len(x)) }

// meanVariance returns the mean and the variance (n−1). The squares are of
// deviations, whose own mean, what rounding left, is taken off: large numbers
// lose nothing (Chan, Golub and LeVeque, Algorithms for computing the sample
// variance, The American Statistician 37, 242–247, 1983, eq. 1.7).
func meanVariance(x []float64) (mean, variance float64) {
	mean = average(x)
	d := deviations(x, mean)
	n, left := float64(len(x)), floats.Sum(d)
	return mean, max(0, floats.Dot(d, d)-left*left/n) / (n - 1)
}

// meanDeviation returns the mean and the standard deviation (n−1).
func meanDeviation(x []float64) (mean, deviation float64) {
	mean, variance := meanVariance(x)
	return mean, math.Sqrt(variance)
}

// deviations returns how far each value lies above m.
func deviations(x []float64, m float64) []float64 {
	d := make([]float64, len(x))
	for i, v := range x {
		d[i] = v - m
	}
	return d
}
