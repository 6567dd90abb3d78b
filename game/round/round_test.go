package round_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/round"
)

// move is one thing that happens to a round, and what comes of it.
type move struct {
	do    string // begin, hear, tap or cut
	at    time.Duration
	phase round.Phase // after it
	taken bool        // of a tap
}

// One eight of maqsum at 120: the first step sounds after 2 s, the question
// ends after 6 s, and the round after 6.3 s.
func TestPhases(t *testing.T) {
	const (
		start, end = 2000 * ms, 6000 * ms
		over       = end + round.Grace
	)
	for _, c := range []struct {
		name  string
		moves []move
		why   string
	}{
		{name: "from the count-in to the review", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "hear", at: 0, phase: round.CountIn},
			{do: "hear", at: start - 1, phase: round.CountIn},
			{do: "hear", at: start, phase: round.Playing},
			{do: "hear", at: end, phase: round.Playing},
			{do: "hear", at: over - 1, phase: round.Playing},
			{do: "hear", at: over, phase: round.Review},
		}},
		{name: "nothing happens before Begin", moves: []move{
			{do: "hear", at: 3 * time.Second, phase: round.Ready},
			{do: "tap", at: 3 * time.Second, phase: round.Ready},
			{do: "cut", phase: round.Ready},
			{do: "hear", at: time.Hour, phase: round.Ready},
			{do: "begin", phase: round.CountIn},
		}},
		{name: "Begin twice is Begin once", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "begin", phase: round.CountIn},
			{do: "hear", at: start, phase: round.Playing},
			{do: "begin", phase: round.Playing},
			{do: "hear", at: over, phase: round.Review},
			{do: "begin", phase: round.Review},
		}},
		{name: "heard far ahead in one call", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "hear", at: time.Hour, phase: round.Review},
			{do: "hear", at: 2 * time.Hour, phase: round.Review},
		}},
		{name: "begun before its first frame is heard", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "hear", at: -800 * ms, phase: round.CountIn},
			{do: "tap", at: -800 * ms, phase: round.CountIn},
			{do: "hear", at: -1, phase: round.CountIn},
			{do: "hear", at: start, phase: round.Playing},
		}},
		{name: "a clock that steps back does not lead back", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "hear", at: start, phase: round.Playing},
			{do: "hear", at: start - 10*ms, phase: round.Playing},
			{do: "hear", at: -5 * time.Second, phase: round.Playing},
			{do: "hear", at: start, phase: round.Playing},
		}},
		{name: "taps from half a beat ahead to the end of the grace", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "tap", at: 1500 * ms, phase: round.CountIn},
			{do: "tap", at: 1750*ms - 1, phase: round.CountIn},
			{do: "tap", at: 1750 * ms, phase: round.CountIn, taken: true},
			{do: "hear", at: start, phase: round.Playing},
			{do: "tap", at: 1600 * ms, phase: round.Playing},
			{do: "tap", at: 1900 * ms, phase: round.Playing, taken: true},
			{do: "tap", at: end, phase: round.Playing, taken: true},
			{do: "tap", at: over - 1, phase: round.Playing, taken: true},
			{do: "tap", at: over, phase: round.Playing},
			{do: "hear", at: over, phase: round.Review},
			{do: "tap", at: start, phase: round.Review},
		}},
		{name: "cut in the count-in", why: "1: cut", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "cut", phase: round.Void},
			{do: "begin", phase: round.Void},
			{do: "hear", at: time.Hour, phase: round.Void},
			{do: "tap", at: start, phase: round.Void},
		}},
		{name: "cut in the question; the first reason stays", why: "2: cut", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "hear", at: start, phase: round.Playing},
			{do: "cut", phase: round.Void},
			{do: "cut", phase: round.Void},
		}},
		{name: "a finished round cannot be cut", moves: []move{
			{do: "begin", phase: round.CountIn},
			{do: "hear", at: over, phase: round.Review},
			{do: "cut", phase: round.Review},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ready(t, supplied(t, "maqsum"), 120, 1)
			require.Equal(t, round.Ready, r.Phase())
			for i, m := range c.moves {
				require.Equal(t, m.taken, play(r, m, i), "move %d, %s %v", i, m.do, m.at)
				require.Equal(t, m.phase, r.Phase(), "move %d, %s %v", i, m.do, m.at)
			}
			require.Equal(t, c.why, r.Why())
			if r.Phase() != round.Review {
				require.Zero(t, r.Result())
			}
		})
	}
}

// play makes a move and reports whether a tap was taken.
func play(r *round.Round, m move, i int) bool {
	switch m.do {
	case "begin":
		r.Begin()
	case "hear":
		r.Hear(m.at, 0)
	case "tap":
		return r.Tap(round.Tap{At: m.at}, 0)
	case "cut":
		r.Cut(string(rune('0'+i)) + ": cut")
	}
	return false
}

// What Hear says counts, also when nobody listens any more.
func TestHeard(t *testing.T) {
	r := ready(t, supplied(t, "maqsum"), 120, 1)
	r.Hear(time.Second, 0)
	require.Negative(t, r.Heard(), "nothing is heard of a round that has not begun")
	r.Begin()
	require.Negative(t, r.Heard())
	r.Hear(-800*ms, 0)
	require.Equal(t, -800*ms, r.Heard())
	r.Hear(3*time.Second, 0)
	r.Hear(2990*ms, 0)
	require.Equal(t, 2990*ms, r.Heard())
	r.Cut("stop")
	r.Hear(4*time.Second, 0)
	require.Equal(t, 2990*ms, r.Heard())
}

func TestPhaseNames(t *testing.T) {
	names := map[round.Phase]string{
		round.Ready: "ready", round.CountIn: "count-in", round.Playing: "playing", round.Review: "review", round.Void: "void",
	}
	for phase, name := range names {
		require.Equal(t, name, phase.String())
	}
}

// How near a tap must lie to be on its stroke: by beat and gap, whatever the rhythm, and
// never so far that it might be on the next as well.
func TestClose(t *testing.T) {
	for _, id := range catalogue(t) {
		c := supplied(t, id)
		for bpm := c.Tempo.Slow; bpm <= c.Tempo.Fast; bpm += 7 {
			r, err := round.New(round.Setting{Kind: round.Dums, Rhythm: c, BPM: bpm, Eights: 2, Seed: 1})
			require.NoError(t, err)
			beat, near := c.At(c.StepsPerBeat(), bpm), r.Close()
			gap := r.End()
			for i, s := range r.Strokes()[1:] {
				gap = min(gap, s-r.Strokes()[i])
			}
			require.LessOrEqual(t, 4*near, gap, "%s at %d", c.ID, bpm)
			require.Zero(t, near%time.Microsecond)
			if gap >= 4*beat/25 && gap >= 100*ms {
				require.InDelta(t, float64(max(25*ms, beat/25)), float64(near), 1e3, "%s at %d", c.ID, bpm)
			}
		}
	}
	r, err := round.New(round.Setting{Kind: round.Dums, Rhythm: supplied(t, "maqsum"), BPM: 60, Eights: 1, Seed: 1})
	require.NoError(t, err)
	require.Equal(t, 40*ms, r.Close(), "4 % of a second")
}
