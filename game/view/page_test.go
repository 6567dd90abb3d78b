package view

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/proof"
)

// A page is in the language of its words, and its title ends with the product's name.
func TestPageHasItsTitle(t *testing.T) {
	w := words(t)
	for title, want := range map[string]string{"": "Groundbeat", "Dums": "Dums – Groundbeat"} {
		for _, s := range []Screen{Page(w, "x", title, nil), BarePage(w, "x", title, nil)} {
			require.Equal(t, want, s.Title)
			require.Equal(t, "x", s.ID)
			require.Equal(t, "en", s.Lang)
			require.Equal(t, "ltr", s.Dir)
			require.Empty(t, s.Escape)
		}
	}
	w["direction"], w["language"] = "rtl", "ar"
	require.Equal(t, []string{"ar", "rtl"}, []string{BarePage(w, "x", "", nil).Lang, BarePage(w, "x", "", nil).Dir})
}

// A page differs from a bare one by its bar alone.
func TestBarePageHasNoBar(t *testing.T) {
	w := words(t)
	items := func() []Item { return []Item{Heading("heading", "A"), {}, {ID: "text", Role: RoleText, Text: "b"}} }
	require.Equal(t, []string{"heading", "text"}, ids(BarePage(w, ScreenDums, "", items()).Items))
	require.Equal(t, []string{"heading", "text", BarID}, ids(Page(w, ScreenDums, "", items()).Items))
}

// Where nothing plays, Escape leads Home, and the foot of the screen everywhere else.
func TestReadyScreenLeadsEverywhere(t *testing.T) {
	w := words(t)
	for _, here := range Screens()[1:] {
		s := ReadyScreen(w, here, SayScreen(w, here), []Item{Heading("heading", "x")})
		require.Equal(t, ActHome, s.Escape)
		require.Equal(t, "nav", s.Items[len(s.Items)-2].ID, "above the bar, at the foot")
		require.Equal(t, BarID, s.Items[len(s.Items)-1].ID)
		reached := map[string]bool{}
		s.Each(func(it *Item) {
			if it.Action == ActGo {
				require.Contains(t, Screens(), it.Value)
				require.False(t, reached[it.Value], "%s: twice to %s", here, it.Value)
				reached[it.Value] = true
			}
		})
		for _, d := range Doors(w) {
			require.True(t, reached[d.ways[0].screen], "%s: to %s", here, d.id)
		}
	}
}

// While one taps there are a line that says what to do, the drum, the helps and the way
// out, and nothing besides.
func TestTappingHasNothingBesides(t *testing.T) {
	w := words(t)
	help := Help{}
	s := Tapping(Page(w, ScreenDums, "Dums", []Item{Heading("old", "old")}), w, "Tap the dums", 7, Stage(w, "twin"), help.Buttons(w, 50)...)
	var order []string
	s.Each(func(it *Item) { order = append(order, it.ID) })
	require.Equal(t, []string{"heading", "tap", "head", BarID, "home", "alone", "hands", "stop"}, order)
	require.Equal(t, "tap", s.FocusID(), "a key taps at once")
	require.Equal(t, ActStop, s.Escape)
	require.Equal(t, "Tap the dums", s.Find("heading").Name)
	require.Equal(t, ActStop, s.Find("stop").Action)
	require.Equal(t, ActTap, s.Find("tap").Action)
	require.Equal(t, "Dums – Groundbeat", s.Title)
}

// Taps carry the number of their round, if it has one, so that one that comes late belongs
// to the round it was meant for.
func TestTapsCarryTheirRound(t *testing.T) {
	w := words(t)
	for round, want := range map[int]string{0: "", 1: "1", 42: "42"} {
		s := Tapping(Page(w, ScreenDums, "", nil), w, "x", round, Stage(w, "twin"))
		require.Equal(t, want, s.Find("tap").Value)
	}
}

// A still line is as wide as its place and says what it shows.
func TestStillHasItsTwin(t *testing.T) {
	w := words(t)
	for _, c := range proof.EveryRhythm(t) {
		l := picture.LineOf(c, c.Base(), nil, 0)
		it := Still(w, "line-x", &l)
		require.Equal(t, "line-x", it.ID)
		require.NotEmpty(t, it.Picture.Shapes)
		require.Equal(t, l.Twin(w), it.Text)
		require.Equal(t, it.Picture.Aspect(), it.Aspect)
		require.Positive(t, it.Aspect)
		require.Empty(t, it.Place, "it is a picture, and no place for a live one")
		require.Equal(t, LookBoard, it.Look)
	}
}
