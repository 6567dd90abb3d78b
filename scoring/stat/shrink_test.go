package stat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	gonum "gonum.org/v1/gonum/stat"
)

// TestShrunkenBCG: 13 trials of a vaccine (Colditz et al., JAMA 271, 698–702,
// 1994), logarithms of the relative risk: Stata's metan, and metafor's test
// against it (Viechtbauer), give the mean −0.7141 (−1.0644 to −0.3638), z =
// −3.9952, τ² = 0.3088.
func TestShrunkenBCG(t *testing.T) {
	var groups []Measured
	for _, c := range [][4]float64{{4, 119, 11, 128}, {6, 300, 29, 274}, {3, 228, 11, 209}, {62, 13536, 248, 12619},
		{33, 5036, 47, 5761}, {180, 1361, 372, 1079}, {8, 2537, 10, 619}, {505, 87886, 499, 87892}, {29, 7470, 45, 7232},
		{17, 1699, 65, 1600}, {186, 50448, 141, 27197}, {5, 2493, 3, 2338}, {27, 16886, 29, 17825}} {
		a, n, b, m := c[0], c[0]+c[1], c[2], c[2]+c[3]
		groups = append(groups, Measured{math.Log(a / n / (b / m)), math.Sqrt(1/a - 1/n + 1/b - 1/m)})
	}
	c := Shrunken(groups)
	require.InDelta(t, .3088, c.Apart*c.Apart, 5e-5)
	require.InDelta(t, -.7141, c.Mean.Value, 5e-5)
	require.InDelta(t, -1.0644, c.Mean.Low, 5e-5)
	require.InDelta(t, -.3638, c.Mean.High, 5e-5)
	require.Equal(t, 13, c.Mean.N)
}

// TestShrunkenBaseball: the batting averages of 18 players after 45 times at
// bat, and Stein's estimates of what they can (Efron and Morris, Stein's paradox
// in statistics, Scientific American 236(5), 119–127, 1977): common mean .265,
// factor .212, so .294 for the best and .242 for the worst.
func TestShrunkenBaseball(t *testing.T) {
	hits := []float64{18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7}
	mean := gonum.Mean(hits, nil) / 45
	require.InDelta(t, .265, mean, 5e-4)
	var groups []Measured
	for _, h := range hits {
		groups = append(groups, Measured{h / 45, math.Sqrt(mean * (1 - mean) / 45)})
	}
	c := Shrunken(groups)
	require.InDelta(t, mean, c.Mean.Value, 1e-12)
	require.InDelta(t, .294, c.Groups[0].Value, 5e-4)
	require.InDelta(t, .242, c.Groups[17].Value, 5e-4)
	require.InDelta(t, .212, (c.Groups[0].Value-mean)/(.4-mean), 2e-3)
}

// TestShrunkenHelps: groups of known mean are found better than by their own
// numbers, and the intervals hold.
func TestShrunkenHelps(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 5))
	var own, shrunk float64
	held, all := 0, 0
	for range 1000 {
		truth, groups := make([]float64, 8), make([]Measured, 8)
		for i := range groups {
			err := 4 + 8*r.Float64()
			truth[i] = 10 + 5*r.NormFloat64()
			groups[i] = Measured{truth[i] + err*r.NormFloat64(), err}
		}
		for i, g := range Shrunken(groups).Groups {
			own += math.Pow(groups[i].Value-truth[i], 2)
			shrunk += math.Pow(g.Value-truth[i], 2)
			all++
			if !g.Excludes(truth[i]) {
				held++
			}
		}
	}
	require.Less(t, shrunk, .5*own)
	require.InDelta(t, .95, float64(held)/float64(all), .02)
}

func TestShrunkenTooFew(t *testing.T) {
	c := Shrunken([]Measured{{1, 1}, {2, 1}, {3, 1}})
	require.False(t, c.Mean.Known)
	require.Equal(t, 1, c.Mean.Missing())
	require.Len(t, c.Groups, 3)
	require.False(t, c.Groups[0].Known)
	require.Panics(t, func() { Shrunken([]Measured{{1, 0}}) })
}
