package screens

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// mixed is the game at a link, with its sound, which notes how the drums are balanced.
func mixed(t *testing.T, query string) (*testGame, *paper.Page, *paper.Wall, *paper.Sound) {
	t.Helper()
	g, page, wall := newTestGame(t, query)
	return g, page, wall, g.Sound
}

// The bass drum is heard alone for eight counts, from where it was asked for, and
// then both are back, wherever there is something to be heard.
func TestBassAloneForAnEight(t *testing.T) {
	for _, c := range []struct{ query, begin string }{
		{"?screen=listen&rhythm=maqsum&bpm=120&riff=riffing&seed=1", view.ActPlay},
		{"?screen=dums&rhythm=maqsum&bpm=120&eights=4&riff=riffing&seed=1", view.ActBegin},
		{"?screen=which&from=maqsum.saidi&answers=2&bpm=120&eights=8&riff=riffing&seed=1", view.ActBegin},
	} {
		t.Run(c.query, func(t *testing.T) {
			g, page, _, m := mixed(t, c.query)
			g.Use(view.ActBalance, "-50")
			require.Equal(t, []float64{1, 0.5}, []float64{m.Lead, m.Bass})
			g.Use(c.begin, "")
			g.Ticks(2500)
			g.Use(view.ActAlone, "yes")
			require.Equal(t, []float64{0, 1}, []float64{m.Lead, m.Bass}, "at once")
			require.True(t, page.Shown[len(page.Shown)-1].Find("alone").Pressed)
			g.Ticks(3980)
			require.Equal(t, 0.0, m.Lead, "eight counts at 120 last 4 s")
			g.Ticks(40)
			require.Equal(t, []float64{1, 0.5}, []float64{m.Lead, m.Bass}, "and then as it was set")
			require.False(t, page.Shown[len(page.Shown)-1].Find("alone").Pressed)

			g.Use(view.ActAlone, "yes")
			g.Use(view.ActAlone, "")
			require.Equal(t, 1.0, m.Lead, "pressed once more: at once")
			g.Use(view.ActAlone, "yes")
			g.Use(view.ActStop, "")
			require.Equal(t, 1.0, m.Lead, "stopped")
			g.Use(view.ActGo, view.ScreenSetUp)
			require.Equal(t, []float64{1, 1}, []float64{m.Lead, m.Bass}, "the balance belongs to the exercise")
		})
	}
}

// What helped is in the record of the round it helped in, and in no other; so is
// which riff it was and how far it hides the base.
func TestHelpIsRecorded(t *testing.T) {
	g, _, _, _ := mixed(t, "?screen=dums&rhythm=maqsum&bpm=120&eights=1&riff=riffing&hide=60&seed=7")
	g.Use(view.ActBalance, "30")
	g.Use(view.ActBegin, "")
	g.Ticks(2500)
	g.Use(view.ActAlone, "yes")
	g.Use(view.ActHands, "yes")
	g.Use(view.ActHands, "")
	g.Ticks(5000)
	require.Len(t, g.Storage.Rounds(), 1)
	require.Equal(t, history.Helps{Balance: 30, Bass: 1, Hands: true}, g.Storage.Rounds()[0].Helps)
	require.Equal(t, 1, g.Storage.Rounds()[0].RiffVersion)
	require.Equal(t, 60, g.Storage.Rounds()[0].HideAsked)
	require.Greater(t, *g.Storage.Rounds()[0].Hide, 0.0)

	g.Use(view.ActOnce, "")
	g.Ticks(7500)
	require.Len(t, g.Storage.Rounds(), 2)
	require.Equal(t, history.Helps{Balance: 30}, g.Storage.Rounds()[1].Helps)
	require.Equal(t, g.Storage.Rounds()[0].Hide, g.Storage.Rounds()[1].Hide, "the same riff")
}

// Each cycle that is heard in Listen is the next one of the riff, and the head and
// the line show it.
func TestListenFollowsTheRiff(t *testing.T) {
	g, _, _, _ := mixed(t, "?screen=listen&rhythm=maqsum&bpm=120&riff=solo&seed=3")
	x := g.Controllers[view.ScreenListen].(*Listen)
	g.Use(view.ActPlay, "")
	whole, err := x.riff.At(120).Cycles(0, 8)
	require.NoError(t, err)
	for n := range 8 {
		g.Ticks(1000)
		x.Draw(view.PlaceHead)
		x.Draw(view.PlaceLine)
		require.Equal(t, picture.RiffOf(whole, 8, n), x.head.Shown.Riff, "cycle %d", n)
		require.Equal(t, x.head.Shown.Riff, x.line.Shown.Riff)
		require.True(t, x.line.Shown.Live)
		require.InDelta(t, 4, x.line.Shown.Step, 1, "half a cycle in")
		g.Ticks(1000)
	}
	g.Use(view.ActLevel, view.LevelFilled)
	g.Ticks(4000)
	x.Draw(view.PlaceHead)
	require.Empty(t, x.line.Shown.Riff.Strokes, "the filled form fits the line's own steps")
	require.NotEmpty(t, x.head.Shown.Riff.Strokes)
	g.Use(view.ActStop, "")
	require.Equal(t, uint64(3), x.seed, "the link's own riff comes back")
}

