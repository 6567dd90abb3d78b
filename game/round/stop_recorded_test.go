package round_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// stopRecording plays a recording of a round with stops as the game does, and
// writes it with what came of it.
func stopRecording(t *testing.T, text string) (string, *round.Stopped) {
	t.Helper()
	note, value := values(t, text)
	level, err := riff.ParseLevel(value["level"])
	require.NoError(t, err)
	r := stopped(t, supplied(t, value["rhythm"]), wholeOf(t, value, "bpm"), wholeOf(t, value, "eights"), level, uint64(wholeOf(t, value, "seed")))
	tapAlong(t, r, value)
	result := r.Result()
	said := note + "\n" + sayKept(value, "rhythm", "bpm", "eights", "level", "seed", "setup", "taps")
	for i, c := range r.Catches() {
		said += fmt.Sprintf("stop %d: figure from %s, stop at %s, %d counts; last %s, taps in the silence %d, back %s\n", i+1,
			sayMs(r.Strokes()[c.Last.Stroke]-4*r.Setting.Rhythm.At(r.Setting.Rhythm.StepsPerBeat(), r.BPM())),
			sayMs(r.Strokes()[c.Last.Stroke]), c.Silence, sayLanding(c.Last), c.InSilence, sayLanding(c.Back))
	}
	said += fmt.Sprintf("score: %.6f\nsummary: %d of %d tapped, added:%s, set aside:%s\n", result.Accuracy,
		len(result.Pairs), len(r.Strokes()), sayTaps(r.Taps(), result.Added), sayMarks(r.Aside()))
	return said, r
}

func sayLanding(l round.Landing) string {
	if !l.Tapped {
		return "–"
	}
	return fmt.Sprintf("%+.3f", l.Offset.Seconds()*1000)
}

func sayMarks(taps []round.Tap) string {
	var numbers []int
	for _, t := range taps {
		numbers = append(numbers, t.Mark)
	}
	return sayNumbers(numbers)
}

// caught holds, for each recording, what its score is made of, by hand: strokes asked
// for, taps that count, and how far, in ms and less the set-up, the matched ones lie.
// The rounds are maqsum at 120: dums a second apart from 2 s on, but for the break.
var caught = map[string]byHand{
	"caught":      {strokes: 13, taps: 13, off: []float64{0, 0, 0, 0, 15, -20, 0, 0, 0, 0, 0, 0, 0}},
	"hands-go-on": {strokes: 13, taps: 14, off: []float64{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}},
	"too-soon":    {strokes: 13, taps: 13, off: []float64{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}},
	"through":     {strokes: 13, taps: 14, off: []float64{0, 0, 0, 0, 5, 0, 0, 0, 0, 0, 0, 0, 0}},
	"set-up":      {strokes: 13, taps: 13, off: []float64{10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10}},
}

func TestRecordedStops(t *testing.T) {
	eachRecording(t, "stop", len(caught), func(t *testing.T, name, text string) string {
		got, r := stopRecording(t, text)
		requireByHand(t, caught, name, &r.Round)
		return got
	})
}
