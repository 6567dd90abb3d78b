package stat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// By hand: six rounds of ten dums, 10, 10, 9, 5, 10 and 10 of them tapped. p = .9,
// Σ(k − 9)² = 4·1 + 0 + 16 = 20, d = 6/5·20/(60·.09) = 4.4444, t(5) = 2.570582 (Abramowitz
// and Stegun, Table 26.10), n′ = 60/4.4444·(1.959964/2.570582)² = 7.84828.
func TestShareInRounds(t *testing.T) {
	e := ShareInRounds([]int{10, 10, 9, 5, 10, 10}, []int{10, 10, 10, 10, 10, 10})
	require.InDelta(t, .9, e.Value, 1e-12)
	require.Equal(t, []int{6, LeastRounds}, []int{e.N, e.Least})
	const n, z = 7.84828, 1.959964
	centre, half := .9+z*z/(2*n), z*math.Sqrt(.9*.1/n+z*z/(4*n*n))
	require.InDelta(t, (centre-half)/(1+z*z/n), e.Low, 1e-5)
	require.InDelta(t, (centre+half)/(1+z*z/n), e.High, 1e-5)

	even := ShareInRounds([]int{9, 9, 9, 9, 9, 9}, []int{10, 10, 10, 10, 10, 10})
	low, high := Wilson(54, 60)
	require.Less(t, even.Low, low, "few rounds are few, however alike")
	require.Greater(t, even.High, high)
	all := ShareInRounds([]int{8, 8, 8, 8, 8, 8}, []int{8, 8, 8, 8, 8, 8})
	require.Equal(t, []float64{1, 1}, []float64{all.Value, all.High})
	require.Less(t, all.Low, .95)
}

func TestShareInRoundsFew(t *testing.T) {
	e := ShareInRounds([]int{4, 4, 4, 4, 4, 0}, []int{4, 4, 4, 4, 4, 0})
	require.False(t, e.Known)
	require.Equal(t, 1, e.Missing(), "a round without dums says nothing")
	require.False(t, ShareInRounds(nil, nil).Known)
	require.Panics(t, func() { ShareInRounds([]int{1}, nil) })
	require.Panics(t, func() { ShareInRounds([]int{3}, []int{2}) })
	require.Panics(t, func() { ShareInRounds([]int{-1}, []int{2}) })
}

// roundsShareHolds plays rounds of 16 dums, each with its own probability that a dum
// is tapped: the logit is normally distributed. The true share is found from a million.
func roundsShareHolds(logit, deviation float64) func(*rand.Rand, int) bool {
	one := func(r *rand.Rand) float64 { return 1 / (1 + math.Exp(-logit-deviation*r.NormFloat64())) }
	truth, many := 0., rand.New(rand.NewPCG(4, 4))
	for range 1_000_000 {
		truth += one(many) / 1_000_000
	}
	return func(r *rand.Rand, n int) bool {
		k, of := make([]int, n), make([]int, n)
		for i := range n {
			of[i] = 16
			p := one(r)
			for range 16 {
				if r.Float64() < p {
					k[i]++
				}
			}
		}
		return holds(ShareInRounds(k, of), truth)
	}
}
