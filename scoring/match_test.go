package scoring

import (
	"math/rand/v2"
	"slices"
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
	free := func(ms time.Duration) Window { return Window{Within: ms * millisecond} }
	capped := func(ms time.Duration) Window { return Window{ms * millisecond, true} }
	for _, c := range []struct {
		name          string
		strokes, taps []time.Duration
		w             Window
		pairs         [][2]int
	}{
		{"nothing", nil, nil, free(50), nil},
		{"no taps", millis(1, 2), nil, capped(50), nil},
		{"no strokes", nil, millis(1, 2), capped(50), nil},
		{"two for one", millis(1000), millis(980, 1020), free(50), [][2]int{{0, 0}}},
		{"two for one, the nearer", millis(1000), millis(980, 1019.999), free(50), [][2]int{{0, 1}}},
		{"two for one, capped", millis(1000), millis(980, 1020), capped(50), [][2]int{{0, 0}}},
		{"two for one, the nearer, capped", millis(1000), millis(980, 1019.999), capped(50), [][2]int{{0, 1}}},
		{"one for two", millis(980, 1020), millis(1000), free(50), [][2]int{{0, 0}}},
		{"nearest first loses one", millis(0, 60), millis(40, 100), free(50), [][2]int{{0, 0}, {1, 1}}},
		{"nearest first, capped", millis(0, 60), millis(40, 100), capped(50), [][2]int{{1, 0}}},
		{"edge behind", millis(1000), millis(1050), free(50), [][2]int{{0, 0}}},
		{"edge ahead", millis(1000), millis(950), free(50), [][2]int{{0, 0}}},
		{"past the edge", millis(1000, 2000), []time.Duration{949999999, 2050000001}, free(50), nil},
		{"window of nothing", millis(1, 2), millis(1, 2.5), free(0), [][2]int{{0, 0}}},
		{"half way belongs to the earlier", millis(0, 60), millis(30), capped(50), [][2]int{{0, 0}}},
		{"a nanosecond later to the later", millis(0, 60), []time.Duration{30000001}, capped(50), [][2]int{{1, 0}}},
		{"half way of an odd gap, before", []time.Duration{0, 7}, []time.Duration{3}, capped(50), [][2]int{{0, 0}}},
		{"half way of an odd gap, after", []time.Duration{0, 7}, []time.Duration{4}, capped(50), [][2]int{{1, 0}}},
		{"half way of an even gap", []time.Duration{0, 8}, []time.Duration{4, 5}, capped(50), [][2]int{{0, 0}, {1, 1}}},
		{"a cap does not widen", millis(0, 1000), millis(400, 960), capped(50), [][2]int{{1, 1}}},
		{"strokes at one time", millis(10, 10, 10), millis(9, 10, 11), capped(50), [][2]int{{0, 1}, {2, 2}}},
		{"strokes at one time, free", millis(10, 10, 10), millis(9, 10, 11), free(50), [][2]int{{0, 0}, {1, 1}, {2, 2}}},
		{"scarce on one side, plenty on the other", millis(0, 10, 20, 1000), millis(11, 990, 1001), free(50), [][2]int{{1, 0}, {3, 2}}},
		{"a chain", millis(0, 90, 180, 270), millis(45, 135, 225, 315), free(45), [][2]int{{0, 0}, {1, 1}, {2, 2}, {3, 3}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := Match(c.strokes, c.taps, c.w)
			checkWhole(t, c.strokes, c.taps, c.w, m)
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
	m := Match(secs(1.00, 2.00), secs(1.05, 2.05), Window{Within: Near})
	require.Equal(t, []time.Duration{Near, Near}, offsets(m.Pairs))
}

func TestShares(t *testing.T) {
	m := Match(millis(1000), millis(980, 1020), Window{Within: Near})
	require.Equal(t, .5, m.Precision())
	require.Equal(t, 1., m.Recall())
	require.InDelta(t, 2./3, m.F(), 1e-15)
	// Without taps or strokes as in madmom (madmom/evaluation/__init__.py);
	// mir_eval.onset.f_measure returns 0, 0, 0 for all three.
	for _, c := range []struct {
		name                string
		strokes, taps       []time.Duration
		precise, recall, fm float64
	}{
		{"neither", nil, nil, 1, 1, 1},
		{"no taps", millis(1), nil, 1, 0, 0},
		{"no strokes", nil, millis(1), 0, 1, 0},
		{"none matched", millis(1), millis(900), 0, 0, 0},
	} {
		m := Match(c.strokes, c.taps, Window{Within: Near})
		require.Equal(t, c.precise, m.Precision(), c.name)
		require.Equal(t, c.recall, m.Recall(), c.name)
		require.Equal(t, c.fm, m.F(), c.name)
	}
}

func TestMistakesPanic(t *testing.T) {
	down := millis(2, 1)
	far := []time.Duration{reach + 1}
	w := Window{Within: Near}
	require.PanicsWithValue(t, "scoring: strokes do not ascend", func() { Match(down, nil, w) })
	require.PanicsWithValue(t, "scoring: taps do not ascend", func() { Match(nil, down, w) })
	require.PanicsWithValue(t, "scoring: taps do not ascend", func() { Score(nil, down, 0, w) })
	require.PanicsWithValue(t, "scoring: taps beyond ±2⁶¹ ns", func() { Match(nil, far, w) })
	require.PanicsWithValue(t, "scoring: window of -1 ns", func() { Match(nil, nil, Window{Within: -1}) })
	require.Panics(t, func() { Score(nil, nil, -reach-1, w) })
}

// TestExtremes: the ends of the range do not overflow.
func TestExtremes(t *testing.T) {
	ends := []time.Duration{-reach, -reach, reach, reach}
	for _, capped := range []bool{false, true} {
		for _, within := range []time.Duration{0, 1, reach} {
			m := Match(ends, ends, Window{within, capped})
			require.Zero(t, total(m.Pairs))
		}
	}
	m := Match([]time.Duration{0}, ends, Window{Within: reach})
	require.Equal(t, []Pair{{0, 0, -reach}}, m.Pairs)
}

// TestMatchAgainstTable compares dense lists, too long to try every matching,
// with the textbook table of the best matching of the first i strokes and the
// first j taps.
func TestMatchAgainstTable(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		n, m, span := r.IntN(120), r.IntN(120), 1+r.IntN(2000)
		list := func(n int) []time.Duration {
			x := make([]time.Duration, n)
			for i := range x {
				x[i] = time.Duration(r.IntN(span))
			}
			slices.Sort(x)
			return x
		}
		strokes, taps, w := list(n), list(m), Window{Within: time.Duration(r.IntN(1 + span/(1+r.IntN(60))))}
		got := Match(strokes, taps, w)
		checkWhole(t, strokes, taps, w, got)
		pairs, cost := table(strokes, taps, w.Within)
		require.Len(t, got.Pairs, pairs)
		require.Equal(t, cost, total(got.Pairs))
	}
}

func table(strokes, taps []time.Duration, within time.Duration) (pairs int, cost time.Duration) {
	type cell struct {
		pairs int
		cost  time.Duration
	}
	better := func(a, b cell) cell {
		if b.pairs > a.pairs || b.pairs == a.pairs && b.cost < a.cost {
			return b
		}
		return a
	}
	row := make([]cell, len(taps)+1)
	for _, s := range strokes {
		next := make([]cell, len(taps)+1)
		for j, p := range taps {
			next[j+1] = better(row[j+1], next[j])
			if d := (p - s).Abs(); d <= within {
				next[j+1] = better(next[j+1], cell{row[j].pairs + 1, row[j].cost + d})
			}
		}
		row = next
	}
	return row[len(taps)].pairs, row[len(taps)].cost
}
