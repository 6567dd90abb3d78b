package screens

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
)

// A dum and a tek sound, half a count apart; the drumhead turns with them up to
// the next count, later where the picture waits, and at no other time.
func TestHomeStrikes(t *testing.T) {
	const beat = 60_000 / 88 // ms
	for _, later := range []int{0, 150} {
		g, _, _ := checked(t, "?screen=home", later)
		x := g.Controllers[view.ScreenHome].(*Home)
		turns := func() bool {
			x.Draw(view.PlaceHead)
			return x.head.Shown.Turning
		}
		g.Ticks(100)
		require.False(t, turns())
		g.Use(view.ActStrike, "")
		require.Len(t, x.track.Passage.Strokes(rhythm.Stroke.Low), 1)
		g.Ticks(100)
		require.Equal(t, later == 0, turns())
		g.Ticks(later + 200)
		require.True(t, turns())
		g.Ticks(beat - 200)
		require.False(t, turns())
		require.True(t, x.struck, "it rings")
		g.Ticks(4 * beat)
		require.False(t, x.struck)
	}
}

// Nothing goes on sounding when one leaves.
func TestHomeLeft(t *testing.T) {
	g, page, _ := newTestGame(t, "?screen=home")
	g.Use(view.ActStrike, "")
	g.Use(view.ActGo, view.ScreenListen)
	require.False(t, g.Controllers[view.ScreenHome].(*Home).struck)
	g.Use(view.ActHome, "")
	g.Use(view.ActStrike, "")
	page.Add(host.Event{Kind: host.Stopped, Reason: host.WhyGap})
	g.Update()
	require.True(t, g.Controllers[view.ScreenHome].(*Home).struck, "a gap, and so once more")
	page.Add(host.Event{Kind: host.Stopped, Reason: host.WhySilent})
	g.Update()
	require.NotNil(t, page.Shown[len(page.Shown)-1].Find("silent"), "and says so if nothing came")
}
