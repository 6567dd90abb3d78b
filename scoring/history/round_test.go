package history

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// studio is the round of the package comment, before scoring, with a few more
// taps: strokes at 2.5, 3.75, 5 and 6.25 s of a stream of 48 kHz.
func studio() (Round, scoring.Result) {
	frames := []float64{120588, 180000.5, 199999, 240960}
	r := Round{
		Kind: Dums, Rhythm: "maqsum", BPM: 96, Riff: "bare", Eights: 4, Seed: 7,
		ID: "b2f1", When: "2026-01-31T18:30:00+02:00", Output: "studio <1>",
		Epoch: 1, Rate: 48000, Window: 50,
	}
	var strokes, taps []time.Duration
	for _, s := range []float64{2.5, 3.75, 5, 6.25} {
		r.Strokes = append(r.Strokes, s)
		strokes = append(strokes, time.Duration(s*1e9))
	}
	for i, f := range frames {
		r.Taps = append(r.Taps, Tap{
			At: 5123.4 + f/48, Frame: f, By: []string{"key", "touch", "mouse", "pen"}[i],
			Reading: Reading{Context: 3.2, Performance: 5100},
		})
		taps = append(taps, time.Duration(math.Round(f/48000*1e9)))
	}
	return r, scoring.Score(strokes, taps, 8*time.Millisecond, 50*time.Millisecond)
}

func record(t *testing.T) Round {
	t.Helper()
	r, err := New(studio())
	require.NoError(t, err)
	return r
}

func TestNew(t *testing.T) {
	r := record(t)
	require.Equal(t, 8., r.Setup)
	require.Equal(t, []int{3, 1, 1}, []int{r.Matched, r.Out, r.Added})
	require.Equal(t, 12.25, *r.Taps[0].Offset, "raw: 120588/48000 s − 2.5 s")
	require.Equal(t, 0.01, *r.Taps[1].Offset, "half a frame is 0.0104 ms, kept to 0.001")
	require.Nil(t, r.Taps[2].Offset)
	require.Nil(t, r.Taps[2].Stroke)
	require.Equal(t, 2, *r.Taps[3].Stroke)
	require.Equal(t, 20., *r.Taps[3].Offset)
	// Offsets less 8 ms: 4.25, −7.9896, 12.
	require.Equal(t, 2.753, *r.Bias)
	require.Equal(t, 4.25, *r.Median)
	require.NotNil(t, r.Spread)
	require.NotNil(t, r.Drift)
	d := func(x float64) float64 { return math.Exp(-x * x / 3200) }
	require.InDelta(t, (d(4.25)+d(-7.9896)+d(12))/4, r.Score, 1e-6)
	require.Equal(t, time.Date(2026, 1, 31, 16, 30, 0, 0, time.UTC), r.Time().UTC())
	require.Zero(t, Round{When: "yesterday"}.Time())
}

func TestNewLeavesItsArgument(t *testing.T) {
	played, result := studio()
	_, err := New(played, result)
	require.NoError(t, err)
	again, _ := studio()
	require.Equal(t, again, played)
}

func TestNewTooFew(t *testing.T) {
	played, _ := studio()
	played.Taps = nil
	r, err := New(played, scoring.Result{Matching: scoring.Matching{Out: []int{0, 1, 2, 3}}})
	require.NoError(t, err)
	require.Nil(t, r.Bias)
	require.Nil(t, r.Spread)
	require.Nil(t, r.Median)
	require.Nil(t, r.Drift)
	require.Panics(t, func() { _, _ = New(played, scoring.Result{}) }, "another round's result")
}

