package stat

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// Percentage points of Student's t: NIST/SEMATECH e-Handbook of Statistical Methods,
// 1.3.6.7.2, Critical values of the Student's t distribution; values from memory.
func TestStudentAtTheEnds(t *testing.T) {
	for _, c := range []struct{ above, freedom, want float64 }{
		{.025, 5, 2.571}, {.025, 30, 2.042}, {.005, 5, 4.032}, {.005, 10, 3.169}, {.001, 20, 3.552}, {.001, 60, 3.232},
	} {
		require.InDelta(t, c.want, studentAt(c.freedom, 2*c.above), 6e-4, "%+v", c)
	}
}

// By hand: of 5 means of 6 observations each t is 4.032 instead of 2.571.
func TestAmong(t *testing.T) {
	e := scoring.Estimated(10, 8, 12, 6, 6)
	got := Among(e, 5)
	require.InDelta(t, 10-2*4.032/2.571, got.Low, 2e-3)
	require.InDelta(t, 10+2*4.032/2.571, got.High, 2e-3)
	require.Equal(t, e.Value, got.Value)
	require.Equal(t, e, Among(e, 1))
	require.Equal(t, scoring.Unknown(3, 6), Among(scoring.Unknown(3, 6), 9))
}

// Of many means that all are 0 one that stands out is seldom found; by itself each
// interval misses as often as it should, and of twenty one nearly always does.
func TestAmongMany(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 9))
	const times, many = 1000, 20
	alone, among := 0, 0
	for range times {
		a, m := false, false
		for range many {
			x := make([]float64, 8)
			for i := range x {
				x[i] = 12 * r.NormFloat64()
			}
			e := meanApart(x, 6)
			a, m = a || e.Excludes(0), m || Among(e, many).Excludes(0)
		}
		if a {
			alone++
		}
		if m {
			among++
		}
	}
	require.Greater(t, alone, times/2)
	require.LessOrEqual(t, among, times*6/100)
	require.Greater(t, among, times*3/100, "nor is it held back more than it must be")
}
