//go:build browser && !js

package main

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// Listen goes on without a gap while tempo and level change, and each change is
// heard from a cycle's first step on.
func TestListenGoesOn(t *testing.T) {
	s := serve(t)
	b := monitored(t, s, s.URL+"/?screen=listen&rhythm=maqsum&bpm=120&riff=bare")
	b.press("Play")
	b.wait("monitor.onsets.length > 2")
	b.slide("#tempo input", "90")
	b.rest(6000)
	b.run(`document.querySelector("#level input[value=filled]").click()`)
	b.rest(3500)
	onsets := get[[]float64](b, "monitor.onsets.map((f) => f / 48000)")
	silent := get[int](b, `(() => { let n = 0; for (const p of monitor.parts.slice(monitor.parts.findIndex((p) => p.right.some((x) => Math.abs(x) > 0.25))))
		for (let i = 0; i < 128; i++) if (p.left[i] === 0 && p.right[i] === 0) n++; return n })()`)
	require.Zero(t, silent, "frames without sound")
	fast, slow := 0, 0
	for i := 1; i < len(onsets); i++ {
		switch gap := onsets[i] - onsets[i-1]; {
		case gap > 0.98 && gap < 1.02: // two beats at 120
			require.Zero(t, slow, "the tempo changes once")
			fast++
		case gap > 1.31 && gap < 1.36: // two beats at 90
			slow++
		default:
			require.Fail(t, "a gap that belongs to neither tempo", "%v s", gap)
		}
	}
	t.Logf("%d gaps at 120, then %d at 90", fast, slow)
	require.GreaterOrEqual(t, fast, 2)
	require.GreaterOrEqual(t, slow, 2)
	b.press("Stop")
	b.rest(200)
	b.run("monitor.clear()")
	b.rest(500)
	require.Zero(t, get[int](b, "monitor.onsets.length"), "stopped")
}

// slide moves a slider as a person's last touch of it would.
func (b *tab) slide(selector, value string) {
	b.t.Helper()
	b.run(`const el = document.querySelector("` + selector + `"); el.value = "` + value + `";
		el.dispatchEvent(new Event("input", { bubbles: true }))`)
}

func TestBackButton(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL + "/?screen=listen&rhythm=saidi")
	b.press("Which rhythm?")
	b.wait("document.querySelector('#page').dataset.screen === 'which'")
	require.Contains(t, get[string](b, "location.search"), "screen=which")
	b.press("Dums")
	b.wait("document.querySelector('#page').dataset.screen === 'dums'")
	b.run("history.back()")
	b.wait("document.querySelector('#page').dataset.screen === 'which'")
	b.run("history.back()")
	b.wait("document.querySelector('#page').dataset.screen === 'listen'")
	require.Equal(t, "sa'idi", get[string](b, "document.querySelector('h1').textContent"))

	b.visit(s.URL + quick) // from a round and its review to where it is got ready, with what was set
	b.slide("#tempo", "190")
	b.wait("location.search.includes('bpm=190')")
	length := get[int](b, "history.length")
	b.playThrough()
	review := b.text("#page")
	b.press("Home")
	b.wait("document.querySelector('#go-set-up')")
	b.run("document.querySelector('#go-set-up').click()")
	b.wait("document.querySelector('#page').dataset.screen === 'set-up'")
	b.press("Begin")
	b.wait("document.querySelector('.taparea')")
	b.run("history.back()")
	b.wait("document.querySelector('#begin')")
	require.Equal(t, "?screen=set-up", get[string](b, "location.search"))
	b.run("history.go(-2)")
	b.wait("document.querySelector('#finding')")
	require.Equal(t, review, b.text("#page"), "the review that one came from")
	require.Equal(t, 1, b.rounds())
	b.run("history.back()")
	b.wait("document.querySelector('#begin')")
	require.Contains(t, get[string](b, "location.search"), "bpm=190")
	b.begin()
	b.keys(kb.Escape)
	b.wait("document.querySelector('#begin')")
	b.begin()
	b.run("history.back()")
	b.wait("document.querySelector('#begin')")
	require.Contains(t, get[string](b, "location.search"), "bpm=190")
	require.Equal(t, length+1, get[int](b, "history.length"), "rounds pile up no entries")
	require.Equal(t, 1, b.rounds())
}

// Another rhythm begins at once, and nothing of the one before is heard under it:
// wahda has one dum in four beats, baladi three.
func TestAnotherRhythmCutsTheOneBefore(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := monitored(t, s, s.URL+"/?screen=listen&rhythm=baladi&bpm=100")
	b.press("Play")
	b.wait("monitor.onsets.length > 3")
	b.run(`document.querySelector("#more summary").click(); document.querySelector("#more-rhythm input[value=wahda]").click()`)
	b.wait("document.querySelector('h1').textContent === 'wahda'")
	b.rest(60)
	b.run("monitor.clear()")
	b.rest(3800) // one cycle lasts 3.2 s at 75
	require.LessOrEqual(t, get[int](b, "monitor.onsets.length"), 2)
	require.GreaterOrEqual(t, get[int](b, "monitor.onsets.length"), 1)
}
