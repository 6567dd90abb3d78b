//go:build browser && !js

package main

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// What the engine's canvas meets: other screens, and a graphics card that goes.

// sharp checks that a pixel of the pictures is one of the device.
func (b *tab) sharp(scale float64) {
	b.t.Helper()
	b.wait(fmt.Sprintf("document.querySelector('canvas').width === Math.round(innerWidth * %v)", scale))
	require.Equal(b.t, scale, get[float64](b, "devicePixelRatio"))
}

// anew waits until the page that began at a time has been loaded once more.
func (b *tab) anew(began float64) float64 {
	b.t.Helper()
	b.wait(fmt.Sprintf("performance.timeOrigin > %f && document.querySelector('#begin')", began))
	return get[float64](b, "performance.timeOrigin")
}

// The window moves to a screen of another pixel ratio: the page starts again in the
// same place, but never in the middle of a round.
func TestPixelRatioChanges(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.size(400, 600, 1)
	b.visit(s.URL + "/?screen=dums&rhythm=saidi&bpm=96&eights=8")
	b.sharp(1)
	began := get[float64](b, "performance.timeOrigin")
	b.slide("#tempo input", "104")
	b.wait("location.search.includes('bpm=104')")
	place := get[string](b, "location.search")

	b.size(401, 600, 2) // an emulated window tells only when its size changes too
	began = b.anew(began)
	b.sharp(2)
	require.Equal(t, place, get[string](b, "location.search"))
	require.Equal(t, "104", get[string](b, "document.querySelector('#tempo input').value"))

	b.begin()
	for try := range int64(3) { // drawn without a graphics card, so sharp a page may hold up the sound
		b.rest(1500)
		b.size(402+2*try, 600, 3)
		b.rest(1200)
		require.Equal(t, began, get[float64](b, "performance.timeOrigin"), "a round goes on")
		if !get[bool](b, "Boolean(document.querySelector('#why'))") {
			break
		}
		t.Logf("once more: %s", b.text("#why"))
		b.size(403+2*try, 600, 2)
		b.press("Once more")
		b.wait("document.querySelector('.taparea')")
	}
	require.Equal(t, "tap", b.focused())
	b.keys(kb.Escape)
	b.anew(began)
	b.sharp(3)
	require.Equal(t, place, get[string](b, "location.search"))
}

// The graphics card is lost in the middle of a round, as when a laptop changes it or a
// driver starts anew: the round goes on with its pictures, counts and is kept, and so
// does what comes after; the page is not loaded again.
func TestGraphicsAreLost(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := open(t)
	b.visit(s.URL + quick)
	began := get[float64](b, "performance.timeOrigin")
	b.begin()
	b.wait("groundbeat.heard()")
	b.run(`const canvas = document.querySelector("canvas");
		canvas.getContext("webgl2").getExtension("WEBGL_lose_context").loseContext()`)
	b.finish(func() {
		b.moves("head")
		b.keys("j")
	})
	require.Equal(t, 1, b.rounds())

	b.press("Once more")
	b.wait("document.querySelector('.taparea [data-place=head] svg')")
	b.keys(kb.Escape)
	b.wait("document.querySelector('#begin') && document.querySelector('[data-place=head] svg')")
	require.Equal(t, began, get[float64](b, "performance.timeOrigin"), "the page is the same")
}

// moves checks that the picture in a place changes while a round is played.
func (b *tab) moves(place string) {
	b.t.Helper()
	b.wait(fmt.Sprintf(`(() => {
		const now = document.querySelector("[data-place=%s] svg")?.innerHTML;
		window.looks = (window.looks ?? new Set()).add(now);
		return looks.size > 3 || document.querySelector("#why");
	})()`, place))
}
