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
	"groundbeat/scoring/history"
)

// largeText makes the browser's own text twice as large, 32 pixels in place of 16, or
// not.
func (b *tab) largeText(on bool) {
	b.t.Helper()
	size := int64(16)
	if on {
		size = 32
	}
	_, err := chromedp.Call(b.ctx, cdppage.SetFontSizes, cdppage.SetFontSizesParams{FontSizes: &cdppage.FontSizes{Standard: size, Fixed: size - 3}})
	require.NoError(b.t, err)
}

// windows are those that every stage is looked at in: telephones upright and on their
// side, a tablet, a laptop, a projector.
var windows = [][2]int64{{320, 568}, {390, 844}, {844, 390}, {768, 1024}, {1280, 800}, {1920, 1080}}

// fits checks the layout in every window, with the text twice as large and then as it is.
func (b *tab) fits(screen string) {
	b.t.Helper()
	for _, large := range []bool{true, false} {
		b.largeText(large)
		for _, window := range windows {
			b.size(window[0], window[1], 1)
			b.settle(window[0])
			if wrong := get[[]string](b, layout); len(wrong) > 0 {
				b.shoot(fmt.Sprintf("large-%t-%s-%d", large, screen, window[0]))
				b.t.Errorf("%s at %dx%d, large %t: %v", screen, window[0], window[1], large, wrong)
			}
		}
	}
	b.largeText(true)
}

// With text at 200 %, nothing is cut off, covered or beside the window, on every
// screen and in every state (WCAG 2.2, success criterion 1.4.4); and with any text, the
// next step and the way home are in the window.
func TestTextTwiceAsLarge(t *testing.T) {
	t.Parallel()
	s := serve(t)
	for name, goThrough := range map[string]func(b *tab, s *server){
		"screens": (*tab).fitsOnScreens, "questions": (*tab).fitsWhileAsked, "rounds": (*tab).fitsWhilePlayed,
		"reviews": (*tab).fitsAfterwards, "class": (*tab).fitsInClass,
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			b := Page(t)
			b.load("about:blank")
			b.largeText(true)
			goThrough(b, s)
		})
	}
}

// fitsOnScreens looks at every screen as its link opens it, and at a link that cannot be
// opened.
func (b *tab) fitsOnScreens(s *server) {
	b.visit(s.URL)
	require.Equal(b.t, "32px", get[string](b, "getComputedStyle(document.documentElement).fontSize"))
	for _, screen := range view.Screens() {
		b.visit(s.URL + "/?screen=" + screen)
		b.fits(screen)
	}
	b.visit(s.URL + "/?bpm=900&rhythm=makloub&foo=1")
	b.fits("link")
}

// fitsWhileAsked looks at a question, and at the review of each of its answers.
func (b *tab) fitsWhileAsked(s *server) {
	b.visit(s.URL + "/?screen=which&eights=1&seed=5")
	b.press("Begin")
	b.wait("document.querySelector('#choice-1:enabled')")
	b.fits("which-asked")
	for choice := 1; choice <= 2; choice++ {
		b.visit(s.URL + "/?screen=which&eights=1&seed=5")
		b.press("Begin")
		b.wait(fmt.Sprintf(`document.querySelector("#sides") || (document.querySelector("#choice-%d:enabled")?.click(), false)`, choice))
		b.fits(fmt.Sprint("which-review-", choice))
	}
}

// fitsWhilePlayed looks at a round of each kind.
func (b *tab) fitsWhilePlayed(s *server) {
	for _, screen := range view.Screens() {
		if k, _ := history.KindOf(screen); k.Play != history.Tapped && k.Play != history.Pressed {
			continue
		}
		b.visit(s.URL + "/?eights=8&screen=" + screen)
		b.begin()
		b.fits(screen + "-playing")
	}
}

// fitsAfterwards looks at a round that does not count, and at the review of one that does.
func (b *tab) fitsAfterwards(s *server) {
	b.visit(s.URL + quick)
	b.begin()
	b.run(`Object.defineProperty(document, "hidden", { get: () => true, configurable: true }); document.dispatchEvent(new Event("visibilitychange"))`)
	b.wait("document.querySelector('#why')")
	b.run("delete document.hidden")
	b.fits("void")
	b.visit(s.URL + quick)
	b.playThrough()
	b.fits("review")
	b.run("document.querySelectorAll('summary').forEach((s) => s.click())")
	b.fits("review-opened")
}

// fitsInClass looks at what a room sees.
func (b *tab) fitsInClass(s *server) {
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
