//go:build browser && !js

package main

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// What the page's script, window.groundbeat, promises.
func TestPageScript(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := undrawing(t)
	b.visit(s.URL + quick)
	require.Equal(t, []string{"balance", "heard", "log", "version", "volume"}, get[[]string](b, "Object.keys(groundbeat).sort()"))
	require.NotEmpty(t, get[string](b, "groundbeat.version"))
	require.False(t, get[bool](b, `"groundbeatParts" in window`), "what the parts hand one another is gone")
	require.Nil(t, get[any](b, "groundbeat.heard()"), "nothing is heard yet")
	require.Empty(t, get[[]any](b, "groundbeat.log()"))

	b.begin()
	b.wait("groundbeat.heard()")
	b.rest(300)
	heard := get[[]map[string]float64](b, `(async () => {
		for (let i = 0; ; i++) { // a page that was held up for long has a gap
			const first = groundbeat.heard();
			await new Promise((r) => setTimeout(r, 500));
			const last = groundbeat.heard();
			if (i > 10 || (first && last && first.epoch === last.epoch)) return [first, last];
		}
	})()`)
	for _, h := range heard {
		require.Len(t, h, 4)
		require.InDelta(t, 48000, h["rate"], 48000*500e-6)
		require.InDelta(t, get[float64](b, "performance.now()"), h["at"], 5000)
	}
	require.Equal(t, heard[0]["epoch"], heard[1]["epoch"])
	require.InDelta(t, (heard[1]["at"]-heard[0]["at"])*48, heard[1]["frame"]-heard[0]["frame"], 48*20, "frames follow the time")

	b.run(`groundbeat.balance(0, 1, "apart"); groundbeat.balance(1, 1, "centre"); groundbeat.balance(0.5, 1, "spread"); groundbeat.volume(0.5)`)
	require.NotEmpty(t, get[any](b, "groundbeat.heard()"), "and plays on")

	b.refuses()
	b.keys(kb.Escape)
	b.wait("document.querySelector('#volume input')")
	b.slide("#volume input", "40") // the mix is as it was, and can be changed
	b.wait("document.querySelector('#volume output').innerText.includes('40')")
	require.NotEmpty(t, get[string](b, "groundbeat.version"))
	b.clean()
}

// refuses checks what the page's script does not take, and what it says then.
func (b *tab) refuses() {
	b.t.Helper()
	for call, says := range map[string]string{
		`balance(NaN, 1)`:           "RangeError: lead is NaN; it must be from 0 to 1",
		`balance(1, -0.1)`:          "RangeError: bass is -0.1; it must be from 0 to 1",
		`balance(1)`:                "TypeError: bass is undefined; it must be a number from 0 to 1",
		`balance(1, 1, "left")`:     `RangeError: stage is "left"; it must be one of "centre", "spread", "apart"`,
		`balance(1, 1, "toString")`: `RangeError: stage is "toString"; it must be one of "centre", "spread", "apart"`,
		`balance(1, 1, null)`:       `TypeError: stage is null; it must be one of "centre", "spread", "apart"`,
		`volume(1e9)`:               "RangeError: volume is 1000000000; it must be from 0 to 1",
		`volume("0.5")`:             `TypeError: volume is "0.5"; it must be a number from 0 to 1`,
		`volume({})`:                "TypeError: volume is an object; it must be a number from 0 to 1",
		`balance(1, 1, "apart")`:    "",
		`volume(1)`:                 "",
	} {
		said := get[string](b, "(() => { try { groundbeat."+call+"; return '' } catch (e) { return String(e) } })()")
		require.Equal(b.t, says, said, call)
	}
}

// Without sound the page's script is the same.
func TestPageScriptWithoutSound(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early("delete window.AudioContext; delete window.webkitAudioContext")
	b.visit(s.URL + quick)
	b.refuses()
}

// The log can be asked for before anything is ready.
func TestLogAskedEarly(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(`(function ask() {
		if (window.groundbeat) window.early = groundbeat.log();
		else setTimeout(ask);
	})()`)
	b.visit(s.URL + quick)
	require.Empty(t, get[[]any](b, "early"))
	require.Empty(t, get[[]any](b, "groundbeat.log()"))
	b.clean()
}
