//go:build js

package dom

import (
	"syscall/js"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/view"
)

// fresh is a page with nothing on it yet, in the document of the test.
func fresh(t *testing.T) *Page {
	t.Helper()
	document := newPageDocument()
	t.Cleanup(func() { document.Call("getElementById", "page").Call("remove") })
	return NewPage(js.Null())
}

func screen(items ...view.Item) view.Screen {
	return view.Screen{ID: "test", Title: "A test", Lang: "en", Dir: "ltr", Items: items}
}

func text(id, words string) view.Item { return view.Item{ID: id, Role: view.RoleText, Text: words} }

func button(id string) view.Item {
	return view.Item{ID: id, Role: view.RoleButton, Name: "Press " + id, Action: "do-" + id}
}

func heading(id string) view.Item {
	return view.Item{ID: id, Role: view.RoleHeading, Level: 1, Name: "Here is " + id}
}

func group(id string, children ...view.Item) view.Item {
	return view.Item{ID: id, Role: view.RoleGroup, Children: children}
}

// outline is the page as "tag#id" with children in brackets.
func (p *Page) outline() string { return outline(p.root) }

func TestShowMakesElements(t *testing.T) {
	p := fresh(t)
	p.Show(screen(heading("h"), text("a", "Words <b>are</b> no markup"), group("g", button("b"), button("c"))))
	require.Equal(t, "h1#h p#a div#g[button#b button#c]", p.outline())
	require.Equal(t, "Words <b>are</b> no markup", p.nodes["a"].el.Get("textContent").String())
	require.Equal(t, "A test", p.Document.Get("title").String())
	require.Equal(t, "h", p.active(), "on arrival the heading has the focus")
	require.Len(t, p.nodes, 5)
}

// What the page said before stays until there is a screen, and no longer.
func TestFirstScreen(t *testing.T) {
	document := newPageDocument()
	root := document.Call("getElementById", "page")
	t.Cleanup(func() { root.Call("remove") })
	start := document.Call("createElement", "div")
	start.Set("id", "boot")
	root.Call("append", start)
	p := NewPage(start)
	require.Equal(t, "div#boot", p.outline())
	p.Show(screen(heading("h")))
	require.Equal(t, "h1#h", p.outline())
	p.Show(screen(heading("i")))
	require.Equal(t, "h1#i", p.outline())
}

// Items keep their elements as long as their id and role stay, wherever they go.
func TestPatch(t *testing.T) {
	a, b, c, d := text("a", "A"), text("b", "B"), text("c", "C"), text("d", "D")
	for name, steps := range map[string][]struct {
		items []view.Item
		want  string
	}{
		"nothing, and back": {
			{[]view.Item{a, b}, "p#a p#b"}, {nil, ""}, {[]view.Item{b}, "p#b"}},
		"added in front, between, behind": {
			{[]view.Item{b}, "p#b"}, {[]view.Item{a, b}, "p#a p#b"}, {[]view.Item{a, c, b}, "p#a p#c p#b"},
			{[]view.Item{a, c, b, d}, "p#a p#c p#b p#d"}},
		"taken away in front, between, behind": {
			{[]view.Item{a, b, c, d}, "p#a p#b p#c p#d"}, {[]view.Item{b, c, d}, "p#b p#c p#d"},
			{[]view.Item{b, d}, "p#b p#d"}, {[]view.Item{b}, "p#b"}},
		"moved": {
			{[]view.Item{a, b, c, d}, "p#a p#b p#c p#d"}, {[]view.Item{d, a, b, c}, "p#d p#a p#b p#c"},
			{[]view.Item{a, b, c, d}, "p#a p#b p#c p#d"}, {[]view.Item{c, b, d, a}, "p#c p#b p#d p#a"}},
		"another role under the same id": {
			{[]view.Item{a, b, c}, "p#a p#b p#c"}, {[]view.Item{button("a"), b, button("c")}, "button#a p#b button#c"},
			{[]view.Item{group("a", d), b, c}, "div#a[p#d] p#b p#c"}, {[]view.Item{a, b, c, d}, "p#a p#b p#c p#d"}},
		"into a group and out of it": {
			{[]view.Item{a, group("g", b), c}, "p#a div#g[p#b] p#c"}, {[]view.Item{group("g", a, b), c}, "div#g[p#a p#b] p#c"},
			{[]view.Item{a, group("g", b), c}, "p#a div#g[p#b] p#c"}, {[]view.Item{a, b, c}, "p#a p#b p#c"}},
		"from a group that goes into one that stays": {
			{[]view.Item{group("g", a), group("h", group("i", b))}, "div#g[p#a] div#h[div#i[p#b]]"},
			{[]view.Item{group("g", b), group("h", c)}, "div#g[p#b] div#h[p#c]"}},
		"from one group to another, both ways": {
			{[]view.Item{group("g", a, b), group("h", c)}, "div#g[p#a p#b] div#h[p#c]"},
			{[]view.Item{group("g", c), group("h", a, b)}, "div#g[p#c] div#h[p#a p#b]"},
			{[]view.Item{group("g", a, b), group("h", c)}, "div#g[p#a p#b] div#h[p#c]"}},
	} {
		t.Run(name, func(t *testing.T) {
			p := fresh(t)
			for i, s := range steps {
				s := s
				p.Show(screen(s.items...))
				require.Equal(t, s.want, p.outline(), "step %d", i)
				count := 0
				shown := screen(s.items...)
				shown.Each(func(it *view.Item) {
					count++
					require.True(t, p.nodes[it.ID].el.Get("isConnected").Bool(), it.ID)
				})
				require.Len(t, p.nodes, count, "nothing is remembered that is not there")
			}
		})
	}
}

