//go:build browser && !js

package main

import (
	"fmt"
	"strings"
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
)

// largeText makes the browser's own text twice as large: 32 pixels in place of 16.
func (b *tab) largeText() {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, cdppage.SetFontSizes, cdppage.SetFontSizesParams{FontSizes: &cdppage.FontSizes{Standard: 32, Fixed: 26}})
	require.NoError(b.t, err)
}

// fits checks the layout in a telephone's window and in a laptop's.
func (b *tab) fits(screen string) {
	b.t.Helper()
	for _, window := range [][2]int64{{390, 844}, {1280, 800}} {
		b.size(window[0], window[1], 1)
		b.wait(fmt.Sprintf("innerWidth === %d", window[0]))
		b.rest(60)
		if wrong := get[[]string](b, layout); len(wrong) > 0 {
			b.shoot(fmt.Sprintf("large-%s-%d", screen, window[0]))
			b.t.Errorf("%s at %dx%d: %v", screen, window[0], window[1], wrong)
		}
	}
}

// With text at 200 %, nothing is cut off, covered or beside the window, on every
// screen and in every state (WCAG 2.2, success criterion 1.4.4).
func TestTextTwiceAsLarge(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := open(t)
	b.load("about:blank")
	b.largeText()
	b.visit(s.URL)
	require.Equal(t, "32px", get[string](b, "getComputedStyle(document.documentElement).fontSize"))
	for _, screen := range view.Screens() {
		b.visit(s.URL + "/?screen=" + screen)
		b.fits(screen)
	}
	b.visit(s.URL + "/?bpm=900&rhythm=makloub&foo=1")
	b.fits("link")
	asked := func() {
		b.visit(s.URL + "/?screen=which&eights=1&seed=5")
		b.press("Begin")
		b.wait("document.querySelector('#choice-1:enabled')")
	}
	asked()
	b.fits("which-asked")
	asked()
	b.run("document.querySelector('#choice-1').click()")
	b.wait("document.querySelector('#sides')")
	b.fits("which-review")
	b.visit(s.URL + "/?screen=dums&rhythm=maqsum&eights=8")
	b.begin()
	b.fits("playing")
	b.visit(s.URL + quick)
	b.playThrough()
	b.run("document.querySelectorAll('summary').forEach((s) => s.click())")
	b.fits("review")
	b.warmUp(s, "five_bare_hands-up_2_5")
	b.on(forward)
	b.keys(forward)
	b.sounds()
	b.fits("class-sounding")
	b.on(forward)
	b.keys("m")
	b.fits("class-counting")
	for strings.HasPrefix(b.stage(), "Hands up") {
		b.on(forward)
	}
	b.fits("class-told")
}
