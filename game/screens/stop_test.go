package screens

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

func (g *testGame) stop() *Stop { return g.Controllers[view.ScreenStop].(*Stop) }

// stopped is a round of Catch the stop whose strokes are all tapped where they lie, with
// further taps, and what is kept of it.
func stopped(t *testing.T, seed int, further func(x *Stop) []time.Duration) (*testGame, history.Round) {
	t.Helper()
	g, _, _ := newTestGame(t, fmt.Sprintf("?screen=stop&rhythm=maqsum&bpm=120&eights=8&seed=%d", seed))
	g.Use(view.ActBegin, "")
	x := g.stop()
	times := merged(x.tapped.round.Strokes(), further(x))
	g.pressed(t, g.Page, g.Wall, x.tapped.taps.Number, append(times, x.tapped.round.End())...)
	g.Ticks(1500)
	require.Equal(t, view.Reviewing, x.Phase())
	return g, g.Storage.Rounds()[0]
}

// merged are two ascending lists of times as one.
func merged(a, b []time.Duration) (all []time.Duration) {
	for len(a)+len(b) > 0 {
		if len(b) == 0 || len(a) > 0 && a[0] <= b[0] {
			all, a = append(all, a[0]), a[1:]
			continue
		}
		all, b = append(all, b[0]), b[1:]
	}
	return all
}

func nothing(*Stop) []time.Duration { return nil }

// Of each stop it is kept which stroke it was and which is the 1 after it, as many counts
// later as it says; its figure begins before it, and where nobody taps into the silence
// there are no taps in it.
func TestEachStopIsRecorded(t *testing.T) {
	counts := map[int]bool{}
	for seed := 1; seed < 7; seed++ {
		g, r := stopped(t, seed, nothing)
		require.Len(t, r.Breaks, len(g.stop().deals.stopped.Stops()), "seed %d", seed)
		require.NotEmpty(t, r.Breaks)
		last := -1
		for _, b := range r.Breaks {
			require.Greater(t, b.Stop, last)
			require.Greater(t, b.Back, b.Stop)
			silence := r.Strokes[b.Back] - r.Strokes[b.Stop]
			require.InDelta(t, float64(b.Counts)/2, silence, 0.001, "a count at 120 lasts half a second")
			require.Less(t, b.From, r.Strokes[b.Stop])
			require.Zero(t, b.Taps)
			counts[b.Counts], last = true, b.Back
		}
		require.Equal(t, len(r.Strokes), r.Matched)
		require.Empty(t, r.Aside)
	}
	require.Greater(t, len(counts), 1, "they are not all as long")
}

// From a stop to the 1 after it nothing sounds, and on that 1 the drums are back.
func TestNothingSoundsAfterAStop(t *testing.T) {
	for seed := 1; seed < 4; seed++ {
		g, _, _ := newTestGame(t, fmt.Sprintf("?screen=stop&rhythm=maqsum&bpm=120&eights=8&seed=%d", seed))
		from := g.begins()
		g.Use(view.ActBegin, "")
		strokes := g.stop().tapped.round.Strokes()
		g.Ticks(36_000)
		heard := g.heardIn(from, 36_000)
		for _, b := range g.Storage.Rounds()[0].Breaks {
			stop, back := float64(strokes[b.Stop])/1e6, float64(strokes[b.Back])/1e6
			rings := map[float64]bool{}
			for _, h := range heard {
				require.False(t, h.ms > stop+1 && h.ms < back-1, "%.0f ms lies between %.0f and %.0f", h.ms, stop, back)
				for _, at := range []float64{stop, back} {
					rings[at] = rings[at] || h.ms > at-1 && h.ms < at+1
				}
			}
			require.True(t, rings[stop] && rings[back], "seed %d", seed)
		}
	}
}

// A tap in the silence is counted where it was, and costs; one that goes with the figure is
// set aside, and neither counts nor costs.
func TestTapsInTheSilenceAndInTheFigure(t *testing.T) {
	_, without := stopped(t, 3, nothing)
	g, in := stopped(t, 3, func(x *Stop) []time.Duration {
		s := x.deals.stopped.Stops()[0]
		at := x.deals.stopped.At(s.At)
		return []time.Duration{at + 400*time.Millisecond, at + 700*time.Millisecond}
	})
	require.Equal(t, 2, in.Breaks[0].Taps)
	for _, b := range in.Breaks[1:] {
		require.Zero(t, b.Taps, "of that stop alone")
	}
	require.Equal(t, without.Added+2, in.Added)
	require.Less(t, in.Score, without.Score)
	s := g.Screen()
	require.Contains(t, s.Find("stops").Rows[0][2], "2", "and it is told")

	_, with := stopped(t, 3, func(x *Stop) []time.Duration {
		s := x.deals.stopped.Stops()[0]
		return []time.Duration{x.deals.stopped.At(s.From) + 3*time.Millisecond}
	})
	require.Len(t, with.Aside, 1)
	require.InDelta(t, with.Breaks[0].From+0.003, with.Aside[0].Frame/float64(with.Rate), 1e-4)
	require.Equal(t, without.Score, with.Score)
	require.Equal(t, len(without.Taps), len(with.Taps))
	require.Zero(t, with.Added)
}
