//go:build browser && !js

package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
)

// What somebody meets who does not see the page, uses no mouse, or aims badly.

// named are the roles that say nothing without a name.
var named = map[string]bool{
	"button": true, "slider": true, "radio": true, "checkbox": true, "textbox": true, "link": true, "image": true,
	"heading": true, "DisclosureTriangle": true, "table": true, "progressbar": true, "RootWebArea": true, "dialog": true,
}

// tree is what the browser tells assistive technology: "role name" of each
// element that has a name or a role of its own, in the order of the page.
func (b *tab) tree() []string {
	b.t.Helper()
	all, err := chromedp.Call(b.ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	require.NoError(b.t, err)
	children := map[accessibility.NodeID]*accessibility.Node{}
	for _, n := range all.Nodes {
		children[n.NodeID] = n
	}
	var lines []string
	var walk func(n *accessibility.Node)
	walk = func(n *accessibility.Node) {
		if role, name := said(n.Role), said(n.Name); !n.Ignored {
			require.NotEqual(b.t, "Canvas", role, "the engine's canvas is no part of the page")
			require.NotContains(b.t, []string{"status", "alert", "log"}, role, "nothing speaks unasked")
			require.False(b.t, named[role] && strings.TrimSpace(name) == "", "a %s without a name", role)
			if named[role] || role == "group" {
				lines = append(lines, strings.TrimSpace(role+" "+name))
			}
		}
		for _, id := range n.ChildIDs {
			walk(children[id])
		}
	}
	walk(all.Nodes[0])
	return lines
}

// said is a value of the tree as text.
func said(v *accessibility.Value) string {
	if v == nil {
		return ""
	}
	var s string
	_ = json.Unmarshal(v.Value, &s)
	return s
}

// reach checks what can be pressed: large enough, and not under something else
// once it has the focus.
func (b *tab) reach() {
	b.t.Helper()
	small := get[[]string](b, `[...document.querySelectorAll("button, summary, fieldset label, label.slider input")]
		.filter((e) => e.checkVisibility())
		.map((e) => [e.innerText || e.ariaValueText, e.getBoundingClientRect()])
		.filter(([, box]) => box.width < 43.5 || box.height < 43.5)
		.map(([name, box]) => name + " " + box.width + "x" + box.height)`)
	require.Empty(b.t, small, "targets below 44 px")
}

// uncovered checks that what has the focus can be seen.
func (b *tab) uncovered() {
	b.t.Helper()
	cover := get[string](b, `(() => {
		const el = document.activeElement, box = el.getBoundingClientRect();
		const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
		return top === el || el.contains(top) || top?.closest("label")?.contains(el) ? "" : (el.id || el.value) + " under " + (top?.id || top?.nodeName);
	})()`)
	require.Empty(b.t, cover)
}

// tabTo presses Tab until a control has the focus.
func (b *tab) tabTo(id string) {
	b.t.Helper()
	for range 30 {
		b.keys(kb.Tab)
		if b.focused() == id {
			return
		}
		b.uncovered()
	}
	require.Fail(b.t, "Tab does not lead to "+id)
}

// From the link to the second round by keyboard alone, and what a screen reader
// is told on the way.
func TestByKeyboard(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(violations)
	b.early(`window.lost = [];
		addEventListener("focusout", (e) => setTimeout(() => document.activeElement === document.body && lost.push(e.target.id), 50));`)
	b.visit(s.URL + quick)
	require.Equal(t, "heading", b.focused())
	tree := b.tree()
	for _, line := range []string{
		"RootWebArea Dums: maqsum – Groundbeat",
		"heading Tap the dums of maqsum",
		"image The drumhead. The drum seen from above. 4 counts go once round, clockwise. Dum on 1 and 3; tek on 1 &, 2 & and 4.",
		"image The counts. Dum on 1 and 3; tek on 1 &, 2 & and 4.",
		"slider Tempo", "slider Volume", "group Length", "radio 1 eight", "radio 8 eights", "button Begin",
	} {
		require.Contains(t, tree, line)
	}
	b.reach()

	b.tabTo("begin")
	b.keys(kb.Enter)
	b.wait("document.querySelector('.taparea')")
	require.Equal(t, "tap", b.focused())
	require.Equal(t, []string{"RootWebArea Dums: maqsum – Groundbeat", "heading Tap each dum · maqsum",
		"button The drumhead. Tap each dum.", "button Home", "button Bass alone", "button Show the hands", "button Stop"}, withoutImages(b.tree()))
	b.reach()
	b.countedIn()
	b.keys(" ")
	require.True(t, b.over(), b.text("#page"))

	require.Equal(t, "heading", b.focused())
	tree = b.tree()
	require.Contains(t, tree, "heading Your taps on maqsum")
	require.Contains(t, tree, "button Once more")
	require.Regexp(t, `image The counts\. .*Your 1: `, strings.Join(tree, "\n"))
	require.Regexp(t, `image The drumhead\. .*Your 1: `, strings.Join(tree, "\n"))
	b.reach()
	b.run("document.querySelector('summary').focus()")
	b.keys(" ")
	b.wait("document.querySelector('details').open")
	require.Contains(t, b.tree(), "table By count")
	b.run("document.querySelector('h1').focus()")

	b.tabTo("once")
	b.keys(kb.Enter)
	b.wait("document.querySelector('.taparea')")
	require.Equal(t, "tap", b.focused())
	b.keys(kb.Escape)
	b.wait("document.querySelector('#begin')")
	require.Equal(t, "heading", b.focused())
	require.Empty(t, get[[]string](b, "lost"), "the focus is never lost")
	b.clean()
}

// keepsItsPixels lets the pictures be read at any time, and not only before they are shown.
const keepsItsPixels = `const context = HTMLCanvasElement.prototype.getContext;
	HTMLCanvasElement.prototype.getContext = function (kind, how) {
		return context.call(this, kind, kind.startsWith("webgl") ? { ...how, preserveDrawingBuffer: true } : how);
	}`

// glides looks at the pictures after each frame for 8 s, or longer where frames are few,
// and counts how often they are other ones than the frame before.
const glides = `new Promise((done) => {
	const canvas = document.querySelector("canvas"), small = document.createElement("canvas");
	[small.width, small.height] = [195, 422];
	const pen = small.getContext("2d", { willReadFrequently: true }), begun = performance.now(), seen = { Looks: 0, Changes: 0, Seconds: 0 };
	let before;
	const look = () => {
		pen.clearRect(0, 0, 195, 422);
		pen.drawImage(canvas, 0, 0, 195, 422);
		let now = 0, any = 0;
		for (const v of pen.getImageData(0, 0, 195, 422).data) { now = (Math.imul(now, 31) + v) | 0; any |= v; }
		if (any) {
			seen.Looks++;
			if (before !== undefined && now !== before) seen.Changes++;
			before = now;
		}
		seen.Seconds = (performance.now() - begun) / 1000;
		seen.Seconds < 8 || seen.Changes < 2 && seen.Seconds < 60 ? requestAnimationFrame(look) : done(seen);
	};
	requestAnimationFrame(look);
})`

func withoutImages(lines []string) (kept []string) {
	for _, line := range lines {
		if !strings.HasPrefix(line, "image ") {
			kept = append(kept, line)
		}
	}
	return kept
}

// Other windows and wishes: a telephone and reduced motion, on every screen, and a
// link that cannot be opened.
func TestReachAndCalm(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.calm()
	b.size(390, 844, 2)
	addresses := []string{"/?rhythm=maqsun&bpm=1"}
	for _, screen := range view.Screens() {
		addresses = append(addresses, "/?screen="+screen)
	}
	for _, address := range addresses {
		t.Run(address, func(t *testing.T) {
			b.t = t
			b.visit(s.URL + address)
			b.tree()
			b.reach()
			require.LessOrEqual(t, get[float64](b, "document.documentElement.scrollWidth"), 390.0, "nothing lies beside the window")
			require.Zero(t, get[int](b, "document.getAnimations().length"))
			require.Empty(t, get[[]string](b, `[...document.querySelectorAll("*")].filter((e) => {
				const style = getComputedStyle(e);
				return style.animationName !== "none" || parseFloat(style.transitionDuration) > 0;
			}).map((e) => e.id || e.nodeName)`), "nothing moves for its own sake")
		})
	}
	t.Run("the round", func(t *testing.T) {
		b.t = t
		b.load("about:blank") // a page that is open reloads when the pixel ratio changes
		b.size(390, 844, 1)
		b.visit(s.URL + "/?screen=dums&rhythm=maqsum&eights=8") // long enough for four windows
		b.begin()
		for _, window := range [][2]int64{{390, 844}, {844, 390}, {1280, 657}, {1920, 1080}} {
			b.size(window[0], window[1], 1)
			b.settle(window[0])
			b.again()
			b.reach()
			require.LessOrEqual(t, get[int64](b, "document.documentElement.scrollHeight"), window[1], "nothing to scroll away")
			require.LessOrEqual(t, get[int64](b, "document.documentElement.scrollWidth"), window[0])
			area := get[[2]float64](b, `(({ width, height }) => [width, height])(document.querySelector("#tap").getBoundingClientRect())`)
			require.Greater(t, area[0]*area[1], 0.7*float64(window[0]*window[1]), "two thumbs need not aim")
		}
	})
}

// calm asks for less motion, as a person's system does.
func (b *tab) calm() {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: "reduce"}}})
	require.NoError(b.t, err)
}

// Where less motion is asked for, the live pictures change with the strokes alone.
func TestNothingGlides(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := open(t)
	b.calm()
	b.size(390, 844, 1)
	b.early(keepsItsPixels)
	b.visit(s.URL + "/?screen=listen&rhythm=maqsum&bpm=60") // five strokes in 4 s
	b.press("Play")
	b.rest(1500)
	seen := get[struct {
		Looks, Changes int
		Seconds        float64
	}](b, glides)
	t.Logf("%d of %d looks in %.0f s differ from the one before", seen.Changes, seen.Looks, seen.Seconds)
	require.LessOrEqual(t, seen.Changes, int(seen.Seconds/4*5)+2, "no more than there are strokes")
	require.GreaterOrEqual(t, seen.Changes, 2, "it goes on all the same")
	b.press("Stop")
}
