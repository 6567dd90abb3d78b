package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestZeros(t *testing.T) {
	// Abramowitz & Stegun, "Handbook of Mathematical Functions", table 9.5.
	want := []zero{
		{0, 1, 2.4048255577}, {1, 1, 3.83171}, {2, 1, 5.13562}, {0, 2, 5.5200781103}, {3, 1, 6.38016},
		{1, 2, 7.01559}, {4, 1, 7.58834}, {2, 2, 8.41724}, {0, 3, 8.6537279129}, {5, 1, 8.77148},
		{3, 2, 9.76102}, {6, 1, 9.93611}, {1, 3, 10.17347}, {4, 2, 11.06471}, {7, 1, 11.08637},
		{2, 3, 11.61984}, {0, 4, 11.7915344391}, {8, 1, 12.22509}, {5, 2, 12.33860}, {3, 3, 13.01520},
	}
	got := zeros(len(want))
	for i, w := range want {
		require.Equal(t, [2]int{w.m, w.n}, [2]int{got[i].m, got[i].n}, "place %d", i)
		require.InDelta(t, w.j, got[i].j, 6e-6)
	}
}

func TestZerosAreComplete(t *testing.T) {
	long := zeros(120)
	for n := 1; n < 120; n++ {
		require.Equal(t, long[:n], zeros(n))
	}
	for _, z := range long {
		require.InDelta(t, 0, math.Jn(z.m, z.j), 1e-12)
	}
	// The n-th zero of each m must follow the one before it.
	last := map[int]int{}
	for _, z := range long {
		require.Equal(t, last[z.m]+1, z.n)
		last[z.m] = z.n
	}
}

func shapeOf(z zero, r float64) float64 { return mode{zero: z, size: z.norm()}.shape(r) }

// The shapes are normalised: their mean square over the head is one. The
// mean over the angle of cos² is one half for m > 0.
func TestShapeNorm(t *testing.T) {
	const steps = 2000
	for _, z := range zeros(maxModes) {
		var sum float64
		for i := range steps {
			r := (float64(i) + 0.5) / steps
			sum += shapeOf(z, r) * shapeOf(z, r) * 2 * r / steps
		}
		if z.m > 0 {
			sum /= 2
		}
		require.InDelta(t, 1, sum, 1e-4, "(%d,%d)", z.m, z.n)
		require.InDelta(t, 0, shapeOf(z, 1), 1e-9)
	}
}

func TestShapeMakesDumAndTek(t *testing.T) {
	all := zeros(10)
	low, rim := all[0], all[9] // (0,1) and (5,1)
	require.InDelta(t, 1/math.J1(low.j), shapeOf(low, 0), 1e-12)
	require.Greater(t, shapeOf(low, 0.28), 10*shapeOf(rim, 0.28))
	require.Less(t, shapeOf(low, 0.9), shapeOf(rim, 0.9)/4)
	// (0,2) has its nodal circle where j·r is the first zero: .43565
	require.InDelta(t, 0, shapeOf(all[3], 2.404825557695773/5.520078110286311), 1e-12)
}
