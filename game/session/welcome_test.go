package session

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/paper"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// acts lets a control be used and returns the screen that comes of it.
func (g *testGame) acts(t *testing.T, page *paper.Page, action, value string) *view.Screen {
	t.Helper()
	page.Add(host.Event{Kind: host.Used, Action: action, Value: value})
	require.NoError(t, g.Update())
	return &page.Shown[len(page.Shown)-1]
}

// One press, and a round is under way; once it is over, Home greets otherwise, and
// the mark of it is kept.
func TestFirstRoundAtOnePress(t *testing.T) {
	g, page, wall := newTestGame(t, "")
	require.NoError(t, g.Update())
	require.NotNil(t, page.Shown[0].Find("first"))

	g.acts(t, page, view.ActFirst, "")
	require.Equal(t, link.FirstRound(), g.desk.shared.Address)
	require.Equal(t, round.CountIn, g.desk.controllers[view.ScreenDums].(*Dums).tapped.round.Phase())
	g.ticks(t, wall, 1000)
	require.NotNil(t, g.acts(t, page, view.ActStop, "").Find("begin"))
	require.NotNil(t, g.acts(t, page, view.ActHome, "").Find("first"), "it was not finished")
	require.False(t, g.Storage.Begun())

	g.acts(t, page, view.ActFirst, "")
	g.ticks(t, wall, 17000)
	require.Equal(t, round.Review, g.desk.controllers[view.ScreenDums].(*Dums).tapped.round.Phase())
	require.True(t, g.Storage.Begun())
	g.acts(t, page, view.ActChange, "")
	require.Nil(t, g.acts(t, page, view.ActHome, "").Find("first"))
	require.Equal(t, link.Address{Screen: view.ScreenHome}, g.desk.shared.Address)
}

// Whoever finished a round here earlier is not told again what this is.
func TestHomeLater(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	g.Storage.KeepBegun()
	g.desk.open(g.desk.shared.Host)
	g.desk.visit("")
	s := g.desk.screen()
	require.Nil(t, s.Find("what"))
	require.NotNil(t, s.Find("door-practise"))
}

// A dum and a tek sound, half a count apart; the drumhead turns with them up to
// the next count, later where the picture waits, and at no other time.
func TestHomeStrikes(t *testing.T) {
	const beat = 60_000 / 88 // ms
	for _, later := range []int{0, 150} {
		g, page, wall := checked(t, "?screen=home", later)
		x := g.desk.controllers[view.ScreenHome].(*Home)
		turns := func() bool {
			x.Draw(view.PlaceHead)
			return x.head.Shown.Turning
		}
		g.ticks(t, wall, 100)
		require.False(t, turns())
		g.acts(t, page, view.ActStrike, "")
		require.Len(t, x.track.Passage.Dums(), 1)
		g.ticks(t, wall, 100)
		require.Equal(t, later == 0, turns())
		g.ticks(t, wall, later+200)
		require.True(t, turns())
		g.ticks(t, wall, beat-200)
		require.False(t, turns())
		require.True(t, x.struck, "it rings")
		g.ticks(t, wall, 4*beat)
		require.False(t, x.struck)
	}
}

// Nothing goes on sounding when one leaves.
func TestHomeLeft(t *testing.T) {
	g, page, _ := newTestGame(t, "?screen=home")
	g.acts(t, page, view.ActStrike, "")
	g.acts(t, page, view.ActGo, view.ScreenListen)
	require.False(t, g.desk.controllers[view.ScreenHome].(*Home).struck)
	g.acts(t, page, view.ActHome, "")
	g.acts(t, page, view.ActStrike, "")
	page.Add(host.Event{Kind: host.Stopped, Reason: host.WhyGap})
	require.NoError(t, g.Update())
	require.True(t, g.desk.controllers[view.ScreenHome].(*Home).struck, "a gap, and so once more")
	page.Add(host.Event{Kind: host.Stopped, Reason: host.WhySilent})
	require.NoError(t, g.Update())
	require.NotNil(t, page.Shown[len(page.Shown)-1].Find("silent"), "and says so if nothing came")
}
