//go:build browser && !js

package main

import (
	"fmt"
	"image"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/link"
)

// What a player meets between opening the link and the review.

func TestPageOpensReady(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL + "/?screen=dums&rhythm=maqsum&bpm=96&eights=4&riff=bare&seed=7")
	require.Equal(t, []string{"Begin"}, get[[]string](b, `[...document.querySelectorAll("button.primary")].map((e) => e.innerText)`))
	require.Equal(t, 1, get[int](b, `[...document.querySelectorAll("button")].filter((e) => e.innerText === "Begin").length`))
	require.Equal(t, "Dums: maqsum – Groundbeat", get[string](b, "document.title"))
	require.Equal(t, "Tap the dums of maqsum", b.text("h1"))
	require.Equal(t, "heading", b.focused())
	require.Equal(t, []string{"en", "ltr"}, get[[]string](b, "[document.documentElement.lang, document.documentElement.dir]"))

	t.Run("tempo", func(t *testing.T) {
		b.t = t
		b.run("document.querySelector('#tempo input').focus()")
		b.keys(kb.ArrowRight + kb.ArrowRight)
		b.wait("document.querySelector('#tempo output').innerText === '98 counts a minute'")
		require.Equal(t, "?screen=dums&rhythm=maqsum&bpm=98&eights=4&riff=bare&seed=7", get[string](b, "location.search"))
		require.Equal(t, "tempo", get[string](b, "document.activeElement.parentElement.id"), "the slider keeps the focus")
		b.run(`history.replaceState = () => { throw new DOMException("100 times in 30 seconds", "SecurityError") }`)
		b.keys(kb.Home) // goes on, though the address cannot follow
		b.wait("document.querySelector('#tempo output').innerText.startsWith(document.querySelector('#tempo input').min + ' ')")
	})
	t.Run("length", func(t *testing.T) {
		b.t = t
		b.visit(s.URL + "/?screen=dums&rhythm=maqsum&bpm=96&eights=3&riff=bare&seed=7")
		require.Equal(t, "1 eight\n2 eights\n3 eights\n4 eights\n8 eights", strings.Join(get[[]string](b, `[...document.querySelectorAll("#eights label")].map((e) => e.innerText)`), "\n"))
		chosen := func() string { return get[string](b, "document.querySelector('#eights input:checked').value") }
		b.click("#eights label:nth-of-type(2)")
		b.wait("location.search.includes('&eights=2&')")
		require.Equal(t, "2", chosen())
		require.Equal(t, "2", get[string](b, "document.activeElement.value"), "the choice keeps the focus")
		b.keys(kb.ArrowRight)
		b.wait("location.search.includes('&eights=4&')")
		b.keys(kb.ArrowRight)
		b.wait("location.search.includes('&eights=8&')")
		require.Equal(t, "8", chosen())
		require.Equal(t, "8", get[string](b, "document.activeElement.value"), "the choice keeps the focus")
	})
	t.Run("volume", func(t *testing.T) {
		b.t = t
		before := get[string](b, "location.search")
		b.run("document.querySelector('#volume input').focus()")
		b.keys(kb.End)
		b.wait("document.querySelector('#volume output').innerText.startsWith('100')")
		require.Equal(t, before, get[string](b, "location.search"), "loudness is no part of a round")
	})
	t.Run("the link opens the same again", func(t *testing.T) {
		b.t = t
		b.steps(chromedp.Reload())
		b.wait("document.querySelector('#begin')")
		require.Equal(t, "8", get[string](b, "document.querySelector('#eights input:checked').value"))
	})
}

func TestWrongLink(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL + "/?rhythm=%3Cimg+src%3Dx%3E")
	require.Contains(t, b.text("#problems"), "rhythm=<img src=x>")
	require.Zero(t, get[int](b, "document.querySelectorAll('img').length"), "what a link holds is no markup")

	b.visit(s.URL + "/?bpm=900&rhythm=makloub&foo=1")
	require.Equal(t, "This link cannot be opened", b.text("h1"))
	require.Equal(t, "heading", b.focused())
	problems := get[[]string](b, `[...document.querySelectorAll("#problems li")].map((e) => e.innerText)`)
	require.Len(t, problems, 3)
	require.Regexp(t, `^rhythm=makloub: allowed is .*maqsum`, problems[0])
	require.Equal(t, fmt.Sprintf("bpm=900: allowed is %d to %d", link.LeastBPM, link.MostBPM), problems[1])
	require.Regexp(t, "^foo is not known; known are screen, rhythm, bpm, eights, ", problems[2])

	require.Equal(t, fmt.Sprintf("The nearest that can be opened: maqsum at %d counts a minute, 4 eights", link.MostBPM), b.text("#nearest"))
	b.press("Open it")
	b.wait("document.querySelector('#begin')")
	require.Equal(t, fmt.Sprintf("?screen=dums&rhythm=maqsum&bpm=%d&eights=4&riff=bare", link.MostBPM), get[string](b, "location.search"))
	require.Equal(t, fmt.Sprint(link.MostBPM), get[string](b, "document.querySelector('#tempo input').value"))
	require.Equal(t, "heading", b.focused())
}

