package session

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/view"
)

// testGame is a session in a browser on paper.
type testGame struct {
	*paper.Browser
	desk *Session
}

// newTestGame is the session at a link, on a device that plays at once, with the same seed
// each time.
func newTestGame(t *testing.T, query string) (*testGame, *paper.Page, *paper.Wall) {
	t.Helper()
	g := &testGame{Browser: paper.New(paper.Ideal, 1)}
	g.Wall.Fixed, g.Page.Keeps = 7, true
	g.Wall.Set(time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC))
	g.Open(query, func(h *host.Host) paper.Game {
		g.desk = New(h)
		return g.desk
	})
	g.Wall.Pass(1000)
	return g, g.Page, g.Wall
}

// Update is a frame in which no time passes.
func (g *testGame) Update() error {
	pace := g.Pace
	g.Pace = 0
	g.Frame()
	g.Pace = pace
	return nil
}

const readyLink = "?screen=dums&rhythm=maqsum&bpm=120&eights=1&riff=bare&seed=7"

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

// on sends an action of the page, and returns what is shown then.
func (g *testGame) on(t *testing.T, page *paper.Page, action, value string) *view.Screen {
	t.Helper()
	page.Add(host.Event{Kind: host.Used, Action: action, Value: value})
	require.NoError(t, g.Update())
	return &page.Shown[len(page.Shown)-1]
}
