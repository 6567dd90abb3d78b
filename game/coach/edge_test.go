package coach

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
)

// run lets a staircase ask about five rhythms as rounds of a kind, one a day at most.
func run(kind string, seed uint64, n, perDay int, at float64) []history.Round {
	r := rand.New(rand.NewPCG(seed, 31))
	var all []history.Round
	for i := range n {
		id := fiveIDs[r.IntN(5)]
		e := EdgeOf(kind, all, supplies, 0, "")
		c := ear{threshold: at, choices: 8, r: r}
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
// times as great, after it twice; of eight, up 2 and down 2 · 0.5425/0.4575 hundredths.
func TestEdgeByHand(t *testing.T) {
	up, down := 2., 2*.5425/.4575
	w := startWalk(0)
	level := 5.
	for _, step := range []struct {
		right bool
		by    float64
	}{{true, 4 * up}, {true, 4 * up}, {false, -2 * down}, {false, -2 * down}, {true, up}, {true, up}, {false, -down}} {
		w.answer(trial{rhythm: "maqsum", hide: (w.level() + 5) / 10, choices: 8, right: step.right})
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
	e := EdgeOf(history.Dums, rounds, supplies, 0, "")
	require.Equal(t, e, EdgeOf(history.Dums, rounds, supplies, 0, ""))
	require.True(t, e.Found)
	require.InDelta(t, 40, e.Level, 15)

	w := startWalk(0)
	for _, r := range rounds {
		tr, ok := reaches{}.trialOf(r, supplies)
		require.True(t, ok)
		w.answer(tr)
	}
	require.Equal(t, ask(w.level(), 0), e.Level)
	require.Equal(t, ask(w.level(), w.offsets.Of("saidi")), e.Hide("saidi"))
	require.Equal(t, e.Level, e.Hide("never met"))
	require.Equal(t, e.Level, e.Hide())

	mixed := slices.Clone(rounds)
	for i, r := range run(history.Which, 2, 80, 10, .1) {
		mixed = slices.Insert(mixed, 2*i, r)
	}
	require.Equal(t, e, EdgeOf(history.Dums, mixed, supplies, 0, ""))
	require.Less(t, EdgeOf(history.Which, mixed, supplies, 0, "").Level, e.Level)

	require.Equal(t, Edge{Kind: history.Dums, Level: coldStart, at: 10 * coldStart, offsets: quiz.Offsets{}}, EdgeOf(history.Dums, nil, supplies, 0, on(3)))
	if testing.Short() {
		return
	}
	long := run(history.Dums, 3, mostTrials, 20, .3)
	require.Equal(t, EdgeOf(history.Dums, long, supplies, 0, ""), EdgeOf(history.Dums, append(rounds, long...), supplies, 0, ""), "the latest 300")
}

// What says nothing about the edge does not move it: easy rounds in between, right or
// wrong, hard ones, helped ones, and riffs that are not known.
func TestWhatDoesNotMoveTheEdge(t *testing.T) {
	rounds := run(history.Dums, 4, 60, 10, .4)
	e := EdgeOf(history.Dums, rounds, supplies, 0, "")
	require.GreaterOrEqual(t, e.Level, 25)
	for _, right := range []bool{true, false} {
		more := rounds
		for _, hide := range []int{0, e.Hide("maqsum") - near - 1, e.Hide("maqsum") + near + 1} {
			more = append(more, tappedRound(6, "maqsum", 100, hide, right))
		}
		for _, h := range []history.Helps{{Bass: 1}, {Hands: true}, {Balance: 10}, {Balance: -10}} {
			r := tappedRound(6, "maqsum", 100, e.Hide("maqsum"), right)
			r.Helps = h
			more = append(more, r)
		}
		unknown := tappedRound(6, "maqsum", 100, 30, right)
		unknown.Hide, unknown.HideAsked = nil, 0
		got := EdgeOf(history.Dums, append(more, unknown), supplies, 0, "")
		require.Equal(t, e.Level, got.Level)
		require.Equal(t, e.offsets, got.offsets)
		require.Len(t, got.trials, len(e.trials)+3, "far ones count for what is heard, helped ones do not")
	}
	near := append(rounds, tappedRound(6, "maqsum", 100, e.Hide("maqsum"), true))
	require.Greater(t, EdgeOf(history.Dums, near, supplies, 0, "").Level, e.Level)
}

// After a pause it is easier, by steps, and found again, whether the ear is as before
// or not.
func TestPause(t *testing.T) {
	rounds := run(history.Dums, 5, 80, 10, .45) // days 0 to 7
	before := EdgeOf(history.Dums, rounds, supplies, 0, on(7))
	for pause, steps := range map[int]int{0: 0, 1: 0, 13: 0, 14: 1, 27: 1, 28: 2, 56: 3, 112: 4, 5000: 4} {
		got := EdgeOf(history.Dums, rounds, supplies, 0, on(7+pause))
		require.InDelta(t, before.Level-ease*steps, got.Level, 1, "%d days", pause)
		require.Equal(t, steps == 0, got.Found)
		require.Equal(t, before.offsets, got.offsets, "rhythms are as hard as they were")
	}
	require.Equal(t, before, EdgeOf(history.Dums, rounds, supplies, 0, "not a day"))
	for _, now := range []float64{.45, .2} {
		var sum int
		const runs = 20
		for seed := range uint64(runs) {
			r := rand.New(rand.NewPCG(seed, 33))
			all := slices.Clone(rounds)
			for range 20 {
				id := fiveIDs[r.IntN(5)]
				t := ear{threshold: now, choices: 8, r: r}.hears(id, EdgeOf(history.Dums, all, supplies, 0, on(100)).Hide(id))
				all = append(all, tappedRound(100, id, 100, t.hide, t.right))
			}
			sum += EdgeOf(history.Dums, all, supplies, 0, on(100)).Level
		}
		require.InDelta(t, 100*now, float64(sum)/runs, 7)
	}
}

// A kind that is new begins below the edge of one that is found, and stays where its
// own answers lead, however the other goes on.
func TestWarmStart(t *testing.T) {
	taps := run(history.Dums, 6, 60, 10, .45)
	k := Known{Rounds: taps, Cycles: supplies}
	edge := k.Edge(history.Dums)
	require.Equal(t, edge.Level-warmer, k.Edge(history.Which).Level)
	require.Equal(t, coldStart, Known{Cycles: supplies}.Edge(history.Which).Level)
	k.Rounds = append(taps, run(history.Which, 7, 30, 10, .2)...)
	names := k.Edge(history.Which)
	k.Rounds = append(k.Rounds, run(history.Dums, 8, 30, 10, .1)...)
	require.Equal(t, names, k.Edge(history.Which))
	require.Equal(t, mostAsk, EdgeOf(history.Which, nil, supplies, 400, "").Level, "no warmer than can be asked")
	require.Equal(t, coldStart, EdgeOf(history.Which, nil, supplies, 3, "").Level)
}

// A round as an answer, with its chance as package diary reckons it.
func TestTrialOf(t *testing.T) {
	of := func(r history.Round) (trial, bool) { return reaches{}.trialOf(r, supplies) }
	tr, ok := of(namedRound(3, "maqsum", "maqsum", 30, "maqsum", "baladi", "saidi"))
	require.True(t, ok)
	require.Equal(t, trial{rhythm: "maqsum", hide: 30, choices: 3, right: true, day: parseDay(on(3))}, tr)
	taps := tappedRound(0, "maqsum", 96, 30, false)
	tr, ok = of(taps)
	require.True(t, ok)
	require.Equal(t, trial{rhythm: "maqsum", hide: 30, choices: 6, day: parseDay(on(0))}, tr, "1 in 6: see package diary")

	change := roundOf(history.Change, 0, "maqsum", 100, 30)
	change.Choices, change.Right = []string{"baladi", "saidi"}, true
	_, ok = of(change)
	require.False(t, ok, "no change: right is who never presses")
	change.To, change.Answer = "saidi", "saidi"
	tr, ok = of(change)
	require.True(t, ok)
	require.Equal(t, 4, tr.choices)

	for level, want := range map[riff.Level]int{riff.Bare: 0, riff.Filled: reach(get(t, "maqsum"), riff.Filled)} {
		taps.Hide, taps.Riff = nil, level.String()
		tr, ok = of(taps)
		require.True(t, ok)
		require.Equal(t, want, tr.hide, "what the level hides")
	}
	for _, spoil := range []func(*history.Round){
		func(r *history.Round) { r.Rhythm = "gone" }, func(r *history.Round) { r.When = "" }, func(r *history.Round) { r.BPM = 0 },
		func(r *history.Round) { r.Riff = "riffing" }, func(r *history.Round) { r.Riff = "loud" },
		func(r *history.Round) { r.Helps.Bass = 1 }, func(r *history.Round) { r.Helps.Hands = true }, func(r *history.Round) { r.Helps.Balance = 1 },
	} {
		bad := taps
		spoil(&bad)
		_, ok = of(bad)
		require.False(t, ok, "%+v", bad)
	}
}

// Rounds are kept for some weeks only, so that they may begin in the middle: then the
// edge is soon where it is of all of them. It does not begin with the bare rhythm again.
func TestEdgeFromTheMiddle(t *testing.T) {
	for _, kind := range []string{history.Dums, history.Which} {
		rounds := run(kind, 11, 200, 10, .5)
		whole := EdgeOf(kind, rounds, supplies, 0, "")
		for cut := 40; cut <= 150; cut += 10 {
			require.InDelta(t, whole.Level, EdgeOf(kind, rounds[cut:], supplies, 0, "").Level, 12, "%s without %d", kind, cut)
		}
	}
	missed := []history.Round{tappedRound(0, "maqsum", 100, 50, false), tappedRound(0, "maqsum", 100, 50, false)}
	require.Equal(t, coldStart, EdgeOf(history.Dums, missed, supplies, 0, "").Level, "who hears nothing through begins at the beginning")
}

// Where more is asked for than a rhythm's riffs can hide, misses make it easier all the
// same: khaliji's hide 0.48 at the most.
func TestEdgeAtTheTop(t *testing.T) {
	w := startWalk(0)
	for range 60 {
		w.answer(trial{rhythm: "khaliji", hide: min(48, w.level()/10), choices: 8, right: true})
	}
	require.Equal(t, 10*mostAsk, w.level())
	for range 10 {
		w.answer(trial{rhythm: "khaliji", hide: 48, choices: 8})
	}
	require.Less(t, w.level(), 500)
	for _, c := range pool(t, quiz.All) {
		require.InDelta(t, mostPlays, reach(c, riff.Solo), near, c.ID)
	}
}
