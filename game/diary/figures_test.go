package diary_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
)

// many are rounds of one day in which a rhythm was told.
func many(day, n int, played, said string) []history.Round {
	var all []history.Round
	for i := range n {
		all = append(all, named(at(day, i), played, said))
	}
	return all
}

func join(lists ...[]history.Round) (all []history.Round) {
	for _, l := range lists {
		all = append(all, l...)
	}
	return all
}

// 2026-01-05 is a Monday. 18 of 20: Wilson's interval as R's binom has it.
func TestAccuracy(t *testing.T) {
	rounds := join(many(5, 10, "maqsum", "maqsum"), many(11, 8, "maqsum", "maqsum"), many(11, 2, "maqsum", "saidi"),
		many(5, 3, "saidi", "saidi"))
	rounds[0].Riff = "bare"
	changed := named(at(5, 50), "maqsum", "saidi")
	changed.Kind, changed.To, changed.Choices, changed.Right = history.Change, "saidi", []string{"baladi", "saidi"}, true
	unheard := changed
	unheard.Answer, unheard.Right = "", false
	all := figures(t, append(rounds, changed, unheard)...).Accuracy
	require.Len(t, all, 2)
	a := all[0]
	require.Equal(t, []any{"maqsum", false, 20}, []any{a.Rhythm, a.Tapped, a.Rounds})
	require.Equal(t, []any{18, 20, .9, "2026-01-05", "2026-01-11"}, []any{a.All.Right, a.All.N, a.All.Share.Value, a.All.From, a.All.To})
	require.InDelta(t, .6989663547715128, a.All.Share.Low, 1e-12)
	require.InDelta(t, .972133518786232, a.All.Share.High, 1e-12)
	require.Equal(t, []diary.Span{a.All}, a.Spans, "one week")
	require.Len(t, a.Levels, 2)
	require.Equal(t, []any{"bare", 1, false}, []any{a.Levels[0].Riff, a.Levels[0].N, a.Levels[0].Share.Known})
	require.Equal(t, []any{"filled", 17, 19}, []any{a.Levels[1].Riff, a.Levels[1].Right, a.Levels[1].N})
	require.Equal(t, []any{"saidi", 4, 8}, []any{all[1].Rhythm, all[1].All.Right, all[1].All.Share.Missing()}, "with the change that was heard")
}

// How full riffs were is the mean of their levels, of those that are known.
func TestAccuracyFull(t *testing.T) {
	for _, c := range []struct {
		riffs []string
		want  float64
	}{{[]string{"bare", "bare"}, 0}, {[]string{"filled", "riffing"}, 2}, {[]string{"solo", "loud", "solo"}, 4}, {[]string{"loud"}, 0}} {
		rounds := many(5, len(c.riffs), "maqsum", "maqsum")
		for i, riff := range c.riffs {
			rounds[i].Riff = riff
		}
		all := figures(t, rounds...).Accuracy[0].All
		require.Equal(t, []float64{c.want, 0}, []float64{all.Full, all.BPM}, "%v", c.riffs)
	}
}

// Weeks are put together until there are twelve answers, and what is left joins the last.
func TestAccuracySpans(t *testing.T) {
	a := figures(t, join(many(4, 5, "maqsum", "maqsum"), many(5, 7, "maqsum", "maqsum"), many(6, 1, "maqsum", "saidi"),
		many(14, 12, "maqsum", "saidi"), many(20, 3, "maqsum", "maqsum"))...).Accuracy[0]
	require.Len(t, a.Spans, 2)
	require.Equal(t, []any{"2026-01-04", "2026-01-06", 12, 13}, []any{a.Spans[0].From, a.Spans[0].To, a.Spans[0].Right, a.Spans[0].N})
	require.Equal(t, []any{"2026-01-14", "2026-01-20", 3, 15}, []any{a.Spans[1].From, a.Spans[1].To, a.Spans[1].Right, a.Spans[1].N})
	few := figures(t, join(many(4, 5, "maqsum", "maqsum"), many(20, 3, "maqsum", "maqsum"))...).Accuracy[0]
	require.Len(t, few.Spans, 1)
	require.False(t, few.Spans[0].Share.Known)
}

// Of dums tapped the rounds are the observations.
func TestAccuracyTapped(t *testing.T) {
	var rounds []history.Round
	for i := range 6 {
		rounds = append(rounds, tapped(t, at(5, i), "maqsum", 5, 5, 5, 999))
	}
	a := figures(t, rounds...).Accuracy[0]
	require.Equal(t, []any{"maqsum", true, 6, 36, 48}, []any{a.Rhythm, a.Tapped, a.Rounds, a.All.Right, a.All.N})
	require.Equal(t, .75, a.All.Share.Value)
	require.InDelta(t, 96, a.All.BPM, 1e-9)
	require.Equal(t, 6, a.All.Share.N)
	require.False(t, figures(t, rounds[1:]...).Accuracy[0].All.Share.Known)
}

func TestMixed(t *testing.T) {
	rounds := join(many(5, 20, "maqsum", "maqsum"), many(5, 20, "maqsum", "baladi"),
		many(6, 10, "baladi", "maqsum"), many(6, 50, "baladi", "baladi"), many(6, 11, "saidi", "maqsum"))
	m := figures(t, rounds...).Mixed
	require.Equal(t, []string{"baladi", "maqsum", "saidi"}, m.Rhythms, "the most played first")
	require.Equal(t, [][]int{{50, 10, 0}, {20, 20, 0}, {0, 11, 0}}, m.Said)
	require.Len(t, m.Worst, 2, "sa'idi was played eleven times only")
	require.Equal(t, []any{"maqsum", "baladi", .5, 40}, []any{m.Worst[0].Played, m.Worst[0].Said, m.Worst[0].Share.Value, m.Worst[0].Share.N})
	require.Equal(t, []any{"baladi", "maqsum", 1. / 6}, []any{m.Worst[1].Played, m.Worst[1].Said, m.Worst[1].Share.Value})
	require.Empty(t, figures(t).Mixed.Worst)
	slip := figures(t, join(many(5, 40, "maqsum", "maqsum"), many(6, 1, "maqsum", "baladi"))...).Mixed
	require.Empty(t, slip.Worst, "once is a slip")
}

// Answers of long ago are left out, by whole days.
func TestMixedLatest(t *testing.T) {
	m := figures(t, join(many(5, 30, "maqsum", "baladi"), many(6, 60, "maqsum", "saidi"),
		many(7, diary.LatestAnswers-1, "maqsum", "maqsum"))...).Mixed
	require.Equal(t, []string{"maqsum", "saidi"}, m.Rhythms)
	require.Equal(t, 60, m.Said[0][1])
}
