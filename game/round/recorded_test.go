package round_test

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/round"
)

var update = flag.Bool("update", false, "write the goldens anew")

const recordings = "../../testdata/rounds"

// TestRecordedRounds plays each recording again and compares what comes of it.
func TestRecordedRounds(t *testing.T) {
	eachRecording(t, "", len(scores), func(t *testing.T, _, text string) string {
		rec := parseRecording(t, text)
		got := rec.format(rec.play(t))
		require.Equal(t, got, rec.format(rec.playAtOnce(t)), "it does not matter when the round is told")
		return got
	})
}

// eachRecording plays each recording of a folder again and compares what comes of
// it, or writes it with -update. There are as many as were worked out by hand.
func eachRecording(t *testing.T, folder string, workedOut int, play func(t *testing.T, name, text string) string) {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(recordings, folder, "*.txt"))
	require.NoError(t, err)
	require.Len(t, paths, workedOut, "what should come of each recording is worked out by hand")
	for _, path := range paths {
		name := strings.TrimSuffix(filepath.Base(path), ".txt")
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			got := play(t, name, string(text))
			if *update {
				require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
				return
			}
			require.Equal(t, string(text), got)
		})
	}
}

// new is the round of a recording, begun.
func (rec recording) new(t *testing.T) *round.Round {
	t.Helper()
	r, err := round.New(round.Setting{
		Kind: round.Dums, Rhythm: supplied(t, rec.rhythm), BPM: rec.bpm, Eights: rec.eights, Seed: rec.seed,
	})
	require.NoError(t, err)
	r.Begin()
	return r
}

// play plays the recording as the game does: 60 times a second the taps since
// the last time, then what is heard. It returns the round and the numbers of the
// taps that were refused. Taps are numbered from 1.
func (rec recording) play(t *testing.T) (r *round.Round, refused []int) {
	t.Helper()
	const tick = time.Second / 60
	r = rec.new(t)
	next := 0
	for now := -500 * ms; r.Phase() != round.Review || next < len(rec.taps); now += tick {
		for ; next < len(rec.taps) && rec.taps[next] <= now; next++ {
			if !r.Tap(round.Tap{At: rec.taps[next], Mark: next + 1}, rec.setup) {
				refused = append(refused, next+1)
			}
		}
		r.Hear(now, rec.setup)
	}
	return r, refused
}

// playAtOnce gives the round all taps from the last to the first, as a queue
// might after a stall, and then lets it hear its end.
func (rec recording) playAtOnce(t *testing.T) (r *round.Round, refused []int) {
	t.Helper()
	r = rec.new(t)
	for i := len(rec.taps) - 1; i >= 0; i-- {
		if !r.Tap(round.Tap{At: rec.taps[i], Mark: i + 1}, rec.setup) {
			refused = append([]int{i + 1}, refused...)
		}
	}
	r.Hear(time.Hour, rec.setup)
	require.Equal(t, round.Review, r.Phase())
	return r, refused
}

// scores holds, for each recording, what its score is made of, worked out by
// hand from the taps: how many dums were asked for and how many taps belong to
// the question, and how far, in ms and less the set-up, the matched taps lie
// from their dums.
var scores = map[string]struct {
	dums, taps int
	off        []float64
}{
	"perfect":            {4, 4, []float64{0, 0, 0, 0}},
	"late":               {4, 4, []float64{60, 60, 60, 60}},
	"late-set-up":        {4, 4, []float64{0, 0, 0, 0}},
	"left-out":           {6, 4, []float64{12, -8, 20, 0}},
	"added":              {4, 7, []float64{5, -5, 10, -10}},
	"two-for-one":        {4, 6, []float64{-20, 10, 0, 0}},
	"midpoint":           {6, 6, []float64{0, 75, -74.999, 0, 0}},
	"before-the-first":   {4, 6, []float64{-95, 0, 0, 0}},
	"late-last":          {4, 5, []float64{0, 0, 0, 100}},
	"late-last-too-far":  {4, 4, []float64{0, 0, 0}},
	"wireless":           {6, 6, []float64{5, -5, 10, -10, 0, 95}},
	"rushing":            {8, 8, []float64{0, -5, -10, -15, -20, -25, -30, -35}},
	"empty":              {4, 0, nil},
	"awkward-tempo-late": {4, 4, []float64{40, 40, 40, 40}},
}

// accuracy is the Gaussian beat accuracy with σ = 40 ms, straight from its formula,
// Σ exp(−d²/2σ²) / ((dums + taps)/2), of offsets in ms: A. T. Cemgil, B. Kappen,
// P. Desain and H. Honing, "On tempo tracking: tempogram representation and Kalman
// filtering", Journal of New Music Research 28(4), 259–273, 2000.
func accuracy(off []float64, dums, taps int) float64 {
	var sum float64
	for _, d := range off {
		sum += math.Exp(-d * d / (2 * 40 * 40))
	}
	return sum / (float64(dums+taps) / 2)
}

func TestScoresOfRecordedRounds(t *testing.T) {
	for name, s := range scores {
		t.Run(name, func(t *testing.T) {
			require.InDelta(t, accuracy(s.off, s.dums, s.taps), recordedScore(t, name), 5.01e-7, "half of the last decimal kept")
		})
	}
}

func recordedScore(t *testing.T, name string) float64 {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(recordings, name+".txt"))
	require.NoError(t, err)
	_, after, ok := strings.Cut(string(text), "\nscore: ")
	require.True(t, ok)
	score, _, _ := strings.Cut(after, "\n")
	v, err := strconv.ParseFloat(score, 64)
	require.NoError(t, err)
	return v
}
