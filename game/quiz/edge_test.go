package quiz

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/scoring/history"
	"groundbeat/scoring/threshold"
)

// run lets a staircase ask about five rhythms as rounds of a kind, one a day at most.
func run(kind string, seed uint64, n, perDay int, at float64) []history.Round {
	r := rand.New(rand.NewPCG(seed, 31))
	var all []history.Round
	for i := range n {
		id := fiveIDs[r.IntN(5)]
		e := EdgeOf(kind, all, mostly, 0, "")
		c := ear{threshold: at, choices: sure, r: r}
		if kind == history.Which {
			c.choices = 3
		}
		t := c.hears(id, e.Hide(id))
		if kind == history.Dums {
			all = append(all, tappedRound(i/perDay, id, 100, t.hide, t.right))
			continue
		}
		answer := id
		if !t.right {
			answer = "another"
		}
		all = append(all, namedRound(i/perDay, id, answer, t.hide, "maqsum", "saidi", "baladi"))
	}
	return all
}

// The levels are those of the rule, by hand: before the first turn steps are four
// times as great, after it twice; tapped, up 2 and down 2 · 0.48/0.52 hundredths.
func TestEdgeByHand(t *testing.T) {
	up, down := 2., 2*.48/.52
	require.InDelta(t, .48, threshold.Halfway(sure), 1e-6)
	w := startWalk(0)
	level := 5.
	for _, step := range []struct {
		right bool
		by    float64
	}{{true, 4 * up}, {true, 4 * up}, {false, -2 * down}, {false, -2 * down}, {true, up}, {true, up}, {false, -down}} {
		w.answer(trial{rhythm: "maqsum", hide: (w.level() + 5) / 10, choices: sure, right: step.right})
		level += step.by
		require.InDelta(t, 10*level, w.level(), .6)
	}
	two := startWalk(0) // of two: down 2 · 0.73/0.27
	two.answer(trial{hide: 5, choices: 2, right: true})
	two.answer(trial{hide: 13, choices: 2, right: false})
	require.InDelta(t, 10*(13-2*2*.73/.27), two.level(), .6)
}

// The edge of records is that of the walk that made them, and of the same records the
// same again; the order in which outputs or kinds are mixed in does not matter.
func TestEdgeOfRecords(t *testing.T) {
	rounds := run(history.Dums, 1, 80, 10, .4)
	e := EdgeOf(history.Dums, rounds, mostly, 0, "")
	require.Equal(t, e, EdgeOf(history.Dums, rounds, mostly, 0, ""))
	require.True(t, e.Found)
	require.InDelta(t, 40, e.Level, 15)

	w := startWalk(0)
	for _, r := range rounds {
		tr, ok := trialOf(r, mostly)
		require.True(t, ok)
		w.answer(tr)
	}
	require.Equal(t, ask(w.level(), 0), e.Level)
	require.Equal(t, ask(w.level(), w.offsets.of("saidi")), e.Hide("saidi"))
	require.Equal(t, e.Level, e.Hide("never met"))
	require.Equal(t, e.Level, e.Hide())

	mixed := slices.Clone(rounds)
	for i, r := range run(history.Which, 2, 80, 10, .1) {
		mixed = slices.Insert(mixed, 2*i, r)
	}
	require.Equal(t, e, EdgeOf(history.Dums, mixed, mostly, 0, ""))
	require.Less(t, EdgeOf(history.Which, mixed, mostly, 0, "").Level, e.Level)

	require.Equal(t, Edge{Kind: history.Dums, Level: coldStart, at: 10 * coldStart, offsets: offsets{}}, EdgeOf(history.Dums, nil, mostly, 0, on(3)))
	long := run(history.Dums, 3, mostTrials, 20, .3)
	require.Equal(t, EdgeOf(history.Dums, long, mostly, 0, ""), EdgeOf(history.Dums, append(rounds, long...), mostly, 0, ""), "the latest 300")
}

// What says nothing about the edge does not move it: easy rounds in between, right or
// wrong, hard ones, helped ones, and riffs that are not known.
func TestWhatDoesNotMoveTheEdge(t *testing.T) {
	rounds := run(history.Dums, 4, 60, 10, .4)
	e := EdgeOf(history.Dums, rounds, mostly, 0, "")
	require.Greater(t, e.Level, 30)
	for _, right := range []bool{true, false} {
		more := rounds
		for _, hide := range []int{0, e.Hide("maqsum") - near - 1, e.Hide("maqsum") + near + 1} {
			more = append(more, tappedRound(6, "maqsum", 100, hide, right))
		}
		for _, h := range []history.Helps{{Bass: 1}, {Hands: true}, {Balance: 10}} {
			r := tappedRound(6, "maqsum", 100, e.Hide("maqsum"), right)
			r.Helps = h
			more = append(more, r)
		}
		unknown := tappedRound(6, "maqsum", 100, 30, right)
		unknown.Hide, unknown.HideAsked = nil, 0
		got := EdgeOf(history.Dums, append(more, unknown), mostly, 0, "")
		require.Equal(t, e.Level, got.Level)
		require.Equal(t, e.offsets, got.offsets)
		require.Len(t, got.trials, len(e.trials)+3, "far ones count for what is heard, helped ones do not")
	}
	near := append(rounds, tappedRound(6, "maqsum", 100, e.Hide("maqsum"), true))
	require.Greater(t, EdgeOf(history.Dums, near, mostly, 0, "").Level, e.Level)
	lead := tappedRound(6, "maqsum", 100, e.Hide("maqsum"), true)
	lead.Helps.Balance = -20
	require.Greater(t, EdgeOf(history.Dums, append(rounds, lead), mostly, 0, "").Level, e.Level, "more of the lead drum is no help")
}

