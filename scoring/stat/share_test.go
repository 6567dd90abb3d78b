package stat

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// TestWilsonPublished: R's binom and prop.test, as in the tests of statsmodels
// and SciPy.
func TestWilsonPublished(t *testing.T) {
	for _, c := range []struct {
		k, n           int
		low, high, off float64
	}{
		{18, 20, .6989663547715128, .972133518786232, 1e-12},
		{4, 20, .0806576625797981, .4160174322518935, 1e-12},
		{4, 200, .00780442641634947, .05028708690582643, 1e-12},
		{190, 200, .910421851861224, .972617354399236, 1e-12},
		{19, 38, .348499283643951, .651500716356049, 1e-12},
		{3, 10, .1077913, .6032219, 5e-8},
		{0, 10, 0, .2775328, 5e-8},
		{10, 10, .7224672, 1, 5e-8},
	} {
		low, high := Wilson(c.k, c.n)
		require.InDelta(t, c.low, low, c.off)
		require.InDelta(t, c.high, high, c.off)
	}
}

func TestWilsonStaysWithin(t *testing.T) {
	for n := range 300 {
		for k := range n + 1 {
			low, high := Wilson(k, n)
			p := .5
			if n > 0 {
				p = float64(k) / float64(n)
			}
			require.True(t, 0 <= low && low <= p && p <= high && high <= 1, "%d of %d: %v to %v", k, n, low, high)
			if n >= LeastTrials {
				require.Less(t, high-low, .5)
			}
		}
	}
	low, high := Wilson(5, 11)
	require.Greater(t, high-low, .5, "11 trials would be too few")
}

func TestShare(t *testing.T) {
	e := Share(18, 20)
	require.Equal(t, .9, e.Value)
	require.True(t, e.Excludes(.5))
	require.Equal(t, 2, Share(3, 10).Missing())
	require.False(t, Share(0, 0).Known)
	require.Panics(t, func() { Share(3, 2) })
	require.Panics(t, func() { Wilson(-1, 2) })
}
