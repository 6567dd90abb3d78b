package stat

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"groundbeat/scoring"
)

// Slope returns the slope of the least-squares line of y over t, for values
// that follow one another, with Student's interval
//
//	b ± t(n′−2) √( Σe²/(n−2) / Σ(t−t̄)² · n/n′ )
//
// where e are the distances from the line and n′ is the number of independent
// ones, as for [Mean]; the correction of h is twice as large here.
//
// It is not known where all t are one. It panics if the lists differ in length.
func Slope(t, y []float64) scoring.Estimate { return slope(t, y, nil) }

// slope is Slope for values at whole places, of which some may be missing.
func slope(t, y []float64, at []int) scoring.Estimate {
	mustBeFinite("times", t)
	mustBeFinite("values", y)
	if len(t) != len(y) {
		panic("stat: as many times as values are needed")
	}
	if len(y) < LeastSeries {
		return scoring.Unknown(len(y), LeastSeries)
	}
	a, b, squares := line(t, y)
	if squares == 0 {
		return scoring.Unknown(len(y), LeastSeries)
	}
	e := make([]float64, len(y))
	for i := range y {
		e[i] = y[i] - a - b*t[i]
	}
	n, wider := float64(len(y)), stretch(e, at, 2)
	width := math.Sqrt(floats.Dot(e, e) / (n - 2) / squares * wider)
	half := student(max(2, n/wider-2)) * width
	return scoring.Estimated(b, b-half, b+half, len(y), LeastSeries)
}
