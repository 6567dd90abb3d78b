package view

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// At the foot of a screen stand those of its own door, the screen itself marked, and the
// other doors; all from the list that Home has.
func TestFootHasItsOwnGroupAndTheDoors(t *testing.T) {
	w := words(t)
	for _, d := range Doors(w) {
		for _, here := range d.ways {
			foot := nav(w, here.screen)
			require.Len(t, foot.Children, 2)
			var own []string
			for _, c := range foot.Children[0].Children[1:] {
				own = append(own, c.Value)
				require.Equal(t, c.Value == here.screen, c.Pressed)
			}
			require.Len(t, own, len(d.ways))
			require.Len(t, foot.Children[1].Children, len(Doors(w))-1)
			for _, c := range foot.Children[1].Children {
				require.NotContains(t, own, c.Value, "another door leads elsewhere")
			}
		}
	}
}

func button(id, look, action string) Item {
	return Item{ID: id, Role: RoleButton, Look: look, Action: action, Name: id}
}

func group(id string, children ...Item) Item {
	return Item{ID: id, Role: RoleGroup, Children: children}
}

// Where the bar stands and what is in it.
func TestFramed(t *testing.T) {
	text, next, stop := Item{ID: "text", Role: RoleText}, button("next", LookPrimary, ActNext), button("stop", LookQuiet, ActStop)
	for name, c := range map[string]struct {
		items     []Item
		stand, in []string // of the screen, and in its bar
	}{
		"nothing to do":          {[]Item{text}, []string{"text", "bar"}, []string{"home"}},
		"next where it stood":    {[]Item{next, text}, []string{"bar", "text"}, []string{"home", "next"}},
		"stop before next":       {[]Item{text, next, stop}, []string{"text", "bar"}, []string{"home", "stop", "next"}},
		"out of an emptied row":  {[]Item{text, group("row", next), text}, []string{"text", "bar", "text"}, []string{"home", "next"}},
		"before what a row has":  {[]Item{group("row", next, text)}, []string{"bar", "row"}, []string{"home", "next"}},
		"out of a row in a row":  {[]Item{group("a", group("b", next)), text}, []string{"bar", "text"}, []string{"home", "next"}},
		"a quiet stop in a row":  {[]Item{group("row", stop)}, []string{"row", "bar"}, []string{"home"}},
		"a stop that is no exit": {[]Item{button("stop", "", ActStop)}, []string{"stop", "bar"}, []string{"home"}},
		"a quiet way on":         {[]Item{button("on", LookQuiet, ActNext)}, []string{"on", "bar"}, []string{"home"}},
		"the first stays filled": {[]Item{next, button("second", LookPrimary, ActOnce)}, []string{"bar"}, []string{"home", "second", "next"}},
		"nothing is left of nil": {[]Item{{}, text}, []string{"text", "bar"}, []string{"home"}},
	} {
		t.Run(name, func(t *testing.T) {
			got := Framed(words(t), ScreenDums, c.items)
			require.Equal(t, c.stand, ids(got))
			s := Screen{Items: got}
			require.Equal(t, c.in, ids(s.Find(BarID).Children))
		})
	}
}

// From Home there is no way home, and without anything to do no bar.
func TestFramedHome(t *testing.T) {
	require.Equal(t, []string{"text"}, ids(Framed(words(t), ScreenHome, []Item{{ID: "text", Role: RoleText}})))
	s := Screen{Items: Framed(words(t), ScreenHome, []Item{button("next", LookPrimary, ActFirst)})}
	require.Equal(t, []string{"next"}, ids(s.Find(BarID).Children))
}

// Whatever a screen has: nothing is lost, nothing comes twice, one button at most is
// filled, and it is the last of the one bar; and to frame it once more changes nothing.
func TestFramedKeepsAll(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		g := &maker{chance: chance}
		items := g.items(3)
		before, was := fmt.Sprintf("%+v", items), leaves(items)
		framed := Framed(w, ScreenListen, items)
		require.Equal(t, before, fmt.Sprintf("%+v", items), "what was given stays as it was")
		require.ElementsMatch(t, append(was, "home"), leaves(framed))
		require.Equal(t, framed, Framed(w, ScreenListen, framed))
		requireOneFilled(t, framed)
	}
}

func requireOneFilled(t *testing.T, items []Item) {
	var bars, filled []string
	each(items, func(it *Item) {
		if it.Role == RoleGroup {
			require.NotEmpty(t, it.Children, "an empty group: %s", it.ID)
		}
		if it.ID == BarID {
			bars = append(bars, it.Children[len(it.Children)-1].ID)
		}
		if it.Look == LookPrimary {
			filled = append(filled, it.ID)
		}
	})
	require.Len(t, bars, 1)
	require.LessOrEqual(t, len(filled), 1)
	if len(filled) == 1 {
		require.Equal(t, bars, filled)
	}
}

// leaves are the ids of all that is no group.
func leaves(items []Item) (all []string) {
	each(items, func(it *Item) {
		if it.Role != RoleGroup && it.Role != RoleNone {
			all = append(all, it.ID)
		}
	})
	return all
}

// maker makes items by chance, of all kinds that a bar looks at.
type maker struct {
	chance *rand.Rand
	n      int
}

func (g *maker) items(deep int) (all []Item) {
	for range 1 + g.chance.IntN(4) {
		g.n++
		id := fmt.Sprint("i", g.n)
		switch k := g.chance.IntN(5); {
		case k == 0 && deep > 0:
			all = append(all, group(id, g.items(deep-1)...))
		case k == 1:
			all = append(all, button(id, LookPrimary, ActNext))
		case k == 2:
			all = append(all, button(id, LookQuiet, ActStop))
		case k == 3:
			all = append(all, button(id, "", ActOnce))
		default:
			all = append(all, Item{ID: id, Role: RoleText, Text: id})
		}
	}
	return all
}
