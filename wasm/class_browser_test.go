//go:build browser && !js

package main

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/warmup"
)

// stage is what the room sees, by its heading.
func (b *tab) stage() string { return b.text("h1") }

// on presses a key and waits for another heading.
func (b *tab) on(key string) {
	b.t.Helper()
	before := b.stage()
	b.keys(key)
	b.wait(fmt.Sprintf("document.querySelector('h1').innerText !== %q", before))
}

// warmUp opens a set by its link and goes to its first task: two presses.
func (b *tab) warmUp(s *server, set string) {
	b.t.Helper()
	b.visit(s.URL + "/?screen=class&set=" + set)
	b.wait("document.querySelector('#set-1')")
	b.click("#set-1")
	b.wait("document.querySelector('#heading-in')")
}

// sounds waits for something to be heard.
func (b *tab) sounds() {
	b.t.Helper()
	b.wait("groundbeat.heard()")
	b.rest(400)
}

// clicked is what a presenter's clicker sends.
const (
	forward = kb.PageDown
	back    = kb.PageUp
)

// kept is the run as the browser keeps it.
func (b *tab) keptRun() string {
	b.t.Helper()
	return get[map[string]string](b, things)["class/run"]
}

// A whole quiz of each kind with nothing but a clicker's keys, from the bare screen to
// the page after it; reloaded on the way, with presses that were not meant.
func TestClassWithAClicker(t *testing.T) {
	t.Parallel()
	s := serve(t)
	for _, k := range warmup.Kinds() {
		t.Run(string(k), func(t *testing.T) {
			t.Parallel()
			b := Page(t)
			b.clicksToAnswer(s, k)
			b.clicksToEnd(k)
		})
	}
}

// clicksToAnswer goes from the set's link to the answer of its first task.
func (b *tab) clicksToAnswer(s *server, k warmup.Kind) {
	t := b.t
	b.size(1280, 800, 1)
	b.early(`window.asked = []; Object.defineProperty(navigator, "wakeLock", { value: { request: async (kind) => { asked.push(kind); return { release() { asked.push("released"); } }; } } });
		window.print = () => asked.push("print"); Element.prototype.requestFullscreen = async () => { asked.push("full"); };`)
	set := "five_filled_" + string(k) + "_2_5"
	b.warmUp(s, set)
	require.Equal(t, "?screen=class&set="+set, get[string](b, "location.search"))
	b.sounds()
	require.Equal(t, "heading-in", b.focused())
	b.on(forward) // the second press: the first question
	require.Equal(t, []string{"screen"}, get[[]string](b, "asked"), "the display stays awake")

	// A reload in the middle comes back to it, and silent.
	asked := b.stage()
	b.steps(chromedp.Reload())
	b.wait("document.querySelector('#go')")
	require.Equal(t, asked, b.stage(), k)
	b.wait("!groundbeat.heard()") // once the sound has come, which is after the first frame
	b.rest(200)
	require.Nil(t, get[any](b, "groundbeat.heard()"))

	b.keys(forward)
	b.sounds()
	b.wait("document.querySelector('#go').innerText === 'Go on'")
	require.Equal(t, asked, b.stage())
	if k == warmup.FindTheOne { // heard to its end
		b.waitFor("document.querySelector('#go').innerText === 'Hands up'", time.Minute)
	}
	b.on(forward)
	for n := 0; strings.HasPrefix(b.stage(), "Hands up"); n++ {
		b.keys([]string{"m", "12", "n", "0"}[n%4])
		b.on(forward)
	}
	before := b.keptRun()
	b.on(back) // not meant
	require.NotEqual(t, before, b.keptRun())
	b.on(forward)
	require.Equal(t, before, b.keptRun(), "nothing is lost")
	if k.Counted() {
		require.Contains(t, before, `"most","12"`)
		b.sounds()
		b.on(forward)
		require.Equal(t, "Now you hear it", b.stage())
		b.sounds()
		require.NotEmpty(t, b.text("#line")+get[string](b, "document.querySelector('#line').dataset.place ?? ''"))
	}
}

