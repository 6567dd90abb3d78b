//go:build browser && !js

package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

var pictures = flag.Bool("pictures", false, "take pictures, into testdata/out, and those of the README anew")

// look is a window that the screens are looked at in.
type look struct {
	name          string
	width, height int64
	scale         float64
	dark          bool
}

var looks = []look{
	{"phone", 390, 844, 2, true},
	{"phone-wide", 844, 390, 2, false},
	{"tablet", 768, 1024, 1, false},
	{"desktop", 1280, 800, 1, true},
	{"projector", 1920, 1080, 1, false},
	{"projector-4-3", 1024, 768, 1, false},
}

// shown are the pictures that the README shows.
var shown = []string{"ready-desktop", "playing-phone", "review-projector", "listen-tablet", "which-review-desktop",
	"diary-desktop", "diary-fingers-phone", "class-counting-hands-up-1920x1080", "class-told-hands-up-1920x1080"}

// layout says what is wrong with how the page lies in its window.
const layout = `(() => {
	const wrong = [];
	if (document.documentElement.scrollWidth > innerWidth) wrong.push("wider than the window");
	const items = [...document.querySelectorAll("#page > *")].filter((e) => e.offsetWidth);
	const name = (e) => e.id || e.className || e.tagName;
	const box = (e) => e.getBoundingClientRect();
	for (const [i, a] of items.entries()) for (const b of items.slice(i + 1)) {
		if (getComputedStyle(a).position === "sticky" || getComputedStyle(b).position === "sticky") continue;
		if (getComputedStyle(a).pointerEvents === "none") continue; // what to do, over the room for taps
		const [p, q] = [box(a), box(b)];
		const across = Math.min(p.right, q.right) - Math.max(p.left, q.left);
		const down = Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top);
		if (across > 1 && down > 1) wrong.push(name(a) + " lies over " + name(b));
	}
	for (const e of document.querySelectorAll("#page *")) {
		if (e.closest("svg") || !e.offsetWidth) continue;
		if (e.id !== "drum" /* of a room: its margins are cut */ && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== "inline" && e.clientWidth) wrong.push(name(e) + " is cut off");
		if (box(e).right > innerWidth + 1 || box(e).left < -1) wrong.push(name(e) + " lies outside");
	}
	for (const e of document.querySelectorAll("button, input[type=range], fieldset label, summary")) {
		if (e.offsetWidth && (box(e).height < 43.9 || box(e).width < 43.9)) wrong.push((e.textContent || name(e)) + " is too small to press");
	}
	const shown = (e) => e.checkVisibility() && !e.closest("dialog");
	const filled = [...document.querySelectorAll("button.primary")].filter(shown);
	for (const e of document.querySelectorAll("h1")) {
		const words = e.textContent.split(/\s+/).length;
		const lines = Math.round(box(e).height / parseFloat(getComputedStyle(e).lineHeight));
		if (lines > words) wrong.push("the title breaks within a word");
	}
	if (document.querySelectorAll("h1").length !== 1) wrong.push("no heading of the first level");
	if (!document.querySelector("html.room")) {
		if (filled.length > 1) wrong.push("more than one filled button");
		const home = document.querySelector("#home");
		if (!home && document.querySelector("#page").dataset.screen !== "home") wrong.push("no way home");
		for (const e of [...filled, home, document.querySelector("#bar > #stop")]) {
			if (e && (box(e).top < 0 || box(e).bottom > innerHeight + 0.5)) wrong.push(name(e) + " is out of the window");
		}
		const [tap, bar] = [document.querySelector("#tap"), document.querySelector("#bar")];
		if (tap && box(document.querySelector("#head")).bottom > box(bar).top + 1) wrong.push("the bar lies over the drum");
		if (tap && box(document.querySelector("#head")).height < Math.min(120, innerHeight / 4)) wrong.push("the drum is tiny");
		if (bar && box(bar).height > innerHeight / 2) wrong.push("the bar takes half the window");
	}
	if (!document.fonts.check("16px 'Readex Pro'")) wrong.push("the typeface is missing");
	return wrong;
})()`

// inWindow says whether an element can be seen without scrolling.
const inWindow = `((e) => { const b = e.getBoundingClientRect(); return b.top >= 0 && b.bottom <= innerHeight + 0.5 })`

// byLook gives the looks as a test goes through them: all in one page whose window changes
// at each step, or, where pictures are taken, each in pages of its own, as sharp as it is.
func byLook() [][]look {
	if !*pictures {
		return [][]look{looks}
	}
	var each [][]look
	for _, l := range looks {
		each = append(each, []look{l})
	}
	return each
}

// inEach turns the page to each look, and does something there.
func (b *tab) inEach(some []look, do func(l look)) {
	b.t.Helper()
	for _, l := range some {
		b.turn(l)
		do(l)
	}
}

