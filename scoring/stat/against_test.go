package stat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"groundbeat/scoring"
)

// By hand: of two values each leaves out 2.5 %, half to either side.
func TestBeside(t *testing.T) {
	all := Beside([]float64{60, 12}, Group{9, 10, 20}, 2)
	half := distuv.StudentsT{Sigma: 1, Nu: 8}.Quantile(1-.0125) * 20 * math.Sqrt(1+1./9)
	require.InDelta(t, 50, all[0].Value, 1e-12)
	require.InDelta(t, half, all[1].High-2, 1e-8)
	require.False(t, all[0].Excludes(0), "50 is below 58.7")
	require.Equal(t, []scoring.Estimate{scoring.Unknown(5, LeastTaps)}, Beside([]float64{60}, Group{5, 10, 20}, 1))
	require.False(t, Beside([]float64{60}, Group{9, 10, 0}, 1)[0].Known)
	require.Empty(t, Beside(nil, Group{9, 10, 20}, 0))
	require.Panics(t, func() { Beside([]float64{60, 12}, Group{9, 10, 20}, 1) })
}

// Values like the others are told to be unlike them in 5 of 100 cases, whichever of
// them it is.
func TestBesideHoldsTogether(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 5))
	wrong := 0
	const runs = 4000
	for range runs {
		x := normals(r, 3, 20, 25)
		for _, e := range Beside(x, GroupOf(normals(r, 12, 20, 25)), 3) {
			if e.Excludes(0) {
				wrong++
				break
			}
		}
	}
	require.InDelta(t, .046, float64(wrong)/runs, .012)
}

func normals(r *rand.Rand, n int, mean, spread float64) []float64 {
	x := make([]float64, n)
	for i := range x {
		x[i] = mean + spread*r.NormFloat64()
	}
	return x
}

// By hand: v₁ = 4/4, v₂ = 9/12, three degrees of freedom.
func TestAgainst(t *testing.T) {
	// The variance is 2·6/3 = 4.
	x := []float64{6 - math.Sqrt(6), 6, 6, 6 + math.Sqrt(6)}
	e := Against(x, Group{12, 1, 3})
	require.InDelta(t, 5, e.Value, 1e-12)
	half := distuv.StudentsT{Sigma: 1, Nu: 3}.Quantile(.975) * math.Sqrt(1.75)
	require.InDelta(t, 5-half, e.Low, 1e-7)
	require.Equal(t, scoring.Unknown(2, LeastHabit), Against(x[:2], Group{12, 1, 3}))
	require.False(t, Against(x, Group{5, 1, 3}).Known)
	require.False(t, Against([]float64{1, 1, 1}, Group{12, 1, 0}).Known)
}

// Where the few values scatter as the others do, and where they scatter twice as far,
// a habit that is none is told in fewer than 5 of 100 cases.
func TestAgainstHolds(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 5))
	const runs = 4000
	for _, spread := range []float64{20, 40} {
		wrong := 0
		for range runs {
			if Against(normals(r, 3, 10, spread), GroupOf(normals(r, 20, 10, 20))).Excludes(0) {
				wrong++
			}
		}
		require.Less(t, float64(wrong)/runs, .05, "spread %v", spread)
		require.Positive(t, wrong, "it is not so wide that it holds everything")
	}
}

func TestGroupOf(t *testing.T) {
	require.Equal(t, Group{}, GroupOf(nil))
	require.Equal(t, Group{N: 1, Mean: 5}, GroupOf([]float64{5}))
	require.Equal(t, Group{N: 3, Mean: 5, Spread: 2}, GroupOf([]float64{3, 5, 7}))
	e := SpreadOf(GroupOf([]float64{3, 5, 7, 9, 11, 13}))
	require.Equal(t, Spread([]float64{3, 5, 7, 9, 11, 13}), e)
}
