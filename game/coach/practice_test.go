package coach

import (
	"bytes"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
	"groundbeat/scoring/stat"
)

// practiceTolerance is by how many seconds the expected lengths of a practice's steps
// may miss together what was asked for.
const practiceTolerance = 20

// soundPlan checks what holds for every practice.
func soundPlan(t testing.TB, steps []Step, minutes int, from []*rhythm.Cycle) {
	t.Helper()
	have := byID(from)
	seconds := 0
	for i, s := range steps {
		seconds += s.Seconds
		if i > 0 {
			require.False(t, s.Same(steps[i-1]), "%d: %v", i, s)
		}
		require.Positive(t, s.Seed)
		require.LessOrEqual(t, s.Seed, uint64(mostSeed))
		require.LessOrEqual(t, s.Hide, round.MaxHide)
		require.True(t, s.Hide == 0 || s.Level > riff.Filled)
		for _, id := range s.Rhythms {
			require.Contains(t, have, id)
		}
		playable(t, s, have)
	}
	require.InDelta(t, 60*minutes, seconds, practiceTolerance, "%v", steps)
	require.Equal(t, ReasonSlow, steps[len(steps)-1].Reason)
}

// playable checks that a round can be made of a step as it stands, and that of names
// none can be taken for another.
func playable(t testing.TB, s Step, have map[string]*rhythm.Cycle) {
	t.Helper()
	var of []*rhythm.Cycle
	for _, id := range s.Rhythms {
		of = append(of, have[id])
	}
	switch s.Kind {
	case history.Dums:
		require.Len(t, of, 1)
		q := round.Setting{Kind: s.Kind, Rhythm: of[0], BPM: s.BPM, Eights: s.Eights, Level: s.Level, Hide: s.Hide, Seed: s.Seed}
		require.NoError(t, q.Check())
	case history.Which:
		q, err := quiz.Next(quiz.Which, of, len(of), s.BPM, s.Level, s.Seed)
		require.NoError(t, err, "%v", s)
		require.Len(t, q.Choices, len(of), "%v", s)
		for i, a := range of {
			for _, b := range of[:i] {
				require.False(t, quiz.Mistakable(a, b))
			}
		}
	default:
		_, err := quiz.Next(quiz.Ask(s.Kind), of, quiz.MinAnswers, s.BPM, s.Level, s.Seed)
		require.NoError(t, err)
		require.Contains(t, []int{1, 2}, s.Eights)
	}
}

// Whoever it is, whatever the pool: a practice lasts as long as was asked for, with
// available rhythms only, and is the same again, in whatever order the pool comes.
func TestPractice(t *testing.T) {
	seeds := uint64(3)
	if testing.Short() {
		seeds = 1
	}
	lengths := []int{MinPractice, 5, 10, 20}
	if testing.Short() {
		lengths = []int{MinPractice, 10}
	}
	for name, k := range learners() {
		for _, from := range []string{quiz.Five, quiz.Even, quiz.All, "maqsum", "ayyub.samai-thaqil", "maqsum.fallahi", "saidi.masmudi-kabir.wahda"} {
			for _, minutes := range lengths {
				for seed := range seeds {
					some := pool(t, from)
					steps := k.Practice(minutes, some, seed)
					soundPlan(t, steps, minutes, some)
					if seed == 0 && minutes == MinPractice {
						slices.Reverse(some)
						require.Equal(t, steps, k.Practice(minutes, some, seed), "%s %s", name, from)
					}
				}
			}
		}
		require.Nil(t, k.Practice(5, nil, 1))
	}
	require.Panics(t, func() { Known{}.Practice(MinPractice-1, pool(t, quiz.Five), 1) })
	require.Nil(t, Known{Cycles: supplies}.Practice(5, []*rhythm.Cycle{get(t, "karachi")}, 1), "is no answer in a quiz")
}

