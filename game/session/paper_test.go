package session

import (
	"testing"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/paper"
)

// testGame is a session in a browser on paper.
type testGame struct {
	*paper.Browser
	session *Session
}

// newTestGame is the session at a link, on a device that plays at once, with the same seed
// each time.
func newTestGame(t *testing.T, query string) (*testGame, *paper.Page, *paper.Wall) {
	t.Helper()
	g := &testGame{Browser: paper.New(paper.Ideal, 1)}
	g.Wall.Fixed, g.Page.Keeps = 7, true
	g.Wall.Set(time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC))
	g.Open(query, func(h *host.Host) paper.Game {
		g.session = New(h)
		return g.session
	})
	g.Wall.Pass(1000)
	return g, g.Page, g.Wall
}

const readyLink = "?screen=dums&rhythm=maqsum&bpm=120&eights=1&riff=bare&seed=7"
