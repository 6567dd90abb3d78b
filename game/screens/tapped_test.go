package screens

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// dums is the controller of the dums' screen.
func (g *testGame) dums() *tapped { return &g.Controllers[view.ScreenDums].(*Tapped).tapped }

// tapsAll begins a round and taps each of its strokes so far behind it, to its review.
func (g *testGame) tapsAll(t *testing.T, action string, behind time.Duration) history.Round {
	t.Helper()
	g.Use(action, "")
	x := g.dums()
	var times []time.Duration
	for _, s := range x.round.Strokes() {
		times = append(times, s+behind)
	}
	g.pressed(t, g.Page, g.Wall, x.taps.Number, append(times, x.round.End())...)
	g.Ticks(1500)
	require.Equal(t, view.Reviewing, x.phase())
	kept := g.Storage.Rounds()
	return kept[len(kept)-1]
}

// What is kept of a round is what was tapped: each stroke with its tap, behind by as much,
// less what the set-up says that the output and the hand are behind by themselves.
func TestWhatIsTappedIsKept(t *testing.T) {
	for _, setup := range []float64{0, 40} {
		g, _, _ := newTestGame(t, readyLink)
		if setup != 0 {
			g.Shared.Outputs.Put(host.Output{Name: "studio", Mean: setup, When: someDay})
		}
		r := g.tapsAll(t, view.ActBegin, 25*time.Millisecond)
		require.Equal(t, []any{history.Dums, "maqsum", 120, 1, uint64(7)}, []any{r.Kind, r.Rhythm, r.BPM, r.Eights, r.Seed})
		require.Equal(t, setup, r.Setup)
		require.Len(t, r.Taps, len(r.Strokes))
		require.Equal(t, len(r.Strokes), r.Matched)
		require.Zero(t, r.Out+r.Added)
		require.InDelta(t, 25-setup, *r.Bias, 0.1)
		require.InDelta(t, 0, *r.Spread, 0.1)
		for i, tap := range r.Taps {
			require.InDelta(t, r.Strokes[i]+0.025, tap.Frame/48000, 1e-4, "tap %d", i)
			require.Equal(t, i, *tap.Stroke)
		}
	}
}

func TestARoundInWhichNothingIsTapped(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	g.Use(view.ActBegin, "")
	g.Ticks(9000)
	require.Len(t, g.Storage.Rounds(), 1)
	r := g.Storage.Rounds()[0]
	require.Equal(t, []int{0, len(r.Strokes), 0}, []int{r.Matched, r.Out, r.Added})
	require.Nil(t, r.Bias)
}

// Begin begins once; once more is the same round, and next another where the link asks for
// none.
func TestTheSameRoundAndAnother(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=dums&rhythm=maqsum&riff=ornamented")
	g.Wall.Fixed = 0
	seed := func() uint64 { return g.dums().round.Setting.Seed }
	first := seed()
	g.Use(view.ActBegin, "")
	g.Ticks(2000)
	under := g.dums().round
	g.Use(view.ActBegin, "")
	require.Same(t, under, g.dums().round, "it is under way")
	require.NotZero(t, g.dums().track.Epoch, "and heard on")
	g.Use(view.ActOnce, "")
	require.Equal(t, first, seed())
	require.NotSame(t, under, g.dums().round, "from its beginning")
	require.True(t, g.dums().round.UnderWay())
	g.Use(view.ActNext, "")
	require.NotEqual(t, first, seed())
	require.True(t, g.dums().round.UnderWay())
	second := seed()
	g.Use(view.ActStop, "")
	require.Equal(t, round.Ready, g.dums().round.Phase())
	require.NotEqual(t, second, seed(), "what was stopped is given up")
	require.Empty(t, g.Storage.Rounds(), "and leaves nothing")
}

// Slower is a tenth slower, and at least four beats a minute, as far as a link may say.
func TestSlowerAndSlower(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	seed := g.dums().round.Setting.Seed
	for _, want := range []int{108, 98, 89, 81, 73, 66, 60, 60} {
		g.Use(view.ActSlower, "")
		require.Equal(t, want, g.dums().round.BPM(), "a third below its own 90 is the slowest")
		require.Equal(t, want, g.Shared.Address.BPM)
		require.Equal(t, seed, g.dums().round.Setting.Seed, "the same round")
	}
	g, _, _ = newTestGame(t, "?screen=dums&rhythm=any&from=five&seed=7")
	before := g.dums().round.BPM()
	g.Use(view.ActSlower, "")
	require.Equal(t, before-max(4, before/10), g.dums().round.BPM())
	require.Zero(t, g.Shared.Address.BPM, "each rhythm has a tempo of its own")
	g.Use(view.ActNext, "")
	require.Equal(t, g.dums().round.Setting.Rhythm.Tempo.Usual, g.dums().round.BPM(), "this round alone")
}

// In the review the round is heard once more, with the drums that were chosen and as slowly
// as was asked for, until it is over or stopped; what was played stays as it was.
func TestAReviewIsHeard(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	g.tapsAll(t, view.ActBegin, 0)
	x := g.dums()
	played := x.round
	g.Use(view.ActSlowly, "yes")
	require.False(t, x.hears, "set, and not asked for")
	g.Use(view.ActHear, "")
	require.True(t, x.hears)
	require.Equal(t, 80, x.track.Passage.BPM())
	require.Zero(t, x.track.Passage.Start(), "without a count-in")
	g.Use(view.ActDrums, roundview.DrumsBass)
	require.Equal(t, []float64{0, 1}, []float64{g.Sound.Lead, g.Sound.Bass})
	slow := x.track.Passage
	g.Use(view.ActDrums, roundview.DrumsLead)
	require.Same(t, slow, x.track.Passage, "a matter of gains")
	g.Use(view.ActSlowly, "")
	require.True(t, x.hears, "heard anew at once")
	require.Equal(t, 120, x.track.Passage.BPM())
	g.Use(view.ActStop, "")
	require.False(t, x.hears)
	require.Equal(t, view.Reviewing, x.phase(), "and the review stays")
	require.Equal(t, []float64{1, 1}, []float64{g.Sound.Lead, g.Sound.Bass}, "both drums are back")
	g.Use(view.ActHear, "")
	g.Ticks(8000)
	require.False(t, x.hears, "over")
	require.Same(t, played, x.round)
	require.Len(t, g.Storage.Rounds(), 1)
}

// A tap belongs to the cycle that it is nearest to: just ahead of a first step, to that.
func TestInWhichCycleATapLies(t *testing.T) {
	const length = 2 * time.Second
	for _, one := range []struct {
		into  time.Duration
		cycle int
		turn  float64
	}{
		{0, 0, 0}, {500 * time.Millisecond, 0, 0.25}, {-20 * time.Millisecond, 0, -0.01},
		{1500 * time.Millisecond, 0, 0.75}, {1980 * time.Millisecond, 1, -0.01}, {2 * time.Second, 1, 0}, {5 * time.Second, 2, 0.5},
	} {
		cycle, turn := cycleAndTurn(one.into, length)
		require.Equal(t, one.cycle, cycle, one.into)
		require.InDelta(t, one.turn, turn, 1e-9, one.into)
	}
}
