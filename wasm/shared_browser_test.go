//go:build browser && !js

package main

import (
	"context"
	"os"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// Tests come in two sorts. Those that measure times have the machine to themselves, one
// after the other. All others say t.Parallel, and so wait until those are over; then several
// run at once, most of them in one browser.

// undrawn is an early script for pages whose live pictures nobody looks at. Without a
// graphics card these take nine tenths of the machine's time; everything else goes on as
// ever, and the canvas stays empty.
const undrawn = `for (const kind of [window.WebGLRenderingContext, window.WebGL2RenderingContext])
	for (const draw of ["drawElements", "drawArrays", "clear"]) if (kind) kind.prototype[draw] = () => {};`

// plainly is a browser's flag for such pages: without a graphics card, it puts a page
// together itself in less time than one that is drawn for it.
const plainly = "disable-gpu-compositing"

// seldom is an early script that gives a page at most some twenty frames a second.
const seldom = `{
	const next = requestAnimationFrame.bind(window);
	window.requestAnimationFrame = (draw) => setTimeout(() => next(draw), 40);
	window.cancelAnimationFrame = clearTimeout;
}`

// shared is the browser that tests share; TestMain closes it.
var shared struct {
	once    sync.Once
	browser context.Context
	err     error
	close   func()
}

// page opens a page in the browser that tests share, with storage of its own. Nobody looks
// at its live pictures, and no times are measured in it.
func Page(t *testing.T) *tab {
	t.Helper()
	shared.once.Do(func() {
		folder, err := os.MkdirTemp("", "browser")
		require.NoError(t, err)
		// Compiled once and in a hurry: most pages are looked at for a moment.
		ctx, closed := start(folder, "js-flags=--liftoff-only", plainly)
		shared.browser, shared.close = ctx, func() { closed(); _ = os.RemoveAll(folder) }
		_, shared.err = chromedp.Run(ctx, chromedp.Evaluate[any]("1"))
	})
	require.NoError(t, shared.err)
	ctx, late := context.WithTimeout(shared.browser, 8*time.Minute)
	t.Cleanup(late)
	browser := &tab{t: t, ctx: ctx, spares: true}
	return browser.alone(t)
}

// undrawing opens a page in a browser of its own, with its live pictures not drawn, but
// where pictures are taken: all that else makes its times stays.
func undrawing(t *testing.T, flags ...string) *tab {
	t.Helper()
	if *pictures {
		return open(t, flags...)
	}
	b := open(t, append(flags, plainly)...)
	b.early(undrawn)
	return b
}

// spared spares the machine: the page's live pictures are not drawn, and come seldom. It
// believes that its window is the one in front, though another has the focus.
func (b *tab) spared() *tab {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
	require.NoError(b.t, err)
	if !*pictures {
		b.early(undrawn)
		b.early(seldom)
	}
	b.spares = true
	return b
}
