package session

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/paper"
	"groundbeat/game/quiz"
	"groundbeat/game/screens"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// finish plays what is under way to its end, or answers it.
func (g *testGame) finish(t *testing.T, page *paper.Page, wall *paper.Wall) {
	t.Helper()
	require.Equal(t, view.Playing, g.session.phase(), "it begins by itself")
	switch g.session.controller.(type) {
	case *screens.Tapped:
		for range 200 {
			if g.session.phase() == view.Playing {
				g.Ticks(500)
			}
		}
	case *screens.Which:
		right := g.right(t)
		g.Ticks(6000)
		g.Use(view.ActAnswer, right)
		kept := g.Storage.Rounds()
		require.True(t, kept[len(kept)-1].Right)
	default:
		require.Fail(t, "a step of another screen")
	}
	require.Equal(t, view.Reviewing, g.session.phase())
}

// right is what is right in the question that the address asks.
func (g *testGame) right(t *testing.T) string {
	t.Helper()
	s := &g.session.shared
	a := s.Address
	pool, err := quiz.From(s.Rhythms(), a.From)
	require.NoError(t, err)
	lean := s.Lean()
	lean.Fill = a.Asked != 1
	q, err := lean.Next(quiz.Ask(a.Ask), pool, max(a.Answers, link.LeastAnswers), a.BPM, s.Level(), s.Seed())
	require.NoError(t, err)
	return q.Right
}

// meets goes through what is new in a step: each rhythm is heard and seen, with one
// filled button, before it is asked. It returns how many there were.
func (g *testGame) meets(t *testing.T, page *paper.Page, wall *paper.Wall) (n int) {
	t.Helper()
	for g.session.meeting() {
		g.Ticks(300)
		s := page.Screen()
		require.Equal(t, view.ScreenListen, g.session.shared.Address.Screen)
		require.True(t, g.session.underWay, "it is heard")
		require.Contains(t, s.Find("heading").Name, "New to you")
		require.NotNil(t, s.Find("head"))
		bar := s.Find("bar").Children
		require.Equal(t, []string{view.ActPracticeAsk, view.LookPrimary}, []string{bar[len(bar)-1].Action, bar[len(bar)-1].Look})
		g.Use(view.ActPracticeAsk, "")
		n++
	}
	return n
}

// Ten minutes' practice, from Home, also before it is known what there was: its plan, at
// one press its rounds, each new rhythm shown before it is asked, and then the diary.
func TestPracticeFromItsPlan(t *testing.T) {
	g, page, wall := newTestGame(t, "")
	g.Storage.KeepBegun()
	g.session.open(g.session.shared.Host)
	g.Storage.Held = true
	g.Ticks(100)
	g.Use(view.ActDiaryPractise, "10")
	require.Equal(t, "?screen=practice&minutes=10", g.session.shared.Address.String())
	require.NotNil(t, page.Screen().Find("reading"), "first it is read what there was")
	g.Storage.Held = false
	g.Ticks(100)
	require.NotNil(t, page.Screen().Find("plan"))
	require.Nil(t, g.session.practice, "nothing begins by itself")
	known := g.session.shared.Known()
	planned := known.Practice(10, g.session.shared.Learner.Pool(known), wall.Seed())
	g.Use(view.ActBegin, "")
	steps := g.session.practice.Steps()
	require.Equal(t, planned, steps)
	require.Greater(t, len(steps), 5)
	seconds, met := 0, 0
	for i := range steps {
		seconds += steps[i].Seconds
		require.Equal(t, i, g.session.practice.At())
		met += g.meets(t, page, wall)
		if g.session.shared.Address.Screen == view.ScreenDums {
			require.Nil(t, page.Screen().Find("practice-on"), "nothing beside a round that is played, but the way out")
		}
		g.finish(t, page, wall)
		s := page.Screen()
		require.Contains(t, s.Find("practice-where").Text, "of")
		filled := 0
		s.Each(func(it *view.Item) {
			if it.Look == view.LookPrimary {
				filled++
			}
		})
		require.Equal(t, 1, filled)
		g.Use([]string{view.ActPracticeNext, view.ActNext}[i%2], "") // on, and next: the same
	}
	require.Equal(t, 3, met, "each of the first three rhythms, once")
	require.InDelta(t, 600, seconds, 20)
	require.Equal(t, view.ScreenDiary, g.session.shared.Address.Screen)
	require.Nil(t, g.session.practice)
	require.Len(t, g.Storage.Rounds(), len(steps))
	require.Equal(t, len(steps), g.session.shared.Learner.Kept())
	g.Ticks(500)
	s := page.Screen()
	require.Nil(t, s.Find("reading"))
	require.NotNil(t, s.Find("days-told"))

	// Whoever goes elsewhere has left the practice.
	g.Use(view.ActDiaryPractise, "5")
	g.Use(view.ActBegin, "")
	require.NotNil(t, g.session.practice)
	g.Use(view.ActGo, view.ScreenListen)
	require.Nil(t, g.session.practice)
}