// lieIn checks the layout in each look: nothing is wrong with it, and so much of the page
// can be seen without scrolling.
func (b *tab) lieIn(some []look, screen string, seen ...string) {
	b.t.Helper()
	b.inEach(some, func(l look) {
		b.lies(screen, l.name)
		for _, selector := range seen {
			require.True(b.t, get[bool](b, fmt.Sprintf("%s(document.querySelector(%q))", inWindow, selector)), "%s at %s: %s without scrolling", screen, l.name, selector)
		}
	})
}

// again begins a round once more, where a busy machine has cut the sound.
func (b *tab) again() {
	b.t.Helper()
	if b.text("#why") == "" {
		return
	}
	b.press("Once more")
	b.wait("document.querySelector('.taparea') && groundbeat.heard()")
	b.rest(600) // sooner, Stop is taken for the second press of two
}

// A round from its link to what is opened in its review.
func TestLayout(t *testing.T) {
	t.Parallel()
	s := serve(t)
	for _, some := range byLook() {
		b := monitored(t, s, s.URL).spared()
		b.into(some[0])
		b.visit(s.URL + double)
		b.wait("document.fonts.status === 'loaded'")
		b.lieIn(some, "ready", "#begin")

		b.press("Begin")
		b.wait("document.querySelector('.taparea')")
		b.rest(600) // sooner, Stop is taken for the second press of two
		for i := range some {
			b.again()
			b.lieIn(some[i:i+1], "begun", ".taparea", "#stop")
		}
		b.again()
		b.keys(kb.Escape)
		b.wait("document.querySelector('#begin')")
		if *pictures {
			b.playFor(some[0])
		} else {
			b.playThrough()
		}
		b.lieIn(some, "review", "#finding")
		b.run("document.querySelector('summary').click()")
		b.lieIn(some, "review-opened")
	}
}

// playFor plays a round with a tap for each dum, and takes a picture of it.
func (b *tab) playFor(l look) {
	b.t.Helper()
	b.begin()
	b.run(`groundbeat.volume(1); groundbeat.balance(1, 1, "apart"); monitor.clear()`)
	b.tapAlong(func(i int) {
		if i == 2 {
			b.shoot("playing-" + l.name)
		}
	})
	b.wait("document.querySelector('#finding')")
}

func TestLayoutOfHomeListenAndWhich(t *testing.T) {
	t.Parallel()
	s := serve(t)
	for _, some := range byLook() {
		b := Page(t)
		b.into(some[0])
		b.visit(s.URL + "/?screen=listen&rhythm=saidi&riff=riffing&seed=5")
		b.wait("document.fonts.status === 'loaded'")
		b.lieIn(some, "listen", "#play")
		b.run("document.querySelectorAll('summary').forEach((s) => s.click())")
		b.lieIn(some, "listen-opened")

		b.visit(s.URL + "/?screen=which&seed=5")
		b.lieIn(some, "which")
		b.press("Begin")
		b.wait("document.querySelector('#choice-1:enabled')")
		b.lieIn(some, "which-asked", "#choices")
		b.run("document.querySelector('#choice-1').click()")
		b.wait("document.querySelector('#sides')")
		b.lieIn(some, "which-review")

		b.visit(s.URL)
		b.lieIn(some, "home")
		b.forget() // as if that had been somebody else
		b.visit(s.URL)
		b.lieIn(some, "home-first", "#first")
	}
}

// into leaves the page, which would reload when the pixel ratio changes, for another
// window.
func (b *tab) into(l look) {
	b.t.Helper()
	b.load("about:blank")
	b.turn(l)
}

// turn gives the page another window. Only where pictures are taken is it as sharp as the
// look is.
func (b *tab) turn(l look) {
	b.t.Helper()
	scale := 1.0
	if *pictures {
		scale = l.scale
	}
	b.size(l.width, l.height, scale)
	b.dark(l.dark)
	b.settle(l.width)
}

// settle waits until the page has a width, and lies in it: the program has had two frames.
func (b *tab) settle(width int64) {
	b.t.Helper()
	b.wait(fmt.Sprintf("innerWidth === %d", width))
	b.run("for (let i = 0; i < 2; i++) await new Promise(requestAnimationFrame)")
}

// lies checks the layout and takes a picture.
func (b *tab) lies(screen, window string) {
	b.t.Helper()
	b.shoot(screen + "-" + window)
	require.Empty(b.t, get[[]string](b, layout), screen)
}

// shoot writes a picture of the page, for people to look at, where pictures are taken.
func (b *tab) shoot(name string) {
	b.t.Helper()
	if !*pictures {
		return
	}
	png, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
	require.NoError(b.t, err)
	folders := []string{"out"}
	for _, s := range shown {
		if s == name {
			folders = append(folders, "pictures")
		}
	}
	for _, f := range folders {
		folder := filepath.Join("..", "testdata", f)
		require.NoError(b.t, os.MkdirAll(folder, 0o755))
		require.NoError(b.t, os.WriteFile(filepath.Join(folder, name+".png"), png, 0o644))
	}
}
