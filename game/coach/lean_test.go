package coach

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/quiz"
	"groundbeat/game/riff"
)

// mixedUp is a table of three rhythms in which of n times that one is played it is
// called another so often.
func mixedUp(played, said string, often, n int) diary.Mixed {
	m := diary.Mixed{Rhythms: []string{"ayyub", "maqsum", "saidi"}, Said: [][]int{{20, 0, 0}, {0, 20, 0}, {0, 0, 20}}}
	i, j := slices.Index(m.Rhythms, played), slices.Index(m.Rhythms, said)
	m.Said[i][i], m.Said[j][j], m.Said[i][j] = n-often, 0, often
	return m
}

// One slip in six answers is a mix-up, one in seven is none; both ways count.
func TestLeanOf(t *testing.T) {
	for _, tt := range []struct{ Often, n, want int }{{1, 6, 10}, {1, 7, 0}, {2, 16, 10}, {2, 17, 0}, {10, 20, 41}, {0, 20, 0}} {
		for _, way := range [][2]string{{"maqsum", "saidi"}, {"saidi", "maqsum"}} {
			l := quiz.LeanOf(mixedUp(way[0], way[1], tt.Often, tt.n), true)
			require.Equal(t, tt.want, l.Mixed("saidi", "maqsum"), "%+v", tt)
			require.Equal(t, tt.want, l.Mixed("maqsum", "saidi"))
			require.Zero(t, l.Mixed("maqsum", "ayyub"))
			require.Zero(t, quiz.LeanOf(mixedUp(way[0], way[1], tt.Often, tt.n), false).Mixed("maqsum", "saidi"), "not before the rungs hold")
		}
	}
	broken := diary.Mixed{Rhythms: []string{"a", "b", "c", "a"}, Said: [][]int{{1, 5}, {-3}}}
	require.Equal(t, map[quiz.Pair]int{quiz.PairOf("a", "b"): 50}, quiz.LeanOf(broken, true).Often)
}

// Where nothing is known the questions are those of Next.
func TestLeaningNowhere(t *testing.T) {
	for seed := range uint64(50) {
		for _, ask := range []quiz.Ask{quiz.Stroke, quiz.HowMany, quiz.Same, quiz.Which} {
			want, err := quiz.Next(ask, pool(t, quiz.All), 3, 0, riff.Filled, seed)
			require.NoError(t, err)
			got, err := quiz.LeanOf(diary.Mixed{}, true).Next(ask, pool(t, quiz.All), 3, 0, riff.Filled, seed)
			require.NoError(t, err)
			require.Equal(t, want, got)
		}
	}
}

// together counts how often the wrong choice beside the right one is which, of so many
// questions of two names.
func together(t *testing.T, l quiz.Lean, from string, n uint64) (families, all int, pairs map[quiz.Pair]int, right map[string]int) {
	pairs, right = map[quiz.Pair]int{}, map[string]int{}
	for seed := range n {
		q, err := l.Next(quiz.Which, pool(t, from), 2, 0, riff.Bare, seed)
		require.NoError(t, err)
		sound(t, q)
		a, b := q.Choices[0], q.Choices[1]
		if a.Rhythm.Family == b.Rhythm.Family {
			families++
		}
		pairs[quiz.PairOf(a.ID, b.ID)]++
		right[q.Right]++
		all++
	}
	return families, all, pairs, right
}

// While the lower rungs do not hold, names are of other families; then of the same;
// and what is mixed up comes more often, with either of the two right alike often.
func TestWrongAnswersThatTeach(t *testing.T) {
	const n = 1500
	const two = "maqsum.baladi.saidi.ayyub.khaliji" // families, all of which go together
	far, all, _, _ := together(t, quiz.Lean{Apart: true}, two, n)
	near, _, _, _ := together(t, quiz.Lean{}, two, n)
	require.Less(t, 3*far, all)
	require.Greater(t, 5*near, 3*all)
	_, _, before, _ := together(t, quiz.Lean{}, quiz.Even, n)

	ayyubAndMaqsum := quiz.PairOf("ayyub", "maqsum")
	l := quiz.LeanOf(mixedUp("ayyub", "maqsum", 8, 20), true)
	_, _, after, right := together(t, l, quiz.Even, n)
	require.Less(t, before[ayyubAndMaqsum], n/25)
	require.Greater(t, after[ayyubAndMaqsum], n/4)
	require.Greater(t, len(after), 8, "others still come")

	// Fair: of the questions with both, either is right as often.
	one, both := 0, 0
	for seed := range uint64(n) {
		q, err := l.Next(quiz.Which, pool(t, quiz.Even), 2, 0, riff.Bare, seed)
		require.NoError(t, err)
		if quiz.PairOf(q.Choices[0].ID, q.Choices[1].ID) != ayyubAndMaqsum {
			continue
		}
		both++
		if q.Right == "ayyub" {
			one++
		}
	}
	require.InDelta(t, both/2, one, 4*.5*sqrt(both))
	require.Greater(t, right["saidi"], 0)
}

func TestRungsHold(t *testing.T) {
	many := func(right ...bool) Known {
		var k Known
		for _, r := range right {
			k.Rounds = append(k.Rounds, rungRound(0, quiz.Same, r))
		}
		return k
	}
	yes := slices.Repeat([]bool{true}, 7)
	require.False(t, Holds(quiz.Same, many(yes...).Rounds), "seven answers are too few")
	require.True(t, Holds(quiz.Same, many(append(yes, false)...).Rounds))
	require.False(t, Holds(quiz.Same, many(append(yes, false, false)...).Rounds), "two of the latest eight are wrong")
	require.True(t, Holds(quiz.Same, many(append([]bool{false, false, false}, append(yes, true)...)...).Rounds), "only the latest count")
	require.False(t, Holds(quiz.Stroke, many(append(yes, true)...).Rounds), "another rung")
	require.Equal(t, LowerRungs(), loose(nil))

	helped := many(append(yes, true)...).Rounds
	for i := range helped {
		helped[i].Helps.Hands = true
	}
	require.False(t, Holds(quiz.Same, helped))

	var named Known
	for i := range 8 {
		answer := "saidi"
		if i < 6 {
			answer = "maqsum"
		}
		named.Rounds = append(named.Rounds, namedRound(0, "maqsum", answer, 0, "maqsum", "saidi", "baladi"))
	}
	require.Empty(t, loose(named.Rounds), "who tells them by name is past it")
	named.Rounds[0].Right = false
	require.Equal(t, LowerRungs(), loose(named.Rounds))
}
