//go:build js

package game

import (
	"fmt"
	"io"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/diary"
	"groundbeat/scoring/history"
)

// testDiary is what is kept of one person, by itself; what it does not do is no part of
// the game's tests.
type testDiary struct {
	Diary
	rounds []history.Round
	held   []func() // what is to be told when the test says so
	holds  bool
	behind []int // rounds that are not counted yet, each time that days are told
}

func (d *testDiary) tell(f func()) {
	if d.held = append(d.held, f); !d.holds {
		d.release()
	}
}

func (d *testDiary) release() {
	for _, f := range d.held {
		f()
	}
	d.held = nil
}

func (d *testDiary) People(done func([]Person, Person, error)) {
	d.tell(func() { done([]Person{{ID: "1"}}, Person{ID: "1"}, nil) })
}

func (d *testDiary) Days(done func(Days)) {
	days := map[string]*diary.Day{}
	var all []*diary.Day
	for _, r := range d.rounds {
		date := diary.Date(r)
		if days[date] == nil {
			days[date] = &diary.Day{}
			all = append(all, days[date])
		}
		days[date].Add(r)
	}
	for _, n := range append(d.behind, 0)[:max(1, len(d.behind))] {
		d.tell(func() { done(Days{Days: all, Behind: n}) })
	}
}

func (d *testDiary) Latest(_ string, n int, done func([]history.Round, error)) {
	latest := slices.Clone(d.rounds)
	slices.Reverse(latest)
	d.tell(func() { done(latest[:min(n, len(latest))], nil) })
}

func (d *testDiary) LastImport(done func(Imported, error)) {
	d.tell(func() { done(Imported{}, nil) })
}

func (d *testDiary) Import(string, io.Reader, func(Preview, error)) {}

// finish plays what is under way to its end, or answers it.
func (g *Game) finish(t *testing.T, page *testPage, wall *testWall) {
	t.Helper()
	switch x := g.desk.exercise.(type) {
	case *tapping:
		require.True(t, x.round.UnderWay(), "it begins by itself")
		g.ticks(t, wall, int(x.round.End().Milliseconds())+3000)
		require.Equal(t, round.Review, x.round.Phase())
	case *asking:
		require.True(t, x.round.UnderWay(), "it begins by itself")
		g.ticks(t, wall, 6000)
		g.acts(t, page, view.ActAnswer, x.question.Right)
		require.Equal(t, round.Review, x.round.Phase())
	default:
		require.Fail(t, "a step of another exercise")
	}
}

// Ten minutes' practice at one press on Home, also before it is known what there was:
// round by round, to the diary.
func TestPracticeAtOnePress(t *testing.T) {
	g, page, wall := newTestGame(t, "")
	g.desk.Store.(*testStore).begun = true
	g.desk.open(g.desk.Outside)
	kept := g.desk.Diary.(*testDiary)
	kept.holds = true
	g.ticks(t, wall, 100)
	g.acts(t, page, view.ActDiaryPractise, "10")
	require.Nil(t, g.desk.practice, "first it is read what there was")
	kept.release()
	g.ticks(t, wall, 100)
	require.NotNil(t, g.desk.practice)
	steps := g.desk.practice.Steps()
	require.Greater(t, len(steps), 5)
	seconds := 0
	for i := range steps {
		seconds += steps[i].Seconds
		require.Equal(t, i, g.desk.practice.At())
		s := page.shown[len(page.shown)-1]
		if g.desk.exercise == g.desk.tapping {
			require.Nil(t, s.Find("practice-on"), "nothing beside a round that is played, but the way out")
		}
		g.finish(t, page, wall)
		s = page.shown[len(page.shown)-1]
		require.Contains(t, s.Find("practice-where").Text, "of")
		require.Equal(t, i < len(steps)-1, s.Find("practice-on") != nil)
		g.acts(t, page, []string{view.ActPracticeNext, view.ActNext}[i%2], "") // on, and next: the same
	}
	require.InDelta(t, 600, seconds, 20)
	require.Equal(t, view.ScreenDiary, g.desk.address.Screen)
	require.Nil(t, g.desk.practice)
	require.Len(t, g.desk.Store.(*testStore).kept, len(steps))
	require.Equal(t, len(steps), g.desk.learner.kept())
	g.ticks(t, wall, 500)
	s := page.shown[len(page.shown)-1]
	require.Nil(t, s.Find("reading"))
	require.NotNil(t, s.Find("days-told"))

	// Whoever goes elsewhere has left the practice.
	g.acts(t, page, view.ActDiaryPractise, "5")
	g.ticks(t, wall, 100)
	require.NotNil(t, g.desk.practice)
	g.acts(t, page, view.ActGo, view.ScreenListen)
	require.Nil(t, g.desk.practice)
}

// Pressed twice at once on the last part, the second press finds no practice; and where
// rounds are still being counted, a practice waits for all of them.
func TestPracticeWaitsAndEndsOnce(t *testing.T) {
	g, page, wall := newTestGame(t, "?screen=home")
	kept := g.desk.Diary.(*testDiary)
	kept.behind = []int{2, 1, 0}
	kept.holds = true
	g.ticks(t, wall, 100)
	g.acts(t, page, view.ActDiaryPractise, "5")
	for len(kept.held) > 0 {
		require.Nil(t, g.desk.practice)
		next := kept.held[0]
		kept.held = kept.held[1:]
		next()
		g.ticks(t, wall, 50)
	}
	require.NotNil(t, g.desk.practice)

	for g.desk.practice.At() < len(g.desk.practice.Steps())-1 {
		g.desk.practice.Next()
	}
	twice := Event{Kind: Act, Action: view.ActPracticeNext}
	page.events = append(page.events, twice, twice)
	require.NoError(t, g.Update())
	require.Equal(t, view.ScreenDiary, g.desk.address.Screen)
}

// What is offered rests on the rounds, however late they come after the days; until
// then it is said that the diary is being read.
func TestOffersWaitForTheRounds(t *testing.T) {
	g, page, wall := newTestGame(t, "")
	g.acts(t, page, view.ActDiaryPractise, "5")
	g.ticks(t, wall, 100)
	for range g.desk.practice.Steps() {
		g.finish(t, page, wall)
		g.acts(t, page, view.ActPracticeNext, "")
	}
	rounds := g.desk.Store.(*testStore).kept

	opened := func(late bool) (offered []string) {
		g, page, wall := newTestGame(t, "?screen=diary")
		kept := g.desk.Diary.(*testDiary)
		kept.rounds, kept.holds = rounds, late
		g.desk.learner.read()
		for len(kept.held) > 0 {
			g.ticks(t, wall, 500)
			s := page.shown[len(page.shown)-1]
			require.NotNil(t, s.Find("reading"))
			require.Nil(t, s.Find("next-1"))
			next := kept.held[0]
			kept.held = kept.held[1:]
			next()
		}
		g.ticks(t, wall, 500)
		s := page.shown[len(page.shown)-1]
		require.Nil(t, s.Find("reading"))
		for i := range s.Find("next-list").Children {
			offered = append(offered, s.Find(fmt.Sprintf("next-%d-begin", i+1)).Text)
		}
		return offered
	}
	require.Equal(t, opened(false), opened(true))
}
