package stat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	gonum "gonum.org/v1/gonum/stat"
)

// TestMomentsAgainstGonum compares with gonum's stat package.
func TestMomentsAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for n := 2; n < 60; n++ {
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			x[i], y[i] = 1e4+r.Float64(), -300+20*r.NormFloat64()
		}
		m, s := meanDeviation(y)
		wantMean, wantDeviation := gonum.MeanStdDev(y, nil)
		require.InEpsilon(t, wantMean, m, 1e-13)
		require.InEpsilon(t, wantDeviation, s, 1e-12)
		_, v := meanVariance(y)
		require.InEpsilon(t, gonum.Variance(y, nil), v, 1e-12)
		a, b, squares := line(x, y)
		wantA, wantB := gonum.LinearRegression(x, y, nil, false)
		require.InEpsilon(t, wantB, b, 1e-9)
		require.InEpsilon(t, wantA, a, 1e-9)
		require.InEpsilon(t, gonum.Variance(x, nil)*float64(n-1), squares, 1e-9)
	}
	a, b, squares := line([]float64{3, 3}, []float64{1, 5})
	require.Equal(t, []float64{3, 0, 0}, []float64{a, b, squares}, "no line through one time")
	_, v := meanVariance([]float64{.1, .1, .1})
	require.False(t, math.Signbit(v) || v > 1e-30)
}
