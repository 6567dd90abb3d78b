package screens

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/view"
)

// A dum and a tek sound, half a count apart; the drumhead turns with them up to
// the next count, later where the picture waits, and at no other time.
func TestHomeStrikes(t *testing.T) {
	const beat = 60_000 / 88 // ms
	for _, later := range []int{0, 150} {
		g, page, wall := checked(t, "?screen=home", later)
		x := g.desk.Controllers[view.ScreenHome].(*Home)
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
	require.False(t, g.desk.Controllers[view.ScreenHome].(*Home).struck)
	g.acts(t, page, view.ActHome, "")
	g.acts(t, page, view.ActStrike, "")
	page.Add(host.Event{Kind: host.Stopped, Reason: host.WhyGap})
	require.NoError(t, g.Update())
	require.True(t, g.desk.Controllers[view.ScreenHome].(*Home).struck, "a gap, and so once more")
	page.Add(host.Event{Kind: host.Stopped, Reason: host.WhySilent})
	require.NoError(t, g.Update())
	require.NotNil(t, page.Shown[len(page.Shown)-1].Find("silent"), "and says so if nothing came")
}