func TestElementsAreKept(t *testing.T) {
	p := fresh(t)
	p.Show(screen(heading("h"), text("a", "A"), button("b")))
	before := map[string]*node{"a": p.nodes["a"], "b": p.nodes["b"]}
	p.Show(screen(heading("h"), button("b"), text("new", "N"), text("a", "other words")))
	for id, n := range before {
		require.True(t, n.el.Equal(p.nodes[id].el), id)
	}
	require.Equal(t, "other words", before["a"].el.Get("textContent").String())
}

func TestFocus(t *testing.T) {
	other := screen(heading("h2"))
	other.ID = "other"
	tapping := screen(view.Item{ID: "tap", Role: view.RoleTapArea, Name: "Tap", Value: "3"}, button("stop"))
	tapping.Focus = "tap"
	for _, c := range []struct {
		name string
		then view.Screen
		want string
	}{
		{"words change", screen(heading("h"), button("a"), text("t", "other"), button("b")), "b"},
		{"it moves", screen(button("b"), heading("h"), button("a"), text("t", "words")), "b"},
		{"it moves into a group", screen(heading("h"), group("g", button("b")), button("a")), "b"},
		{"its role changes", screen(heading("h"), button("a"), view.Item{ID: "b", Role: view.RoleTapArea, Name: "B"}), "b"},
		{"it goes", screen(heading("h"), button("a")), "h"},
		{"another screen", other, "h2"},
		{"a screen with a focus of its own", tapping, "tap"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := fresh(t)
			p.Show(screen(heading("h"), button("a"), text("t", "words"), button("b")))
			p.focus("b")
			require.Equal(t, "b", p.active())
			p.Show(c.then)
			require.Equal(t, c.want, p.active())
		})
	}
	t.Run("nowhere, and it stays there", func(t *testing.T) {
		p := fresh(t)
		p.Show(screen(heading("h"), text("t", "words")))
		p.Document.Get("activeElement").Call("blur")
		p.Show(screen(heading("h"), text("t", "other")))
		require.Equal(t, "", p.active())
	})
}

// A screen that is the same costs nothing.
func TestSameAllocatesNothing(t *testing.T) {
	items := func() []view.Item {
		return []view.Item{heading("h"), group("g", button("a"), group("i", text("t", "words"))),
			{ID: "n", Role: view.RoleTable, Name: "N", Columns: []string{"x", "y"}, Rows: [][]string{{"1", "2"}, {"3", "4"}}},
			{ID: "c", Role: view.RoleChoice, Name: "C", Options: []view.Option{{Value: "1", Label: "one"}}, Value: "1"}}
	}
	one, two := items(), items()
	require.True(t, same(one, two))
	require.Zero(t, testing.AllocsPerRun(100, func() { same(one, two) }))
	two[1].Children[1].Children[0].Text = "other"
	require.False(t, same(one, two), "a leaf")
	require.False(t, same(one, one[:3]))
}

func TestWhatIsDone(t *testing.T) {
	p := fresh(t)
	s := screen(button("b"),
		view.Item{ID: "s", Role: view.RoleSlider, Name: "S", Action: "slide", Min: 40, Max: 200, Step: 1, Num: 96, Value: "96"},
		view.Item{ID: "k", Role: view.RoleCheckBox, Name: "K", Action: "check"})
	s.Escape = "leave"
	p.Show(s)
	p.nodes["b"].el.Call("click")
	p.script(`const slider = document.querySelector("#s input"); slider.value = 120; slider.dispatchEvent(new Event("input", { bubbles: true }))`)
	p.script(`document.querySelector("#k input").click()`)
	p.script(`document.querySelector("#k input").click()`)
	p.script(`for (const repeat of [false, true]) dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", repeat }))`)
	require.Equal(t, []host.Event{
		{Kind: host.Used, Action: "do-b"}, {Kind: host.Used, Action: "slide", Value: "120"},
		{Kind: host.Used, Action: "check", Value: "yes"}, {Kind: host.Used, Action: "check"},
		{Kind: host.Used, Action: "leave", Value: view.ByEscape},
	}, p.Events(nil))
	require.Empty(t, p.Events(nil), "each once")
}
