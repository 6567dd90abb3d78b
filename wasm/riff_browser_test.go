//go:build browser && !js

package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// riffRound is what the record of a round under a riff holds besides.
type riffRound struct {
	kept
	Riff        string
	RiffVersion int
	HideAsked   int
	Hide        float64
	Helps       map[string]any
}

// A round under a riff: the bass drum is heard alone within 30 ms, for an eight and
// no longer, the focus stays where the taps are, the riff is the one that its seed
// stands for on another machine, and the record says what helped.
func TestRiffRound(t *testing.T) {
	q := question(t, 120, 3)
	q.Level, q.Hide = riff.Riffing, 40
	r, err := round.New(q)
	require.NoError(t, err)
	s := serve(t)
	b := monitored(t, s, s.URL+"/?screen=dums&rhythm=maqsum&bpm=120&eights=3&riff=riffing&hide=40&seed=7&v=1")
	b.begin()
	for tries := 0; ; tries++ {
		b.run("monitor.clear()")
		b.wait("monitor.onsets.length > 1")
		if b.aloneForAnEight() {
			require.Equal(t, "tap", b.focused())
			b.keys("j")
			b.click("#hands")
			require.Equal(t, "tap", b.focused())
			b.keys("f")
		}
		if b.over() {
			break
		}
		require.Less(t, tries, 2, "no round came to its end: %s", b.text("#why"))
		b.press("Once more")
		b.wait("document.querySelector('.taparea')")
	}
	k := get[riffRound](b, "groundbeat.log().then((l) => l.at(-1))")
	require.Equal(t, []any{"riffing", riff.Version, 40}, []any{k.Riff, k.RiffVersion, k.HideAsked})
	require.InDelta(t, riff.Hide(q.Rhythm, r.Played(0), q.BPM), k.Hide, 0.0005)
	require.Equal(t, map[string]any{"bass": 1.0, "hands": true}, k.Helps)
	require.GreaterOrEqual(t, len(k.Taps), 1, "keys after the buttons are taps")
	require.Len(t, k.Strokes, len(r.Strokes()))
	for i, at := range r.Strokes() {
		require.InDelta(t, (at - r.Strokes()[0]).Seconds(), k.Strokes[i]-k.Strokes[0], 1e-6)
	}

	// In the review it is heard once more: here the bass drum alone, which plays the
	// dums that were asked for, a little slower than asked.
	b.run(`document.querySelector("#drums input[value=bass]").click(); document.querySelector("#slowly input").click()`)
	b.run(`monitor.clear(); document.querySelector("#hear").click()`)
	b.wait("monitor.onsets.length > 3")
	onsets := get[[]float64](b, "monitor.onsets.slice(0, 4)")
	for i := range 3 {
		gap := float64(audio.Rate.Frame(r.Strokes()[i+1] - r.Strokes()[i]))
		require.InDelta(t, gap*120/80, onsets[i+1]-onsets[i], 96, "2 ms")
	}
	require.Less(t, get[float64](b, "Math.max(...monitor.parts.slice(-400).map((p) => Math.max(...p.left.map(Math.abs))))"), 1e-9, "no lead drum")
	b.press("Stop")
	b.wait("document.querySelector('#hear').textContent !== 'Stop'")
	require.NotEmpty(t, b.text("#finding"), "still in review")
}

// aloneForAnEight presses the button and looks at what reaches the loudspeaker: the
// lead drum is silent within 30 ms, and heard again after eight counts, or as much
// later as the page was busy. It is false where the round was cut meanwhile.
func (b *tab) aloneForAnEight() bool {
	b.t.Helper()
	at := get[[]float64](b, `(async () => {
		const rate = monitor.context.sampleRate, el = document.querySelector("#alone");
		let busy = 0, frame = performance.now(), over = false;
		requestAnimationFrame(function look(now) {
			busy = Math.max(busy, now - frame);
			frame = now;
			over ||= el.ariaPressed === "true" && "was";
			over = over === "was" && el.ariaPressed !== "true" ? now : over;
			if (el.isConnected) requestAnimationFrame(look);
		});
		const pressed = monitor.context.currentTime * rate;
		if (el.dispatchEvent(new MouseEvent("mousedown", { bubbles: true, cancelable: true }))) el.focus();
		el.click();
		while (!(over > 0) && el.isConnected) await new Promise((r) => setTimeout(r, 50));
		await new Promise((r) => setTimeout(r, 400));
		if (!el.isConnected) return [];
		let last = pressed, silent = 0, heard = 0;
		for (const p of monitor.parts) p.left.forEach((v, i) => {
			const f = p.frame + i;
			if (v === 0 || f < pressed) return;
			if (f - last > silent) [silent, heard] = [f - last, last];
			last = f;
		});
		return [(heard - pressed) / rate * 1000, silent / rate * 1000, busy];
	})()`)
	if len(at) == 0 {
		return false
	}
	b.t.Logf("the lead drum is silent %.1f ms after the press, for %.0f ms; the page was busy for %.0f ms at most", at[0], at[1], at[2])
	require.LessOrEqual(b.t, at[0], 30.0)
	require.Greater(b.t, at[1], 3900.0, "ms: eight counts at 120 last 4000")
	require.Less(b.t, at[1], 4100+3*at[2])
	return true
}