// A round in review is heard once more, slowly or not, with its riff on the second
// ring and, cycle by cycle, the taps that came then; afterwards all of them are shown.
func TestReviewIsHeardAgain(t *testing.T) {
	g, page, wall, m := mixed(t, "?screen=dums&rhythm=maqsum&bpm=120&eights=1&riff=riffing&seed=7")
	x := &g.Controllers[view.ScreenDums].(*Tapped).tapped
	g.Use(view.ActBegin, "")
	g.Ticks(2000)
	begun := wall.Now() - 2000 + 1000*playback.Margin/float64(audio.Rate)
	for _, at := range []float64{2010, 3020, 3990, 5030} { // the second cycle's first tap is ahead
		page.Add(host.Event{Kind: host.Tapped, Tap: host.Tap{At: begun + at, By: "key", Round: x.taps.Number}})
		g.Ticks(int(begun + at + 20 - wall.Now()))
	}
	g.Ticks(2000)
	require.Equal(t, round.Review, x.round.Phase())
	require.NotNil(t, x.head.Shown.Review)

	g.Use(view.ActDrums, roundview.DrumsLead)
	require.Equal(t, 1.0, m.Bass, "nothing is heard yet")
	g.Use(view.ActHear, "")
	require.Equal(t, []float64{1, 0}, []float64{m.Lead, m.Bass})
	g.Use(view.ActDrums, roundview.DrumsBass)
	require.Equal(t, []float64{0, 1}, []float64{m.Lead, m.Bass}, "at once")
	for cycle, taps := range [][]float64{{0.005, 0.51}, {-0.005, 0.515}} {
		g.Ticks(1000)
		x.draw(view.PlaceHead)
		require.Nil(t, x.head.Shown.Review)
		require.Equal(t, picture.RiffOf(x.round.Played(0), 8, cycle), x.head.Shown.Riff)
		require.Len(t, x.head.Shown.Taps, 2)
		for i := range taps {
			require.InDelta(t, taps[i], x.head.Shown.Taps[i].Turn, 0.001)
		}
		g.Ticks(1000)
	}
	g.Ticks(50)
	require.False(t, x.hears, "it ends by itself")
	require.Equal(t, []float64{1, 1}, []float64{m.Lead, m.Bass})
	x.draw(view.PlaceHead)
	require.NotNil(t, x.head.Shown.Review)
	require.Empty(t, x.head.Shown.Taps)

	g.Use(view.ActSlowly, "yes")
	g.Use(view.ActHear, "")
	require.Equal(t, 80, x.track.Passage.BPM(), "two thirds")
	g.Use(view.ActStop, "")
	require.Equal(t, round.Review, x.round.Phase(), "stopped, and still in review")
	require.Len(t, g.Storage.Rounds(), 1)
}

// Hands that move cost pictures, not memory.
func TestMovingHandsAllocateNothing(t *testing.T) {
	g, _, wall, _ := mixed(t, "?screen=dums&rhythm=masmudi-kabir&bpm=60&eights=1&riff=solo&seed=2")
	g.Use(view.ActBegin, "")
	g.Use(view.ActHands, "yes")
	frame := func() {
		wall.Pass(5)
		g.Update()
		g.Controller.Draw(view.PlaceHead)
	}
	g.Ticks(4200)
	frame()
	require.True(t, g.Controllers[view.ScreenDums].(*Tapped).tapped.head.Shown.ShowHands)
	require.Zero(t, testing.AllocsPerRun(200, frame))
	require.Less(t, g.Controllers[view.ScreenDums].(*Tapped).tapped.round.Heard(), 8*time.Second, "all of it while it is played")
}

// A bass drum that is heard alone at the end of a round is not alone after it.
func TestBothDrumsAreBackAfterARound(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	g.Use(view.ActBegin, "")
	x := g.dums()
	for x.round.Heard() < x.round.End()-time.Second {
		g.Ticks(50)
	}
	g.Use(view.ActAlone, "yes")
	require.Equal(t, []float64{0, 1}, []float64{g.Sound.Lead, g.Sound.Bass})
	g.Ticks(2000)
	require.Equal(t, view.Reviewing, x.phase())
	require.Equal(t, []float64{1, 1}, []float64{g.Sound.Lead, g.Sound.Bass})
	require.False(t, g.Shared.Ear.Alone)
}
