//go:build browser && !js

package main

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// What a player's hands and eyes do, for the tests of the page.

// quick is the link to a round of some four seconds; double lasts an eight longer.
const (
	quick  = "/?screen=dums&rhythm=maqsum&bpm=200&eights=1&riff=bare&seed=7"
	double = "/?screen=dums&rhythm=maqsum&bpm=200&eights=2&riff=bare&seed=7"
)

// beside opens another page of the same browser, in a window of its own and with
// the same storage.
func (b *tab) beside(t *testing.T, options ...chromedp.ContextOption) *tab {
	t.Helper()
	ctx, cancel := chromedp.NewContext(b.ctx, options...)
	t.Cleanup(cancel)
	other := &tab{t: t, ctx: ctx}
	other.do(chromedp.Evaluate[any]("1"))
	go other.listen()
	if b.spares {
		other.spared()
	}
	return other
}

// alone opens another page of the same browser that shares no storage.
func (b *tab) alone(t *testing.T) *tab {
	t.Helper()
	return b.beside(t, chromedp.WithNewBrowserContext())
}

// text is what an element says; "" where there is none.
func (b *tab) text(selector string) string {
	b.t.Helper()
	return get[string](b, fmt.Sprintf("(document.querySelector(%q)?.innerText ?? '')", selector))
}

// focused is the id of what has the focus.
func (b *tab) focused() string {
	b.t.Helper()
	return get[string](b, "document.activeElement.id || document.activeElement.tagName")
}

// middle is where a person would press an element.
func (b *tab) middle(selector string) (x, y float64) {
	b.t.Helper()
	at := get[[2]float64](b, fmt.Sprintf(`(() => {
		const el = document.querySelector(%q);
		el.scrollIntoView({ block: "center" });
		const box = el.getBoundingClientRect();
		return [box.x + box.width / 2, box.y + box.height / 2];
	})()`, selector))
	return at[0], at[1]
}

// click clicks the middle of an element.
func (b *tab) click(selector string) {
	b.t.Helper()
	x, y := b.middle(selector)
	b.steps(chromedp.MouseClickXY(x, y))
}

// keys presses keys one after another, with the given keys held down.
func (b *tab) keys(keys string, held ...chromedp.Modifier) {
	b.t.Helper()
	b.steps(chromedp.KeyEvent(keys, chromedp.KeyModifiers(held...)))
}

// hold presses a key and holds it until it has repeated so many times.
func (b *tab) hold(key string, repeats int) {
	b.t.Helper()
	yes := true
	send := func(p input.DispatchKeyEventParams) {
		p.Key, p.WindowsVirtualKeyCode = key, int64(strings.ToUpper(key)[0])
		_, err := chromedp.Call(b.ctx, input.DispatchKeyEvent, p)
		require.NoError(b.t, err)
	}
	send(input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyDown, Text: key})
	for range repeats {
		send(input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyDown, Text: key, AutoRepeat: &yes})
	}
	send(input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyUp})
}

// thumbs puts two fingers down, one after the other, and lifts both.
func (b *tab) thumbs(x, y, x2, y2 float64) {
	b.t.Helper()
	left, right := &input.TouchPoint{X: x, Y: y, ID: ptr(1.0)}, &input.TouchPoint{X: x2, Y: y2, ID: ptr(2.0)}
	for _, p := range []input.DispatchTouchEventParams{
		{Type: input.DispatchTouchEventTypeTouchStart, TouchPoints: []*input.TouchPoint{left}},
		{Type: input.DispatchTouchEventTypeTouchStart, TouchPoints: []*input.TouchPoint{left, right}},
		{Type: input.DispatchTouchEventTypeTouchEnd, TouchPoints: []*input.TouchPoint{}},
	} {
		_, err := chromedp.Call(b.ctx, input.DispatchTouchEvent, p)
		require.NoError(b.t, err)
	}
}

func ptr[T any](v T) *T { return &v }

// begin presses Begin and waits for the drumhead to be there.
func (b *tab) begin() {
	b.t.Helper()
	b.wait("document.querySelector('#begin')")
	b.press("Begin")
	b.wait("document.querySelector('.taparea')")
}

// countedIn waits, in a round at 200 counts a minute, until the question sounds.
// It taps along with the "5", which is no tap yet.
func (b *tab) countedIn() {
	b.t.Helper()
	b.wait("groundbeat.heard()")
	b.keys("5")
	b.rest(1500)
}

// over waits for the end of a round and reports whether it came to a review.
func (b *tab) over() bool {
	b.t.Helper()
	b.waitFor("document.querySelector('#finding, #why')", 20*time.Second)
	return b.text("#finding") != ""
}

// play plays a round from Begin to the review, with what is done once the
// question sounds.
func (b *tab) play(during func()) {
	b.t.Helper()
	b.begin()
	b.finish(during)
}

// finish plays a round that has begun to its review. A machine that is busy with
// something else may cut the sound, and then it is played once more.
func (b *tab) finish(during func()) {
	b.t.Helper()
	for range 5 {
		b.countedIn()
		during()
		if b.over() {
			return
		}
		b.t.Log("once more: " + b.text("#why"))
		b.press("Once more")
		b.wait("document.querySelector('.taparea')")
	}
	require.Fail(b.t, "no round came to its end", b.console())
}

// playThrough plays a round with one tap in it.
func (b *tab) playThrough() {
	b.t.Helper()
	b.play(func() { b.keys("j") })
}

// rounds is how many finished rounds the page's own script tells of.
func (b *tab) rounds() int {
	b.t.Helper()
	return get[int](b, "groundbeat.log().then((l) => l.length)")
}
