package screens

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

func (g *testGame) carry() *Carry { return g.Controllers[view.ScreenCarry].(*Carry) }

// carries plays a round of Carry on whose taps are behind the dums by what is told, and
// returns what is said of her own time.
func (g *testGame) carries(t *testing.T, action string, behind func(i int) time.Duration) string {
	t.Helper()
	g.Use(action, "")
	x := &g.carry().tapped
	var times []time.Duration
	for i, s := range x.round.Strokes() {
		times = append(times, s+behind(i))
	}
	g.pressed(t, g.Page, g.Wall, x.taps.Number, append(times, x.round.End())...)
	g.Ticks(1500)
	require.Equal(t, view.Reviewing, x.phase())
	return g.Page.Screen().Find("own").Text
}

func evenly(int) time.Duration { return 20 * time.Millisecond }

// few is how it is said that there are so many gaps so far.
func few(n int) string { return fmt.Sprintf("There are %d so far;", n) }

// The rounds of earlier days count with the one at hand where they are of the same rhythm,
// at the same tempo and on the same output; the round itself counts once, though it is kept.
func TestEarlierRoundsCount(t *testing.T) {
	g, _, _ := newTestGame(t, carryLink)
	require.Contains(t, g.carries(t, view.ActBegin, evenly), few(4))
	kept := g.Storage.Rounds()[0]
	for name, c := range map[string]struct {
		change func(r *history.Round)
		gaps   int
	}{
		"the same":      {func(*history.Round) {}, 8},
		"slower":        {func(r *history.Round) { r.BPM = 100 }, 4},
		"other rhythm":  {func(r *history.Round) { r.Rhythm = "saidi" }, 4},
		"other output":  {func(r *history.Round) { r.Output = "headphones" }, 4},
		"other kind":    {func(r *history.Round) { r.Kind = history.Stop }, 4},
		"other riffs":   {func(r *history.Round) { r.RiffVersion = 99 }, 4},
		"nothing of it": {func(r *history.Round) { r.Taps = nil }, 4},
		"but the last":  {func(r *history.Round) { r.Taps = r.Taps[:8] }, 7},
	} {
		g, _, _ := newTestGame(t, carryLink)
		earlier := kept
		earlier.ID = "earlier"
		c.change(&earlier)
		g.Shared.Learner.Rounds = []history.Round{earlier}
		require.Contains(t, g.carries(t, view.ActBegin, evenly), few(c.gaps), name)
	}
}

// A round since the page was opened counts once, whether or not it has come back among
// those that are kept.
func TestARoundCountsOnce(t *testing.T) {
	g, _, _ := newTestGame(t, carryLink)
	g.carries(t, view.ActBegin, evenly)
	g.Shared.Learner.Rounds = g.Storage.Rounds()
	require.Contains(t, g.carries(t, view.ActOnce, evenly), few(8))
	g.Shared.Learner.Rounds = g.Storage.Rounds()
	s := g.Screen()
	require.Contains(t, s.Find("own").Text, few(8), "looked at once more")
}

// What was tapped on one output is not told of another, which begins at nothing; it is
// there when the first is used again.
func TestEachOutputHasItsOwnCount(t *testing.T) {
	g, _, _ := newTestGame(t, carryLink)
	require.Contains(t, g.carries(t, view.ActBegin, evenly), few(4))
	first := g.Shared.Outputs
	g.Shared.Outputs.Put(host.Output{Name: "headphones", When: someDay})
	require.Contains(t, g.carries(t, view.ActOnce, evenly), few(4))
	g.Shared.Outputs = first
	require.Contains(t, g.carries(t, view.ActOnce, evenly), few(8))
}

// A silence in which a tap belongs to no dum tells nothing, and one in which nothing was
// tapped neither.
func TestASilenceThatTellsNothing(t *testing.T) {
	g, _, _ := newTestGame(t, carryLink)
	g.Use(view.ActBegin, "")
	x := &g.carry().tapped
	silence := g.carry().deals.carried.Silences()[0]
	strokes, at := x.round.Strokes(), g.carry().deals.carried.At
	var times []time.Duration
	for _, s := range strokes {
		times = append(times, s)
		if s == at(silence.From) {
			times = append(times, s+480*time.Millisecond)
		}
	}
	g.pressed(t, g.Page, g.Wall, x.taps.Number, append(times, x.round.End())...)
	g.Ticks(1500)
	require.Contains(t, g.Page.Screen().Find("own").Text, few(0))

	g.Use(view.ActNext, "")
	g.Ticks(20_000)
	require.Equal(t, view.Reviewing, x.phase())
	require.Contains(t, g.Page.Screen().Find("own").Text, few(0))
	require.Empty(t, g.Storage.Rounds()[1].Taps)
}

// Her own tempo is told as it was tapped: later and later in the silence is slower, sooner
// and sooner faster, and as the drums had it neither.
func TestHerOwnTempoIsTold(t *testing.T) {
	for _, drift := range []time.Duration{-20, 0, 20} {
		g, _, _ := newTestGame(t, carryLink)
		g.carries(t, view.ActBegin, func(i int) time.Duration {
			return drift * time.Millisecond * time.Duration(max(0, min(i-3, 4))) // the fifth is the first in silence
		})
		c := g.carry().deals.carried.Kept()
		require.Len(t, c, 1)
		require.True(t, c[0].Slower.Known)
		require.InDelta(t, float64(drift)/1000, c[0].Slower.Value, 0.006)
		kept := g.Storage.Rounds()[0].Silences
		require.Len(t, kept, 1)
		require.Equal(t, []int{4, 7}, []int{kept[0].First, kept[0].Last})
	}
}
