package threshold

import (
	"math"

	"groundbeat/scoring"
)

// grid holds a weight for each threshold and graduality; they sum to 1.
type grid [thresholds][gradualities]float64

// weigh returns how likely each threshold and graduality is, given the answers.
func (s Search) weigh(trials []Trial) *grid {
	g, top := new(grid), math.Inf(-1)
	for j := range gradualities {
		chances := s.chances(trials, s.graduality(float64(j)))
		for i := range g {
			threshold := s.threshold(float64(i))
			ease := math.Exp(-s.steps(threshold, s.graduality(float64(j))))
			g[i][j] = s.expectation(threshold) + logLikelihood(chances, ease)
			top = max(top, g[i][j])
		}
	}
	var sum float64
	for i := range g {
		for j := range g[i] {
			g[i][j] = math.Exp(g[i][j] - top)
			sum += g[i][j]
		}
	}
	for i := range g {
		for j := range g[i] {
			g[i][j] /= sum
		}
	}
	return g
}

// steps is how many gradualities a level lies above Low, in the harder
// direction.
func (s Search) steps(level, graduality float64) float64 {
	if s.Falling {
		return (s.Low - level) / graduality
	}
	return (level - s.Low) / graduality
}

// chance is a trial with all that does not depend on the threshold worked out:
// with the ease e^(−steps) of the threshold the probability of its answer is
// base + span/(1 + hard·ease).
type chance struct{ base, span, hard float64 }

func (s Search) chances(trials []Trial, graduality float64) []chance {
	all := make([]chance, len(trials))
	for k, t := range trials {
		c := chance{base: 1 / float64(t.Choices), hard: math.Exp(s.steps(t.Level, graduality))}
		c.span = 1 - c.base - Lapses
		if !t.Right {
			c.base, c.span = 1-c.base, -c.span
		}
		all[k] = c
	}
	return all
}

// logLikelihood is the logarithm of the probability of all answers. It is taken
// of a hundred of them at a time, which are not too improbable for a float64.
func logLikelihood(chances []chance, ease float64) float64 {
	sum, product := 0., 1.
	for k, c := range chances {
		product *= c.base + c.span/(1+c.hard*ease)
		if k%100 == 99 {
			sum, product = sum+math.Log(product), 1
		}
	}
	return sum + math.Log(product)
}

// expectation is the logarithm of how likely a threshold is beforehand.
func (s Search) expectation(threshold float64) float64 {
	if s.Spread == 0 {
		return 0
	}
	z := (threshold - s.Expected) / s.Spread
	return -z * z / 2
}

func (g *grid) byThreshold() []float64 {
	sums := make([]float64, thresholds)
	for i := range g {
		for _, w := range g[i] {
			sums[i] += w
		}
	}
	return sums
}

func (g *grid) byGraduality() []float64 {
	sums := make([]float64, gradualities)
	for i := range g {
		for j, w := range g[i] {
			sums[j] += w
		}
	}
	return sums
}

// summary returns the mean of values with such weights, and the ends between
// which all but 2.5 % at each side lie.
func summary(weights []float64, value func(float64) float64, n, least int) scoring.Estimate {
	if n < least {
		return scoring.Unknown(n, least)
	}
	var mean float64
	for i, w := range weights {
		mean += w * value(float64(i))
	}
	const tail = (1 - scoring.Confidence) / 2
	low, high := value(quantile(weights, tail)), value(quantile(weights, 1-tail))
	return scoring.Estimated(mean, min(low, mean), max(high, mean), n, least)
}

// quantile returns at which index, with fraction, the weights up to it sum to
// p. Each weight is spread evenly over the half steps beside its index.
func quantile(weights []float64, p float64) float64 {
	var sum float64
	for i, w := range weights {
		if sum+w >= p && w > 0 {
			at := float64(i) - .5 + (p-sum)/w
			return min(max(at, 0), float64(len(weights)-1))
		}
		sum += w
	}
	return float64(len(weights) - 1)
}
