package round_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/round"
)

// beat is the exact time of a beat from the "5", to the next nanosecond at or
// after it.
func beat(n, bpm int) time.Duration {
	return time.Duration((n*int(time.Minute) + bpm - 1) / bpm)
}

// Each beat is counted from its own time on, not a nanosecond earlier than the
// rounding of one step, in the last eight as in the first.
func TestCount(t *testing.T) {
	for _, id := range []string{"maqsum", "saidi"} {
		for _, bpm := range []int{40, 61, 96, 97, 113, 120, 200} {
			t.Run(fmt.Sprint(id, bpm), func(t *testing.T) {
				const eights = 32
				r := begun(t, supplied(t, id), bpm, eights, 0)
				said := "" // before the "5"
				for n := range round.CountInBeats + 8*eights {
					want := fmt.Sprint((n+4)%8 + 1)
					at := beat(n, bpm)
					requireCount(t, r, at-2, said, "just before")
					requireCount(t, r, at, want, "at")
					requireCount(t, r, at+2, want, "just after")
					requireCount(t, r, at+time.Minute/time.Duration(2*bpm), want, "on the & of")
					said = want
				}
				requireCount(t, r, r.End()-1, "8", "at the end of")
				requireCount(t, r, r.End(), "", "after the end of")
			})
		}
	}
}

func requireCount(t *testing.T, r *round.Round, at time.Duration, want, where string) {
	t.Helper()
	r.Hear(at, 0)
	if got := r.Count(); got != want { // quicker than require.Equal, some 10⁴ times
		require.Equal(t, want, got, "%s a beat, at %v", where, at)
	}
}

func TestCountInOtherMetres(t *testing.T) {
	for _, c := range []struct {
		name, metre, skeleton string
		want                  string
	}{
		{"malfuf: four cycles in an eight", "2/4", "D--T--T-", "5 6 7 8 1 2 3 4 5 6 7 8 "},
		{"masmudi kabir: one cycle in an eight", "8/4", "D-D---T-D---T---", "5 6 7 8 1 2 3 4 5 6 7 8 "},
		// An odd metre has no eights; so far its count-in is the usual one.
		{"karşılama: one cycle of nine", "9/8", "D-T-D-TTT", "5 6 7 8 1 2 3 4 5 6 7 8 9 "},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := begun(t, made(t, c.metre, c.skeleton), 100, 1, 0)
			said := ""
			for at := 300 * ms; at < r.End(); at += 600 * ms {
				r.Hear(at, 0)
				said += r.Count() + " "
			}
			require.Equal(t, c.want, said)
		})
	}
}

// Nothing is counted that is not heard.
func TestCountIsEmpty(t *testing.T) {
	c := supplied(t, "maqsum")
	r := ready(t, c, 120, 1)
	require.Empty(t, r.Count(), "ready")
	r.Begin()
	require.Empty(t, r.Count(), "begun, and nothing heard yet")
	r.Hear(-1, 0)
	require.Empty(t, r.Count(), "before the first frame")
	r.Hear(0, 0)
	require.Equal(t, "5", r.Count())
	r.Hear(2*time.Second, 0)
	require.Equal(t, "1", r.Count())
	r.Hear(1990*ms, 0)
	require.Equal(t, "8", r.Count(), "a clock that stepped back")
	r.Hear(-5*time.Second, 0)
	require.Empty(t, r.Count())
	r.Hear(3*time.Second, 0)
	r.Cut("gap")
	require.Empty(t, r.Count(), "void")
	require.Empty(t, begun(t, c, 120, 1, time.Hour).Count(), "review")
}

// Maqsum at 120 takes 2 s a cycle and begins after 2 s.
func TestTurn(t *testing.T) {
	r := begun(t, supplied(t, "maqsum"), 120, 2, 0)
	for _, c := range []struct {
		at   time.Duration
		want float64
	}{
		{2000 * ms, 0}, {2500 * ms, .25}, {3000 * ms, .5}, {3999 * ms, .9995}, {4000 * ms, 0}, {9500 * ms, .75},
		{1500 * ms, .75}, {0, 0}, {-500 * ms, .75}, {-2000 * ms, 0}, {-2001 * ms, .9995}, {-time.Hour, 0},
		{10 * time.Second, 0}, {time.Hour, 0},
	} {
		require.InDelta(t, c.want, r.TurnAt(c.at), 1e-12, c.at)
		if c.at < 10*time.Second {
			r.Hear(c.at, 0)
			require.InDelta(t, c.want, r.Turn(), 1e-12, c.at)
		}
	}
}

// At awkward tempi each cycle begins with its own first step, in the last eight
// as in the first: no remainder adds up.
func TestTurnDoesNotDrift(t *testing.T) {
	for _, bpm := range []int{61, 97, 113} {
		r := ready(t, supplied(t, "saidi"), bpm, 32)
		for cycle := -3; cycle < 70; cycle++ {
			first := round.CountInBeats + 4*cycle // beat
			at := r.TurnAt(nearest(first, bpm))
			require.True(t, at == 0, "cycle %d at %d begins at a turn of %v", cycle, bpm, at)
			at = r.TurnAt(nearest(first, bpm) - 1)
			require.Less(t, at, 1.0)
			require.InDelta(t, 1, at, 1e-9, "cycle %d at %d", cycle, bpm)
		}
	}
}

// nearest is the exact time of a beat from the "5", to the nearest nanosecond.
func nearest(n, bpm int) time.Duration {
	return time.Duration(math.Round(float64(n) * 60e9 / float64(bpm)))
}

func TestTurnLiesWithin(t *testing.T) {
	for _, bpm := range []int{40, 61, 97, 113, 200} {
		r := ready(t, supplied(t, "maqsum"), bpm, 1)
		for at := -20 * time.Second; at < 20*time.Second; at += 7_654_321 {
			if turn := r.TurnAt(at); !(turn >= 0 && turn < 1) {
				t.Fatalf("%v at %d: %v", at, bpm, turn)
			}
		}
	}
}
