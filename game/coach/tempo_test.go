package coach

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

func TestTempoOfARhythm(t *testing.T) {
	maqsum := get(t, "maqsum") // 90 105 130
	for at, bpm := range map[Tempo]int{Slowest: 90, 50: 98, Usual: 105, 150: 118, Fastest: 130, -40: 90, 900: 130} {
		require.Equal(t, bpm, at.BPM(maqsum), "%d", at)
	}
	for bpm, at := range map[int]Tempo{40: Slowest, 90: Slowest, 99: 60, 105: Usual, 110: 120, 130: Fastest, 200: Fastest} {
		require.Equal(t, at, tempoAt(maqsum, bpm), "%d", bpm)
	}
	for _, c := range pool(t, quiz.All) {
		last := 0
		for at := Slowest; at <= Fastest; at += 10 {
			bpm := at.BPM(c)
			require.GreaterOrEqual(t, bpm, max(last, round.MinBPM, c.Tempo.Slow))
			require.LessOrEqual(t, bpm, min(round.MaxBPM, c.Tempo.Fast))
			require.InDelta(t, int(at), int(tempoAt(c, bpm)), 10, "%s %d", c.ID, bpm) // a beat a minute of ten
			last = bpm
		}
	}
	even := made(t, "even", "4/4", "D-T-")
	even.Tempo.Slow, even.Tempo.Usual, even.Tempo.Fast = 90, 90, 90
	require.Equal(t, 90, Usual.BPM(even))
	require.Equal(t, Slowest, tempoAt(even, 90))
}

// Three steps down for one up (Kaernbach 1991), four times as great before the first
// turn and twice before the second.
func TestTempoLadder(t *testing.T) {
	saidi := get(t, "saidi")
	var rounds []history.Round
	at := Tempo(startTempo)
	for _, step := range []struct {
		right bool
		by    Tempo
	}{{true, 40}, {true, 40}, {false, -60}, {true, 10}, {true, 10}, {false, -30}, {false, -30}} {
		rounds = append(rounds, tappedRound(0, "saidi", at.BPM(saidi), 0, step.right))
		at += step.by
		require.Equal(t, at, TempoOf(rounds, pool(t, quiz.Five), on(0)))
	}
	for pause, want := range map[int]Tempo{13: at, 14: max(0, at-tempoEase), 400: max(0, at-tempoEase)} {
		require.Equal(t, want, TempoOf(rounds, pool(t, quiz.Five), on(pause)))
	}

	// What says nothing about it: hidden dums, other tempi, other rhythms, names, help.
	helped := tappedRound(0, "saidi", at.BPM(saidi), 0, true)
	helped.Helps.Bass = 1
	more := append(slices.Clone(rounds), helped,
		tappedRound(0, "saidi", at.BPM(saidi), 30, false), tappedRound(0, "saidi", 200, 0, false),
		tappedRound(0, "gone", 100, 0, true), namedRound(0, "saidi", "maqsum", 0, "maqsum", "saidi"))
	require.Equal(t, at, TempoOf(more, pool(t, quiz.Five), on(0)))
	require.Equal(t, Tempo(startTempo), TempoOf(nil, pool(t, quiz.Five), on(0)))
}

// Simulated fingers whose dums fail from some tempo on are asked, in the mean of their
// last rounds, at the tempo at which three of four are right.
func TestFingers(t *testing.T) {
	maqsum, five := get(t, "maqsum"), pool(t, quiz.Five)
	for _, limit := range []float64{80, 110, 150} {
		r := rand.New(rand.NewPCG(uint64(limit), 1))
		right, n := 0, 0
		for range 12 {
			var rounds []history.Round
			for i := range 120 {
				at := TempoOf(rounds, five, "")
				ok := r.Float64() < rightAt(float64(at), limit, 20, 1000)
				rounds = append(rounds, tappedRound(0, "maqsum", at.BPM(maqsum), 0, ok))
				if i >= 40 {
					n++
					if ok {
						right++
					}
				}
			}
		}
		require.InDelta(t, tempoTarget, float64(right)/float64(n), .04, "%v", limit)
	}
}
