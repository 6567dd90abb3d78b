//go:build browser && !js

package main

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/cdproto/heapprofiler"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

const (
	halfTime  = 5 * time.Minute // the heap is measured for twice as long
	settling  = time.Minute     // before that, what is made once is made
	sampled   = 5 * time.Second
	mostGrown = 20.0 // kB a minute
)

// memory is what a page holds, after everything that is not reachable was let go.
type memory struct {
	script  float64 // objects of JavaScript, kB
	program float64 // the program's memory, which never shrinks, kB
	nodes   float64 // of the document
	audio   float64 // nodes of the audio graph
}

// keepProgram keeps the program where a test can look at its memory.
const keepProgram = `
	const start = WebAssembly.instantiateStreaming;
	WebAssembly.instantiateStreaming = async (...all) => { const made = await start(...all); window.program = made.instance; return made };`

func (b *tab) memory() memory {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, heapprofiler.CollectGarbage, struct{}{})
	require.NoError(b.t, err)
	all, err := chromedp.Call(b.ctx, performance.GetMetrics, struct{}{})
	require.NoError(b.t, err)
	values := map[string]float64{}
	for _, m := range all.Metrics {
		values[m.Name] = m.Value
	}
	return memory{
		script:  values["JSHeapUsedSize"] / 1000,
		program: get[float64](b, "program.exports.mem.buffer.byteLength") / 1000,
		nodes:   values["Nodes"],
		audio:   values["AudioHandlers"],
	}
}

// heap listens for ten minutes and watches what the page holds. What the program
// has let go of in JavaScript is freed only when its own garbage is collected, every
// few minutes: what counts is the lowest of each half. The program's own memory
// never shrinks: what counts is the highest.
func (l *ledger) heap(t *testing.T) {
	s := serve(t)
	b := openFor(t, settling+2*halfTime+3*time.Minute)
	b.early(keepProgram)
	_, err := chromedp.Call(b.ctx, performance.Enable, performance.EnableParams{})
	require.NoError(t, err)
	b.visit(s.URL + "/?screen=listen&rhythm=maqsum&bpm=110&riff=filled")
	b.press("Play")
	b.wait("groundbeat.heard()")
	b.rest(int(settling.Milliseconds()))
	var held [2][]memory
	for from := time.Now(); time.Since(from) < 2*halfTime; {
		b.rest(int(sampled.Milliseconds()))
		m := b.memory()
		t.Logf("%5.2f min: %+v", time.Since(from).Minutes(), m)
		i := min(1, int(time.Since(from)/halfTime))
		held[i] = append(held[i], m)
	}
	require.NotNil(t, get[any](b, "groundbeat.heard()"), "it still plays")
	script := func(m memory) float64 { return m.script }
	grown := (lowest(held[1], script) - lowest(held[0], script)) / halfTime.Minutes()
	first, last := held[0][len(held[0])-1], held[1][len(held[1])-1]
	more := (last.program - first.program) / halfTime.Minutes()
	l.add("growth of the heap while Listen plays for 10 minutes", "20 kB a minute",
		fmt.Sprintf("the second five minutes against the first, by their lowest of %d samples, each after collecting garbage", len(held[0])),
		"JavaScript %+.1f kB a minute (lowest %.1f MB), the program's memory %+.1f kB a minute (%.1f MB), %+.0f elements",
		grown, lowest(held[1], script)/1000, more, last.program/1000, last.nodes-first.nodes)
	require.LessOrEqual(t, grown, mostGrown)
	require.LessOrEqual(t, more, mostGrown)
	require.LessOrEqual(t, lowest(held[1], func(m memory) float64 { return m.audio }), lowest(held[0], func(m memory) float64 { return m.audio })+2, "audio nodes")
}

func lowest(of []memory, what func(memory) float64) float64 {
	least := what(of[0])
	for _, m := range of {
		least = min(least, what(m))
	}
	return least
}
