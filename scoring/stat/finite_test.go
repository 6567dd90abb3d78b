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
		p := Played{Setup: time.Duration(r.IntN(3))}
		values, gaps := 1+r.IntN(4), 1+r.IntN(3)
		var strokes []time.Duration
		at := time.Duration(0)
		for i := range r.IntN(24) {
			at += time.Duration(r.IntN(gaps)) * time.Duration(1+r.IntN(2)*1e9)
			strokes, p.Counts = append(strokes, at), append(p.Counts, r.IntN(3))
			if r.IntN(4) > 0 {
				p.Pairs = append(p.Pairs, scoring.Pair{Stroke: i, Offset: time.Duration(r.IntN(values)) << (8 * r.IntN(4))})
			}
		}
		many := OfRounds([]Played{p, p, p, p, p, p, p})
		for _, e := range append(many.Counts, p.Bias(), Spread(p.offsets()), many.Bias, many.Spread) {
			sound(t, "of rounds", e)
			require.False(t, e.Excludes(e.Value), "%+v", e)
		}
		carry := Carried([]Spell{{strokes, p.Pairs}, {strokes, p.Pairs}, {strokes, p.Pairs}, {strokes, p.Pairs}})
		sound(t, "clock", carry.Clock)
		sound(t, "motor", carry.Motor)
		require.Equal(t, carry.Fault == Holds, carry.Clock.Known, "%+v", carry)
	}
}
