package stat

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"groundbeat/scoring"
)

// depression is Hamilton's depression scale factor IV of nine patients before
// and after a tranquilliser (Hollander and Wolfe, Nonparametric Statistical
// Methods, 1973, p. 29), after less before.
func depression() []float64 {
	before := []float64{1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30}
	after := []float64{0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29}
	d := make([]float64, len(before))
	for i := range d {
		d[i] = after[i] - before[i]
	}
	return d
}

// TestCentrePublished: Hollander and Wolfe give −0.46 and the interval −0.786
// to −0.010, at 96.1 %, as does R's wilcox.test (from memory).
func TestCentrePublished(t *testing.T) {
	e := Centre(depression())
	require.InDelta(t, -.46, e.Value, 1e-12)
	require.InDelta(t, -.786, e.Low, 1e-12)
	require.InDelta(t, -.010, e.High, 1e-12)
	require.True(t, e.Excludes(0))
}

// TestSignedRank: Wilcoxon's critical values at 5 %, two-sided (table of the
// signed-rank test in any textbook, such as Conover 1999, table A12; the k here
// is one more).
func TestSignedRank(t *testing.T) {
	for n, critical := range map[int]int{6: 0, 7: 2, 8: 3, 9: 5, 10: 8, 11: 10, 12: 13, 15: 25, 20: 52, 25: 89} {
		require.Equal(t, critical+1, signedRank(n), "n = %d", n)
	}
	require.InDelta(t, signedRank(50), 50*51/4-normal*math.Sqrt(50*51*101/24.), 1.1, "the approximation takes over smoothly")
}

// TestSignRank: the k of the interval for a median (Conover 1999, table A3, the
// binomial distribution with p = ½), and its definition.
func TestSignRank(t *testing.T) {
	for n, k := range map[int]int{6: 1, 8: 1, 9: 2, 12: 3, 15: 4, 17: 5, 20: 6, 25: 8} {
		require.Equal(t, k, signRank(n), "n = %d", n)
	}
	for n := 6; n < 400; n++ {
		k, b := signRank(n), distuv.Binomial{N: float64(n), P: .5}
		require.LessOrEqual(t, b.CDF(float64(k-1)), tail)
		require.Greater(t, b.CDF(float64(k)), tail)
	}
}

// TestPairMean compares with all pair means, sorted.
func TestPairMean(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for n := 1; n < 30; n++ {
		x := make([]float64, n)
		for i := range x {
			x[i] = math.Round(r.NormFloat64()*8) / 4 // with ties
		}
		slices.Sort(x)
		var all []float64
		for i := range x {
			for j := i; j < n; j++ {
				all = append(all, (x[i]+x[j])/2)
			}
		}
		slices.Sort(all)
		for k, want := range all {
			require.InDelta(t, want, pairMean(x, k+1), 1e-15, "%v, %d", x, k)
		}
	}
}

// TestMeanMichelson: t(99; 0.975) = 1.984217; certified mean and standard
// deviation of NIST's Michelso.
func TestMeanMichelson(t *testing.T) {
	for _, c := range readNIST(t) {
		if c.name != "Michelso" {
			continue
		}
		half := 1.984217 * c.sd / 10
		apart := meanApart(c.values, LeastTaps)
		require.InDelta(t, c.mean-half, apart.Low, 1e-8)
		require.InDelta(t, c.mean+half, apart.High, 1e-8)
		// Michelson's values follow one another: r₁ = .535, h = .568, n′ = 27.6.
		series := Mean(c.values)
		h := (100*c.lag + 1) / 96
		n := 100 * (1 - h) / (1 + h)
		require.InEpsilon(t, student(n-1)*c.sd/math.Sqrt(n), (series.High-series.Low)/2, 1e-9)
		return
	}
	t.Fatal("no Michelso")
}

// TestStrays: one stray tap moves the robust numbers little.
func TestStrays(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	x := make([]float64, 40)
	for i := range x {
		x[i] = 12 + 20*r.NormFloat64()
	}
	y := slices.Clone(x)
	y[7] += 5000
	for name, f := range map[string]func([]float64) scoring.Estimate{"median": Median, "centre": Centre, "robust": Robust} {
		require.InDelta(t, f(x).Value, f(y).Value, 4, name)
	}
	require.Greater(t, math.Abs(stat.Mean(y, nil)-stat.Mean(x, nil)), 100.)
}

// TestShiftAndScale: a set-up taken off, or another unit, changes what it
// should and nothing else.
func TestShiftAndScale(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 5))
	x, y := make([]float64, 23), make([]float64, 23)
	for i := range x {
		x[i] = r.NormFloat64()
		y[i] = 50 - 3*x[i]
	}
	for name, f := range map[string]func([]float64) scoring.Estimate{"mean": Mean, "median": Median, "centre": Centre} {
		a, b := f(x), f(y)
		require.InDelta(t, 50-3*a.Value, b.Value, 1e-12, name)
		require.InDelta(t, 50-3*a.High, b.Low, 1e-12, name)
		require.InDelta(t, 50-3*a.Low, b.High, 1e-12, name)
	}
	for name, f := range map[string]func([]float64) scoring.Estimate{"spread": Spread, "robust": Robust} {
		a, b := f(x), f(y)
		require.InDelta(t, 3*a.Value, b.Value, 1e-12, name)
		require.InDelta(t, 3*a.Low, b.Low, 1e-12, name)
		require.InDelta(t, 3*a.High, b.High, 1e-12, name)
	}
	require.InDelta(t, Lag(x).Value, Lag(y).Value, 1e-12)
	require.InDelta(t, Lag(x).High, Lag(y).High, 1e-12)
}

// TestRobustValue: by hand. Distances from the median 10 of 8 9 10 11 12 30 and
// 5: 2 1 0 1 2 20 5, of which the median is 2; 1.4826 · 7/6.2 · 2.
func TestRobustValue(t *testing.T) {
	require.InDelta(t, 1.482602218505602*7/6.2*2, Robust([]float64{8, 9, 10, 11, 12, 30, 5}).Value, 1e-12)
}

func TestTooFew(t *testing.T) {
	five := []float64{1, 2, 4, 8, 16}
	for _, f := range []func([]float64) scoring.Estimate{Mean, Median, Centre, Spread, Robust} {
		require.Equal(t, scoring.Unknown(5, 6), f(five))
		require.Equal(t, scoring.Unknown(0, 6), f(nil))
		require.True(t, f(append(five, 3)).Known)
	}
	require.Equal(t, scoring.Unknown(5, 8), Lag(five))
	require.Equal(t, scoring.Unknown(5, 8), Slope(five, five))
	same := make([]float64, 9)
	require.False(t, Lag(same).Known, "no correlation of nothing")
	require.Equal(t, 0, Lag(same).Missing())
	require.False(t, Slope(same, append(five, 1, 2, 3, 4)).Known, "no time passes")
}

func TestNotFinite(t *testing.T) {
	x := []float64{1, 2, 3, math.NaN(), 5, 6, 7, 8}
	for _, f := range []func([]float64) scoring.Estimate{Mean, Median, Centre, Spread, Robust, Lag} {
		require.Panics(t, func() { f(x) })
	}
	require.Panics(t, func() { Around([]float64{0, .1, math.Inf(1), .2, .3}) })
	require.Panics(t, func() { Slope(x[:3], x[:2]) })
}
