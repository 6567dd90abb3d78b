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
	g, page, wall := newTestGame(t, "")
	require.NoError(t, g.Update())
	require.NotNil(t, page.Shown[0].Find("first"))

	g.acts(t, page, view.ActFirst, "")
	require.Equal(t, link.FirstRound(), g.desk.shared.Address)
	require.Equal(t, view.Playing, g.desk.phase())
	g.ticks(t, wall, 1000)
	require.NotNil(t, g.acts(t, page, view.ActStop, "").Find("begin"))
	require.NotNil(t, g.acts(t, page, view.ActHome, "").Find("first"), "it was not finished")
	require.False(t, g.Storage.Begun())

	g.acts(t, page, view.ActFirst, "")
	g.ticks(t, wall, 17000)
	require.Equal(t, view.Reviewing, g.desk.phase())
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
