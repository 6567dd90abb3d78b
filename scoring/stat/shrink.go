package stat

import (
	"math"

	"groundbeat/scoring"
)

// LeastGroups is the least number of groups that can tell how much groups
// differ: the estimate of Stein's kind is better than the groups' own from 4 on
// (with the common mean estimated too).
const LeastGroups = 4

// Measured is a number of one group, such as one rhythm, with its standard
// error, above 0.
type Measured struct{ Value, Err float64 }

// Common is what groups have in common, and each of them in that light.
type Common struct {
	Mean   scoring.Estimate   // of the groups
	Apart  float64            // τ: how far the groups lie apart, standard deviation
	Groups []scoring.Estimate // each moved towards Mean, in the order given; N is 1
}

// Shrunken moves the numbers of groups towards their common mean, each the
// more the less certain it is, so that a rhythm with few trials does not look
// odd by chance. It is empirical Bayes for values yᵢ with normally distributed
// errors σᵢ about group means that are themselves normally distributed (μ, τ):
//
//	τ² = max(0, (Q−(k−1)) / (Σw − Σw²/Σw)),  w = 1/σ², Q = Σ w (y−ȳ)²
//	μ  = Σ y/(σ²+τ²) / Σ 1/(σ²+τ²)
//	Bᵢ = (k−3)/(k−1) · σᵢ²/(σᵢ²+τ²)
//	yᵢ moves to yᵢ − Bᵢ(yᵢ−μ)
//
// (DerSimonian and Laird, Meta-analysis in clinical trials, Controlled Clinical
// Trials 7, 177–188, 1986, for τ and μ; Morris, Parametric empirical Bayes
// inference, JASA 78, 47–55, 1983, for B. For equal errors it is Efron and
// Morris's estimator of Stein's kind.) The interval of a group is ± 1.96
// √(σ²(1−B) + B² var μ + 2/(k−3) B²(y−μ)²), after Morris.
//
// With fewer than [LeastGroups] groups nothing is known. It panics on errors
// that are not above 0.
func Shrunken(groups []Measured) Common {
	k := len(groups)
	for _, g := range groups {
		mustBeFinite("values", []float64{g.Value, g.Err})
		if g.Err <= 0 {
			panic("stat: a standard error must be above 0")
		}
	}
	if k < LeastGroups {
		c := Common{Mean: scoring.Unknown(k, LeastGroups)}
		for range groups {
			c.Groups = append(c.Groups, scoring.Unknown(1, 1))
		}
		return c
	}
	apart := between(groups)
	mean, weights := weightedMean(groups, apart)
	half := normal / math.Sqrt(weights)
	c := Common{Mean: scoring.Estimated(mean, mean-half, mean+half, k, LeastGroups), Apart: math.Sqrt(apart)}
	for _, g := range groups {
		c.Groups = append(c.Groups, g.towards(mean, apart, 1/weights, k))
	}
	return c
}

// between returns τ².
func between(groups []Measured) float64 {
	mean, sum := weightedMean(groups, 0)
	var q, squares float64
	for _, g := range groups {
		w := 1 / (g.Err * g.Err)
		q += w * (g.Value - mean) * (g.Value - mean)
		squares += w * w
	}
	return max(0, (q-float64(len(groups)-1))/(sum-squares/sum))
}

// weightedMean returns the mean of groups that lie apart, and the sum of the
// weights, which is one over its variance.
func weightedMean(groups []Measured, apart float64) (mean, sum float64) {
	for _, g := range groups {
		w := 1 / (g.Err*g.Err + apart)
		mean += w * g.Value
		sum += w
	}
	return mean / sum, sum
}

// towards returns a group moved towards the mean of k.
func (g Measured) towards(mean, apart, meanVariance float64, k int) scoring.Estimate {
	variance, f := g.Err*g.Err, float64(k)
	b := (f - 3) / (f - 1) * variance / (variance + apart)
	off := g.Value - mean
	half := normal * math.Sqrt(variance*(1-b)+b*b*meanVariance+2/(f-3)*b*b*off*off)
	return scoring.Estimated(g.Value-b*off, g.Value-b*off-half, g.Value-b*off+half, 1, 1)
}