func TestLeavingARound(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL + double)
	for name, leave := range map[string]func(){
		"Escape": func() { b.keys(kb.Escape) },
		"Stop":   func() { b.press("Stop") },
		"Tab": func() {
			for _, id := range []string{"home", "alone", "hands", "stop"} {
				b.keys(kb.Tab)
				require.Equal(t, id, b.focused())
			}
			b.keys(" ")
		},
	} {
		b.begin()
		require.Equal(t, "tap", b.focused())
		b.wait("groundbeat.heard()")
		b.rest(600) // sooner, Stop is taken for the second press of two
		b.again()
		leave()
		b.wait("document.querySelector('#begin')")
		require.Equal(t, "heading", b.focused(), name)
		require.Zero(t, b.rounds(), "%s: a round that was left is no result", name)
	}
	b.begin()
	b.keys(kb.Tab)
	b.keys(kb.Tab, chromedp.ModifierShift)
	require.Equal(t, "tap", b.focused(), "and back again")
}

// watch counts from now on what changes in the document, and notes which keys the page
// keeps from the browser.
const watch = `
	window.seen = { changes: [], keys: [] };
	if (!window.watched) new MutationObserver((all) => seen.changes.push(...all.map((m) => m.type + " " + (m.target.id || m.target.nodeName))))
		.observe(document.documentElement, { subtree: true, childList: true, attributes: true, characterData: true });
	if (!window.watched) addEventListener("keydown", (e) => e.repeat || seen.keys.push(e.key + (e.ctrlKey ? " with Ctrl" : "") + (e.defaultPrevented ? ": kept" : "")));
	window.watched = true;`

// everyTap is what was seen of a round while it was tapped in every way.
type everyTap struct {
	Changes, Keys []string
	Whole         bool // the round went on meanwhile
	focused       string
	shot          image.Image
	head          [3]float64
}

// tapsEveryWay taps a round with every kind of tap, and with what is none.
func (b *tab) tapsEveryWay() (seen everyTap) {
	b.t.Helper()
	if !get[bool](b, "Boolean(document.querySelector('#tap'))") {
		return seen // a busy machine has cut it
	}
	b.run(watch)
	x, y := b.middle("#tap")
	head := get[[3]float64](b, `(({ x, y, width }) => [x, y, width])(document.querySelector("#head").getBoundingClientRect())`)
	b.keys(" ")
	b.rest(250)
	shot := b.picture()
	b.hold("k", 5)
	b.keys("j", chromedp.ModifierCtrl)
	b.keys(kb.ArrowDown + kb.Shift)
	b.thumbs(x-60, y+30, x+60, y+30)
	b.steps(chromedp.MouseClickXY(x, y))
	b.run("document.querySelector('#tap')?.click()") // as a screen reader does
	seen = get[everyTap](b, "({ ...seen, whole: Boolean(document.querySelector('#tap')) })")
	seen.focused, seen.shot, seen.head = b.focused(), shot, head

	b.run(`if (window.room = document.querySelector("#tap")) room.dataset.tap -= 1`)
	b.keys("l") // meant for the round before
	b.run(`if (room) room.dataset.tap -= -1`)
	return seen
}

// One round with every kind of tap, and with what is none.
func TestTaps(t *testing.T) {
	s := serve(t)
	b := open(t)
	b.size(800, 600, 1) // less to draw, and less often
	b.early(seldom)
	b.dark(true)
	var seen everyTap
	for tries := 0; !seen.Whole && tries < 5; tries++ { // a busy machine may come too late with them
		b.visit(s.URL + "/?screen=dums&rhythm=maqsum&bpm=200&eights=4&riff=bare&seed=7")
		b.play(func() { seen = b.tapsEveryWay() })
	}
	require.Empty(t, seen.Changes, "nothing on the page changes while a round is played")
	require.Equal(t, "tap", seen.focused)
	require.Equal(t, []string{" : kept", "k: kept", "j with Ctrl", "ArrowDown", "Shift"}, seen.Keys)
	marked(t, seen.shot, seen.head, get[float64](b, `groundbeat.log().then((l) => {
		const round = l.at(-1);
		const cycle = 4 * 60 / round.bpm; // seconds
		return (round.taps[0].frame / round.rate - round.strokes[0]) / cycle % 1;
	})`))
	require.Equal(t, []string{"key", "key", "touch", "touch", "mouse", "click"},
		get[[]string](b, "groundbeat.log().then((l) => l.at(-1).taps.map((t) => t.by))"))
	require.IsIncreasing(t, get[[]float64](b, "groundbeat.log().then((l) => l.at(-1).taps.map((t) => t.at))"))
}
