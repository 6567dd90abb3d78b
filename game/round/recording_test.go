package round_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/round"
	"groundbeat/scoring"
)

// A recording is a round as it was played: what was asked for, and the taps.
// Its text has ten lines: what it shows (#), six lines of what was played, and
// three of what came of it. Times are in ms from the "5" of the count-in.
type recording struct {
	note        string
	rhythm      string
	bpm, eights int
	seed        uint64
	setup       time.Duration
	taps        []time.Duration // ascending
}

// parseRecording reads the lines of what was played.
func parseRecording(t *testing.T, text string) recording {
	t.Helper()
	note, value := values(t, text)
	r := recording{
		note: note, rhythm: value["rhythm"], bpm: wholeOf(t, value, "bpm"), eights: wholeOf(t, value, "eights"),
		seed: uint64(wholeOf(t, value, "seed")), setup: parseMs(t, value["setup"]), taps: timesOf(t, value["taps"]),
	}
	require.True(t, slices.IsSorted(r.taps), "taps as they fell")
	return r
}

// values reads a recording's text: a line that begins with # and tells what it
// shows, then lines of a key and a value.
func values(t *testing.T, text string) (note string, value map[string]string) {
	t.Helper()
	note, rest, _ := strings.Cut(text, "\n")
	require.True(t, strings.HasPrefix(note, "# "), "the first line tells what the recording shows")
	value = map[string]string{}
	for line := range strings.Lines(rest) {
		k, v, ok := strings.Cut(line, ":")
		require.True(t, ok, "not a key and a value: %q", line)
		value[k] = strings.TrimSpace(v)
	}
	return note, value
}

func wholeOf(t *testing.T, value map[string]string, key string) int {
	t.Helper()
	n, err := strconv.Atoi(value[key])
	require.NoError(t, err, key)
	return n
}

func timesOf(t *testing.T, value string) (times []time.Duration) {
	t.Helper()
	for _, at := range strings.Fields(value) {
		times = append(times, parseMs(t, at))
	}
	return times
}

// sayKept writes what was read once more.
func sayKept(value map[string]string, keys ...string) string {
	var b strings.Builder
	for _, k := range keys {
		fmt.Fprintf(&b, "%s\n", strings.TrimSuffix(k+": "+value[k], " "))
	}
	return b.String()
}

func parseMs(t *testing.T, s string) time.Duration {
	t.Helper()
	d, err := time.ParseDuration(s + "ms") // exact to the nanosecond
	require.NoError(t, err)
	return d
}

// format writes the recording with what came of it.
func (rec recording) format(r *round.Round, refused []int) string {
	result := r.Result()
	var b strings.Builder
	fmt.Fprintf(&b, "%s\nrhythm: %s\nbpm: %d\neights: %d\nseed: %d\n", rec.note, rec.rhythm, rec.bpm, rec.eights, rec.seed)
	fmt.Fprintf(&b, "setup: %s\ntaps: %s\n", sayMs(rec.setup), sayTimes(rec.taps))
	fmt.Fprintf(&b, "pairs: %s\n", sayPairs(r))
	fmt.Fprintf(&b, "score: %.6f\n", result.Accuracy)
	fmt.Fprintf(&b, "summary: %d of %d tapped, %d left out, added:%s, refused:%s; %s\n",
		len(result.Pairs), len(r.Strokes()), len(result.Out), sayTaps(r.Taps(), result.Added), sayNumbers(refused),
		sayTiming(result.Timing))
	return strings.ReplaceAll(b.String(), ": \n", ":\n")
}

// sayPairs says for each dum, by eight and count, which tap belongs to it and
// its raw offset in ms, or that it was left out: "1.3 #2 +60, 1.5 –".
func sayPairs(r *round.Round) string {
	c := r.Setting.Rhythm
	said := make([]string, len(r.Steps()))
	for i, step := range r.Steps() {
		eight := step/(c.Steps()*c.CyclesIn(1)) + 1
		said[i] = fmt.Sprintf("%d.%s –", eight, sayCount(c, step))
	}
	for _, p := range r.Result().Pairs {
		offset := sayMs(p.Offset)
		if p.Offset > 0 {
			offset = "+" + offset
		}
		said[p.Stroke] = strings.TrimSuffix(said[p.Stroke], "–") + fmt.Sprintf("#%d %s", r.Taps()[p.Tap].Mark, offset)
	}
	return strings.Join(said, ", ")
}

// sayCount is the dancer's count of a step, with its beat: "3", "2&".
func sayCount(c *rhythm.Cycle, step int) string {
	count, beat := c.CountInEight(step), c.CountInEight(step-step%c.StepsPerBeat())
	if count == beat {
		return beat
	}
	return beat + count
}

// sayTaps lists taps, given by their places, by their numbers.
func sayTaps(taps []round.Tap, places []int) string {
	var numbers []int
	for _, i := range places {
		numbers = append(numbers, taps[i].Mark)
	}
	return sayNumbers(numbers)
}

// sayNumbers lists the numbers of taps, from 1.
func sayNumbers(numbers []int) string {
	if len(numbers) == 0 {
		return " none"
	}
	said := ""
	for _, n := range numbers {
		said += fmt.Sprintf(" #%d", n)
	}
	return said
}

func sayTiming(t scoring.Timing) string {
	say := func(f scoring.Figure, format string) string {
		if !f.Known {
			return "–"
		}
		return fmt.Sprintf(format, f.Value+0) // no −0
	}
	return fmt.Sprintf("bias %s, median %s, spread %s, drift %s",
		say(t.Bias, "%+.3f"), say(t.Median, "%+.3f"), say(t.Spread, "%.3f"), say(t.Drift, "%+.3f"))
}

// sayMs is a time in ms, with as many decimals as it has.
func sayMs(d time.Duration) string {
	return strconv.FormatFloat(float64(d)/float64(ms), 'f', -1, 64)
}

func sayTimes(times []time.Duration) string {
	said := make([]string, len(times))
	for i, d := range times {
		said[i] = sayMs(d)
	}
	return strings.Join(said, " ")
}

// tapAlong plays a round from its begin to its review as the game does, with the taps of
// a recording.
func tapAlong(t *testing.T, r interface {
	Begin()
	UnderWay() bool
	Tap(round.Tap, time.Duration) bool
	Hear(now, setup time.Duration)
}, value map[string]string) {
	t.Helper()
	r.Begin()
	setup, taps := parseMs(t, value["setup"]), timesOf(t, value["taps"])
	next := 0
	for now := -500 * ms; r.UnderWay(); now += time.Second / 60 {
		for ; next < len(taps) && taps[next] <= now; next++ {
			require.True(t, r.Tap(round.Tap{At: taps[next], Mark: next + 1}, setup))
		}
		r.Hear(now, setup)
	}
}

// byHand is what the score of a recording is made of, worked out by hand: strokes asked
// for, taps that count, and how far, in ms and less the set-up, the matched ones lie.
type byHand struct {
	strokes, taps int
	off           []float64
}

func requireByHand(t *testing.T, all map[string]byHand, name string, r *round.Round) {
	t.Helper()
	want, found := all[name]
	require.True(t, found)
	require.Len(t, r.Strokes(), want.strokes)
	require.Len(t, r.Taps(), want.taps)
	require.InDelta(t, accuracy(want.off, want.strokes, want.taps), r.Result().Accuracy, 5e-7)
}
