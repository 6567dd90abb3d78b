package stat

import "groundbeat/scoring"

// Among returns the estimate of a mean with the interval that it needs where it was
// chosen among so many, because it stands out: all of their intervals hold together as
// often as one does by itself. So what is said of the one that stands out is noise in one
// case of twenty at most, however many are looked at (Bonferroni's inequality; Dunn,
// Multiple comparisons among means, JASA 56, 52–64, 1961): half the interval of a mean of
// N observations grows by
//
//	t(1 − α/2m; N−1) / t(1 − α/2; N−1)
//
// m being how many. Of one, and of what is not known, nothing changes.
func Among(e scoring.Estimate, many int) scoring.Estimate {
	if !e.Known || many < 2 || e.N < 2 {
		return e
	}
	by := studentAt(float64(e.N-1), 2*tail/float64(many)) / studentAt(float64(e.N-1), 2*tail)
	e.Low, e.High = e.Value-by*(e.Value-e.Low), e.Value+by*(e.High-e.Value)
	return e
}
