package round_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/scoring"
)

// carryRecording plays a recording of a round with silences as the game does, and
// writes it with what came of it.
func carryRecording(t *testing.T, text string) (string, *round.Carried) {
	t.Helper()
	note, value := values(t, text)
	level, err := riff.ParseLevel(value["level"])
	require.NoError(t, err)
	r := carried(t, supplied(t, value["rhythm"]), wholeOf(t, value, "bpm"), wholeOf(t, value, "eights"), level, uint64(wholeOf(t, value, "seed")))
	tapAlong(t, r, value)
	result := r.Result()
	said := note + "\n" + sayKept(value, "rhythm", "bpm", "eights", "level", "seed", "setup", "taps")
	for i, k := range r.Kept() {
		said += fmt.Sprintf("silence %d: from %s to %s; tapped %d of %d, back %s, slower %s\n", i+1,
			sayMs(r.At(k.From)), sayMs(r.At(k.To)), k.Tapped, k.Last-k.First+1, sayLanding(k.Back), sayShare(k.Slower))
	}
	with, alone := r.Spreads()
	said += fmt.Sprintf("spread: with the drums %s, in the silence %s\n", sayFigure(with.Figure), sayFigure(alone.Figure))
	said += fmt.Sprintf("score: %.6f\nsummary: %d of %d tapped, added:%s\n", result.Accuracy,
		len(result.Pairs), len(r.Strokes()), sayTaps(r.Taps(), result.Added))
	return said, r
}

func sayShare(f scoring.Figure) string {
	if !f.Known {
		return "–"
	}
	return fmt.Sprintf("%+.3f %%", 100*f.Value)
}

func sayFigure(f scoring.Figure) string {
	if !f.Known {
		return "–"
	}
	return fmt.Sprintf("%.3f", f.Value)
}

// kept holds, for each recording, what its score is made of, by hand: strokes asked
// for, taps, and how far, in ms and less the set-up, the matched ones lie. The rounds
// are maqsum at 120: sixteen dums, a second apart from 2 s on, or thirty-two; the
// window is 200 ms.
var kept = map[string]byHand{
	"kept":         {strokes: 16, taps: 16, off: []float64{0, 0, 0, 0, 5, 10, -5, 5, 0, 0, 0, 0, 0, 0, 0, 0}},
	"slower":       {strokes: 16, taps: 16, off: []float64{0, 0, 0, 0, 10, 40, 70, 100, 130, 20, 0, 0, 0, 0, 0, 0}},
	"faster":       {strokes: 16, taps: 16, off: []float64{0, 0, 0, 0, 0, -20, -40, -60, -80, -10, 0, 0, 0, 0, 0, 0}},
	"stopped-too":  {strokes: 16, taps: 12, off: []float64{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}},
	"lost":         {strokes: 16, taps: 16, off: []float64{0, 0, 0, 0, 0, 90, 180, 10, 0, 0, 0, 0, 0, 0, 0}},
	"set-up":       {strokes: 16, taps: 16, off: []float64{5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5}},
	"two-silences": {strokes: 32, taps: 32, off: twice},
}

var twice = []float64{10, -10, 10, -10, 10, -10, 10, -10, 10, -10, 10, -10, 10, -10, 10, -10,
	10, -10, 10, -10, 10, -10, 10, -10, 10, -10, 10, -10, 10, -10, 10, -10}

func TestRecordedSilences(t *testing.T) {
	eachRecording(t, "carry", len(kept), func(t *testing.T, name, text string) string {
		got, r := carryRecording(t, text)
		requireByHand(t, kept, name, &r.Round)
		return got
	})
}
