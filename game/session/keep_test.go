package session

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/view"
)

// Rounds that wait are told on the next screen and on every later one, until none does;
// what can be done of it is done.
func TestWaitingRoundsAreTold(t *testing.T) {
	g, page, _ := newTestGame(t, readyLink)
	store := g.desk.shared.Store.(*testStore)
	reloads := 0
	g.desk.shared.Reload = func() { reloads++ }
	require.NoError(t, g.Update())
	require.Nil(t, page.shown[0].Find("waiting"))

	store.storage = view.Storage{Waiting: 2, Aside: true}
	page.events = append(page.events, host.Event{Kind: host.Stored})
	require.NoError(t, g.Update())
	require.Contains(t, page.shown[1].Find("waiting").Text, "2 rounds could not be kept yet")
	require.NotNil(t, g.acts(t, page, view.ActGo, view.ScreenListen).Find("waiting"))
	require.NotNil(t, g.acts(t, page, view.ActSaveWaiting, "").Find("waiting"))
	require.Equal(t, 1, store.saved)

	store.storage = view.Storage{Aside: true, Older: true}
	require.NotNil(t, g.acts(t, page, view.ActHome, "").Find("reload"))
	g.acts(t, page, view.ActReload, "")
	require.Equal(t, 1, reloads)
	store.storage = view.Storage{Aside: true}
	require.Nil(t, g.acts(t, page, view.ActGo, view.ScreenDums).Find("keeping"))
}
