package stat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// meanOf is the mean of values of which none is missing.
func meanOf(x []float64) scoring.Estimate { return mean(x, nil) }

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
		series := meanOf(c.values)
		h := (100*c.lag + 1) / 96
		n := 100 * (1 - h) / (1 + h)
		require.InEpsilon(t, student(n-1)*c.sd/math.Sqrt(n), (series.High-series.Low)/2, 1e-9)
		return
	}
	t.Fatal("no Michelso")
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
	a, b := meanOf(x), meanOf(y)
	require.InDelta(t, 50-3*a.Value, b.Value, 1e-12)
	require.InDelta(t, 50-3*a.High, b.Low, 1e-12)
	require.InDelta(t, 50-3*a.Low, b.High, 1e-12)
	a, b = Spread(x), Spread(y)
	require.InDelta(t, 3*a.Value, b.Value, 1e-12)
	require.InDelta(t, 3*a.Low, b.Low, 1e-12)
	require.InDelta(t, 3*a.High, b.High, 1e-12)
}

func TestTooFewValues(t *testing.T) {
	five := []float64{1, 2, 4, 8, 16}
	for _, f := range []func([]float64) scoring.Estimate{meanOf, Spread} {
		require.Equal(t, scoring.Unknown(5, 6), f(five))
		require.Equal(t, scoring.Unknown(0, 6), f(nil))
		require.True(t, f(append(five, 3)).Known)
	}
}

func TestNotFinite(t *testing.T) {
	x := []float64{1, 2, 3, math.NaN(), 5, 6, 7, 8}
	for _, f := range []func([]float64) scoring.Estimate{meanOf, Spread} {
		require.Panics(t, func() { f(x) })
	}
}
