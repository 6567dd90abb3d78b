package coach

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/riff"
	"groundbeat/scoring/recall"
)

func metOn(rhythm, riff string, day, right, n int) diary.Met {
	return diary.Met{Rhythm: rhythm, Riff: riff, Day: on(day), Right: right, N: n}
}

// By hand: met once and right, S = 2.3065 days (FSRS-6, as the tests of fsrs-rs have
// it): recalled with 0.9 after as many days, 0.8458846 after twice as many.
func TestDueByHand(t *testing.T) {
	met := []diary.Met{metOn("maqsum", "bare", 0, 9, 10)}
	require.Empty(t, DueOn(met, on(0)))
	require.Empty(t, DueOn(met, on(4)), "4 days: 0.854")
	due := DueOn(met, on(5))
	require.Len(t, due, 1)
	require.Equal(t, Due{Rhythm: "maqsum", Level: riff.Bare, Days: 5, Recall: due[0].Recall}, due[0])
	model := recall.Default()
	m := recall.Memory{Stability: 2.3065, Difficulty: 2.118104}
	require.InDelta(t, model.Recall(m, 5), due[0].Recall, 1e-12)
	require.InDelta(t, .8458846, model.Recall(m, 2*2.3065), 1e-7)

	// Missed: 0.212 days; the day after it is due, and more forgotten.
	met = append(met, metOn("saidi", "filled", 4, 1, 4), metOn("baladi", "solo", 4, 4, 4))
	due = DueOn(met, on(5))
	require.Equal(t, []string{"saidi", "maqsum"}, []string{due[0].Rhythm, due[1].Rhythm}, "the most forgotten first")
	require.Len(t, due, 2)
}

// Each level of a rhythm has a memory of its own; what comes of one day is one
// meeting, however it is split and in whatever order it comes; meetings on days that
// grow apart last longer.
func TestDueDays(t *testing.T) {
	whole := []diary.Met{metOn("maqsum", "bare", 0, 6, 8), metOn("maqsum", "bare", 3, 8, 8), metOn("maqsum", "filled", 0, 0, 3)}
	split := []diary.Met{metOn("maqsum", "filled", 0, 0, 3), metOn("maqsum", "bare", 3, 8, 8), metOn("maqsum", "bare", 0, 2, 4), metOn("maqsum", "bare", 0, 4, 4)}
	require.Equal(t, DueOn(whole, on(60)), DueOn(split, on(60)))
	require.Len(t, DueOn(whole, on(90)), 2)

	once, spaced := []diary.Met{metOn("maqsum", "bare", 0, 8, 8)}, []diary.Met(nil)
	massed := []diary.Met{metOn("maqsum", "bare", 19, 8, 8), metOn("maqsum", "bare", 20, 8, 8)}
	for _, day := range []int{0, 4, 20} {
		spaced = append(spaced, metOn("maqsum", "bare", day, 8, 8))
	}
	byRecall := func(met []diary.Met) float64 { return DueOn(met, on(2000))[0].Recall }
	require.Greater(t, byRecall(massed), byRecall(once))
	require.Greater(t, byRecall(spaced), byRecall(massed), "spaced lasts longer than massed")
}

func TestGrades(t *testing.T) {
	for _, tt := range []struct {
		right, n int
		want     recall.Grade
	}{{0, 1, recall.Missed}, {1, 1, recall.Right}, {3, 3, recall.Right}, {4, 4, recall.Fluent}, {5, 9, recall.Missed},
		{6, 10, recall.Labour}, {7, 9, recall.Labour}, {8, 10, recall.Right}, {9, 10, recall.Right}, {10, 10, recall.Fluent}} {
		require.Equal(t, tt.want, meeting{right: tt.right, n: tt.n}.grade(), "%+v", tt)
	}
}
