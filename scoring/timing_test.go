package scoring

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
)

func TestTimingTooFew(t *testing.T) {
	const w = 50 * millisecond
	one := millis(1000)
	require.Equal(t, Timing{}, Score(nil, nil, 0, w).Timing)
	require.Equal(t, Timing{}, Score(one, millis(1010), 0, w).Timing)
	two := Score(millis(1000, 2000), millis(1010, 2020), 0, w).Timing
	require.Equal(t, Figure{15, true}, two.Bias)
	require.Equal(t, Figure{15, true}, two.Median)
	require.InDelta(t, 7.0710678, two.Spread.Value, 1e-7) // 10/√2
	require.False(t, two.Drift.Known)
	same := Score(millis(7, 7), millis(6, 9), 0, 50*millisecond).Timing
	require.True(t, same.Bias.Known)
	require.False(t, same.Drift.Known, "no time passes")
}

// TestTiming: worked by hand. Strokes every 500 ms, offsets less set-up of
// −10 −5 0 5 40: bias 6, median 0, distances from it 0 5 5 10 40.
func TestTiming(t *testing.T) {
	strokes := millis(0, 500, 1000, 1500, 2000)
	for _, setup := range []time.Duration{0, 120 * millisecond, -35 * millisecond} {
		taps := millis(-10, 495, 1000, 1505, 2040)
		for i := range taps {
			taps[i] += setup
		}
		r := Score(strokes, taps, setup, 50*millisecond)
		require.Equal(t, setup, r.Setup)
		require.Equal(t, setup-10*millisecond, r.Pairs[0].Offset)
		require.Equal(t, Figure{6, true}, r.Timing.Bias)
		require.Equal(t, Figure{0, true}, r.Timing.Median)
		require.InDelta(t, math.Sqrt(1570./4), r.Timing.Spread.Value, 1e-12)
		// Slope: Σ(x−1)(y−6)/Σ(x−1)² = 55/2.5 = 22 ms a second.
		require.InDelta(t, 22*60, r.Timing.Drift.Value, 1e-9)
	}
	flip := Score(strokes, millis(10, 505, 1000, 1495, 1960), 0, 50*millisecond).Timing
	require.Equal(t, -6., flip.Bias.Value, "ahead is minus")
	require.InDelta(t, -22*60, flip.Drift.Value, 1e-9, "rushing is minus")
}

// TestLargeNumbers: NIST StRD univariate NumAcc1, 3 and 4 (certified mean and
// standard deviation; www.itl.nist.gov/div898/strd/univ), as offsets in ms.
// Event times in ms since a page was opened look like these.
func TestLargeNumbers(t *testing.T) {
	alternating := func(first, a, b float64) []float64 {
		x := []float64{first}
		for range 500 {
			x = append(x, a, b)
		}
		return x
	}
	for _, c := range []struct {
		name       string
		data       []float64
		mean, s, d float64
	}{
		{"NumAcc1", []float64{10000001, 10000003, 10000002}, 10000002, 1, 1e-15},
		{"NumAcc3", alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, .1, 1e-15},
		{"NumAcc4", alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, .1, 1e-15},
	} {
		x := make([]time.Duration, len(c.data))
		for i, v := range c.data {
			x[i] = time.Duration(math.Round(v * 1e6))
		}
		mean, s := meanSpread(x)
		require.InEpsilon(t, c.mean, mean, c.d, c.name)
		require.InDelta(t, c.s, s, c.d, c.name)
	}
}

// TestLateTaps: the same taps 10⁷ ms later score the same to the last bit.
func TestLateTaps(t *testing.T) {
	strokes := millis(0, 511.1, 990.7, 1504.2)
	taps := millis(-12.345678, 530.000001, 991, 1499.9)
	early := Score(strokes, taps, 3*millisecond, 50*millisecond)
	for i := range strokes {
		strokes[i] += 1e7 * millisecond
		taps[i] += 1e7 * millisecond
	}
	require.Equal(t, early, Score(strokes, taps, 3*millisecond, 50*millisecond))
}

// TestDriftNorris: NIST StRD linear regression, Norris: certified slope
// 1.00211681802045 (www.itl.nist.gov/div898/strd/lls/data/Norris.shtml). Here
// x is in minutes and y in ms.
func TestDriftNorris(t *testing.T) {
	x := []float64{0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
		0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
		0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5}
	y := []float64{0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
		0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
		0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2}
	require.Len(t, x, 36)
	require.Len(t, y, 36)
	pairs, strokes := make([]Pair, 36), make([]time.Duration, 36)
	for i := range x {
		strokes[i] = time.Duration(math.Round(x[i]*10)) * 6 * time.Second
		pairs[i] = Pair{i, i, time.Duration(math.Round(y[i]*10)) * 100 * time.Microsecond}
	}
	require.InDelta(t, 1.00211681802045, drift(pairs, strokes).Value, 1e-13)
}

// TestTimingAgainstGonum compares random rounds with gonum's stat package.
func TestTimingAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for n := 3; n < 60; n++ {
		strokes, taps := make([]time.Duration, n), make([]time.Duration, n)
		x, y := make([]float64, n), make([]float64, n)
		for i := range n {
			strokes[i] = time.Duration(i)*625*millisecond + time.Duration(r.IntN(1000))
			d := time.Duration(r.NormFloat64() * 15e6)
			taps[i] = strokes[i] + max(min(d, 90*millisecond), -90*millisecond)
			x[i], y[i] = strokes[i].Minutes(), ms(taps[i]-strokes[i])
		}
		got := Score(strokes, taps, 0, Wide).Timing
		mean, sd := stat.MeanStdDev(y, nil)
		_, slope := stat.LinearRegression(x, y, nil, false)
		require.InDelta(t, mean, got.Bias.Value, 1e-10)
		require.InDelta(t, sd, got.Spread.Value, 1e-10)
		require.InEpsilon(t, slope, got.Drift.Value, 1e-8)
	}
}