// clicksToEnd goes on to the page after the warm-up, and leaves that.
func (b *tab) clicksToEnd(k warmup.Kind) {
	t := b.t
	for range 12 { // through the rest of it
		if b.stage() == "After the warm-up" {
			break
		}
		b.keys("k")
		b.rest(150)
	}
	require.Equal(t, "After the warm-up", b.stage(), k)
	require.Contains(t, get[string](b, "location.search"), "?screen=class&set=five_filled_"+string(k))
	b.keys(back)
	b.wait("document.querySelector('#go')")
	b.keys(forward)
	b.rest(150)
	b.keys(forward)
	b.wait("document.querySelector('#sheet')")
	if k == warmup.HandsUp {
		b.shoot("class-after-1280x800")
		b.run("document.querySelector('#print').click()")
		require.Contains(t, get[[]string](b, "asked"), "print")
		require.Contains(t, get[[]string](b, "asked"), "released")
	}
	b.keys(kb.ArrowRight) // on from the page after it leaves
	b.wait("document.querySelector('#class-sets')")
	require.Equal(t, "", b.text("#class-resume"), "it is over")
	require.Equal(t, 0, b.rounds(), "the class's diary is apart from a player's")
	diary, unread := warmup.ParseDiary(get[string](b, "Object.entries("+things+").filter(([k]) => k.startsWith('class/diary/')).map(([, v]) => v).join('\\n')"))
	require.Zero(t, unread)
	require.Len(t, diary, 1)
}

// The keys work wherever the focus is, and leave to a control what is its own.
func TestClassKeysAndFocus(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.warmUp(s, "five_bare_hands-up_2_5")
	b.on(forward)
	asked := b.stage()

	b.run("document.querySelector('#skip').focus()")
	b.keys(kb.ArrowRight) // plays, though another button has the focus
	b.sounds()
	require.Equal(t, "skip", b.focused())
	require.Equal(t, asked, b.stage())
	b.run("document.querySelector('#slower').focus()")
	b.keys(kb.Enter) // is the button's
	b.wait("document.querySelector('#slower').getAttribute('aria-pressed')")
	require.Equal(t, asked, b.stage())
	b.keys(" ")
	b.wait("!document.querySelector('#slower').getAttribute('aria-pressed')")
	b.click("#alone") // a pointer leaves the focus where it was
	require.Equal(t, "slower", b.focused())

	for _, key := range []string{".", "b"} {
		b.keys(key)
		b.wait("document.querySelector('#page').dataset.screen === 'class-blank'")
		require.Equal(t, []float64{0}, get[[]float64](b, `[...new Set([...document.querySelectorAll("#page > *")].map((e) => Number(getComputedStyle(e).opacity)))]`))
		b.keys(forward) // shows it, and does nothing else
		b.wait("document.querySelector('#page').dataset.screen === 'class-room'")
		require.Equal(t, asked, b.stage())
	}
	b.run("document.querySelector('h1').focus()")
	b.on(kb.Enter)
	require.Contains(t, b.stage(), "Hands up for")
	b.keys("1")
	b.keys("2")
	b.wait("document.querySelector('#counted').innerText === 'Hands: 12'")
	b.keys("c")
	b.wait("!document.querySelector('#counted').innerText && document.querySelector('#or-number')")
	b.hold("s", 3) // once
	b.wait("document.querySelector('#counted').innerText === 'Hands: some'")
	b.keys("m", chromedp.ModifierCtrl) // the browser's
	b.rest(100)
	require.Equal(t, "Hands: some", b.text("#counted"))

	// A clicker finds the way back in, and out: back from the walk-in leaves.
	asked = b.stage()
	b.keys(kb.Escape)
	b.wait("document.querySelector('#class-resume')")
	b.keys(forward)
	b.wait("document.querySelector('#page').dataset.screen === 'class-room'")
	require.Equal(t, asked, b.stage())
	for range 2 {
		b.on(back)
	}
	require.Equal(t, "heading-in", get[string](b, "document.querySelector('h1').id"))
	b.keys(back)
	b.wait("document.querySelector('#class-resume')")
	b.keys(kb.ArrowRight)
	b.wait("document.querySelector('#heading-in')")
	for range 2 {
		b.keys(forward)
		b.rest(150)
	}
	b.sounds()
	b.on(forward)
	require.Equal(t, asked, b.stage())

	// Letters can be left alone: some people speak to their machine.
	b.keys(kb.Escape)
	b.wait("document.querySelector('#class-keys')")
	b.run("document.querySelector('#class-keys').open = true; document.querySelector('#class-letters input').click()")
	b.press("Go on where you were")
	b.wait("document.querySelector('#counted')")
	b.keys("f")
	b.rest(100)
	require.Equal(t, "Hands: some", b.text("#counted"))
	b.reach()
}
