package recall

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestFirstMeeting: first stabilities and difficulties of FSRS-6 by default
// weights, from the tests of the fsrs-rs project (open-spaced-repetition, 2025).
func TestFirstMeeting(t *testing.T) {
	for g, want := range map[Grade]Memory{
		Missed: {0.212, 6.4133}, Labour: {1.2931, 5.1121707}, Right: {2.3065, 2.118104}, Fluent: {8.2956, 1},
	} {
		got := Default().After(Memory{}, 0, g)
		require.Equal(t, want.Stability, got.Stability)
		require.InDelta(t, want.Difficulty, got.Difficulty, 1e-6)
	}
}

// history is one of the tests of the fsrs-rs, go-fsrs and py-fsrs projects:
// missed, then right five times, so many days apart.
func history(w Model) Memory {
	m := w.After(Memory{}, 0, Missed)
	for _, days := range []float64{0, 1, 3, 8, 21} {
		m = w.After(m, days, Right)
	}
	return m
}

func TestSixMeetings(t *testing.T) {
	m := history(Default())
	require.InDelta(t, 53.62691, m.Stability, 1e-4)
	require.InDelta(t, 6.3574867, m.Difficulty, 1e-6)

	// The same without what happens within a day (w₁₇ to w₁₉ = 0).
	frozen := Default()
	frozen[17], frozen[18], frozen[19] = 0, 0, 0
	m = history(frozen)
	require.InDelta(t, 53.335106, m.Stability, 1e-4)
	require.InDelta(t, 6.3574867, m.Difficulty, 1e-6)
}

// TestDays: the days to the next meeting when each is on the day at which Recall is
// 0.9, which is the stability, rounded, from the tests of the go-fsrs and fsrs-rs projects. There
// the first right answer and a miss bring the thing back on the same day.
func TestDays(t *testing.T) {
	w, m, days := Default(), Memory{}, 0.
	var got []float64
	for i, g := range []Grade{Right, Right, Right, Right, Right, Right, Missed, Missed, Right, Right, Right, Right, Right} {
		m = w.After(m, days, g)
		days = math.Round(m.Stability)
		if i == 0 || g == Missed {
			days = 0
		}
		got = append(got, days)
	}
	require.Equal(t, []float64{0, 2, 11, 46, 163, 498, 0, 0, 2, 4, 7, 12, 21}, got)
}

// TestForgetting: from the formula, by another program.
func TestForgetting(t *testing.T) {
	w, m := Default(), Memory{Stability: 10, Difficulty: 5}
	for days, want := range map[float64]float64{0: 1, 10: .9, 20: .8458846, 100: .6928266} {
		require.InDelta(t, want, w.Recall(m, days), 1e-7)
	}
	for share, days := range map[float64]float64{.9: 10, .8: 33.1596, .95: 4.0256} {
		require.InDelta(t, share, w.Recall(m, days), 1e-6)
	}
	// FSRS-5: exponent −½, f = 19/81, R(2S) = .8250286.
	w[20] = .5
	require.InDelta(t, .8250286, w.Recall(m, 20), 1e-7)
	require.InDelta(t, 19./81, w.factor(), 1e-12)
}

// TestShape: what the words say.
func TestShape(t *testing.T) {
	w := Default()
	require.False(t, Memory{}.Met())
	require.Zero(t, w.Recall(Memory{}, 3))
	for _, m := range []Memory{{.5, 2}, {3, 5}, {40, 8}, {900, 1}} {
		early, late := w.After(m, m.Stability/10+1, Right), w.After(m, m.Stability*2+1, Right)
		require.Greater(t, late.Stability, early.Stability, "just before it is forgotten gains more")
		var last Memory
		for g := Missed; g <= Fluent; g++ {
			next := w.After(m, m.Stability+1, g)
			require.Greater(t, next.Stability, last.Stability, "a better answer lasts longer")
			if last.Met() {
				require.LessOrEqual(t, next.Difficulty, last.Difficulty)
			}
			last = next
		}
		require.Less(t, w.After(m, 1, Missed).Stability, m.Stability)
		require.GreaterOrEqual(t, w.After(m, 0, Right).Stability, m.Stability)
	}
}

// TestBounds: whatever comes, a memory stays within its bounds.
func TestBounds(t *testing.T) {
	w := Default()
	for g := Missed; g <= Fluent; g++ {
		m := Memory{}
		for range 200 {
			m = w.After(m, 3*m.Stability, g)
			require.True(t, m.Stability >= leastStability && m.Stability <= mostStability, "%v", m)
			require.True(t, m.Difficulty >= 1 && m.Difficulty <= 10, "%v", m)
		}
	}
	require.Equal(t, 1., w.After(w.After(Memory{}, 0, Fluent), 0, Fluent).Difficulty)
}

func TestMistakesOfTheProgrammer(t *testing.T) {
	w := Default()
	require.Panics(t, func() { w.After(Memory{}, 0, 0) })
	require.Panics(t, func() { w.After(Memory{}, 0, 5) })
	require.Panics(t, func() { w.After(Memory{}, -1, Right) })
	require.Panics(t, func() { w.After(Memory{}, math.NaN(), Right) })
}
