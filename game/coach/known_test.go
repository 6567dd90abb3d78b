package coach

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// times is so many rounds of a rhythm, the first ones right.
func times(n, right int, of func(right bool) history.Round) []history.Round {
	var all []history.Round
	for i := range n {
		all = append(all, of(i < right))
	}
	return all
}

func TestWell(t *testing.T) {
	taps := func(id string) func(bool) history.Round {
		return func(right bool) history.Round { return tappedRound(0, id, 100, 0, right) }
	}
	names := func(right bool) history.Round {
		answer := "baladi"
		if right {
			answer = "maqsum"
		}
		return namedRound(0, "maqsum", answer, 0, "maqsum", "baladi")
	}
	among := byID(pool(t, quiz.Five))
	well := func(parts ...[]history.Round) Well {
		k := Known{Cycles: supplies}
		for _, p := range parts {
			k.Rounds = append(k.Rounds, p...)
		}
		return k.well(among)
	}
	require.Zero(t, well())
	require.Zero(t, well(times(5, 5, taps("saidi"))), "five are too few")
	require.Zero(t, well(times(8, 5, taps("saidi"))), "less than three of four")
	require.Equal(t, Well{history.Dums, "saidi", 6, 8}, well(times(8, 6, taps("saidi"))))
	require.Equal(t, Well{history.Which, "maqsum", 12, 12}, well(times(8, 8, taps("saidi")), times(12, 12, names)), "as good for longer")
	require.Equal(t, Well{history.Dums, "saidi", 8, 8}, well(times(8, 8, taps("saidi")), times(12, 10, names)))
	require.Zero(t, well(times(8, 8, taps("ayyub"))), "not among them")
	require.Equal(t, Well{history.Dums, "saidi", 20, 20}, well(times(9, 0, taps("saidi")), times(20, 20, taps("saidi"))), "the latest")
}

func idsOf(some []*rhythm.Cycle) (all []string) {
	for _, c := range some {
		all = append(all, c.ID)
	}
	return all
}

// Similar rhythms stand side by side: maqsum's family, then what is left.
func TestSideBySide(t *testing.T) {
	some := []*rhythm.Cycle{get(t, "malfuf"), get(t, "saidi"), get(t, "karsilama"), get(t, "maqsum"), get(t, "khaliji")}
	require.Equal(t, []string{"maqsum", "saidi", "malfuf", "khaliji", "karsilama"}, idsOf(sideBySide(some, 3)))
	require.Equal(t, "malfuf", some[0].ID, "the list is left as it was")
}

// Somebody new begins with the easiest three, and who has met rhythms goes on with one
// more at a time.
func TestMeet(t *testing.T) {
	p := newPlanner(Known{Cycles: supplies}, pool(t, quiz.All), 1)
	require.Equal(t, []string{"maqsum", "baladi", "ciftetelli"}, idsOf(p.own))
	require.Equal(t, "masmudi-kabir", p.next.ID)
	require.Equal(t, "maqsum", p.easiest().ID)

	k := Known{Cycles: supplies, Rounds: []history.Round{tappedRound(0, "ayyub", 100, 0, true), tappedRound(0, "saidi", 100, 0, true)}}
	p = newPlanner(k, pool(t, quiz.All), 1)
	require.ElementsMatch(t, []string{"ayyub", "saidi", "maqsum"}, idsOf(p.own))
	require.Equal(t, "baladi", p.next.ID)
	require.Nil(t, newPlanner(k, pool(t, "ayyub.saidi"), 1).next)
}
