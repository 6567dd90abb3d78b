package view

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every screen that has an id lies behind one door, but Home, which has the doors.
func TestEveryScreenHasADoor(t *testing.T) {
	var declared []string
	for name, id := range texts(t, "act.go") {
		if strings.HasPrefix(name, "Screen") {
			declared = append(declared, id)
		}
	}
	require.Equal(t, ScreenHome, Screens()[0])
	behind := map[string]int{}
	for _, d := range Doors(words(t)) {
		require.NotEmpty(t, d.ways, d.id)
		for _, to := range d.ways {
			behind[to.screen]++
			require.True(t, d.has(to.screen))
		}
		require.False(t, d.has(ScreenHome))
	}
	for _, id := range declared {
		require.Contains(t, Screens(), id)
	}
	for _, id := range Screens()[1:] {
		require.Equal(t, 1, behind[id], id)
	}
}

// Each screen has a name of its own, which the doors show; one that is not known is
// called Dums.
func TestSayScreen(t *testing.T) {
	w, by := words(t), map[string]string{}
	for _, id := range Screens() {
		name := SayScreen(w, id)
		require.Empty(t, by[name], "%s and %s", by[name], id)
		by[name] = id
	}
	require.Equal(t, "Home", SayScreen(w, ScreenHome))
	require.Equal(t, SayScreen(w, ScreenDums), SayScreen(w, "nowhere"))
}

// On Home a door is a heading and its ways, each with a sentence of what it does; what a
// way is called leads where the screen is called so.
func TestDoorOnHome(t *testing.T) {
	w := words(t)
	for _, d := range Doors(w) {
		it := d.Item(w)
		require.Equal(t, []Role{RoleHeading, RoleList}, []Role{it.Children[0].Role, it.Children[1].Role})
		require.Equal(t, 2, it.Children[0].Level)
		require.Len(t, it.Children[1].Children, len(d.ways))
		for _, line := range it.Children[1].Children {
			require.Equal(t, RoleListItem, line.Role)
			way := line.Children[0]
			require.Equal(t, ActGo, way.Action)
			require.Equal(t, SayScreen(w, way.Value), way.Name)
			require.True(t, strings.HasSuffix(way.Text, "."), way.Text)
			require.True(t, d.has(way.Value))
		}
	}
}

// Home itself and a screen that is not known have all doors at their foot, none marked.
func TestFootOfAnUnknownScreen(t *testing.T) {
	w := words(t)
	for _, id := range []string{ScreenHome, "nowhere"} {
		foot := nav(w, id)
		require.Empty(t, foot.Children[0].Children)
		require.Len(t, foot.Children[1].Children, len(Doors(w)))
		for _, c := range foot.Children[1].Children {
			require.False(t, c.Pressed)
		}
	}
}
