//go:build browser && !js

package main

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// A player whose taps come 180 ms late by themselves, as with wireless
// headphones, is measured, and from then on is on the dum.
func TestSetUpIsMeasuredAndTakenOff(t *testing.T) {
	const late = 180.0 // ms
	s := serve(t)
	b, kept := setUpOnce(t, s, late)
	for range 2 { // a jump of the output's clock, by a block of 10 ms, is the machine's
		if kept.Spread < 2 {
			break
		}
		t.Logf("disturbed: mean %.3f ms, spread %.3f ms", kept.Mean, kept.Spread)
		b, kept = setUpOnce(t, s, late)
	}
	bias := detectorBias
	require.InDelta(t, late+bias, kept.Mean, 2, "ms")
	require.Less(t, kept.Spread, 2.0)

	b.visit(s.URL + "/?screen=dums&rhythm=maqsum&bpm=200&eights=2&seed=7") // a new page: it was kept
	b.wait("monitor.ready")
	b.run(`groundbeat.volume(1); groundbeat.balance(1, 1, "apart")`)
	b.press("Begin")
	b.tapBehind(late)
	k := b.lastRound()
	require.Len(t, k.Taps, 8)
	const block = 12 // ms: by so much, and seldom, the output's clock jumps on a busy machine
	raw := 0
	for _, tap := range k.Taps {
		require.InDelta(t, late+bias, *tap.Offset, block, "the offset is kept raw")
		if math.Abs(*tap.Offset-late-bias) < 2 {
			raw++
		}
	}
	require.GreaterOrEqual(t, raw, 6, "of 8 within 2 ms")
	require.Greater(t, k.Score, 0.99)
	require.InDelta(t, kept.Mean, get[float64](b, "groundbeat.log().then((l) => l.at(-1).setup)"), 0.001)
	require.Equal(t, "this device", get[string](b, "groundbeat.log().then((l) => l.at(-1).output)"))
}

// keptOutput is what Set-up keeps of an output, ms.
type keptOutput struct{ Mean, Spread float64 }

// setUpOnce measures the output of a new browser, tapping so many ms behind, and keeps it.
func setUpOnce(t *testing.T, s *server, late float64) (*tab, keptOutput) {
	t.Helper()
	b := monitored(t, s, s.URL+"/?screen=set-up")
	b.press("Begin")
	b.tapBehind(late)
	b.wait("document.querySelector('#keep')")
	b.shoot("set-up-review")
	require.Empty(t, get[[]string](b, layout))
	b.press("Keep")
	b.wait("document.querySelector('#output-1')")
	require.Equal(t, "this device", get[map[string]string](b, things)["output-chosen"])
	return b, get[keptOutput](b, "JSON.parse("+things+"['output/this device'])")
}

// detectorBias is how late the hook hears a bass dum of maqsum, ms; TestHeardTime
// measures it.
const detectorBias = 1.5

// tapBehind taps each dum as it is captured, late by so much, until the round is
// over.
func (b *tab) tapBehind(late float64) {
	b.t.Helper()
	b.wait("document.querySelector('.taparea')")
	b.run("monitor.clear()")
	origin := get[float64](b, "performance.timeOrigin")
	type due struct{ At float64 }
	var queue []due
	seen := 0
	for until := time.Now().Add(time.Minute); time.Now().Before(until); {
		state := get[struct {
			At   []float64
			Now  float64
			Over bool
		}](b, fmt.Sprintf(`({ at: monitor.onsets.slice(%d).map(monitor.last), now: performance.now(), over: !document.querySelector(".taparea") })`, seen))
		if state.Over {
			return
		}
		for _, at := range state.At {
			queue = append(queue, due{at + late})
			seen++
		}
		for len(queue) > 0 && queue[0].At <= state.Now {
			b.key("j", queue[0].At, origin)
			queue = queue[1:]
		}
		time.Sleep(10 * time.Millisecond)
	}
	require.Fail(b.t, "the round did not end", b.console())
}
