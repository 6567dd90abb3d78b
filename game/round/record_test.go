package round_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// Whoever reads a kept round can work out each offset from what stands beside
// it: from the frame heard at the tap, the rate, and the times of the strokes.
func TestRecordAgreesWithItself(t *testing.T) {
	for _, id := range []string{"maqsum", "saidi"} {
		for _, bpm := range []int{61, 96, 97, 113, 200} {
			for _, setup := range []time.Duration{0, 37_123_457, -20 * ms} {
				t.Run(fmt.Sprint(id, bpm, setup), func(t *testing.T) {
					const base = 48000*3600 + 1031 // an hour into the stream
					r := begun(t, supplied(t, id), bpm, 8, 0)
					for _, at := range someTaps(r, setup) {
						r.Tap(round.Tap{At: at}, setup)
					}
					r.Hear(time.Hour, setup)
					kept, err := history.Format(record(t, r, base))
					require.NoError(t, err)
					read, err := history.Parse(kept)
					require.NoError(t, err)
					requireAgreement(t, read)
				})
			}
		}
	}
}

// someTaps are taps on most strokes, with a spread of 20 ms, and a few others.
func someTaps(r *round.Round, setup time.Duration) []time.Duration {
	random := rand.New(rand.NewPCG(1, 2))
	var taps []time.Duration
	for i, s := range r.Strokes() {
		if i%7 != 3 {
			taps = append(taps, s+setup+time.Duration(random.NormFloat64()*float64(20*ms)))
		}
		if i%5 == 2 {
			taps = append(taps, s+setup+time.Duration(110*float64(ms)+random.Float64()*1e6))
		}
	}
	return taps
}

// record makes the record of a finished round that began in a frame of the
// stream, as the game does: each stroke in the frame in which it sounds, each
// tap in the frame, with fraction, that was heard at it.
func record(t *testing.T, r *round.Round, base int64) history.Round {
	t.Helper()
	q := r.Setting
	played := history.Round{
		Kind: history.Dums, Rhythm: q.Rhythm.ID, BPM: q.BPM, Riff: q.Level.String(), Eights: q.Eights, Seed: q.Seed,
		ID: "x", When: "2026-01-31T18:30:00Z", Epoch: 1, Rate: int(audio.Rate), Window: 100,
	}
	for _, s := range r.Strokes() {
		played.Strokes = append(played.Strokes, float64(base+audio.Rate.Frame(s))/float64(audio.Rate))
	}
	for _, tap := range r.Taps() {
		frame := float64(base) + tap.At.Seconds()*float64(audio.Rate)
		played.Taps = append(played.Taps, history.Tap{At: 1000 * frame / float64(audio.Rate), Frame: frame, By: "key"})
	}
	kept, err := history.New(played, r.Result())
	require.NoError(t, err)
	return kept
}

func requireAgreement(t *testing.T, kept history.Round) {
	t.Helper()
	require.Greater(t, kept.Matched, 20)
	require.Positive(t, kept.Out)
	require.Positive(t, kept.Added)
	var credit, sum float64
	for i, tap := range kept.Taps {
		if tap.Stroke == nil {
			continue
		}
		offset := 1000 * (tap.Frame/float64(kept.Rate) - kept.Strokes[*tap.Stroke]) // ms
		require.InDelta(t, offset, *tap.Offset, 0.001, "tap %d", i)
		off := offset - kept.Setup
		require.LessOrEqual(t, math.Abs(off), kept.Window+0.001)
		credit += math.Exp(-off * off / (2 * 40 * 40))
		sum += off
	}
	require.InDelta(t, credit/(float64(len(kept.Strokes)+len(kept.Taps))/2), kept.Score, 1e-6)
	require.InDelta(t, sum/float64(kept.Matched), *kept.Bias, 0.001)
}

// heardAt is the frame, with fraction, of a time in a round that begins in a frame.
func heardAt(base int64, at time.Duration) float64 {
	return float64(base) + at.Seconds()*float64(audio.Rate)
}

func seconds(base int64, at time.Duration) float64 {
	return float64(base+audio.Rate.Frame(at)) / float64(audio.Rate)
}

// Of a round with a change too: how late it was heard, and in its eight, from what is
// kept, and the change itself from its seed.
func TestChangeRecordAgreesWithItself(t *testing.T) {
	const base, setup = 48000*3600 + 1031, 37_123_457
	r := changed(t, supplied(t, "maqsum"), supplied(t, "saidi"), 3, 6, 97, riff.Filled)
	r.Begin()
	differs, _ := r.Differs()
	changes, _ := r.Changes()
	for _, at := range []time.Duration{5 * time.Second, differs + setup + 812345*time.Microsecond} {
		require.True(t, r.Press(round.Tap{At: at}, setup))
	}
	r.Hear(time.Hour, setup)
	require.True(t, r.Answer("saidi"))
	n := r.Notice()
	kept := history.Round{
		Kind: history.Change, Rhythm: "maqsum", To: "saidi", After: 3, BPM: 97, Riff: "filled", Eights: 6, Seed: 7,
		Changes: new(seconds(base, changes)), Strokes: []float64{seconds(base, differs)}, Setup: float64(setup) / 1e6,
		Choices: []string{"baladi", "saidi"}, Answer: n.Answer, Right: n.Right,
		ID: "x", When: "2026-01-31T18:30:00Z", Epoch: 1, Rate: int(audio.Rate),
	}
	for _, p := range r.Presses() {
		kept.Taps = append(kept.Taps, history.Tap{Frame: heardAt(base, p.At), By: "key"})
	}
	last := &kept.Taps[n.Press]
	last.Stroke, last.Offset = new(0), new(float64(n.Late+setup)/1e6)
	kept, err := history.NewChange(kept)
	require.NoError(t, err)
	late := 1000*(kept.Taps[1].Frame/float64(kept.Rate)-kept.Strokes[0]) - kept.Setup
	require.InDelta(t, 812.345, late, 0.011)
	require.InDelta(t, late, *kept.Taps[1].Offset-kept.Setup, 0.011)
	require.InDelta(t, float64(n.InEight)/1e6, late+1000*(kept.Strokes[0]-*kept.Changes), 0.011)
}
