package stat

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// sound checks what every estimate promises.
func sound(t *testing.T, name string, e scoring.Estimate) {
	t.Helper()
	for _, v := range []float64{e.Value, e.Low, e.High} {
		require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%s %+v", name, e)
	}
	require.LessOrEqual(t, e.Low, e.High, name)
	require.Equal(t, e.Known, e.Known && e.N >= e.Least, "%s %+v", name, e)
	if !e.Known {
		require.Zero(t, e.Value)
	}
}

// TestAlwaysSound: whatever was tapped (all at one place, in two places, over and
// over the same, far off), every number is finite, and its interval has two ends
// about it.
func TestAlwaysSound(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 3000 {
		p := Played{Beat: time.Duration(1 + r.IntN(5)), Setup: time.Duration(r.IntN(3))}
		values, gaps := 1+r.IntN(4), 1+r.IntN(3)
		at := time.Duration(0)
		for i := range r.IntN(24) {
			at += time.Duration(r.IntN(gaps)) * time.Duration(1+r.IntN(2)*1e9)
			p.Strokes, p.Counts = append(p.Strokes, at), append(p.Counts, r.IntN(3))
			if r.IntN(4) > 0 {
				p.Pairs = append(p.Pairs, scoring.Pair{Stroke: i, Offset: time.Duration(r.IntN(values)) << (8 * r.IntN(4))})
			}
		}
		round := OfRound(p)
		for name, e := range map[string]scoring.Estimate{"bias": round.Bias, "median": round.Median, "centre": round.Centre,
			"spread": round.Spread, "robust": round.Robust, "drift": round.Drift, "mean direction": round.Circle.Mean} {
			sound(t, name, e)
			require.False(t, e.Excludes(e.Value), "%s %+v", name, e)
		}
		sound(t, "lag", round.Lag)
		sound(t, "resultant", round.Circle.Resultant)
		require.True(t, round.Circle.Rayleigh >= 0 && round.Circle.Rayleigh <= 1)
		many := OfRounds([]Played{p, p, p, p, p, p, p})
		for _, e := range []scoring.Estimate{many.Bias, many.Centre, many.Spread, many.Robust, many.Drift, many.Lag, many.Wander} {
			sound(t, "of rounds", e)
		}
		carry := Carried([]Spell{{p.Strokes, p.Pairs}, {p.Strokes, p.Pairs}, {p.Strokes, p.Pairs}, {p.Strokes, p.Pairs}})
		sound(t, "clock", carry.Clock)
		sound(t, "motor", carry.Motor)
		require.Equal(t, carry.Fault == Holds, carry.Clock.Known, "%+v", carry)
	}
}
