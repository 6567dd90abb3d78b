package coach

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
)

// untried is a round in which no tap came.
func untried(kind string, day int, rhythm string, bpm, hide int) history.Round {
	r := roundOf(kind, day, rhythm, bpm, hide)
	r.Window, r.Out = 100, 8
	return r
}

// Rounds in which nothing was tapped leave edge, tempo, what is due and the whole plan
// where they were, however many there are, also of somebody new.
func TestUntriedMovesNothing(t *testing.T) {
	riffs := new(Riffs)
	for name, k := range learners() {
		k.Riffs = riffs
		want := k.Practice(10, pool(t, quiz.Even), 3)
		with := k
		with.Rounds = slices.Clone(k.Rounds)
		book := diary.New(supplies)
		for i := range 60 {
			for _, kind := range tappedKinds() {
				r := untried(kind, 20, []string{"maqsum", "saidi", "wahda"}[i%3], 60+i, i)
				with.Rounds = append(with.Rounds, r)
				book.Add(r)
			}
		}
		with.Met = append(slices.Clone(k.Met), book.Met("studio")...)
		require.Equal(t, want, with.Practice(10, pool(t, quiz.Even), 3), name)
		require.Equal(t, k.Edge(history.Dums).Level, with.Edge(history.Dums).Level, name)
		require.Equal(t, TempoOf(k.Rounds, pool(t, quiz.Even), ""), TempoOf(with.Rounds, pool(t, quiz.Even), ""), name)
	}
}

// tappedKinds are the kinds of round whose strokes are tapped.
func tappedKinds() (all []string) {
	for _, k := range history.Kinds {
		if k.Play == history.Tapped {
			all = append(all, k.ID)
		}
	}
	return all
}

// dumsStep is a step in which dums are tapped.
func dumsStep(rhythm string, bpm int, level riff.Level, hide int) Step {
	return Step{Kind: history.Dums, Rhythms: []string{rhythm}, BPM: bpm, Level: level, Hide: hide, Eights: 4, Seed: 1}
}

// throughAll goes through a plan, of each step of which a round comes; nil: it is left out.
func throughAll(steps []Step, of func(s Step) *history.Round) (asked []Step) {
	c := NewCourse(steps)
	for {
		asked = append(asked, c.Step())
		if r := of(c.Step()); r != nil {
			c.Finished(*r)
		}
		if !c.Next() {
			return asked
		}
	}
}

// A practice in which nothing is tapped goes up with nothing: neither tempo nor riff.
// What went wrong is not asked faster; what was right, or was left out, is asked as
// planned.
func TestCourse(t *testing.T) {
	plan := []Step{
		dumsStep("maqsum", 90, riff.Ornamented, 26), dumsStep("baladi", 84, riff.Riffing, 41),
		dumsStep("saidi", 60, riff.Bare, 0), dumsStep("saidi", 64, riff.Bare, 0), dumsStep("saidi", 68, riff.Bare, 0),
		dumsStep("malfuf", 80, riff.Bare, 0),
	}
	of := func(matched, out, added int) func(s Step) *history.Round {
		return func(s Step) *history.Round {
			return &history.Round{Kind: s.Kind, Matched: matched, Out: out, Added: added}
		}
	}
	figures := func(steps []Step) (all [][2]int) {
		for _, s := range steps {
			all = append(all, [2]int{s.BPM, s.Hide})
		}
		return all
	}
	require.Equal(t, plan, throughAll(plan, of(8, 0, 0)), "all right")
	require.Equal(t, plan, throughAll(plan, func(Step) *history.Round { return nil }), "all left out")
	require.Equal(t, [][2]int{{90, 26}, {84, 26}, {60, 0}, {60, 0}, {60, 0}, {80, 0}}, figures(throughAll(plan, of(0, 8, 0))), "nothing tapped")
	require.Equal(t, [][2]int{{90, 26}, {84, 41}, {60, 0}, {60, 0}, {60, 0}, {80, 0}}, figures(throughAll(plan, of(3, 5, 4))), "all wrong")
	require.Equal(t, 68, plan[4].BPM, "the plan is left as it was")

	// The best of several rounds of a step counts; a question between says nothing of taps.
	c := NewCourse([]Step{plan[2], {Kind: history.Which}, plan[3]})
	require.False(t, c.Done())
	c.Finished(history.Round{Kind: history.Dums, Matched: 8})
	c.Finished(history.Round{Kind: history.Dums, Out: 8})
	require.True(t, c.Done())
	require.True(t, c.Next())
	c.Finished(history.Round{Kind: history.Which})
	require.True(t, c.Next())
	require.Equal(t, 64, c.Step().BPM)
	require.False(t, c.Next())
}

// What is planned for a learner never becomes harder in tempo or riff while nothing is
// tapped, whoever she is.
func TestCourseOfNothing(t *testing.T) {
	riffs := new(Riffs)
	for name, k := range learners() {
		k.Riffs = riffs
		most := map[string][2]int{}
		for _, s := range throughAll(k.Practice(20, pool(t, quiz.Even), 5), func(s Step) *history.Round {
			r := untried(s.Kind, 0, "maqsum", 60, 0)
			return &r
		}) {
			if s.Kind != history.Dums {
				continue
			}
			if first, met := most["hide"]; met {
				require.LessOrEqual(t, s.Hide, first[0], name)
			}
			most["hide"] = [2]int{s.Hide}
			if before, met := most[s.Rhythms[0]]; met {
				require.LessOrEqual(t, s.BPM, before[1], name)
			}
			most[s.Rhythms[0]] = [2]int{0, s.BPM}
		}
	}
}
