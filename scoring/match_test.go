package scoring

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

const millisecond = time.Millisecond

// millis turns milliseconds into durations.
func millis(m ...float64) []time.Duration {
	out := make([]time.Duration, len(m))
	for i, v := range m {
		out[i] = time.Duration(v * 1e6)
	}
	return out
}

// TestMatch: worked by hand.
func TestMatch(t *testing.T) {
	for _, c := range []struct {
		name          string
		strokes, taps []time.Duration
		within        time.Duration // ms
		pairs         [][2]int
	}{
		{"nothing", nil, nil, 50, nil},
		{"no taps", millis(1, 2), nil, 50, nil},
		{"no strokes", nil, millis(1, 2), 50, nil},
		{"two for one", millis(1000), millis(980, 1020), 50, [][2]int{{0, 0}}},
		{"two for one, the nearer", millis(1000), millis(980, 1019.999), 50, [][2]int{{0, 1}}},
		{"the nearest stroke, though that loses one", millis(0, 60), millis(40, 100), 50, [][2]int{{1, 0}}},
		{"edge behind", millis(1000), millis(1050), 50, [][2]int{{0, 0}}},
		{"edge ahead", millis(1000), millis(950), 50, [][2]int{{0, 0}}},
		{"past the edge", millis(1000, 2000), []time.Duration{949999999, 2050000001}, 50, nil},
		{"window of nothing", millis(1, 2), millis(1, 2.5), 0, [][2]int{{0, 0}}},
		{"half way belongs to the earlier", millis(0, 60), millis(30), 50, [][2]int{{0, 0}}},
		{"a nanosecond later to the later", millis(0, 60), []time.Duration{30000001}, 50, [][2]int{{1, 0}}},
		{"half way of an odd gap, before", []time.Duration{0, 7}, []time.Duration{3}, 50, [][2]int{{0, 0}}},
		{"half way of an odd gap, after", []time.Duration{0, 7}, []time.Duration{4}, 50, [][2]int{{1, 0}}},
		{"half way of an even gap", []time.Duration{0, 8}, []time.Duration{4, 5}, 50, [][2]int{{0, 0}, {1, 1}}},
		{"half the gap does not widen", millis(0, 1000), millis(400, 960), 50, [][2]int{{1, 1}}},
		{"strokes at one time", millis(10, 10, 10), millis(9, 10, 11), 50, [][2]int{{0, 1}, {2, 2}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := Match(c.strokes, c.taps, c.within*millisecond)
			checkWhole(t, c.strokes, c.taps, c.within*millisecond, m)
			var got [][2]int
			for _, p := range m.Pairs {
				got = append(got, [2]int{p.Stroke, p.Tap})
			}
			require.Equal(t, c.pairs, got)
		})
	}
}

// TestFloatEdges: |1.05−1.00| ≤ 0.05 and |2.05−2.00| ≤ 0.05 are false in float64
// (IEEE 754 double precision); here they hold.
func TestFloatEdges(t *testing.T) {
	a, b := 1.05, 1.00
	require.False(t, a-b <= 0.05, "the trap is there")
	m := Match(secs(1.00, 2.00), secs(1.05, 2.05), 50*millisecond)
	require.Equal(t, []time.Duration{50 * millisecond, 50 * millisecond}, offsets(m.Pairs))
}

func TestMistakesPanic(t *testing.T) {
	down := millis(2, 1)
	far := []time.Duration{reach + 1}
	require.PanicsWithValue(t, "scoring: strokes do not ascend", func() { Match(down, nil, Wide) })
	require.PanicsWithValue(t, "scoring: taps do not ascend", func() { Match(nil, down, Wide) })
	require.PanicsWithValue(t, "scoring: taps do not ascend", func() { Score(nil, down, 0, Wide) })
	require.PanicsWithValue(t, "scoring: taps beyond ±2⁶¹ ns", func() { Match(nil, far, Wide) })
	require.PanicsWithValue(t, "scoring: window of -1 ns", func() { Match(nil, nil, -1) })
	require.Panics(t, func() { Score(nil, nil, -reach-1, Wide) })
}

// TestExtremes: the ends of the range do not overflow.
func TestExtremes(t *testing.T) {
	ends := []time.Duration{-reach, -reach, reach, reach}
	for _, within := range []time.Duration{0, 1, reach} {
		require.Zero(t, total(Match(ends, ends, within).Pairs))
	}
	m := Match([]time.Duration{0}, ends, reach)
	require.Equal(t, []Pair{{0, 0, -reach}}, m.Pairs)
}
