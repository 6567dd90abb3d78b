//go:build browser && !js

package main

import (
	"testing"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// A page without sound, and a page out of sight. These tests and those of what is
// kept measure no times, mostly wait, and so run beside one another.

const (
	noAudio    = `delete window.AudioContext; delete window.webkitAudioContext;`
	noDevice   = `window.AudioContext = class { constructor() { throw new DOMException("no device", "NotSupportedError") } };`
	noDatabase = `for (const name of Object.getOwnPropertyNames(window)) if (/^(IDB|indexedDB)/.test(name)) delete window[name];`
)

// A browser that gives next to nothing: rounds go on in pictures.
func TestPlaysOnInPictures(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(noAudio + noDatabase)
	b.visit(s.URL + quick)
	b.wait("document.querySelector('#begin')")
	require.Contains(t, b.text("#page"), "There is no sound here, so this round is in pictures only.")
	require.False(t, get[bool](b, "Boolean(document.querySelector('#volume'))"), "there is nothing to set")
	b.playThrough()
	b.notKept("1 round could not be kept yet.")
	require.True(t, get[bool](b, "groundbeat.log().then((l) => l[0].coarse)"))

	t.Run("no device", func(t *testing.T) {
		b := b.beside(t)
		b.early(noDevice)
		b.visit(s.URL + quick)
		b.begin()
		b.wait("groundbeat.heard()")
		b.rest(600) // sooner, Stop is taken for the second press of two
		b.press("Stop")
		b.wait("document.querySelector('#begin')")
		require.Contains(t, b.text("#page"), "There is no sound here, so this round is in pictures only.")
	})
}

// window sets the state of the browser's window.
func (b *tab) window(state browser.WindowState) {
	b.t.Helper()
	w, err := chromedp.Call(b.ctx, browser.GetWindowForTarget, browser.GetWindowForTargetParams{})
	require.NoError(b.t, err)
	_, err = chromedp.Call(b.ctx, browser.SetWindowBounds, browser.SetWindowBoundsParams{
		WindowID: w.WindowID, Bounds: &browser.Bounds{WindowState: state}})
	require.NoError(b.t, err)
}

func TestOutOfSight(t *testing.T) {
	t.Parallel()
	s := serve(t)
	one := undrawing(t)
	for name, early := range map[string]string{
		"with sound": "", "in pictures": noAudio,
	} {
		t.Run(name, func(t *testing.T) {
			b := one.alone(t)
			b.early(undrawn + early)
			b.visit(s.URL + quick)
			b.begin()
			b.countedIn()
			b.again()
			b.window(browser.WindowStateMinimized)
			b.wait("document.hidden")
			b.rest(300)
			b.window(browser.WindowStateNormal)
			b.wait("document.querySelector('#why')")
			require.Equal(t, "The page was out of sight, and the browser may have held the sound back.", b.text("#why"))
			require.Contains(t, b.text("#page"), "Nothing of it is kept.")
			require.Equal(t, "heading", b.focused())
			require.Zero(t, b.rounds())
			require.Contains(t, b.tree(), "heading This round does not count")
			b.reach()

			b.press("Once more")
			b.wait("document.querySelector('.taparea')")
			b.finish(func() { b.keys("j") })
			require.Equal(t, 1, b.rounds(), "it can be played again")
		})
	}
}
