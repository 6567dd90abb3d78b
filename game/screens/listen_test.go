package screens

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/view"
)

func (g *testGame) listen() *Listen { return g.Controllers[view.ScreenListen].(*Listen) }

const listenLink = "?screen=listen&rhythm=maqsum&bpm=100&riff=ornamented"

// A rhythm file of the player's own is heard at its usual tempo; a broken one says where,
// and changes nothing.
func TestARhythmOfThePlayersOwn(t *testing.T) {
	const mine = "name: mine\nmetre: 4/4\nskeleton: DTTTDTTT\ntempo: 80 95 110 quarter\nmemory: all of it\n"
	g, _, _ := newTestGame(t, listenLink)
	rhythms := len(g.Shared.Rhythms().IDs())
	for name, text := range map[string]string{
		"broken": "name: mine\nskeleton: DXT\n", "empty": "",
	} {
		g.Use(view.ActFile, "mine.txt\n"+text)
		require.Contains(t, g.listen().problem, "mine.txt", name)
		require.Equal(t, "maqsum", g.Shared.Address.Rhythm)
		require.Len(t, g.Shared.Rhythms().IDs(), rhythms)
	}
	g.Use(view.ActFile, "mine.txt\n"+strings.Replace(mine, "80 95 110", "300 390 400", 1))
	require.Contains(t, g.listen().problem, "its usual tempo is 390")
	g.Use(view.ActFile, "mine.txt\n"+strings.Replace(mine, "80 95 110", "20 25 30", 1))
	require.NotEmpty(t, g.listen().problem)
	require.Equal(t, "maqsum", g.Shared.Address.Rhythm, "nor one as slow")
	g.Use(view.ActPlay, "")
	g.Ticks(500)
	g.Use(view.ActFile, "mine.txt\n"+mine)
	require.Empty(t, g.listen().problem)
	require.Equal(t, "mine", g.Shared.Cycle().ID)
	require.Equal(t, 95, g.Shared.Address.BPM)
	require.Len(t, g.Shared.Rhythms().IDs(), rhythms+1)
	g.Ticks(100)
	require.Equal(t, "mine", g.listen().loop.Shows.Rhythm(0).ID, "at once")
	require.Less(t, g.listen().loop.Turn, 0.1, "from its first step")
}

// Stopped, the next time another riff is heard, unless the link asks for one.
func TestWhichRiffIsHeardNext(t *testing.T) {
	for link, same := range map[string]bool{listenLink: false, listenLink + "&seed=7": true} {
		g, _, _ := newTestGame(t, link)
		g.Wall.Fixed = 0
		g.Use(view.ActPlay, "")
		g.Ticks(500)
		seed := g.listen().seed
		g.Use(view.ActTempo, "90")
		require.Equal(t, seed, g.listen().seed, "faster or slower, it is the same")
		g.Use(view.ActStop, "")
		require.False(t, g.listen().loop.On)
		require.Equal(t, same, seed == g.listen().seed)
		seed = g.listen().seed
		g.Use(view.ActStop, "")
		require.Equal(t, seed, g.listen().seed, "stopped twice is stopped once")
	}
}

func TestListeningIsInterrupted(t *testing.T) {
	g, _, _ := newTestGame(t, listenLink)
	g.Controller.Interrupt(host.WhyGap)
	require.False(t, g.listen().loop.On, "nothing was played")
	g.Use(view.ActPlay, "")
	g.Ticks(1500)
	g.Use(view.ActAlone, "yes")
	g.Controller.Interrupt(host.WhyGap)
	require.True(t, g.listen().loop.On, "after a gap it is played on")
	require.False(t, g.Shared.Ear.Alone, "from its beginning, and with both drums")
	g.Ticks(100)
	require.Less(t, g.listen().loop.Turn, 0.1)
	g.Controller.Interrupt(host.WhyHidden)
	require.False(t, g.listen().loop.On)
}

// A tempo is heard from the next cycle on, and the head turns with what is heard.
func TestATempoIsHeardFromTheNextCycle(t *testing.T) {
	g, _, _ := newTestGame(t, listenLink)
	g.Use(view.ActPlay, "")
	g.Ticks(500)
	g.Use(view.ActTempo, "120")
	g.Ticks(200)
	require.Equal(t, 100, g.listen().loop.Shows.BPM(), "the cycle that has begun is played to its end")
	last := g.listen().loop.Turn
	for g.listen().loop.Turn >= last {
		last = g.listen().loop.Turn
		g.Draw()
		g.Ticks(20)
	}
	require.Greater(t, last, 0.97)
	require.Equal(t, 120, g.listen().loop.Shows.BPM())
}

// Draw draws the head.
func (g *testGame) Draw() { g.Controller.Draw(view.PlaceHead) }
