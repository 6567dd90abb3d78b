package round_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// everyRhythm are all that can be heard.
func everyRhythm(t testing.TB) (all []*rhythm.Cycle) {
	t.Helper()
	files, err := os.ReadDir("../../assets/rhythms")
	require.NoError(t, err)
	for _, f := range files {
		all = append(all, supplied(t, strings.TrimSuffix(f.Name(), ".txt")))
	}
	return all
}

// stopped is a round with stops, ready to begin.
func stopped(t testing.TB, c *rhythm.Cycle, bpm, eights int, level riff.Level, seed uint64) *round.Stopped {
	t.Helper()
	r, err := round.NewStopped(round.Setting{Kind: round.Stops, Rhythm: c, BPM: bpm, Eights: eights, Level: level, Seed: seed})
	require.NoError(t, err)
	return r
}

// Wherever the drummer breaks off: not before the second eight, four counts of a
// figure, a silence of two to eight counts to the end of a phrase, and an eight of
// playing before each figure and after the last silence.
func TestPlacesOfStops(t *testing.T) {
	for _, c := range everyRhythm(t) {
		eight, perBeat := c.CyclesIn(1)*c.Steps(), c.StepsPerBeat()
		seen := map[string]bool{}
		for eights := round.MinLongEights; eights <= round.MaxLongEights; eights++ {
			for seed := range uint64(60) {
				stops := round.StopsOf(c, eights, seed)
				require.Equal(t, stops, round.StopsOf(c, eights, seed), "a seed is a promise")
				begun := 0
				for _, s := range stops {
					require.GreaterOrEqual(t, s.From, begun+eight, "an eight before it")
					require.Equal(t, 4*perBeat, s.At-s.From)
					require.Equal(t, s.Silence*perBeat, s.Back-s.At)
					require.Contains(t, []int{2, 4, 6, 8}, s.Silence)
					require.Zero(t, s.Back%(2*eight), "the end of a phrase of two eights")
					require.LessOrEqual(t, s.Back+eight, eights*eight, "an eight after it")
					begun = s.Back
					seen[fmt.Sprint("silence ", s.Silence)], seen[fmt.Sprint("figure ", s.Figure)] = true, true
				}
				seen[fmt.Sprint("stops ", len(stops))] = true
			}
		}
		require.Len(t, seen, 4+5+3, "%s: every silence, every figure, one to three stops: %v", c.ID, seen)
	}
}

// A seed is a promise: the golden changes when a rhythm's length does, and else
// never.
func TestGoldenStops(t *testing.T) {
	var b strings.Builder
	for _, id := range []string{"maqsum", "malfuf", "masmudi-kabir", "karsilama", "nawakht"} {
		for i := range uint64(10) {
			eights, seed := 4+int(i%5), i*i*i*1_234_567_891
			fmt.Fprintf(&b, "%s %d %d:", id, eights, seed)
			for _, s := range round.StopsOf(supplied(t, id), eights, seed) {
				fmt.Fprintf(&b, " %d %d-%d-%d", s.Figure, s.From, s.At, s.Back)
			}
			fmt.Fprintln(&b)
		}
	}
	golden(t, "testdata/stops.txt", b.String())
}

// What sounds: at each level both drums strike each figure together and end it with
// a firm dum, are silent to the 1, and come back in on it; there is no other break;
// and elsewhere the base is in its place.
func TestStopsAsTheySound(t *testing.T) {
	seeds := uint64(30)
	if testing.Short() {
		seeds = 6
	}
	for _, c := range everyRhythm(t) {
		for _, level := range levels() {
			for seed := range seeds {
				r := stopped(t, c, c.Tempo.Usual, 8, level, seed)
				breaks := 0
				for _, o := range r.Open() {
					if o.Kind == riff.Break {
						breaks++
					}
				}
				require.Equal(t, len(r.Stops()), breaks)
				for _, s := range r.Stops() {
					requireStop(t, c, r, s)
				}
				requireBase(t, c, r)
			}
		}
	}
}

// when is the frame of a step of a round with a count-in.
func when(c *rhythm.Cycle, bpm int, step float64) int64 {
	beats := 4 + step/float64(c.StepsPerBeat())
	return int64(beats*60*48000/float64(bpm) + 0.5)
}

