//go:build browser && !js

package main

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/round"
)

// Twenty seconds in which the page is busy for 300 ms of every second: nothing
// of it is heard.
func TestStallsAreNotHeard(t *testing.T) {
	q := question(t, 120, 5)
	s := serve(t)
	b := drawing(t, s, roundLink(s, q))
	b.press("Begin")
	b.wait("document.querySelector('.taparea')")
	b.run("setInterval(() => monitor.stall(300), 1000)")
	k := b.inFull(func() { b.waitFor("document.querySelector('#finding, #why')", time.Minute) })
	b.capturedIsStream(s, q, k)
}

// On plain HTTP there is no worklet, so the sound cannot be captured. What can
// be compared are the blocks that are handed to the browser and the frames they
// are set to start at.
func TestPlainHTTP(t *testing.T) {
	q := question(t, 200, 2)
	s := serve(t)
	plain := fmt.Sprintf("http://practice.test:%s", s.port())
	b := monitored(t, s, roundLink(&server{Server: s.At(plain)}, q), "host-resolver-rules=MAP practice.test 127.0.0.1")
	require.False(t, get[bool](b, "isSecureContext"))
	b.run("monitor.keep = true")
	b.press("Begin")
	b.lastRound()
	k := get[kept](b, "groundbeat.log().then((l) => l.at(-1))")

	r, err := round.New(q)
	require.NoError(t, err)
	base := int64(math.Round(k.Strokes[0]*float64(audio.Rate))) - audio.Rate.Frame(r.Strokes()[0])
	left, right := render(t, r, base)
	blocks := get[[]struct {
		At          float64
		Left, Right []float32
	}](b, "monitor.starts.filter((s) => s.left)")
	stream, next, worst := int64(-1), int64(0), 0.0
	end := base + audio.Rate.Frame(r.End())
	for i, block := range blocks {
		start := int64(math.Round(block.At * float64(audio.Rate)))
		require.InDelta(t, float64(start), block.At*float64(audio.Rate), 1e-3, "a block starts on a frame")
		if stream < 0 {
			stream = align(left, right, block.Left, block.Right, base)
			if stream < 0 {
				continue // the floor alone does not tell where it is
			}
		} else {
			require.Equal(t, next, start, "block %d starts where the one before ends", i)
		}
		for j := range block.Left {
			if f := stream + int64(j); f >= base && f < end {
				worst = max(worst, math.Abs(float64(left[f]-block.Left[j])), math.Abs(float64(right[f]-block.Right[j])))
			}
		}
		stream += int64(len(block.Left))
		next = start + int64(len(block.Left))
		if stream >= end {
			break
		}
	}
	require.GreaterOrEqual(t, stream, end, "the blocks cover the round")
	t.Logf("%d blocks without a gap, at most %.2g of full scale from the stream; what was rendered was not captured", len(blocks), worst)
	require.Less(t, worst, 1e-6)
}

// align finds the stream frame of the block that holds the round's first
// stroke, or −1 for another block.
func align(left, right, blockLeft, blockRight []float32, base int64) int64 {
	n := int64(len(blockLeft))
	for from := max(0, base-n+1); from <= base; from++ {
		if slices.Max(blockLeft) > 1e-3 && near(left[from:from+n], blockLeft) && near(right[from:from+n], blockRight) {
			return from
		}
	}
	return -1
}

func near(want, got []float32) bool {
	return slices.EqualFunc(want, got, func(a, b float32) bool { return math.Abs(float64(a-b)) < 1e-6 })
}

// Stop, balance, one drum alone and volume are gains in the page's graph: what
// reaches the loudspeaker has changed within 30 ms of the call.
func TestGainsActAtOnce(t *testing.T) {
	q := question(t, 120, 4)
	s := serve(t)
	b := monitored(t, s, roundLink(s, q))
	b.press("Begin")
	b.wait("monitor.onsets.length > 2")
	for _, c := range []struct{ name, call, silent string }{
		{"bass alone", `groundbeat.balance(0, 1, "apart")`, "left"},
		{"lead alone", `groundbeat.balance(1, 0, "apart")`, "right"},
		{"volume", `groundbeat.balance(1, 1, "apart"); groundbeat.volume(0)`, "both"},
		{"stop", `groundbeat.volume(1); document.querySelector("#stop").click()`, "both"},
	} {
		after := b.silentAfter(c.call, c.silent)
		t.Logf("%s: silent %.1f ms after the call", c.name, after)
		require.LessOrEqual(t, after, 30.0, c.name)
		if c.name == "lead alone" {
			b.run(`groundbeat.balance(1, 1, "apart")`)
		}
	}
}

// silentAfter is how long after a call what reaches the loudspeaker is silent, ms, in the left
// channel, the right one or both. Where a busy machine has cut the round, it is begun once more.
func (b *tab) silentAfter(call, channels string) float64 {
	b.t.Helper()
	for range 5 {
		after := get[float64](b, fmt.Sprintf(`(async () => {
			await new Promise((r) => setTimeout(r, 200));
			if (!document.querySelector("#stop")) return -1;
			const from = monitor.context.currentTime * monitor.context.sampleRate;
			%s;
			await new Promise((r) => setTimeout(r, 600));
			let last = from;
			for (const p of monitor.parts) for (let i = 0; i < 128; i++) {
				const v = { left: [p.left[i]], right: [p.right[i]], both: [p.left[i], p.right[i]] }[%q];
				if (v.some((x) => x !== 0)) last = Math.max(last, p.frame + i);
			}
			return (last - from) / monitor.context.sampleRate * 1000;
		})()`, call, channels))
		if after >= 0 {
			return after
		}
		b.t.Log("once more: " + b.text("#why"))
		b.run(`groundbeat.volume(1); groundbeat.balance(1, 1, "apart"); monitor.clear()`)
		b.again()
		b.wait("monitor.onsets.length > 2")
	}
	require.Fail(b.t, "no round goes on", b.console())
	return 0
}
