package stat

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"groundbeat/scoring"
)

// LeastApart is from how many values in one group on it is told how far it lies from
// the others. Own choice: of 3 no single one decides.
const LeastApart = 3

// Group is a sample as far as its middle and its spread go.
type Group struct {
	N      int
	Mean   float64
	Spread float64 // standard deviation (n−1); of no account below two values
}

// Apart returns, of each of several groups of independent values, how far its mean lies
// from the mean of all values of the others, dₖ = x̄ₖ − x̄₋ₖ: above 0 it is the greater.
// What all groups have in common is in none of these differences. The intervals are
//
//	dₖ ± t s √(1/nₖ + 1/(N−nₖ)),  s² = Σ (nₖ−1)sₖ² / (N−K)
//
// with Student's t for N−K degrees of freedom, at such a level that all of them together
// hold the true differences with [scoring.Confidence]: of K groups each leaves out the
// K-th part of what one alone would (Bonferroni's inequality; Dunn, Multiple comparisons
// among means, JASA 56, 52–64, 1961). Of two groups the differences are one with either
// sign, and nothing is parted. Looking this way for the group that differs from the others
// is the analysis of means (Ott, Analysis of means — a graphical procedure, Industrial
// Quality Control 24, 101–109, 1967), whose exact critical points for groups of one size
// are smaller by some hundredths.
//
// Values of a group that are alike because they follow one another, or a drift through
// all groups, widen s and so the intervals. Of a group with fewer than [LeastApart]
// values, or where the others have fewer, nothing is known; nor where s is 0.
func Apart(groups []Group) []scoring.Estimate {
	n, filled, sum, squares := 0, 0, 0., 0.
	for _, g := range groups {
		mustBeFinite("means", []float64{g.Mean, g.Spread})
		if g.N > 0 {
			n, filled, sum = n+g.N, filled+1, sum+float64(g.N)*g.Mean
		}
		if g.N > 1 {
			squares += float64(g.N-1) * g.Spread * g.Spread
		}
	}
	all := make([]scoring.Estimate, len(groups))
	for k, g := range groups {
		rest := n - g.N
		all[k] = scoring.Unknown(g.N, LeastApart)
		if g.N < LeastApart || rest < LeastApart || squares == 0 {
			continue
		}
		d := g.Mean - (sum-float64(g.N)*g.Mean)/float64(rest)
		freedom := float64(n - filled)
		half := together(freedom, filled) * math.Sqrt(squares/freedom*(1/float64(g.N)+1/float64(rest)))
		all[k] = scoring.Estimated(d, d-half, d+half, g.N, LeastApart)
	}
	return all
}

// together is the critical point of [Apart] for so many groups.
func together(freedom float64, groups int) float64 {
	if groups == 2 {
		groups = 1
	}
	return studentAt(freedom, 2*tail/float64(groups))
}

// studentAt is the point that Student's t exceeds, to either side, with a probability
// (Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 26.5.27).
func studentAt(freedom, outside float64) float64 {
	x := mathext.InvRegIncBeta(freedom/2, .5, outside)
	return math.Sqrt(freedom * (1 - x) / x)
}