// What each learner is for.
func TestPracticeIsHers(t *testing.T) {
	all := learners()
	reasons := func(name string) map[Reason]int {
		n := map[Reason]int{}
		for _, s := range all[name].Practice(20, pool(t, quiz.Five), 1) {
			n[s.Reason]++
		}
		return n
	}
	first := reasons("1 new")
	require.Equal(t, []Reason{ReasonFirst, ReasonSlow, ReasonTempo}, slices.Sorted(maps.Keys(first)))
	require.Positive(t, reasons("2 beginning")[ReasonRung])
	require.Greater(t, reasons("3 mixing up")[ReasonMixUp], 4)
	require.Positive(t, reasons("3 mixing up")[ReasonFirst], "a new rhythm")
	practised := reasons("4 practised")
	for _, r := range []Reason{ReasonWell, ReasonEdge, ReasonTempo} {
		require.Positive(t, practised[r], r)
	}
	require.Zero(t, practised[ReasonRung])
	dues := func(name string) int { return len(newPlanner(all[name], pool(t, quiz.Five), 1).dues) }
	require.Greater(t, dues("5 back again"), dues("4 practised"))
}

// A history with all kinds of broken and unknown things in it makes the same practice
// as without them.
func TestBrokenHistory(t *testing.T) {
	k := learners()["3 mixing up"]
	want := k.Practice(10, pool(t, quiz.Five), 4)
	nan := 7.
	k.Rounds = append(slices.Clone(k.Rounds),
		history.Round{}, history.Round{Kind: "juggling", Rhythm: "maqsum"},
		history.Round{Kind: history.Which, Rhythm: "maqsum", Riff: "bare", Right: true},                     // no choices
		history.Round{Kind: history.Dums, Rhythm: "gone", Riff: "bare", When: "yesterday"},                  // no such rhythm
		history.Round{Kind: history.Dums, Rhythm: "gone", Riff: "solo", Hide: &nan},                         // no such hide
		history.Round{Kind: history.Dums, Rhythm: "maqsum", Riff: "of another program"},                     // no such level
		history.Round{Kind: history.Stroke, Riff: "bare", Right: true, Helps: history.Helps{Hands: true}},   // helped
		history.Round{Kind: history.Dums, Rhythm: "maqsum", Riff: "bare", Helps: history.Helps{Balance: 9}}, // helped
	)
	k.Met = append(slices.Clone(k.Met), diary.Met{}, diary.Met{Rhythm: "maqsum", Riff: "bare", Day: "the 3rd", N: 1},
		diary.Met{Rhythm: "gone", Riff: "bare", Day: on(1), N: 1}, diary.Met{Rhythm: "maqsum", Riff: "loud", Day: on(1), N: 1},
		diary.Met{Rhythm: "maqsum", Riff: "bare", Day: on(1), Right: 3, N: 1}, diary.Met{Rhythm: "saidi", Riff: "bare", Day: on(999), N: 1})
	k.Mixed.Rhythms = append(slices.Clone(k.Mixed.Rhythms), "gone", "gone")
	k.Mixed.Worst = append([]diary.MixUp{{}, {Played: "gone", Said: "maqsum", Share: k.Mixed.Worst[0].Share}, {Played: "saidi", Said: "saidi", Share: k.Mixed.Worst[0].Share}}, k.Mixed.Worst...)
	got := k.Practice(10, pool(t, quiz.Five), 4)
	require.Equal(t, want, got)
	require.Nil(t, DueOn(k.Met, "today"))
}

// anyRound is a finished round with anything in it.
func anyRound(r *rand.Rand, ids []string) history.Round {
	hide := []*float64{nil, new(r.Float64()), new(math.NaN()), new(-1.)}[r.IntN(4)]
	var choices []string
	for range r.IntN(5) {
		choices = append(choices, quiz.Pick(r, ids))
	}
	return history.Round{
		Kind:   quiz.Pick(r, []string{history.Dums, history.Which, history.Stroke, history.HowMany, history.Same, history.Change, history.Stop, "juggling", ""}),
		Rhythm: quiz.Pick(r, ids), BPM: r.IntN(900) - 100, Riff: quiz.Pick(r, []string{"bare", "filled", "ornamented", "riffing", "solo", "loud", ""}),
		HideAsked: r.IntN(200) - 50, Hide: hide, Choices: choices, Right: r.IntN(2) == 0, Matched: r.IntN(9), Out: r.IntN(3), Added: r.IntN(3),
		When: quiz.Pick(r, []string{"", "yesterday", "2026-03-01T18:30:00+02:00", "1999-12-31T23:59:59Z", "2126-03-01T18:30:00Z"}),
	}
}

