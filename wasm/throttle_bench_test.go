//go:build browser && !js

package main

import (
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// slower makes the page's main thread so many times as slow.
func (b *tab) slower(times float64) {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: times})
	require.NoError(b.t, err)
}

// work is how long a fixed piece of work takes, ms: the least of fifteen.
func (b *tab) work() float64 {
	b.t.Helper()
	return get[float64](b, `(() => {
		let least = Infinity, sum = 0;
		for (let k = 0; k < 15; k++) {
			const from = performance.now();
			for (let i = 0; i < 2e7; i++) sum = (sum + i * i) % 1021;
			least = Math.min(least, performance.now() - from, sum + Infinity);
		}
		return least;
	})()`)
}

// silences counts the frames of the captured sound, from its first that is not
// zero on, and those of them in which both channels are zero.
const silences = `(() => {
	const first = monitor.parts.findIndex((p) => p.left.some((x) => x !== 0));
	let frames = 0, silent = 0;
	for (const p of monitor.parts.slice(first + 1)) {
		for (let i = 0; i < 128; i++, frames++) if (p.left[i] === 0 && p.right[i] === 0) silent++;
	}
	return { frames, silent, missed: monitor.missed };
})()`

// throttled plays on a machine a quarter as fast: nothing of it is heard.
func (l *ledger) throttled(t *testing.T) {
	s := serve(t)
	b := drawing(t, s, s.URL+"/?screen=listen&rhythm=maqsum&bpm=130&riff=filled")
	before := b.work()
	b.slower(4)
	factor := b.work() / before
	require.Greater(t, factor, 3.0, "it is throttled")
	b.press("Play")
	b.wait("monitor.onsets.length > 1")
	b.rest(25_000)
	heard := get[struct{ Frames, Silent, Missed int }](b, silences)
	l.add("silent frames of Listen on a machine a quarter as fast", "0 in 20 s", "the browser's own throttle; captured before the loudspeaker",
		"%d of %d (%.0f s); a fixed piece of work took %.1f times as long", heard.Silent, heard.Frames, float64(heard.Frames)/48000, factor)
	require.Greater(t, heard.Frames, 20*48000)
	require.Zero(t, heard.Missed)
	require.Zero(t, heard.Silent)

	q := question(t, 120, 5)
	b.slower(1)
	b.visit(roundLink(s, q))
	b.wait("monitor.ready")
	b.run(`groundbeat.volume(1); groundbeat.balance(1, 1, "apart")`)
	b.slower(4)
	b.press("Begin")
	k := b.lastRound()
	heard = get[struct{ Frames, Silent, Missed int }](b, silences)
	b.slower(1)
	b.capturedIsStream(s, q, k)
	l.add("silent frames of a round on a machine a quarter as fast", "0 in 20 s", "the same, and frame by frame against the stream",
		"0 from its first frame to its last (20 s)")
}
