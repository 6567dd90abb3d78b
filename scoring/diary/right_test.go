package diary_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring/diary"
	"groundbeat/scoring/history"
)

func TestRight(t *testing.T) {
	for _, c := range []struct {
		matched, out, added int
		right               bool
	}{
		{8, 0, 0, true},
		{6, 2, 0, true},
		{5, 3, 0, false},
		{8, 0, 2, true},
		{8, 0, 3, false},
		{6, 2, 2, true},
		{3, 1, 1, true},
		{2, 1, 0, false}, // two of three are less than three of four
		{0, 0, 0, false},
	} {
		for _, kind := range []string{history.Dums, history.Stop} {
			r := history.Round{Kind: kind, Matched: c.matched, Out: c.out, Added: c.added}
			require.Equal(t, c.right, diary.Right(r), "%+v", c)
		}
	}
	require.True(t, diary.Right(named("2026-01-31T18:30:00Z", "maqsum", "maqsum")))
	require.False(t, diary.Right(named("2026-01-31T18:30:00Z", "maqsum", "saidi")))
}

// What the bounds are for: a dum of sa'idi that is always missed, or taps on every
// beat of maqsum, are not right.
func TestRightWhatFor(t *testing.T) {
	const when = "2026-01-31T18:30:00Z"
	require.True(t, diary.Right(tapped(t, when, "saidi", 5)))
	require.False(t, diary.Right(tapped(t, when, "saidi", 5, 999, 5)))
	require.True(t, diary.Right(tapped(t, when, "maqsum", 5, 5, 5, 999)))
	every := tapped(t, when, "maqsum", 5)
	every.Added = every.Matched
	require.False(t, diary.Right(every))
}
