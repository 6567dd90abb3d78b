package coach

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// The ladder of tempi rises from a rhythm's slow tempo over its usual one to its fast one,
// and where a tempo lies on it is found again, to a beat a minute.
func TestLadderOfEveryRhythm(t *testing.T) {
	all := supplied(t)
	for _, id := range all.IDs() {
		c := get(t, id)
		last := 0
		for at := Slowest; at <= Fastest; at++ {
			bpm := at.BPM(c)
			require.GreaterOrEqual(t, bpm, last, "%s at %d", id, at)
			last = bpm
			if bpm > round.MinBPM && bpm < round.MaxBPM {
				require.InDelta(t, bpm, tempoAt(c, bpm).BPM(c), 1, "%s at %d", id, bpm)
			}
		}
		require.Equal(t, max(c.Tempo.Slow, round.MinBPM), Slowest.BPM(c), id)
		require.Equal(t, min(c.Tempo.Fast, round.MaxBPM), Fastest.BPM(c), id)
		require.Equal(t, tempoAt(c, c.Tempo.Usual), Usual, id)
		require.Equal(t, Slowest, tempoAt(c, c.Tempo.Slow-10), id)
		require.Equal(t, Fastest, tempoAt(c, c.Tempo.Fast+10), id)
	}
}

// A rung holds by its own latest answers or by the names told; helped ones do not count,
// those of other rungs neither, and too few tell nothing.
func TestRungsByTheirLatest(t *testing.T) {
	answers := func(kind string, n, right int, helps history.Helps) (all []history.Round) {
		for i := range n {
			all = append(all, history.Round{Kind: kind, Right: i < right, Helps: helps})
		}
		return all
	}
	for _, rung := range LowerRungs() {
		require.Contains(t, loose(nil), rung)
		own := string(rung)
		require.False(t, Holds(rung, answers(own, rungAnswers-1, rungAnswers-1, history.Helps{})), "too few")
		require.True(t, Holds(rung, answers(own, rungAnswers, rungRight, history.Helps{})))
		require.False(t, Holds(rung, answers(own, rungAnswers, rungRight-1, history.Helps{})))
		require.False(t, Holds(rung, answers(own, 3*rungAnswers, 2*rungAnswers, history.Helps{})), "the latest were wrong")
		require.False(t, Holds(rung, answers(own, rungAnswers, rungAnswers, history.Helps{Bass: 1})), "helped")
		require.True(t, Holds(rung, answers(history.Which, rungAnswers, namesRight, history.Helps{})), "past it")
		for _, other := range LowerRungs() {
			if other != rung {
				require.False(t, Holds(rung, answers(string(other), rungAnswers, rungAnswers, history.Helps{})))
			}
		}
	}
}

// A step is of a length that is expected of it: shorter ones last less, faster ones too,
// and none that could be shortened lasts longer than it may.
func TestLengthOfSteps(t *testing.T) {
	all := supplied(t)
	for _, id := range all.IDs() {
		c := get(t, id)
		slow, fast := dumsStep(id, c.Tempo.Slow, 0, 0), dumsStep(id, c.Tempo.Fast, 0, 0)
		require.GreaterOrEqual(t, slow.sounds(c), fast.sounds(c), id)
		for _, s := range []*Step{&slow, &fast} {
			s.length(c)
			require.True(t, s.Eights == shortEights || s.Seconds <= longStep, "%s: %d eights in %d s", id, s.Eights, s.Seconds)
			require.Greater(t, s.Seconds, reviewing, id)
			shorter := *s
			shorter.Eights = 1
			require.Less(t, shorter.lasts(nil), 60)
			require.LessOrEqual(t, shorter.sounds(c), s.sounds(c), id)
		}
	}
	stroke := Step{Kind: string(quiz.Stroke)}
	stroke.length()
	require.Equal(t, reviewing+(4*60+quiz.StrokeBPM/2)/quiz.StrokeBPM, stroke.Seconds, "four beats")
}
