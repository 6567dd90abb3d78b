package screens

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/view"
)

// voices are which strokes are heard from a performance time on, in order and each once.
func (g *testGame) voices(from float64) (all []audio.Voice) {
	for _, s := range g.Sound.Strikes(from-1, g.Wall.Now()) {
		all = append(all, s.Voice)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// At the sound check a dum is the low stroke of both drums and nothing else, and a tek their
// high one; it sounds once.
func TestWhatTheSoundCheckStrikes(t *testing.T) {
	heard := map[string][]audio.Voice{}
	for _, stroke := range []string{"dum", "tek"} {
		g, _, _ := newTestGame(t, "?screen=sound-check")
		from := g.begins()
		g.Use(view.ActStrike, stroke)
		g.Ticks(3000)
		require.Len(t, g.Sound.Strikes(from-1, g.Wall.Now()), 2, "one of each drum")
		heard[stroke] = g.voices(from)
		require.Equal(t, stroke == "dum", slices.Contains(heard[stroke], audio.BassDum))
		require.Equal(t, stroke == "tek", slices.Contains(heard[stroke], audio.BassTek))
	}
	for _, v := range heard["dum"] {
		require.NotContains(t, heard["tek"], v)
	}
}

// More of the bass drum is heard at once, by a dum; while the loop plays, in the loop. The
// other settings, and those of no screen, sound nothing.
func TestMoreBassIsHeardAtOnce(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=sound-check")
	x := g.Controllers[view.ScreenCheck].(*SoundCheck)
	for _, action := range []string{view.ActLater, view.ActMono, view.ActVolume} {
		g.Use(action, "40")
		require.False(t, x.struck, action)
	}
	g.Use(view.ActBass, "20")
	require.True(t, x.struck)
	g.Use(view.ActPlay, "")
	require.False(t, x.struck, "the loop in its place")
	g.Use(view.ActBass, "40")
	require.True(t, x.loop.On)
	require.False(t, x.struck)
	outputs := g.Storage.Outputs()
	require.Equal(t, 40, outputs.Adjustment().Bass, "kept")
	g.Use(view.ActStop, "")
	require.False(t, x.loop.On)
	g.Use(view.ActPlay, "")
	g.Ticks(1500)
	g.Controller.Interrupt(host.WhyGap)
	require.True(t, x.loop.On, "after a gap it is played on")
	g.Controller.Interrupt(host.WhyHidden)
	require.False(t, x.loop.On)
	require.Nil(t, x.Draw(view.PlaceLine))
}

// The loop is as regular as what it is to show: each stroke lights up when it is heard, on
// the step that the sweep has come to.
func TestTheCheckMovesWithTheSound(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=sound-check")
	x := g.Controllers[view.ScreenCheck].(*SoundCheck)
	g.Use(view.ActPlay, "")
	c, _ := g.Shared.Rhythms().Get(checkRhythm)
	since, strokes := g.Wall.Now(), 0
	for range 500 {
		g.Ticks(10)
		x.Draw(view.PlaceHead)
		for _, s := range g.Sound.Strikes(since, g.Wall.Now()) {
			if step := x.head.Shown.Turn * float64(c.Steps()); s.Base() && x.head.Shown.Turning {
				require.True(t, c.Skeleton[int(step)].Sounds(), "at %.2f", step)
				require.Equal(t, s.Low(), c.Skeleton[int(step)].Low())
				strokes++
			}
		}
		since = g.Wall.Now()
	}
	require.GreaterOrEqual(t, strokes, 8)
}

// Home strikes a dum and then a tek of the first rhythm, and no more; whoever has finished a
// round is greeted otherwise.
func TestHomeStrikesADumAndATek(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=home")
	from := g.begins()
	g.Use(view.ActStrike, "")
	g.Ticks(4000)
	var lows []bool
	for _, s := range g.Sound.Strikes(from-1, g.Wall.Now()) {
		if s.Base() {
			lows = append(lows, s.Low())
		}
	}
	require.Equal(t, []bool{true, false}, lows)
	before := g.Sound.Strikes(0, g.Wall.Now())
	g.Controller.Act(view.ActPlay, "")
	g.Ticks(2000)
	require.Equal(t, before, g.Sound.Strikes(0, g.Wall.Now()), "nothing else sounds here")
	require.NotNil(t, g.Page.Screen().Find("first"))
	g.Shared.Finished = true
	s := g.Screen()
	require.Nil(t, s.Find("first"))
	require.Nil(t, g.Controller.Draw(view.PlaceLine))
}

// Silence is told of what was struck alone, and no longer than until one comes back.
func TestSilenceAtHome(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=home")
	silent := func() bool {
		s := g.Screen()
		return s.Find("silent") != nil
	}
	g.Controller.Interrupt(host.WhySilent)
	require.False(t, silent(), "nothing was struck")
	g.Use(view.ActStrike, "")
	g.Controller.Interrupt(host.WhyHidden)
	require.False(t, silent(), "that is no matter of the sound")
	g.Use(view.ActStrike, "")
	g.Controller.Interrupt(host.WhySilent)
	require.True(t, silent())
	g.Use(view.ActStrike, "")
	require.False(t, silent(), "it is tried again")
	g.Controller.Interrupt(host.WhySilent)
	g.Use(view.ActHome, "")
	require.False(t, silent())
}