func requireStop(t *testing.T, c *rhythm.Cycle, r *round.Stopped, s round.Stop) {
	t.Helper()
	from, at, back := when(c, r.BPM(), float64(s.From)), when(c, r.BPM(), float64(s.At)), when(c, r.BPM(), float64(s.Back))
	drums := map[bool][]int64{}
	struckBack := false
	for _, h := range r.Hits(audio.Rate, 0) {
		bass := h.Voice == audio.BassDum || h.Voice == audio.BassTek
		switch {
		case h.Frame >= back-1 && h.Frame <= back+1:
			struckBack = struckBack || bass
		case h.Frame >= from-1 && h.Frame < back-1:
			drums[bass] = append(drums[bass], h.Frame)
			if h.Frame >= at-1 {
				require.Contains(t, []audio.Voice{audio.BassDum, audio.LeadDum}, h.Voice)
				require.Equal(t, float32(1), h.Strength)
			}
		}
	}
	require.Equal(t, drums[true], drums[false], "together")
	require.GreaterOrEqual(t, len(drums[true]), 4)
	require.InDelta(t, from, drums[true][0], 1, "from its first count")
	require.InDelta(t, at, drums[true][len(drums[true])-1], 1, "the last stroke is the stop, and silence after it")
	require.Equal(t, c.Skeleton[0].Sounds(), struckBack)
	later := audio.Rate.Duration((at + 3*back) / 4)
	require.True(t, r.Silent(later))
	require.False(t, r.Silent(audio.Rate.Duration(at+2400)))
	require.False(t, r.Silent(audio.Rate.Duration(back+48)))
}

// requireBase requires the bass drum's dums where they belong outside the breaks
// and rolls, and the strokes asked for: those, each stop, and each 1 after it.
func requireBase(t *testing.T, c *rhythm.Cycle, r *round.Stopped) {
	t.Helper()
	var frames, steps []int64
	for step := range r.Setting.Eights * c.CyclesIn(1) * c.Steps() {
		at := when(c, r.BPM(), float64(step))
		asked := c.Skeleton[step%c.Steps()].Low() && !slices.ContainsFunc(r.Open(), func(o round.Span) bool {
			return at >= audio.Rate.Frame(o.From)-1 && at < audio.Rate.Frame(o.To)-1
		})
		for _, s := range r.Stops() {
			asked = asked || step == s.At || step == s.Back
		}
		if asked {
			frames, steps = append(frames, at), append(steps, int64(step))
		}
	}
	require.Len(t, r.Strokes(), len(frames))
	for i, at := range r.Strokes() {
		require.InDelta(t, frames[i], audio.Rate.Frame(at), 1)
		require.Equal(t, int(steps[i]), r.Steps()[i])
	}
}

func TestStopsRefused(t *testing.T) {
	good := round.Setting{Kind: round.Stops, Rhythm: supplied(t, "maqsum"), BPM: 100, Eights: 4}
	for want, spoil := range map[string]func(q *round.Setting){
		`round: kind "dums"; these are of kind "stop"`:    func(q *round.Setting) { q.Kind = round.Dums },
		"round: 3 eights; stops are asked in 4 to 8":      func(q *round.Setting) { q.Eights = 3 },
		"round: 9 eights; stops are asked in 4 to 8":      func(q *round.Setting) { q.Eights = 9 },
		"round: 300 beats a minute; allowed is 40 to 220": func(q *round.Setting) { q.BPM = 300 },
		"round: riff level Level(77) is not available":    func(q *round.Setting) { q.Level = 77 },
	} {
		bad := good
		spoil(&bad)
		_, err := round.NewStopped(bad)
		require.EqualError(t, err, want)
	}
	_, err := round.New(good)
	require.EqualError(t, err, `round: kind "stop" is for NewStopped`)
	_, err = round.NewStopped(good)
	require.NoError(t, err)
}

// seedOf is a seed whose only stop has the silence and the figure.
func seedOf(t testing.TB, c *rhythm.Cycle, eights, silence, figure int) uint64 {
	t.Helper()
	for seed := range uint64(1000) {
		if s := round.StopsOf(c, eights, seed); len(s) == 1 && s[0].Silence == silence && s[0].Figure == figure {
			return seed
		}
	}
	require.Fail(t, "no such seed")
	return 0
}

// oneStop is a round of four eights of maqsum at 120 with one stop, begun: 2 s of
// count-in, then dums each second; the figure D--D--D-D from 6 s of playing to the
// stop at 8 s, silence of four counts, back in at 10 s of the round less … see At.
func oneStop(t testing.TB) *round.Stopped {
	t.Helper()
	c := supplied(t, "maqsum")
	r := stopped(t, c, 120, 4, riff.Bare, seedOf(t, c, 4, 4, 1))
	r.Begin()
	return r
}

// The round of oneStop by hand: an eight lasts 4 s. The silence ends with the second
// eight, at 2 + 8 = 10 s; the stop is four counts before, at 8 s; its figure begins
// four counts before that, at 6 s, and strikes at 6.75 and 7.5 too.
func TestOneStopByHand(t *testing.T) {
	r := oneStop(t)
	var want []time.Duration
	for _, s := range []float64{2, 3, 4, 5, 8, 10, 11, 12, 13, 14, 15, 16, 17} {
		want = append(want, time.Duration(s*float64(time.Second)))
	}
	require.Equal(t, want, r.Strokes())
	require.Equal(t, 18*time.Second, r.End())
}

