package screens

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

func (g *testGame) change() *Change { return g.Controllers[view.ScreenChange].(*Change) }

// noticed is a round whose change is pressed for so long after it, up to the question what
// it has become.
func noticed(t *testing.T, after time.Duration) *testGame {
	t.Helper()
	link, r := changeLink(t, true)
	g, _, _ := newTestGame(t, link)
	differs, ok := r.Differs()
	require.True(t, ok)
	g.Use(view.ActBegin, "")
	g.pressed(t, g.Page, g.Wall, g.change().taps.Number, differs+after, differs+after+50*time.Millisecond)
	return g
}

// told lets it sound to its end and says what it has become.
func (g *testGame) told(t *testing.T, answer func(right, from string) string) history.Round {
	t.Helper()
	g.Ticks(10_000)
	require.Equal(t, view.Waiting, g.change().Phase())
	g.Use(view.ActAnswer, answer(g.change().change.To.ID, g.change().change.From.ID))
	require.Equal(t, view.Reviewing, g.change().Phase())
	return g.Storage.Rounds()[0]
}

func rightly(right, _ string) string { return right }

// wrongly is another of the names that were offered.
func (g *testGame) wrongly(right, _ string) string {
	for _, c := range g.change().change.Choices {
		if c.ID != right {
			return c.ID
		}
	}
	return ""
}

// Told rightly, both rhythms stand in the review; told wrongly, so does the one that was
// said, to be heard though it has no head. Where nothing changed there is one.
func TestTheSidesOfAChange(t *testing.T) {
	g := noticed(t, 700*time.Millisecond)
	kept := g.told(t, rightly)
	require.True(t, kept.Right)
	require.Len(t, g.change().sides.all, 2)

	g = noticed(t, 700*time.Millisecond)
	kept = g.told(t, g.wrongly)
	require.False(t, kept.Right)
	sides := g.change().sides.all
	require.Len(t, sides, 3)
	require.Equal(t, []string{kept.Rhythm, kept.To, kept.Answer}, []string{sides[0].ID, sides[1].ID, sides[2].ID})
	g.Use(view.ActHear, kept.Answer)
	from := g.Wall.Now()
	g.Ticks(2000)
	require.NotEmpty(t, g.Sound.Strikes(from, g.Wall.Now()))
	for _, place := range []string{view.PlaceHeadA, view.PlaceHeadB} {
		g.Controller.Draw(place)
	}
	heads := &g.change().sides.heads
	require.False(t, heads[0].Shown.Turning || heads[1].Shown.Turning)

	link, _ := changeLink(t, false)
	g, _, _ = newTestGame(t, link)
	g.Use(view.ActBegin, "")
	g.Ticks(23_000)
	require.Len(t, g.change().sides.all, 1)
	require.Nil(t, g.change().model().Differences)
}

// How late it was heard is told less what the set-up says, and kept as it was pressed, with
// the set-up beside it.
func TestHowLateAChangeWasHeard(t *testing.T) {
	for _, setup := range []float64{0, 80} {
		link, r := changeLink(t, true)
		g, _, _ := newTestGame(t, link)
		if setup != 0 {
			g.Shared.Outputs.Put(outputOf("studio", setup))
		}
		differs, _ := r.Differs()
		g.Use(view.ActBegin, "")
		g.pressed(t, g.Page, g.Wall, g.change().taps.Number, differs+time.Second, differs+1100*time.Millisecond)
		kept := g.told(t, rightly)
		require.Equal(t, setup, kept.Setup)
		require.InDelta(t, 1000, *kept.Taps[0].Offset, 0.1)
		result := g.change().model().Result
		require.InDelta(t, 1000-setup, float64(result.Late)/1e6, 0.1)
		require.Equal(t, setup != 0, result.SetUp != nil)
		require.Equal(t, setup == 0, slices.Contains(g.change().notes(), view.NoteNoSetUp))
	}
}

// A change that nobody pressed for asks for no name: it is kept as it was, not heard and not
// right, with the place of the change.
func TestAChangeThatNobodyHeard(t *testing.T) {
	link, r := changeLink(t, true)
	g, _, _ := newTestGame(t, link)
	g.Use(view.ActBegin, "")
	g.Ticks(23_000)
	require.Equal(t, view.Reviewing, g.change().Phase())
	kept := g.Storage.Rounds()[0]
	require.False(t, kept.Right)
	require.Equal(t, []string{r.Change.To.ID, ""}, []string{kept.To, kept.Answer})
	require.NotNil(t, kept.Changes)
	require.Empty(t, kept.Taps)
	changes, _ := r.Changes()
	differs, _ := r.Differs()
	require.InDelta(t, (differs - changes).Seconds(), kept.Strokes[0]-*kept.Changes, 1e-4)
	require.False(t, g.change().model().Result.Heard)
	require.False(t, slices.Contains(g.change().notes(), view.NoteNoSetUp), "no press was placed")
}

