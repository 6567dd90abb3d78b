package screens

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/coach"
	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
)

func (g *testGame) which() *Which { return g.Controllers[view.ScreenWhich].(*Which) }

const whichLink = "?screen=which&from=five&answers=3&eights=2&seed=11"

// Whatever is answered is kept as it was answered, and right only if it was.
func TestEachAnswerIsKept(t *testing.T) {
	g, _, _ := newTestGame(t, whichLink)
	choices := g.which().question.Choices
	require.GreaterOrEqual(t, len(choices), 2)
	for i, c := range choices {
		g, _, _ := newTestGame(t, whichLink)
		g.Use(view.ActAnswer, c.ID)
		require.Empty(t, g.Storage.Rounds(), "nothing has been asked")
		g.Use(view.ActBegin, "")
		g.Ticks(3000)
		g.Use(view.ActAnswer, "no choice")
		require.Equal(t, view.Playing, g.which().Phase())
		g.Use(view.ActAnswer, c.ID)
		g.Use(view.ActAnswer, choices[(i+1)%len(choices)].ID)
		require.Len(t, g.Storage.Rounds(), 1, "answered once")
		r := g.Storage.Rounds()[0]
		require.Equal(t, c.ID, r.Answer)
		require.Equal(t, c.ID == g.which().question.Right, r.Right)
		require.InDelta(t, 3000, *r.Took, 60)
		length := g.which().question.Rhythm.Length(r.BPM).Seconds()
		require.InDelta(t, 3/length, r.Heard, 0.1, "in cycles")
		require.Len(t, r.Choices, len(choices))
	}
}

// A question lasts as long as it was asked for, however fast it is; then it waits, and it
// is heard once more as often as one likes.
func TestAQuestionLastsAFixedTime(t *testing.T) {
	g, _, _ := newTestGame(t, whichLink)
	asked := g.which().question
	g.Use(view.ActBegin, "")
	g.Ticks(9400)
	require.Equal(t, view.Playing, g.which().Phase(), "two eights of 4.8 s")
	g.Ticks(400)
	require.Equal(t, view.Waiting, g.which().Phase())
	g.Use(view.ActRepeat, "")
	require.Equal(t, view.Playing, g.which().Phase())
	require.True(t, g.which().repeated)
	require.Equal(t, asked.Right, g.which().question.Right)
	g.Use(view.ActNext, "")
	require.False(t, g.which().repeated)
	require.Equal(t, asked.Seed+1, g.which().question.Seed, "the next of the link's")
	g.Controller.Interrupt(host.WhyPaused)
	require.Equal(t, view.Voided, g.which().Phase())
	require.Empty(t, g.Storage.Rounds())
}

// A link of rhythms that make no question says so, and leads to one that does.
func TestALinkThatMakesNoQuestion(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=which&from=maqsum.fallahi&answers=2&bpm=100")
	require.Len(t, g.Shared.Problems, 1)
	require.Equal(t, "from", g.Shared.Problems[0].Name)
	require.Equal(t, link.Default(view.ScreenWhich), g.Shared.Address)
	require.NotEmpty(t, g.which().question.Choices)
}

// A plan is made once what there was before is known, and begins where there is sound.
func TestAPlanIsMadeOnce(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=home")
	s := &g.Shared
	var begun [][]coach.Step
	s.Practice.Begin = func(steps []coach.Step) { begun = append(begun, steps) }
	s.Address = link.Default(view.ScreenPractice)
	var x control.Controller = NewPlan(s)
	x.Prepare()
	require.False(t, x.Tick(0))
	x.Act(view.ActBegin, "")
	require.Empty(t, begun, "there is none yet")
	s.Learner.Read()
	g.Ticks(50)
	require.True(t, x.Tick(0))
	require.False(t, x.Tick(0), "made, it stays")
	long := len(x.(*Plan).steps)
	for value, want := range map[string]int{"1": 5, "20": 20, "99": 20, "": 5} {
		x.Act(view.ActDiaryMinutes, value)
		require.Equal(t, want, s.Address.Minutes, value)
	}
	x.Act(view.ActDiaryMinutes, "5")
	require.Less(t, len(x.(*Plan).steps), long)
	x.Act(view.ActBegin, "")
	require.Equal(t, [][]coach.Step{x.(*Plan).steps}, begun)
}
