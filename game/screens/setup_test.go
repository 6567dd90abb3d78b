package screens

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/soundview"
	"groundbeat/game/view"
)

func (g *testGame) setUp() *SetUp { return g.Controllers[view.ScreenSetUp].(*SetUp) }

// along begins Set-up and taps along, behind each dum by what is told of it, to its end.
func (g *testGame) along(t *testing.T, behind func(i int) (d time.Duration, tapped bool)) *soundview.Measured {
	t.Helper()
	g.Use(view.ActBegin, "headphones")
	x := g.setUp()
	var times []time.Duration
	for i, s := range x.round.Strokes(rhythm.Stroke.Low) {
		if d, tapped := behind(i); tapped {
			times = append(times, s+d)
		}
	}
	g.pressed(t, g.Page, g.Wall, x.number, append(times, x.round.End())...)
	g.Ticks(1500)
	return x.found
}

// What is found is what the taps were behind, or ahead; kept, it is the output in use, and
// taken off what is tapped on it.
func TestSetUpFindsThePlayersMean(t *testing.T) {
	for _, mean := range []time.Duration{-30 * time.Millisecond, 0, 75 * time.Millisecond, 200 * time.Millisecond} {
		g, _, _ := newTestGame(t, "?screen=set-up")
		found := g.along(t, func(i int) (time.Duration, bool) {
			return mean + time.Duration(i%2*2-1)*4*time.Millisecond, true // evenly about it
		})
		require.NotNil(t, found)
		require.Empty(t, found.Refusal)
		require.Equal(t, view.Reviewing, g.setUp().Phase())
		require.InDelta(t, mean, found.Mean, 2e6)
		require.Less(t, found.Spread, 6*time.Millisecond)
		require.Zero(t, g.Shared.SetUp(), "not before it is kept")
		g.Use(view.ActSetUpKeep, "headphones")
		require.Equal(t, "headphones", g.Shared.OutputName())
		require.Equal(t, found.Mean, g.Shared.SetUp())
		require.Equal(t, g.Shared.Outputs, g.Storage.Outputs())
		require.Equal(t, view.Ready, g.setUp().Phase())
	}
}

func TestSetUpRefusesWhatTellsNothing(t *testing.T) {
	for refusal, behind := range map[soundview.Refusal]func(i int) (time.Duration, bool){
		soundview.RefusedFew:       func(i int) (time.Duration, bool) { return 0, i < 2 },
		soundview.RefusedScattered: func(i int) (time.Duration, bool) { return time.Duration(i%3) * 120 * time.Millisecond, true },
	} {
		g, _, _ := newTestGame(t, "?screen=set-up")
		found := g.along(t, behind)
		require.NotNil(t, found)
		require.Equal(t, refusal, found.Refusal)
	}
}

func TestSetUpCutShortFindsNothing(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=set-up")
	g.Use(view.ActBegin, "")
	g.Ticks(3000)
	number := g.setUp().number
	g.Controller.Interrupt(host.WhyPaused)
	require.Equal(t, view.Voided, g.setUp().Phase())
	require.Nil(t, g.setUp().found)
	g.Use(view.ActOnce, "")
	require.Equal(t, view.Playing, g.setUp().Phase())
	require.Greater(t, g.setUp().number, number)
	g.Page.Add(host.Event{Kind: host.Tapped, Tap: host.Tap{At: g.Wall.Now() + 3000, Round: number}})
	g.Update()
	require.Empty(t, g.setUp().taps, "a tap of the round before")
	g.setUp().GoOut()
	require.Equal(t, view.Ready, g.setUp().Phase())
}

func TestOutputsAreUsedAndForgotten(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=set-up")
	for _, name := range []string{"studio", "headphones"} {
		g.Shared.Outputs.Put(host.Output{Name: name, Mean: 10, When: someDay})
	}
	g.Use(view.ActSetUpUse, "studio")
	require.Equal(t, "studio", g.Storage.Outputs().Chosen)
	g.Use(view.ActSetUpForget, "studio")
	require.Empty(t, g.Storage.Outputs().Chosen)
	require.Len(t, g.Storage.Outputs().List, 1)
}

// Where there is no sound there is nothing to tap along with.
func TestSetUpNeedsSound(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=set-up")
	g.Sound.None = true
	g.Ticks(50)
	g.Use(view.ActBegin, "")
	require.Equal(t, view.Ready, g.setUp().Phase())
}
