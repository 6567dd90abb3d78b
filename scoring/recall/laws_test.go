package recall

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// memories are many that may be, from hardly learnt to known for years.
func memories() (all []Memory) {
	for _, s := range []float64{leastStability, .2, 1, 3, 12, 60, 400, mostStability} {
		for d := leastDifficulty + 0.; d <= mostDifficulty; d += 1.5 {
			all = append(all, Memory{s, d})
		}
	}
	return all
}

// What is known longer is recalled better; nothing is recalled better the longer ago it was
// met; a better answer leaves no less behind; and all stays within the bounds.
func TestLaws(t *testing.T) {
	w := Default()
	for _, m := range memories() {
		require.InDelta(t, .9, w.Recall(m, m.Stability), 1e-12, "that is what stability means")
		last := 1.
		for _, days := range []float64{0, .5, 1, 4, 30, 365} {
			r := w.Recall(m, days)
			require.True(t, r > 0 && r <= last, "%+v after %v days: %v, before %v", m, days, r, last)
			last = r
			before := 0.
			for g := Missed; g <= Fluent; g++ {
				after := w.After(m, days, g)
				require.True(t, after.Met())
				require.GreaterOrEqual(t, after.Stability, before, "%+v after %v days, grade %d", m, days, g)
				before = after.Stability
				require.LessOrEqual(t, after.Stability, float64(mostStability))
				require.True(t, after.Difficulty >= leastDifficulty && after.Difficulty <= mostDifficulty)
				require.False(t, math.IsNaN(after.Stability+after.Difficulty))
			}
			require.LessOrEqual(t, w.After(m, days, Missed).Stability, m.Stability+leastStability, "a miss makes nothing surer")
		}
	}
	require.Zero(t, w.Recall(Memory{}, 1), "never met")
	require.Equal(t, w.Recall(Memory{3, 5}, 0), w.Recall(Memory{3, 5}, -1), "no day before it was met")
}
