package stat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestTrendNIST: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4:
// λ = 0.3, start 50, s = 2.0539; limits at three standard errors 52.5884 and
// 47.4115.
func TestTrendNIST(t *testing.T) {
	data := []float64{52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5,
		49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1}
	want := []float64{50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33,
		50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99}
	trend := Starting(.3).From(50)
	for i, x := range data {
		trend = trend.With(x, 2.0539)
		require.InDelta(t, want[i], trend.Value, .00501)
		exact := 2.0539 * 2.0539 * .3 / 1.7 * (1 - math.Pow(.7, float64(2*(i+1))))
		require.InDelta(t, exact, trend.Variance, 1e-12)
	}
	require.InDelta(t, 52.5884, 50+3*math.Sqrt(trend.Variance), 2e-4)
	require.InDelta(t, 47.4115, 50-3*math.Sqrt(trend.Variance), 2e-4)
	require.Equal(t, 20, trend.Estimate().N)
}

// TestTrendBeginning: without a start the first day is the start, and weighs
// more than its share.
func TestTrendBeginning(t *testing.T) {
	trend := Starting(.25)
	require.False(t, trend.Estimate().Known)
	trend = trend.With(8, 2)
	require.Equal(t, 8., trend.Value)
	require.Equal(t, 4., trend.Variance)
	trend = trend.With(0, 4)
	require.Equal(t, 6., trend.Value)
	require.Equal(t, .0625*16+.5625*4, trend.Variance)
	require.Panics(t, func() { Starting(0) })
	require.Panics(t, func() { Starting(1.1) })
	require.Panics(t, func() { trend.With(math.NaN(), 1) })
	require.Panics(t, func() { trend.WithShare(0, 0) })
}

// TestTrendShare: after a day without mistakes it is not certain of itself, and
// its interval holds a share that stays the same.
func TestTrendShare(t *testing.T) {
	require.Greater(t, Starting(.3).WithShare(5, 5).Variance, .005)
	r := rand.New(rand.NewPCG(6, 3))
	held := 0
	const runs = 2000
	for range runs {
		trend := Starting(.2)
		for range 15 {
			k := 0
			for range 8 {
				if r.Float64() < .8 {
					k++
				}
			}
			trend = trend.WithShare(k, 8)
		}
		if !trend.Estimate().Excludes(.8) {
			held++
		}
	}
	require.InDelta(t, .96, float64(held)/runs, .03)
}
