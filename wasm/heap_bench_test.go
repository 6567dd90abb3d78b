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
	"gonum.org/v1/gonum/stat"
)

const (
	listened  = 10 * time.Minute // for so long is the heap measured
	settling  = time.Minute      // before that, what is made once is made
	sampled   = 15 * time.Second
	mostSlope = 20.0 // kB a minute by which what is reachable may grow
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

// heap listens for ten minutes and watches what the page holds.
func (l *ledger) heap(t *testing.T) {
	s := serve(t)
	b := openFor(t, settling+listened+3*time.Minute)
	b.early(keepProgram)
	_, err := chromedp.Call(b.ctx, performance.Enable, performance.EnableParams{})
	require.NoError(t, err)
	b.visit(s.URL + "/?screen=listen&rhythm=maqsum&bpm=110&riff=filled")
	b.press("Play")
	b.wait("groundbeat.heard()")
	b.run(fmt.Sprintf("await new Promise((r) => setTimeout(r, %d))", settling.Milliseconds()))
	var minutes, script, program []float64
	first := b.memory()
	last := first
	for from := time.Now(); time.Since(from) < listened; {
		b.rest(int(sampled.Milliseconds()))
		last = b.memory()
		minutes = append(minutes, time.Since(from).Minutes())
		script, program = append(script, last.script), append(program, last.program)
		t.Logf("%5.2f min: %+v", time.Since(from).Minutes(), last)
	}
	require.NotNil(t, get[any](b, "groundbeat.heard()"), "it still plays")
	_, slope := stat.LinearRegression(minutes, script, nil, false)
	_, grows := stat.LinearRegression(minutes, program, nil, false)
	l.add("growth of the heap while Listen plays for 10 minutes", "20 kB a minute", fmt.Sprintf("line through %d samples, each after collecting garbage", len(minutes)),
		"JavaScript %+.1f kB a minute (%.0f kB at the end); the program's memory %+.1f kB a minute (%.1f MB); %+.0f elements, %+.0f audio nodes",
		slope, last.script, grows, last.program/1000, last.nodes-first.nodes, last.audio-first.audio)
	require.LessOrEqual(t, slope, mostSlope)
	require.LessOrEqual(t, grows, mostSlope)
}
