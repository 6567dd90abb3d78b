//go:build browser && !js

package main

import (
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
)

// walked opens a page with what notes the ways of the focus.
func walked(t *testing.T) *tab {
	t.Helper()
	script, err := os.ReadFile("testdata/walk.js")
	require.NoError(t, err)
	b := Page(t)
	b.early(string(script))
	return b
}

// tabThrough presses Tab from the top of the page to its end: that leads to every
// control, in the order of the page, and shows where it is.
func (b *tab) tabThrough() {
	b.t.Helper()
	stops := get[[]string](b, "walk.start()")
	require.NotEmpty(b.t, stops)
	b.keys(strings.Repeat(kb.Tab, len(stops)))
	found := get[struct{ Tabbed, Wrong []string }](b, "walk.found()")
	require.Equal(b.t, stops, found.Tabbed)
	require.Empty(b.t, found.Wrong)
}

// Every screen, by keyboard: everything can be reached, in order, and where the
// focus is shows; whatever is pressed, the focus is never lost, and on every way to
// another screen it goes to the heading there.
func TestEveryScreenByKeyboard(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := walked(t)
	for i, to := range view.Screens() {
		t.Run(to, func(t *testing.T) {
			b.t = t
			b.dark(i%2 == 0)
			if i == 0 || !get[bool](b, "Boolean(document.querySelector('"+wayTo(to)+"'))") { // a room's screens are left by their own way
				b.visit(s.URL + "/?screen=listen")
			}
			b.run("document.querySelector('" + wayTo(to) + "').focus()")
			if get[bool](b, "document.activeElement.id === 'home'") && to != view.ScreenHome { // through Home to another door
				b.keys(kb.Enter)
				b.wait("document.querySelector('#go-" + to + "')")
				b.run("document.querySelector('#go-" + to + "').focus()")
			}
			b.keys(kb.Enter)
			b.wait("document.querySelector('#page').dataset.screen === '" + to + "'")
			require.Equal(t, "heading", b.focused())
			b.tree()
			b.run("await walk.use()")
			require.Empty(t, get[[]string](b, "walk.lost()"), "the focus is lost")
			b.tabThrough() // and through what is open now
		})
	}
}

// wayTo selects what leads to a screen: a door of Home, the foot of a screen of the same
// door, or else the way home.
func wayTo(screen string) string {
	if screen == view.ScreenHome {
		return "#home"
	}
	return "#go-" + screen + ", #nav-" + screen + ", #page:not([data-screen=home]):not(:has(#nav-" + screen + ")) #home"
}

// What comes after a press on Begin: a question, its review, a round and the
// review of it.
func TestEveryStateByKeyboard(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := walked(t)
	b.visit(s.URL + "/?screen=which&ask=stroke&seed=5")
	b.press("Begin")
	b.wait("document.querySelector('#choice-1:enabled')")
	b.tabThrough()
	b.run("document.querySelector('#choice-1').focus()")
	b.keys(kb.Enter)
	b.wait("document.querySelector('#it-was, #sides, #next')")
	require.Equal(t, "heading", b.focused())
	b.tabThrough()

	b.visit(s.URL + "/?screen=dums&rhythm=maqsum&eights=8")
	b.begin()
	b.again()
	b.tabThrough()
	require.Empty(t, get[[]string](b, `[...document.querySelectorAll("[aria-live]")].filter((e) => e.ariaLive !== "off" && e.innerText).map((e) => e.id)`),
		"nothing speaks while a round is played")
	b.visit(s.URL + quick)
	b.playThrough()
	b.run("document.querySelectorAll('summary').forEach((s) => s.click())")
	b.tabThrough()
	b.run("await walk.use()")
	require.Empty(t, get[[]string](b, "walk.lost()"), "the focus is lost")
}
