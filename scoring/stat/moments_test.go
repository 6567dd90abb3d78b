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
		y := make([]float64, n)
		for i := range y {
			y[i] = -300 + 20*r.NormFloat64()
		}
		m, s := meanDeviation(y)
		wantMean, wantDeviation := gonum.MeanStdDev(y, nil)
		require.InEpsilon(t, wantMean, m, 1e-13)
		require.InEpsilon(t, wantDeviation, s, 1e-12)
		_, v := meanVariance(y)
		require.InEpsilon(t, gonum.Variance(y, nil), v, 1e-12)
	}
	_, v := meanVariance([]float64{.1, .1, .1})
	require.False(t, math.Signbit(v) || v > 1e-30)
}
