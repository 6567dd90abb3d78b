package coach

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
	"groundbeat/scoring/history"
)

// The parts of a practice are its steps, all and in order; each has one reason, no two
// in a row the same, and together they last as long.
func TestParts(t *testing.T) {
	for name, k := range learners() {
		steps := k.Practice(10, pool(t, quiz.Five), 1)
		parts := Parts(steps)
		var all []Step
		seconds := 0
		for i, p := range parts {
			all = append(all, p.Steps...)
			seconds += p.Seconds()
			require.True(t, i == 0 || p.Reason != parts[i-1].Reason, name)
			for _, s := range p.Steps {
				require.True(t, s.Reason == p.Reason || p.Reason == ReasonEdge && s.Reason == ReasonRung, name)
				for _, id := range s.Rhythms {
					require.Contains(t, p.Rhythms(), id)
				}
			}
		}
		require.Equal(t, steps, all, name)
		require.InDelta(t, 600, seconds, practiceTolerance, name)
		require.LessOrEqual(t, len(parts), 8, "few enough to be read: %s", name)
		require.GreaterOrEqual(t, len(parts), 2, name)
		require.Equal(t, ReasonSlow, parts[len(parts)-1].Reason)
	}
}

// Somebody new is shown each rhythm before its dums are tapped or its name is told; who
// has met one is not, but for a round in which nothing was tapped. Of the lower rungs no
// rhythm need be known.
func TestNew(t *testing.T) {
	k := Known{Cycles: supplies}
	shown := map[string]bool{}
	for _, s := range k.Practice(10, pool(t, quiz.Five), 1) {
		ids := k.New(s)
		switch s.Kind {
		case history.Dums, history.Which:
			require.Equal(t, s.Rhythms, ids)
		default:
			require.Empty(t, ids)
		}
		for _, id := range ids {
			shown[id] = true
		}
	}
	require.Len(t, shown, firstRhythms)

	step := Step{Kind: history.Which, Rhythms: []string{"baladi", "maqsum", "saidi"}}
	k.Rounds = []history.Round{untried(history.Dums, 0, "maqsum", 90, 0), tappedRound(0, "baladi", 90, 0, false)}
	require.Equal(t, []string{"maqsum", "saidi"}, k.New(step))
	k.Met = append(k.Met, metOn("saidi", "bare", 0, 0, 1))
	require.Equal(t, []string{"maqsum"}, k.New(step))
	require.True(t, slices.IsSorted(step.Rhythms))
}
