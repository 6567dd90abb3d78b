package stat

import (
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"
)

// TestStudent: table 1.3.6.7.2 of the NIST/SEMATECH e-Handbook (0.975), and
// gonum for what lies between.
func TestStudent(t *testing.T) {
	for n, want := range map[float64]float64{1: 12.706, 2: 4.303, 5: 2.571, 7: 2.365, 8: 2.306, 10: 2.228, 30: 2.042, 100: 1.984} {
		require.InDelta(t, want, student(n), 5.1e-4, "%v", n)
	}
	for n := 1.3; n < 3000; n *= 1.07 {
		require.InDelta(t, distuv.StudentsT{Sigma: 1, Nu: n}.Quantile(.975), student(n), 3e-5, "%v", n)
	}
	require.InDelta(t, distuv.UnitNormal.Quantile(.975), normal, 1e-12)
	require.InDelta(t, distuv.UnitNormal.Quantile(.95), oneSided, 1e-12)
}

// TestChiSquared: table 1.3.6.7.4 of the NIST/SEMATECH e-Handbook.
func TestChiSquared(t *testing.T) {
	for n, want := range map[float64][2]float64{5: {.831, 12.833}, 10: {3.247, 20.483}, 30: {16.791, 46.979}} {
		low, high := chiSquared(n)
		require.InDelta(t, want[0], low, 5.1e-4)
		require.InDelta(t, want[1], high, 5.1e-4)
	}
	for n := 1.; n < 500; n *= 1.3 {
		low, high := chiSquared(n)
		require.InEpsilon(t, distuv.ChiSquared{K: n}.Quantile(.025), low, 1e-9)
		require.InEpsilon(t, distuv.ChiSquared{K: n}.Quantile(.975), high, 1e-9)
	}
}
