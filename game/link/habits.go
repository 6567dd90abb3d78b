package link

import (
	"net/url"
	"strings"

	"groundbeat/game/riff"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Habits are what somebody chose last of what screens have in common: a link that leaves
// it open, and a way from a screen that has none of it, are filled with them.
type Habits struct {
	Level  string         // of the lead drum; "": none was chosen
	Eights map[string]int // length in eights, by screen: what is long for one is short for another
}

// Fill returns the address to with what the one before it left open, and habits tell.
// Where a habit is not allowed, the address stays as it is.
func (h Habits) Fill(to, from Address) Address {
	level, err := riff.ParseLevel(h.Level)
	if err == nil && riff.Available(level) && to.Riff != "" && from.Riff == "" {
		to = to.WithLevel(h.Level)
	}
	of := targetOf(to.Screen)
	if n := h.Eights[to.Screen]; n >= of.least && n <= of.most && to.Eights != 0 && from.Eights == 0 {
		to.Eights = n
	}
	return to
}

// Bare reports whether a link names nothing but its screen, or not even that: then
// habits fill it. A link that says anything of a round is the same for everybody.
func Bare(query string) bool {
	values, err := url.ParseQuery(strings.TrimPrefix(query, "?"))
	values.Del("screen")
	return err == nil && len(values) == 0
}

// The themes: which of the two palettes is used.
const (
	ThemeSystem = ""      // as the person's system asks for
	ThemeDark   = "dark"  // for a dim studio
	ThemeLight  = "light" // for a bright room, with a projector
)

// Theme returns a theme that was remembered; that of the system if it is none.
func Theme(text string) string {
	if text == ThemeDark || text == ThemeLight {
		return text
	}
	return ThemeSystem
}

// theme is the choice of the palette.
func ThemeChoice(w say.Words, value string) view.Item {
	return view.Item{ID: "theme", Role: view.RoleChoice, Name: w.Say("theme"), Action: view.ActTheme, Value: themeOption(value), Options: []view.Option{
		{Value: themeOption(ThemeSystem), Label: w.Say("theme-system")}, {Value: ThemeDark, Label: w.Say("theme-dark")}, {Value: ThemeLight, Label: w.Say("theme-light")}}}
}

// themeOption is a theme as an option, of which none may be empty.
func themeOption(theme string) string {
	if theme == ThemeSystem {
		return "system"
	}
	return theme
}