func TestStopCaught(t *testing.T) {
	for _, c := range []struct {
		name   string
		around []time.Duration // taps from the figure to the re-entry
		last   round.Landing
		taps   int // in the silence
		back   round.Landing
		aside  int
		added  int
	}{
		{"well", []time.Duration{8012 * ms, 9990 * ms}, round.Landing{Stroke: 4, Tapped: true, Offset: 12 * ms}, 0,
			round.Landing{Stroke: 5, Tapped: true, Offset: -10 * ms}, 0, 0},
		{"with the figure", []time.Duration{6010 * ms, 6740 * ms, 7530 * ms, 8000 * ms, 10000 * ms},
			round.Landing{Stroke: 4, Tapped: true}, 0, round.Landing{Stroke: 5, Tapped: true}, 3, 0},
		{"on the dums through the figure", []time.Duration{6000 * ms, 7000 * ms, 8000 * ms, 10000 * ms},
			round.Landing{Stroke: 4, Tapped: true}, 0, round.Landing{Stroke: 5, Tapped: true}, 2, 0},
		{"on through the silence", []time.Duration{8000 * ms, 8500 * ms, 9000 * ms, 9890 * ms, 10150 * ms},
			round.Landing{Stroke: 4, Tapped: true}, 3, round.Landing{Stroke: 5}, 0, 4},
		{"not at all", nil, round.Landing{Stroke: 4}, 0, round.Landing{Stroke: 5}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := oneStop(t)
			taps := []time.Duration{2 * time.Second, 3 * time.Second, 4 * time.Second, 5 * time.Second}
			taps = append(append(taps, c.around...), 11*time.Second, 12*time.Second)
			for _, at := range taps {
				require.True(t, r.Tap(round.Tap{At: at}, 0))
			}
			require.Empty(t, r.Catches())
			r.Hear(time.Minute, 0)
			require.Equal(t, round.Review, r.Phase())
			require.Equal(t, []round.Catch{{Stop: r.Stops()[0], Last: c.last, InSilence: c.taps, Back: c.back}}, r.Catches())
			require.Len(t, r.Aside(), c.aside)
			require.Len(t, r.Result().Added, c.added)
			require.Len(t, r.Taps(), len(taps)-c.aside)
		})
	}
}

// A player who is behind by her set-up has her taps moved before they are matched.
func TestStopWithSetUp(t *testing.T) {
	r := oneStop(t)
	const setup = 240 * ms
	for _, s := range r.Strokes() {
		require.True(t, r.Tap(round.Tap{At: s + setup + 5*ms}, setup))
	}
	r.Tap(round.Tap{At: 9*time.Second + setup}, setup)
	r.Tap(round.Tap{At: 5680*ms + setup}, setup) // for her before the figure, and so added
	r.Hear(r.End()+round.Grace, setup)
	require.Equal(t, round.Playing, r.Phase(), "so much longer")
	r.Hear(r.End()+round.Grace+setup, setup)
	require.Len(t, r.Result().Pairs, 13)
	require.Len(t, r.Result().Added, 2)
	require.Empty(t, r.Aside())
	catch := r.Catches()[0]
	require.Equal(t, []any{245 * ms, 1, 245 * ms}, []any{catch.Last.Offset, catch.InSilence, catch.Back.Offset})
}

// FuzzStopped does things to a round in any order; see FuzzRound.
func FuzzStopped(f *testing.F) {
	f.Add([]byte("\x00\x00\x02\x40\x02\x68\x02\x90\x01\xff"), uint64(3))
	f.Add([]byte("\x00\x00\x02\x68\x03\x00\x01\xff"), uint64(1))
	c := supplied(f, "malfuf")
	f.Fuzz(func(t *testing.T, script []byte, seed uint64) {
		r := stopped(t, c, 200, 4, riff.Level(seed%uint64(len(levels()))), seed)
		for ; len(script) >= 2; script = script[2:] {
			before, at := r.Phase(), (time.Duration(script[1])-20)*50*ms
			if script[0]%5 == 1 {
				r.Hear(at, at/9)
			} else {
				do(&r.Round, script[0]%5, at)
			}
			require.True(t, forward(before, r.Phase()), "from %v to %v", before, r.Phase())
			requireSound(t, &r.Round)
			require.Len(t, r.Catches(), map[bool]int{true: len(r.Stops())}[r.Phase() == round.Review])
		}
	})
}
