package session

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/link"
	"groundbeat/game/view"
)

// One press, and a round is under way; once it is over, Home greets otherwise, and
// the mark of it is kept.
func TestFirstRoundAtOnePress(t *testing.T) {
	g, page, _ := newTestGame(t, "")
	g.Update()
	require.NotNil(t, page.Shown[0].Find("first"))

	g.Use(view.ActFirst, "")
	require.Equal(t, link.FirstRound(), g.session.shared.Address)
	require.Equal(t, view.Playing, g.session.phase())
	g.Ticks(1000)
	require.NotNil(t, g.Use(view.ActStop, "").Find("begin"))
	require.NotNil(t, g.Use(view.ActHome, "").Find("first"), "it was not finished")
	require.False(t, g.Storage.Begun())

	g.Use(view.ActFirst, "")
	g.Ticks(17000)
	require.Equal(t, view.Reviewing, g.session.phase())
	require.True(t, g.Storage.Begun())
	g.Use(view.ActChange, "")
	require.Nil(t, g.Use(view.ActHome, "").Find("first"))
	require.Equal(t, link.Address{Screen: view.ScreenHome}, g.session.shared.Address)
}

// Whoever finished a round here earlier is not told again what this is.
func TestHomeLater(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	g.Storage.KeepBegun()
	g.session.open(g.session.shared.Host)
	g.session.visit("")
	s := g.session.screen()
	require.Nil(t, s.Find("what"))
	require.NotNil(t, s.Find("door-practise"))
}
