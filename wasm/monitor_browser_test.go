//go:build browser && !js

package main

import (
	"math"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// bare is what the bare page measured.
type bare struct {
	Readings [][2]float64 // context − performance time; age of the reading: ms
	Clicks   []int64
	Latency  float64 // ms, as the browser states it
}

// scatter is the range of the middle nine tenths of the readings' differences
// about their median, ms.
func (m bare) scatter() float64 {
	var v []float64
	for _, r := range m.Readings[len(m.Readings)/10:] {
		v = append(v, r[0])
	}
	slices.Sort(v)
	return v[len(v)*95/100] - v[len(v)*5/100]
}

// Before anything is measured with the monitor: on a page without the game it
// neither delays the sound nor disturbs the clock.
func TestMonitorDoesNotMoveTheClock(t *testing.T) {
	s := serve(t)
	measure := func(hooked bool) (*tab, bare) {
		b := open(t, "autoplay-policy=no-user-gesture-required")
		if hooked {
			hook, err := os.ReadFile("testdata/hook.js")
			require.NoError(t, err)
			b.early(string(hook))
		}
		b.load(s.URL + "/test/bare.html")
		if hooked {
			b.run("monitor.rise = 0.4; monitor.quiet = 1000")
		}
		b.press("Start")
		b.wait("bare.done")
		return b, get[bare](b, "bare")
	}
	_, without := measure(false)
	b, with := measure(true)
	for range 2 { // whatever else the machine does scatters readings, and never holds them together
		if math.Abs(without.scatter()-with.scatter()) < 0.5 {
			break
		}
		t.Logf("disturbed: scatter %.3f ms without and %.3f ms with the monitor", without.scatter(), with.scatter())
		_, without = measure(false)
		b, with = measure(true)
	}
	t.Logf("clock readings: scatter %.3f ms without and %.3f ms with the monitor; stated latency %.2f and %.2f ms",
		without.scatter(), with.scatter(), without.Latency, with.Latency)
	require.InDelta(t, without.scatter(), with.scatter(), 0.5, "ms")
	require.InDelta(t, without.Latency, with.Latency, 3, "ms: at most a render quantum")

	// Every click is seen at one fixed distance from its frame.
	onsets := get[[]int64](b, "monitor.onsets")
	require.Len(t, onsets, len(with.Clicks))
	for i, at := range onsets {
		require.Equal(t, onsets[0]-with.Clicks[0], at-with.Clicks[i], "click %d", i)
	}
	t.Logf("16 clicks: each captured %d frames from where it was scheduled", onsets[0]-with.Clicks[0])
	require.LessOrEqual(t, math.Abs(float64(onsets[0]-with.Clicks[0])), 0.0)
}
