package classroom

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/rig"
	"groundbeat/game/view"
)

// testGame is a screen in a browser on paper.
type testGame struct {
	*rig.Rig
	desk *rig.Rig
}

func newTestGame(t *testing.T, query string) (*testGame, *paper.Page, *paper.Wall) {
	t.Helper()
	r := rig.New(query, func(s *control.Shared) rig.Controllers {
		return rig.Controllers{
			view.ScreenClass: NewClass(s),
		}
	})
	return &testGame{r, r}, r.Page, r.Wall
}

// acts lets a control be used and returns the screen that comes of it.
func (g *testGame) acts(t *testing.T, page *paper.Page, action, value string) *view.Screen {
	t.Helper()
	page.Add(host.Event{Kind: host.Used, Action: action, Value: value})
	require.NoError(t, g.Update())
	return &page.Shown[len(page.Shown)-1]
}

// ticks lets time pass, tick by tick.
func (g *testGame) ticks(t *testing.T, wall *paper.Wall, ms int) {
	t.Helper()
	for range ms / 10 {
		wall.Pass(10)
		require.NoError(t, g.Update())
	}
}
