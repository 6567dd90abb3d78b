package scoring

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// FuzzMatch compares Match with every possible matching of up to six strokes
// and six taps. A byte is a time; small numbers, so that ties, equal times and
// edges of windows are common.
func FuzzMatch(f *testing.F) {
	f.Add([]byte{0, 60}, []byte{40, 100}, byte(50))
	f.Add([]byte{100}, []byte{98, 102}, byte(50))
	f.Add([]byte{10, 20, 30}, []byte{15, 15, 25}, byte(5))
	f.Add([]byte{10, 10, 12}, []byte{9, 10, 11, 12}, byte(3))
	f.Add([]byte{0, 1, 2, 3, 4, 5}, []byte{3, 3, 3, 4, 8, 9}, byte(3))
	f.Add([]byte{}, []byte{1}, byte(0))
	f.Fuzz(func(t *testing.T, s, p []byte, within byte) {
		strokes, taps := times(s), times(p)
		if len(strokes) > 6 || len(taps) > 6 {
			t.Skip()
		}
		checkAgainstBrute(t, strokes, taps, time.Duration(within))
	})
}

// TestMatchAgainstBruteForce does the same for many small random lists, so
// that a plain test run already covers them.
func TestMatchAgainstBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 96))
	random := func(span int) []time.Duration {
		b := make([]byte, r.IntN(7))
		for i := range b {
			b[i] = byte(r.IntN(span))
		}
		return times(b)
	}
	for range 10000 {
		span := 1 + r.IntN(40)
		checkAgainstBrute(t, random(span), random(span), time.Duration(r.IntN(span+1)))
	}
}

func times(b []byte) []time.Duration {
	out := make([]time.Duration, len(b))
	for i, v := range b {
		out[i] = time.Duration(v)
	}
	slices.Sort(out)
	return out
}

func checkAgainstBrute(t *testing.T, strokes, taps []time.Duration, within time.Duration) {
	t.Helper()
	got := Match(strokes, taps, within)
	checkWhole(t, strokes, taps, within, got)
	all, cost := brute(strokes, taps, within)
	require.Len(t, got.Pairs, len(all[0]), "%v %v %v", strokes, taps, within)
	require.Equal(t, cost, total(got.Pairs), "%v %v %v: %v", strokes, taps, within, got.Pairs)
	for _, other := range all {
		usedTaps := make([]int, len(other))
		for k, p := range other {
			usedTaps[k] = p.Tap
		}
		slices.Sort(usedTaps) // uncrossed
		for k, p := range got.Pairs {
			require.LessOrEqual(t, p.Stroke, other[k].Stroke, "an earlier stroke: %v %v %v", strokes, taps, within)
			require.LessOrEqual(t, p.Tap, usedTaps[k], "an earlier tap: %v %v %v", strokes, taps, within)
		}
	}
}

// checkWhole checks what holds for every matching, of any size.
func checkWhole(t *testing.T, strokes, taps []time.Duration, within time.Duration, m Matching) {
	t.Helper()
	i, j := slices.Clone(m.Out), slices.Clone(m.Added)
	for k, p := range m.Pairs {
		require.Equal(t, taps[p.Tap]-strokes[p.Stroke], p.Offset)
		require.True(t, allowed(strokes, p.Stroke, taps[p.Tap], within), "%v %v %v", strokes, taps, within)
		require.True(t, k == 0 || p.Tap > m.Pairs[k-1].Tap && p.Stroke > m.Pairs[k-1].Stroke, "crossing")
		i, j = append(i, p.Stroke), append(j, p.Tap)
	}
	require.True(t, slices.IsSorted(m.Out) && slices.IsSorted(m.Added))
	slices.Sort(i)
	slices.Sort(j)
	require.Len(t, i, len(strokes))
	require.Len(t, j, len(taps))
	for k := range i {
		require.Equal(t, k, i[k])
	}
	for k := range j {
		require.Equal(t, k, j[k])
	}
}
