package stat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestAgreementPublished: kappa, and its standard error where printed.
func TestAgreementPublished(t *testing.T) {
	for _, c := range []struct {
		source          string
		table           Confusions
		kappa, off, err float64 // err 0: not printed
	}{
		{"Artstein and Poesio, Inter-coder agreement, Computational Linguistics 34, 2008, table 1", Confusions{{20, 20}, {10, 50}}, .348, 5e-4, 0},
		{"the same, table 4", Confusions{{46, 0, 0}, {6, 32, 6}, {0, 0, 10}}, .8013, 5e-5, 0},
		{"the same, table 4", Confusions{{46, 0, 0}, {4, 40, 0}, {0, 0, 10}}, .9315, 5e-5, 0},
		{"SAS (ASE .1380, .2137 to .7547), in the tests of statsmodels", Confusions{{0, 4, 1}, {0, 8, 0}, {0, 1, 5}}, .4842, 5e-5, .1380},
		{"SAS/STAT User's Guide, PROC FREQ, skin condition (.2030 to .4868)",
			Confusions{{10, 4, 1, 0}, {5, 10, 12, 2}, {2, 4, 12, 5}, {0, 2, 6, 13}}, .3449, 5e-5, (.4868 - .2030) / 2 / normal},
		{"[40 10; 10 40]", Confusions{{40, 10}, {10, 40}}, .6, 1e-12, 0},
	} {
		p, played, said, n := c.table.shares()
		right, chance := agreeing(p, played, said)
		kappa := (right - chance) / (1 - chance)
		require.InDelta(t, c.kappa, kappa, c.off, c.source)
		if c.err > 0 {
			require.InDelta(t, c.err, kappaError(p, played, said)/math.Sqrt(float64(n)), 6e-5, c.source)
		}
		e := Agreement(c.table)
		if n < LeastAnswers { // SAS's first table has 19
			require.False(t, e.Known)
			continue
		}
		require.InDelta(t, kappa, e.Value, 1e-15)
		err := kappaError(p, played, said) / math.Sqrt(float64(n))
		require.InDelta(t, kappa-normal*err, e.Low, .06, "not far from the plain interval")
		require.InDelta(t, min(1, kappa+normal*err), e.High, .06)
	}
}

// TestAgreementWhole: without mistakes the interval still has a length.
func TestAgreementWhole(t *testing.T) {
	e := Agreement(Confusions{{15, 0}, {0, 15}})
	require.Equal(t, 1., e.Value)
	require.Equal(t, 1., e.High)
	low, _ := Wilson(30, 30)
	require.InDelta(t, (low-.5)/.5, e.Low, 1e-12)
	require.False(t, Agreement(Confusions{{40, 0}, {0, 0}}).Known, "only one thing was played and said")
	require.Equal(t, 20, Agreement(Confusions{{4}}).Missing())
}

func TestNoTable(t *testing.T) {
	require.Panics(t, func() { Agreement(Confusions{{1, 2}}) })
	require.Panics(t, func() { Agreement(Confusions{{1, -2}, {3, 4}}) })
	require.False(t, Agreement(nil).Known)
}