// TestRefused: each field out of its range, and every number as NaN and
// infinite, is refused by New and by Format, by its name.
func TestRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		field string
		spoil func(r *Round)
	}{
		{"kind", func(r *Round) { r.Kind = "quiz" }},
		{"rhythm", func(r *Round) { r.Rhythm = "" }},
		{"rhythm", func(r *Round) { r.Rhythm = "\xff" }},
		{"riff", func(r *Round) { r.Riff = "" }},
		{"output", func(r *Round) { r.Output = "a\xc3" }},
		{"bpm", func(r *Round) { r.BPM = 19 }},
		{"bpm", func(r *Round) { r.BPM = 301 }},
		{"eights", func(r *Round) { r.Eights = 0 }},
		{"seed", func(r *Round) { r.Seed = 1 << 53 }},
		{"id", func(r *Round) { r.ID = "" }},
		{"id", func(r *Round) { r.ID = "a b" }},
		{"when", func(r *Round) { r.When = "2026-01-31 18:30" }},
		{"epoch", func(r *Round) { r.Epoch = -1 }},
		{"rate", func(r *Round) { r.Rate = 0 }},
		{"window", func(r *Round) { r.Window = nan }},
		{"strokes[1]", func(r *Round) { r.Strokes[1] = 2.5 }},
		{"strokes[0]", func(r *Round) { r.Strokes[0] = -inf }},
		{"strokes[3]", func(r *Round) { r.Strokes[3] = inf }},
		{"taps[0].at", func(r *Round) { r.Taps[0].At = nan }},
		{"taps[1].frame", func(r *Round) { r.Taps[1].Frame = 7 }},
		{"taps[1].frame", func(r *Round) { r.Taps[1].Frame = inf }},
		{"taps[2].by", func(r *Round) { r.Taps[2].By = "foot" }},
		{"taps[3].reading.context", func(r *Round) { r.Taps[3].Reading.Context = nan }},
		{"taps[3].reading.performance", func(r *Round) { r.Taps[3].Reading.Performance = -1 }},
	} {
		played, result := studio()
		c.spoil(&played)
		_, err := New(played, result)
		requireField(t, c.field, err)
		whole := record(t)
		c.spoil(&whole)
		_, err = Format(whole)
		requireField(t, c.field, err)
	}
	for _, c := range []struct {
		field string
		spoil func(r *Round)
	}{
		{"setup", func(r *Round) { r.Setup = nan }},
		{"score", func(r *Round) { r.Score = 1.001 }},
		{"score", func(r *Round) { r.Score = nan }},
		{"bias", func(r *Round) { r.Bias = &inf }},
		{"spread", func(r *Round) { r.Spread = new(-1.) }},
		{"median", func(r *Round) { r.Median = &nan }},
		{"drift", func(r *Round) { r.Drift = &nan }},
		{"taps[0].offset", func(r *Round) { r.Taps[0].Offset = &nan }},
		{"taps[0].offset", func(r *Round) { r.Taps[0].Offset = nil }},
		{"taps[3].stroke", func(r *Round) { r.Taps[3].Stroke = new(4) }},
		{"taps[3].stroke", func(r *Round) { r.Taps[3].Stroke = new(-1) }},
		{"taps[3].stroke", func(r *Round) { r.Taps[3].Stroke = new(1) }},
		{"matched", func(r *Round) { r.Matched = 2 }},
		{"out", func(r *Round) { r.Out = 0 }},
		{"added", func(r *Round) { r.Added = 0 }},
	} {
		r := record(t)
		c.spoil(&r)
		_, err := Format(r)
		requireField(t, c.field, err)
	}
}

func requireField(t *testing.T, field string, err error) {
	t.Helper()
	var e *Error
	require.ErrorAs(t, err, &e, field)
	require.Equal(t, field, e.Field, e.Msg)
}

func TestRounding(t *testing.T) {
	require.Equal(t, 1.235, to(1.23456, 3))
	require.Equal(t, -1.235, to(-1.23456, 3))
	require.False(t, math.Signbit(to(-0.0001, 3)), "no −0")
	for _, x := range []float64{0.0005, 123456789.1235, 1e12 - 0.001, 5123.400000023842} {
		require.Equal(t, to(x, 3), to(to(x, 3), 3))
	}
}

// How near a tap must lie is written where it is known: older lines stay as they were.
func TestClose(t *testing.T) {
	r := record(t)
	older, err := Format(r)
	require.NoError(t, err)
	require.NotContains(t, string(older), "close")
	r.Close = 41.6667
	line, err := Format(r)
	require.NoError(t, err)
	require.Contains(t, string(line), `"close":41.667`)
	back, err := Parse(line)
	require.NoError(t, err)
	require.InDelta(t, 41.667, back.Close, 1e-9)
	r.Close = 1001
	_, err = Format(r)
	requireField(t, "close", err)
	which := answered()[0]
	which.Close = 25
	_, err = Format(which)
	require.ErrorContains(t, err, "close")
}