// Nothing of the eight after the one in which it was heard is to be heard.
func TestTheNextEightIsNotHeard(t *testing.T) {
	g := noticed(t, 700*time.Millisecond)
	end := g.change().round.End()
	require.Less(t, end, g.change().round.Passage.End(), "there would be more")
	for g.change().round.Heard() < end-200*time.Millisecond {
		g.Ticks(10)
	}
	require.Equal(t, []float64{1, 1}, []float64{g.Sound.Lead, g.Sound.Bass})
	for g.change().round.Heard() < end-40*time.Millisecond {
		g.Ticks(10)
	}
	require.Equal(t, []float64{0, 0}, []float64{g.Sound.Lead, g.Sound.Bass})
	g.Ticks(300)
	require.Equal(t, view.Waiting, g.change().Phase())
	require.Equal(t, []float64{1, 1}, []float64{g.Sound.Lead, g.Sound.Bass}, "and both are back")
	g.Ticks(3000)
	require.Empty(t, g.Sound.Strikes(g.Wall.Now()-2000, g.Wall.Now()), "it is over")
}

// While it is played the head shows the count-in, no strokes and no sweep; presses stand side
// by side in their order, wherever in the cycle they came.
func TestTheHeadTellsNothingOfAChange(t *testing.T) {
	link, r := changeLink(t, true)
	g, _, _ := newTestGame(t, link)
	g.Use(view.ActBegin, "")
	begins := g.begins() - 10
	for _, c := range []struct {
		ms   float64
		text string
	}{{100, "5"}, {700, "6"}, {1300, "7"}, {2000, "8"}, {2600, ""}} {
		for g.Wall.Now() < begins+c.ms {
			g.Ticks(10)
		}
		require.Equal(t, c.text, centreOf(g.Controller.Draw(view.PlaceHead)), "%g ms", c.ms)
	}
	differs, _ := r.Differs()
	require.Greater(t, differs, 4*time.Second)
	for n := range 3 {
		g.Page.Add(host.Event{Kind: host.Tapped, Tap: host.Tap{At: g.Wall.Now(), By: "key", Round: g.change().taps.Number}})
		g.Ticks(150 + 40*n)
		g.Controller.Draw(view.PlaceHead)
		h := &g.change().blank.Shown
		require.Len(t, h.Taps, n+1)
		require.False(t, h.Turning)
		require.True(t, h.Hidden || len(h.Base) == 0)
		for i, tap := range h.Taps {
			require.InDelta(t, float64(i)/24, tap.Turn, 1e-9)
		}
	}
	require.Nil(t, g.Controller.Draw(view.PlaceLine))
}

// Once more is the same question, next the one after it, and a setting makes another.
func TestTheSameChangeAndAnother(t *testing.T) {
	link, _ := changeLink(t, true)
	g, _, _ := newTestGame(t, link)
	seed := g.change().change.Seed
	g.Use(view.ActOnce, "")
	require.Equal(t, []any{seed, view.Playing}, []any{g.change().change.Seed, g.change().Phase()})
	number := g.change().taps.Number
	g.Use(view.ActNext, "")
	require.Equal(t, []any{seed + 1, view.Playing}, []any{g.change().change.Seed, g.change().Phase()})
	require.NotEqual(t, number, g.change().taps.Number, "what is tapped for the one is not for the other")
	g.Use(view.ActRhythm, "saidi")
	require.Equal(t, view.Ready, g.change().Phase())
	require.Equal(t, "saidi", g.change().change.From.ID)
	g.Use(view.ActBegin, "")
	g.Ticks(1000)
	g.change().GoOut()
	require.Equal(t, view.Ready, g.change().Phase())
	g.Use(view.ActStop, "")
	require.Empty(t, g.Storage.Rounds())
}

// Where there is no sound, no change can be heard, and nothing begins.
func TestAChangeNeedsSound(t *testing.T) {
	link, _ := changeLink(t, true)
	g, _, _ := newTestGame(t, link)
	g.Use(view.ActBegin, "")
	g.Ticks(500)
	g.Use(view.ActStop, "")
	g.Sound.None = true
	g.Ticks(50)
	g.Use(view.ActBegin, "")
	require.Equal(t, view.Ready, g.change().Phase())
}