// A practice in which nothing is tapped asks nothing faster and nothing that is hidden
// farther, and the next plan begins where this one did.
func TestPracticeOfNothing(t *testing.T) {
	g, page, wall := newTestGame(t, "?screen=practice&minutes=5")
	g.Ticks(100)
	g.Use(view.ActBegin, "")
	fastest := map[string]int{}
	for done := false; !done; done = g.session.practice == nil {
		g.meets(t, page, wall)
		s := g.session.practice.Step()
		if s.Kind == history.Dums {
			rhythm := s.Rhythms[0]
			if before, met := fastest[rhythm]; met {
				require.LessOrEqual(t, s.BPM, before, rhythm)
			}
			fastest[rhythm] = s.BPM
			g.finish(t, page, wall)
		}
		g.Use(view.ActPracticeNext, "")
	}
	require.NotEmpty(t, fastest)
	again := g.session.shared.Known()
	again.Rounds = nil
	require.Empty(t, again.Met)
	require.Equal(t, again.Practice(5, g.session.shared.Learner.Pool(again), 3), g.session.shared.Known().Practice(5, g.session.shared.Learner.Pool(again), 3))
}

// Pressed twice at once on the last part, the second press finds no practice; and where
// rounds are still being counted, a plan waits for all of them.
func TestPracticeWaitsAndEndsOnce(t *testing.T) {
	g, page, _ := newTestGame(t, "?screen=home")
	g.Storage.Behind, g.Storage.Held = []int{2, 1, 0}, true
	g.Ticks(100)
	g.Use(view.ActDiaryPractise, "5")
	for g.Storage.Held && g.Storage.Pending() > 0 {
		require.Nil(t, page.Screen().Find("plan"))
		g.Use(view.ActBegin, "")
		require.Nil(t, g.session.practice, "there is no plan yet")
		g.Storage.Release()
		g.Ticks(50)
	}
	g.Use(view.ActBegin, "")
	require.NotNil(t, g.session.practice)

	for g.session.practice.At() < len(g.session.practice.Steps())-1 {
		g.session.practice.Next()
	}
	twice := host.Event{Kind: host.Used, Action: view.ActPracticeNext}
	page.Add(twice, twice)
	g.Update()
	require.Equal(t, view.ScreenDiary, g.session.shared.Address.Screen)
}

// What is offered rests on the rounds, however late they come after the days; until
// then it is said that the diary is being read.
func TestOffersWaitForTheRounds(t *testing.T) {
	g, page, wall := newTestGame(t, "")
	g.Ticks(100)
	g.Use(view.ActDiaryPractise, "5")
	g.Use(view.ActBegin, "")
	for range g.session.practice.Steps() {
		g.meets(t, page, wall)
		g.finish(t, page, wall)
		g.Use(view.ActPracticeNext, "")
	}
	rounds := g.Storage.Rounds()

	opened := func(late bool) (offered []string) {
		g, page, _ := newTestGame(t, "?screen=diary")
		g.Storage.Put(rounds...)
		g.Storage.Held = late
		g.session.shared.Learner.Read()
		for g.Storage.Held && g.Storage.Pending() > 0 {
			g.Ticks(500)
			s := page.Shown[len(page.Shown)-1]
			require.NotNil(t, s.Find("reading"))
			require.Nil(t, s.Find("next-1"))
			g.Storage.Release()
		}
		g.Ticks(500)
		s := page.Shown[len(page.Shown)-1]
		require.Nil(t, s.Find("reading"))
		for i := range s.Find("next-list").Children {
			offered = append(offered, s.Find(fmt.Sprintf("next-%d-begin", i+1)).Text)
		}
		return offered
	}
	require.Equal(t, opened(false), opened(true))
}
