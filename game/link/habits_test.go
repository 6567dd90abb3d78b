package link

import (
	"groundbeat/game/proof"
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

// What a bare link and a way from Home leave open is filled; what one says, or the screen
// before has, stays; and so does what is not allowed, or was never chosen.
func TestHabits(t *testing.T) {
	h := Habits{Level: view.LevelRiffing, Eights: map[string]int{view.ScreenDums: 8, view.ScreenChange: 32, view.ScreenCarry: 16}}
	home := Default(view.ScreenHome)
	for name, c := range map[string]struct {
		to, from Address
		riff     string
		eights   int
	}{
		"from Home to Dums":          {home.To(view.ScreenDums), home, view.LevelRiffing, 8},
		"from Home to Carry on":      {home.To(view.ScreenCarry), home, view.LevelRiffing, 16},
		"from Home to Which":         {home.To(view.ScreenWhich), home, view.LevelRiffing, 4},
		"too long for Change":        {home.To(view.ScreenChange), home, view.LevelRiffing, 6},
		"from Home to Listen":        {home.To(view.ScreenListen), home, view.LevelRiffing, 0},
		"from Home to the diary":     {home.To(view.ScreenDiary), home, "", 0},
		"from Listen, which is bare": {Default(view.ScreenListen).To(view.ScreenDums), Default(view.ScreenListen), view.LevelBare, 8},
		"from Dums, which has both":  {Default(view.ScreenDums).To(view.ScreenCarry), Default(view.ScreenDums), view.LevelBare, 4},
		"a bare link to Dums":        {Default(view.ScreenDums), Address{}, view.LevelRiffing, 8},
	} {
		t.Run(name, func(t *testing.T) {
			got := h.Fill(c.to, c.from)
			require.Equal(t, []any{c.riff, c.eights}, []any{got.Riff, got.Eights})
			got.Riff, got.Eights = c.to.Riff, c.to.Eights
			require.Equal(t, c.to, got, "nothing else is touched")
		})
	}
	for _, odd := range []Habits{{}, {Level: "loud"}, {Level: view.LevelSolo + "x", Eights: map[string]int{view.ScreenDums: 33}}, {Eights: map[string]int{view.ScreenDums: -1}}} {
		require.Equal(t, Default(view.ScreenDums), odd.Fill(Default(view.ScreenDums), Address{}))
	}
	hides := Address{Screen: view.ScreenDums, Rhythm: "maqsum", Eights: 4, Riff: view.LevelRiffing, Hide: 40}
	require.Zero(t, Habits{Level: view.LevelBare}.Fill(hides, Address{}).Hide, "what does not belong to the level goes")
}

func TestBare(t *testing.T) {
	for query, want := range map[string]bool{
		"": true, "?": true, "?screen=dums": true, "screen=which": true,
		"?screen=dums&rhythm=maqsum": false, "?seed=7": false, "?screen=dums&x=1": false, "?%": false,
	} {
		require.Equal(t, want, Bare(query), query)
	}
}

func TestThemes(t *testing.T) {
	require.Equal(t, []string{"", "dark", "light", "", ""}, []string{Theme(""), Theme("dark"), Theme("light"), Theme("system"), Theme("blue")})
	w := proof.Words(t)
	for theme, value := range map[string]string{ThemeSystem: "system", ThemeDark: "dark", ThemeLight: "light"} {
		require.Equal(t, value, ThemeChoice(w, theme).Value)
	}
}