// Whatever the records hold there is a practice, and it is sound.
func TestPracticeOfAnything(t *testing.T) {
	ids := append(supplied(t).IDs(), "gone", "")
	n := uint64(60)
	if testing.Short() {
		n = 15
	}
	for seed := range n {
		r := rand.New(rand.NewPCG(seed, 41))
		k := Known{Cycles: supplies, Today: quiz.Pick(r, []string{on(3), "", "tomorrow"})}
		for range r.IntN(400) {
			k.Rounds = append(k.Rounds, anyRound(r, ids))
			k.Met = append(k.Met, diary.Met{Rhythm: quiz.Pick(r, ids), Riff: quiz.Pick(r, []string{"bare", "solo", ""}),
				Day: quiz.Pick(r, []string{on(-20), on(2), "", "never"}), Right: r.IntN(5) - 1, N: r.IntN(5) - 1})
		}
		k.Mixed = diary.Mixed{Rhythms: ids, Said: [][]int{{1, 2}, nil, {-4, 9, 3, 3}}}
		for range 5 {
			k.Mixed.Worst = append(k.Mixed.Worst, diary.MixUp{Played: quiz.Pick(r, ids), Said: quiz.Pick(r, ids), Share: stat.Share(r.IntN(20), 20)})
		}
		some := pool(t, []string{quiz.Five, quiz.Even, quiz.All, "saidi"}[seed%4])
		soundPlan(t, k.Practice(10, some, seed), 10, some)
	}
}

// The practice of a few learners, for reading.
func TestGoldenPractice(t *testing.T) {
	var b bytes.Buffer
	all := learners()
	for _, name := range slices.Sorted(maps.Keys(all)) {
		k := all[name]
		fmt.Fprintf(&b, "%s\n", name)
		for _, s := range k.Practice(10, pool(t, quiz.Five), 1) {
			fmt.Fprintf(&b, "  %v\n", s)
		}
	}
	golden(t, "practice.txt", b.String())
}

// What was told right through more riff since is not due; what was missed there is.
func TestOutdone(t *testing.T) {
	k := Known{Rounds: []history.Round{tappedRound(0, "maqsum", 100, 0, true)}, Cycles: supplies, Today: on(30)}
	for _, c := range []struct {
		what string
		met  diary.Met
		due  int
	}{
		{"heard through more since", metOn("maqsum", "riffing", 28, 4, 4), 0},
		{"not heard through it", metOn("maqsum", "riffing", 28, 1, 4), 1},
		{"before, not since", metOn("maqsum", "riffing", 0, 4, 4), 1},
		{"another rhythm", metOn("saidi", "riffing", 28, 4, 4), 1},
	} {
		k.Met = []diary.Met{metOn("maqsum", "filled", 1, 4, 4), c.met}
		dues := newPlanner(k, pool(t, quiz.Five), 1).dues
		dues = slices.DeleteFunc(dues, func(d Due) bool { return d.Rhythm != "maqsum" })
		require.Len(t, dues, c.due, c.what)
	}
}

// What was practised least of late comes first at the edge, with what is like it, and
// soon in the ladder of tempo.
func TestRarestFirst(t *testing.T) {
	k := Known{Cycles: supplies, Today: on(1)}
	for i, id := range []string{"saidi", "ciftetelli", "masmudi-kabir", "baladi", "maqsum"} {
		for range 4 + 3*i {
			k.Rounds = append(k.Rounds, tappedRound(0, id, 100, 0, true))
		}
	}
	for seed := range uint64(5) {
		p := newPlanner(k, pool(t, quiz.Five), seed)
		require.Equal(t, []string{"saidi", "maqsum"}, []string{p.own[0].ID, p.own[1].ID})
		first, _ := p.edge(0)
		require.Equal(t, []string{"saidi"}, first.Rhythms)
		tempo, _ := p.faster(0)
		require.Equal(t, []string{"ciftetelli"}, tempo.Rhythms, "not the one that was first at the edge")
	}
}

// What was found about riffs before makes no other practice.
func TestPracticeWithRiffs(t *testing.T) {
	riffs := new(Riffs)
	for name, k := range learners() {
		want := k.Practice(10, pool(t, quiz.Even), 2)
		k.Riffs = riffs
		for range 2 {
			require.Equal(t, want, k.Practice(10, pool(t, quiz.Even), 2), name)
		}
	}
	require.NotEmpty(t, riffs.reaches)
	require.NotEmpty(t, riffs.counts)
}
