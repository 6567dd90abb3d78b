package session

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
)

// visitedAnew is the game as it is after the page was loaded anew at a link.
func (g *testGame) visitedAnew(query string) *Session {
	o := *g.session.shared.Host
	o.Query = query
	return New(&o)
}

// The volume at the start is what it was last, and never louder; silence stays silence.
func TestVolumeIsRemembered(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	require.Equal(t, quiet, g.session.shared.Volume)
	for set, want := range map[string]int{"0": 0, "5": 5, "80": 80, "100": loudAtFirst, "-7": 0} {
		g.Use(view.ActVolume, set)
		require.Equal(t, want, g.visitedAnew(readyLink).shared.Volume, set)
	}
	g.session.shared.Store.Remember(rememberedVolume, "much")
	require.Equal(t, quiet, g.visitedAnew(readyLink).shared.Volume)
}

// What was chosen last of level and length is there where a bare address leaves it open;
// a link that says more is the same for everybody.
func TestHabitsAreRemembered(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=dums")
	g.Use(view.ActLevel, view.LevelFilled)
	g.Use(view.ActEights, "8")
	d := g.visitedAnew("?screen=dums")
	require.Equal(t, []any{view.LevelFilled, 8}, []any{d.shared.Address.Riff, d.shared.Address.Eights})
	d = g.visitedAnew("?screen=carry")
	require.Equal(t, []any{view.LevelFilled, 8}, []any{d.shared.Address.Riff, d.shared.Address.Eights}, "its own length")
	d = g.visitedAnew("?screen=stop")
	require.Equal(t, []any{view.LevelFilled, 6}, []any{d.shared.Address.Riff, d.shared.Address.Eights})
	d = g.visitedAnew("?screen=dums&rhythm=maqsum")
	require.Equal(t, []any{view.LevelBare, 4}, []any{d.shared.Address.Riff, d.shared.Address.Eights}, "a link is the same for everybody")

	d = g.visitedAnew("")
	d.act(view.ActGo, view.ScreenDums)
	require.Equal(t, []any{view.LevelFilled, 8}, []any{d.shared.Address.Riff, d.shared.Address.Eights})
	d = g.visitedAnew("")
	d.act(view.ActFirst, "")
	require.Equal(t, link.FirstRound(), d.shared.Address)
	g.Use(view.ActGo, view.ScreenClass)
	g.Use(view.ActLevel, view.LevelRiffing)
	require.Equal(t, view.LevelFilled, g.session.habits().Level, "what is for a class is not hers")
}

// A theme is used at once, and from the start of the next visit.
func TestThemeIsRemembered(t *testing.T) {
	g, page, _ := newTestGame(t, "")
	g.Update()
	require.Equal(t, "dark", g.Use(view.ActTheme, link.ThemeDark).Find("theme").Value)
	require.Equal(t, link.ThemeDark, page.Colour)
	page.Colour = "not set"
	g.visitedAnew("")
	require.Equal(t, link.ThemeDark, page.Colour)
	g.Use(view.ActTheme, "system")
	require.Equal(t, link.ThemeSystem, page.Colour)
}

// What another window has kept is taken up as soon as nothing is under way.
func TestToldByAnotherWindow(t *testing.T) {
	g, page, _ := newTestGame(t, readyLink)
	g.Update()
	g.Use(view.ActBegin, "")
	require.NoError(t, g.Storage.KeepOutputs(host.Outputs{Chosen: "studio", List: []host.Output{{Name: "studio", Mean: 38, When: someDay}}}))
	g.Storage.Remember(control.ThemeRemembered, link.ThemeLight)
	page.Add(host.Event{Kind: host.Told, Value: host.Things})
	g.Update()
	require.Zero(t, g.session.shared.SetUp(), "not in the middle of a round")
	g.Use(view.ActStop, view.ByEscape)
	g.Ticks(20)
	require.NotZero(t, g.session.shared.SetUp())
	require.Equal(t, link.ThemeLight, page.Colour)

	read := g.session.shared.Learner.Times
	page.Add(host.Event{Kind: host.Told, Value: host.Rounds})
	g.Ticks(20)
	require.Equal(t, read, g.session.shared.Learner.Times, "no screen tells of them")
	g.Use(view.ActGo, view.ScreenDiary)
	g.Ticks(20)
	require.Equal(t, read+1, g.session.shared.Learner.Times)
	g.Ticks(20)
	require.Equal(t, read+1, g.session.shared.Learner.Times, "once")
}

// Stop lies where Begin was: a second press in haste does not end the round, a later one does.
func TestSecondPressInHaste(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=dums&rhythm=maqsum&bpm=120&eights=2")
	g.Use(view.ActBegin, "")
	g.Ticks(300)
	g.Use(view.ActStop, "")
	require.Equal(t, view.Playing, g.session.phase())
	g.Ticks(300)
	g.Use(view.ActStop, "")
	require.Equal(t, view.Ready, g.session.phase())
	g.Ticks(1000)
	g.Use(view.ActBegin, "")
	g.Use(view.ActStop, view.ByEscape)
	require.Equal(t, view.Ready, g.session.phase(), "Escape lies elsewhere")
}