// After a pause it is easier, by steps, and found again, whether the ear is as before
// or not.
func TestPause(t *testing.T) {
	rounds := run(history.Dums, 5, 80, 10, .45) // days 0 to 7
	before := EdgeOf(history.Dums, rounds, mostly, 0, on(7))
	for pause, steps := range map[int]int{0: 0, 1: 0, 13: 0, 14: 1, 27: 1, 28: 2, 56: 3, 112: 4, 5000: 4} {
		got := EdgeOf(history.Dums, rounds, mostly, 0, on(7+pause))
		require.InDelta(t, before.Level-harder*steps, got.Level, 1, "%d days", pause)
		require.Equal(t, steps == 0, got.Found)
		require.Equal(t, before.offsets, got.offsets, "rhythms are as hard as they were")
	}
	require.Equal(t, before, EdgeOf(history.Dums, rounds, mostly, 0, "not a day"))
	for _, now := range []float64{.45, .2} {
		var sum int
		const runs = 20
		for seed := range uint64(runs) {
			r := rand.New(rand.NewPCG(seed, 33))
			all := slices.Clone(rounds)
			for range 20 {
				id := fiveIDs[r.IntN(5)]
				t := ear{threshold: now, choices: sure, r: r}.hears(id, EdgeOf(history.Dums, all, mostly, 0, on(100)).Hide(id))
				all = append(all, tappedRound(100, id, 100, t.hide, t.right))
			}
			sum += EdgeOf(history.Dums, all, mostly, 0, on(100)).Level
		}
		require.InDelta(t, 100*now, float64(sum)/runs, 7)
	}
}

// A kind that is new begins below the edge of one that is found, and stays where its
// own answers lead, however the other goes on.
func TestWarmStart(t *testing.T) {
	taps := run(history.Dums, 6, 60, 10, .45)
	k := Known{Rounds: taps, Right: mostly}
	edge := k.Edge(history.Dums)
	require.Equal(t, edge.Level-warmer, k.Edge(history.Which).Level)
	require.Equal(t, coldStart, Known{Right: mostly}.Edge(history.Which).Level)
	k.Rounds = append(taps, run(history.Which, 7, 30, 10, .2)...)
	names := k.Edge(history.Which)
	k.Rounds = append(k.Rounds, run(history.Dums, 8, 30, 10, .1)...)
	require.Equal(t, names, k.Edge(history.Which))
	require.Equal(t, mostAsk, EdgeOf(history.Which, nil, mostly, 400, "").Level, "no warmer than can be asked")
	require.Equal(t, coldStart, EdgeOf(history.Which, nil, mostly, 3, "").Level)
}

func TestHeard(t *testing.T) {
	few := EdgeOf(history.Dums, run(history.Dums, 9, threshold.LeastTrials-1, 10, .4), mostly, 0, "")
	require.Equal(t, ThroughUnknown, few.Heard().Through)
	require.Equal(t, 1, few.Heard().Hide.Missing())
	require.False(t, few.HeardOf("maqsum").Hide.Known)

	for at, want := range map[float64]Through{-.1: ThroughBare, .13: ThroughLittle, .37: ThroughSome, .62: ThroughMuch} {
		e := EdgeOf(history.Dums, run(history.Dums, 10, 120, 10, at), mostly, 0, "")
		h := e.Heard()
		require.Equal(t, want, h.Through, "%v: %+v", at, h)
		require.Equal(t, history.Dums, h.Kind)
		require.True(t, h.Hide.Low >= 0 && h.Hide.Low <= h.Hide.Value && h.Hide.Value <= h.Hide.High)
		require.Equal(t, 120, h.Hide.N)
		one := e.HeardOf("maqsum")
		require.Less(t, one.Hide.N, 60)
		if at > 0 {
			require.Greater(t, one.Hide.High-one.Hide.Low, h.Hide.High-h.Hide.Low, "less is known of one")
		}
		require.False(t, e.HeardOf("gone").Hide.Known)
	}
}

// A change is right by chance where there is none: one in four.
func TestTrialOf(t *testing.T) {
	change := history.Round{Kind: history.Change, Rhythm: "maqsum", Riff: "bare", Choices: []string{"baladi", "saidi"}, Right: true}
	tr, ok := trialOf(change, mostly)
	require.True(t, ok)
	require.Equal(t, neverOdds, tr.choices)
	tr, ok = trialOf(namedRound(3, "maqsum", "maqsum", 30, "maqsum", "baladi", "saidi"), mostly)
	require.True(t, ok)
	require.Equal(t, trial{rhythm: "maqsum", hide: 30, choices: 3, right: true, day: parseDay(on(3))}, tr)
	tr, ok = trialOf(tappedRound(0, "maqsum", 100, 30, false), mostly)
	require.True(t, ok)
	require.Equal(t, trial{rhythm: "maqsum", hide: 30, choices: sure, day: parseDay(on(0))}, tr)
	filled := tappedRound(0, "maqsum", 100, 0, true)
	filled.Riff = riff.Filled.String()
	tr, _ = trialOf(filled, mostly)
	require.Equal(t, filledHides, tr.hide)
}
