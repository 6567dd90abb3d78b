package stat

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
)

// degrees turns degrees into turns, each as often as its weight says.
func degrees(angles []float64, weights []int) []float64 {
	var turns []float64
	for i, a := range angles {
		times := 1
		if weights != nil {
			times = weights[i]
		}
		for range times {
			turns = append(turns, a/360)
		}
	}
	return turns
}

// TestCirclePublished: mean direction in degrees and resultant, printed in
// textbooks to two to five digits and recomputed from their data.
func TestCirclePublished(t *testing.T) {
	for _, c := range []struct {
		source  string
		angles  []float64
		weights []int
		mean, r float64
	}{
		{"Zar 2010, examples 26.2 and 26.4 (99, .82522)", []float64{45, 55, 81, 96, 110, 117, 132, 154}, nil, 98.98775195, .8252177448},
		{"Zar 2010, examples 26.3 and 26.5 (162, .55064)", []float64{15, 45, 75, 105, 135, 165, 195, 225, 255, 285, 315, 345},
			[]int{0, 6, 9, 13, 15, 22, 17, 12, 8, 3, 0, 0}, 161.5650512, .5506350714},
		{"Jammalamadaka and SenGupta 2001, p. 23", []float64{51, 67, 40, 109, 31, 358}, nil, 48.62718088722989, .8364364725},
		{"R, CircStats, r.test", []float64{190.18, 175.48, 155.95, 217.83, 156.36}, nil, 178.7887, .9202565},
		{"Jammalamadaka and SenGupta 2001, p. 6", []float64{0, 3.6, 36, 72, 108, 169.2, 324}, []int{12, 1, 6, 1, 2, 1, 1}, 19.1807, .766282},
		{"R, circular, across 0", []float64{355, 5, 2, 359, 10, 350}, nil, .167690146, .9935448},
	} {
		turns := degrees(c.angles, c.weights)
		got := Around(turns)
		require.InDelta(t, c.mean, got.Mean.Value*360, 1e-4, c.source)
		require.InDelta(t, c.r, got.Resultant.Value, 1e-6, c.source)
		require.Equal(t, len(turns), got.Mean.N)

		radians := make([]float64, len(turns))
		for i, turn := range turns {
			radians[i] = 2 * math.Pi * turn
		}
		gonum := stat.CircularMean(radians, nil) / (2 * math.Pi)
		require.InDelta(t, 0, math.Remainder(gonum-got.Mean.Value, 1), 1e-12, c.source)
	}
}

// TestRayleighPublished: Zar 2010, example 27.1: z = nR² = 5.448, 0.001 < p <
// 0.002; by his eq. 27.4 .00185164.
func TestRayleighPublished(t *testing.T) {
	c := Around(degrees([]float64{45, 55, 81, 96, 110, 117, 132, 154}, nil))
	require.InDelta(t, 5.448, 8*c.Resultant.Value*c.Resultant.Value, 5e-4)
	require.InDelta(t, .00185164, c.Rayleigh, 1e-8)
}

// TestRayleighLevel: of directions without preference 5 % and 1 % are called
// improbable.
func TestRayleighLevel(t *testing.T) {
	r := rand.New(rand.NewPCG(27, 4))
	for _, n := range []int{5, 8, 16, 64} {
		const runs = 20000
		five, one := 0, 0
		for range runs {
			turns := make([]float64, n)
			for i := range turns {
				turns[i] = r.Float64()
			}
			_, length := resultant(turns)
			p := rayleigh(length, n)
			if p < .05 {
				five++
			}
			if p < .01 {
				one++
			}
		}
		require.InDelta(t, .05, float64(five)/runs, .005, "n = %d", n)
		require.InDelta(t, .01, float64(one)/runs, .0025, "n = %d", n)
	}
}

// TestDirectionFisher: Fisher, Statistical Analysis of Circular Data, 1993, data
// B6 set 2 and p. 78: 95 % interval 232.7° to 262.5° with the normal quantile
// and n. The one here has t(29) and n−1 instead.
func TestDirectionFisher(t *testing.T) {
	b6 := []float64{294, 301, 329, 315, 277, 281, 254, 245, 272, 242, 177, 257, 177, 229, 250,
		166, 232, 245, 224, 186, 257, 267, 241, 239, 287, 229, 290, 214, 215, 224}
	turns := degrees(b6, nil)
	direction, r := resultant(turns)
	dispersion := (1 - secondMoment(turns, direction)) / (2 * r * r)
	half := math.Asin(normal * math.Sqrt(dispersion/30))
	require.InDelta(t, 232.7, direction*360-half*180/math.Pi, .05)
	require.InDelta(t, 262.5, direction*360+half*180/math.Pi, .05)

	c := Around(turns)
	wider := math.Sin((c.Mean.High-c.Mean.Value)*2*math.Pi) / math.Sin(half)
	require.InDelta(t, student(29)/normal*math.Sqrt(30./29), wider, 1e-9)
}

func TestNoDirection(t *testing.T) {
	opposite := Around([]float64{0, .5, 0, .5, 0, .5})
	require.False(t, opposite.Mean.Known, "taps on opposite sides have no mean")
	require.InDelta(t, 0, opposite.Resultant.Value, 1e-12)
	require.Equal(t, 0, opposite.Mean.Missing())
	require.InDelta(t, 1, opposite.Rayleigh, .05)

	one := Around([]float64{.25, .25, .25, .25, .25})
	require.InDelta(t, .25, one.Mean.Value, 1e-12)
	require.InDelta(t, 1, one.Resultant.Value, 1e-12)

	few := Around([]float64{.1, .1, .1, .1})
	require.False(t, few.Mean.Known || few.Resultant.Known)
	require.Equal(t, 1., few.Rayleigh)
	require.Equal(t, 1, few.Mean.Missing())
}

// TestWholeTurns: angles a whole turn apart are one.
func TestWholeTurns(t *testing.T) {
	a, b := Around([]float64{.05, .1, .98, .02, .93, .04}), Around([]float64{3.05, -.9, -2.02, .02, 4.93, 1.04})
	require.InDelta(t, a.Mean.Value, b.Mean.Value, 1e-12)
	require.InDelta(t, a.Resultant.Low, b.Resultant.Low, 1e-9)
}

func TestTurns(t *testing.T) {
	require.Equal(t, []float64{0, .25, .75, 0, .5}, Turns([]time.Duration{0, 250, -250, -4000, 1500}, 1000))
	// Zar 2010, example 26.1: 6 h of 24 are 90°, 6.25 h 93.75°, day 45 of 365 44.38°.
	require.InDelta(t, 93.75/360, Turns([]time.Duration{375 * time.Minute}, 24*time.Hour)[0], 1e-12)
	require.InDelta(t, 44.38, 360*Turns([]time.Duration{45}, 365)[0], .005)
	require.Panics(t, func() { Turns(nil, 0) })
}

// TestResultantOfScatter: for normally distributed offsets of standard
// deviation s in a cycle c the resultant is exp(−(2πs/c)²/2) (Mardia and Jupp,
// Directional Statistics, 2000, §3.5.7).
func TestResultantOfScatter(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	for _, c := range []struct{ s, cycle, want float64 }{{25, 500, .951850}, {40, 500, .881323}, {50, 250, .454041}} {
		turns := make([]float64, 40000)
		for i := range turns {
			turns[i] = r.NormFloat64() * c.s / c.cycle
		}
		require.InDelta(t, c.want, Around(turns).Resultant.Value, .012)
	}
}
