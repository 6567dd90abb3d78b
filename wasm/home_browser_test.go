//go:build browser && !js

package main

import (
	"os"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// Somebody who has never been here: from the bare address to the end of a first
// round by one press, and what Home is then.
func TestFirstVisit(t *testing.T) {
	t.Parallel()
	s := serve(t)
	hook, err := os.ReadFile("testdata/hook.js")
	require.NoError(t, err)
	b := undrawing(t)
	b.early(string(hook))
	b.visit(s.URL)
	b.wait("monitor.ready")
	b.run("monitor.rise = 0.03") // it is quiet
	require.Equal(t, "Groundbeat", get[string](b, "document.title"))
	require.Equal(t, "heading", b.focused())
	require.Equal(t, "", get[string](b, "location.search"))
	require.Equal(t, []string{"Tap your first dums"}, get[[]string](b, `[...document.querySelectorAll("button.primary")].map((e) => e.innerText)`))
	require.Contains(t, b.text("#loud"), "harm your hearing")
	require.Equal(t, "60", get[string](b, "document.querySelector('#volume input').value"), "it begins quietly")
	tree := b.tree()
	for _, line := range []string{
		"RootWebArea Groundbeat", "heading Groundbeat", "button Hear a dum and a tek", "slider Volume", "button Tap your first dums",
		"heading Practise", "button Listen Get to know a rhythm, as slow as you like.", "button Dums Tap the low strokes, and see where you land.",
		"button Sound check Find out whether every dum is heard.",
	} {
		require.Contains(t, tree, line)
	}
	b.reach()
	b.tabTo("strike")

	quietly := b.dumAndTek(s, 0.6, func() { b.keys(kb.Enter) })
	require.Equal(t, "strike", b.focused())
	b.run("document.querySelector('#volume input').focus()")
	b.keys(kb.End)
	b.wait("document.querySelector('#volume output').innerText.startsWith('100')")
	loud := b.dumAndTek(s, 1, func() { b.press("Hear a dum and a tek") })
	// The level goes with the square of the slider: (0.6²)² of the energy. No two
	// strokes are alike, and may differ by 3 dB.
	ratio := energy(quietly) / energy(loud) / (0.36 * 0.36)
	require.True(t, 0.5 < ratio && ratio < 2, "%v of what is expected", ratio)

	b.run(`groundbeat.balance(1, 1, "apart"); monitor.clear(); monitor.rise = 0.25`)
	b.tabTo("first")
	b.keys(kb.Enter)
	b.wait("document.querySelector('.taparea')")
	b.again()
	require.Equal(t, "tap", b.focused())
	require.Equal(t, "?screen=dums&rhythm=maqsum&bpm=88&eights=2&riff=bare", get[string](b, "location.search"))
	b.finish(func() {})
	require.Equal(t, 1, b.rounds())
	require.GreaterOrEqual(t, get[int](b, "monitor.onsets.length"), 8, "every dum was heard")

	b.keys(kb.Escape)
	b.wait("document.querySelector('#begin')")
	b.keys(kb.Escape)
	b.wait("document.querySelector('#page').dataset.screen === 'home'")
	require.Equal(t, "heading", b.focused())
	b.doorsFirst()
	b.steps(chromedp.NavigateBack())
	b.wait("document.querySelector('#begin')")
	require.Equal(t, "heading", b.focused())
	b.press("Home")
	b.wait("document.querySelector('#door-practise')")
	require.Equal(t, "?screen=home", get[string](b, "location.search"))
	b.click("#go-listen span") // anywhere on it
	b.wait("document.querySelector('#page').dataset.screen === 'listen'")
	b.visit(s.URL)
	b.doorsFirst() // it was kept
}

// dumAndTek is what is heard of a press that brings a dum and a tek at a volume of 0 to
// 1, with whose square their level goes. A machine that is busy with something else may
// cut it, and then it is pressed once more.
func (b *tab) dumAndTek(s *server, volume float64, press func()) []float32 {
	b.t.Helper()
	for range 3 {
		if sound, _ := b.caught(s, press); strokes(sound, aStroke*volume*volume) == 2 {
			return sound
		}
		b.t.Log("once more")
	}
	require.Fail(b.t, "never two strokes, and no more", b.console())
	return nil
}

// doorsFirst checks that Home is that of somebody who was here before.
func (b *tab) doorsFirst() {
	b.t.Helper()
	require.Equal(b.t, []string{"heading", "head", "bar", "door-practise", "door-class", "door-sound", "level", "theme", "care"},
		get[[]string](b, `[...document.querySelectorAll("#page > *")].map((e) => e.id)`))
}

// Where the browser gives no local storage, it is known only once the database is opened
// that somebody was here before, and everything else goes on.
func TestWithoutLocalStorage(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(`Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError") } });`)
	b.visit(s.URL)
	b.wait("document.querySelector('#first')")
	require.Zero(t, b.rounds()) // Chromium: left while its database is being made, a page keeps it from the next
	b.visit(s.URL + quick)
	b.playThrough()
	require.Equal(t, 1, b.rounds())
	b.press("Change the round")
	b.wait("document.querySelector('#begin')")
	b.press("Home")
	b.wait("document.querySelector('#door-practise')")
	b.doorsFirst()
	b.visit(s.URL)
	b.wait("document.querySelector('#door-practise') && !document.querySelector('#first')")
	b.doorsFirst()
}
