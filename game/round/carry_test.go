package round_test

import (
	"fmt"
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

// carried is a round with silences, ready to begin.
func carried(t testing.TB, c *rhythm.Cycle, bpm, eights int, level riff.Level, seed uint64) *round.Carried {
	t.Helper()
	r, err := round.NewCarried(round.Setting{Kind: round.Carries, Rhythm: c, BPM: bpm, Eights: eights, Level: level, Seed: seed})
	require.NoError(t, err)
	return r
}

// Wherever the drums fall silent: for whole eights, one in three, with an eight of
// playing at least before the first, between two, and after the last.
func TestPlacesOfSilences(t *testing.T) {
	for _, c := range everyRhythm(t) {
		eight := c.CyclesIn(1) * c.Steps()
		for eights := round.MinLongEights; eights <= round.MaxEights; eights++ {
			seen := map[int]bool{}
			for seed := range uint64(200) {
				silences := round.SilencesOf(c, eights, seed)
				require.Equal(t, silences, round.SilencesOf(c, eights, seed), "a seed is a promise")
				require.Len(t, silences, max(1, eights/3))
				begun := 0
				for _, s := range silences {
					require.GreaterOrEqual(t, s.From, begun+eight, "an eight before it")
					require.Zero(t, s.From%eight)
					require.Equal(t, s.From+eight, s.To)
					require.LessOrEqual(t, s.To+eight, eights*eight, "an eight after it")
					begun = s.To
					seen[s.From/eight] = true
				}
			}
			require.Len(t, seen, eights-2, "%s: every eight but the first and the last may be silent", c.ID)
		}
	}
}

// Of eight eights two are silent, and of the ten ways to choose them each is as
// likely: χ² with 9 degrees of freedom is below 27.9 in 999 of 1000 cases.
func TestEveryChoiceOfSilencesIsAsLikely(t *testing.T) {
	c, found := supplied(t, "maqsum"), map[string]float64{}
	const n = 5000
	for seed := range uint64(n) {
		found[fmt.Sprint(round.SilencesOf(c, 8, seed))]++
	}
	require.Len(t, found, 10)
	squares := 0.0
	for _, times := range found {
		squares += (times - n/10) * (times - n/10) / (n / 10)
	}
	require.Less(t, squares, 27.9)
}

// A seed is a promise: the golden changes when a rhythm's length does, and else
// never.
func TestGoldenSilences(t *testing.T) {
	var b strings.Builder
	for _, id := range []string{"maqsum", "malfuf", "masmudi-kabir", "karsilama", "nawakht"} {
		for i := range uint64(8) {
			eights, seed := []int{4, 8, 16, 32}[i%4], i*i*i*1_234_567_891
			fmt.Fprintf(&b, "%s %d %d:", id, eights, seed)
			for _, s := range round.SilencesOf(supplied(t, id), eights, seed) {
				fmt.Fprintf(&b, " %d-%d", s.From, s.To)
			}
			fmt.Fprintln(&b)
		}
	}
	golden(t, "testdata/silences.txt", b.String())
}

// What sounds: at each level nothing is struck in a silence, both drums play before
// and after it, the bass drum comes back on the 1, and there is no break that could be
// taken for a silence. What is asked for are the dums, those of the silences too, but
// not those of rolls.
func TestSilencesAsTheySound(t *testing.T) {
	seeds := uint64(20)
	if testing.Short() {
		seeds = 4
	}
	for _, c := range everyRhythm(t) {
		for _, level := range levels() {
			for seed := range seeds {
				r := carried(t, c, c.Tempo.Usual, 8, level, seed)
				for _, s := range r.Silences() {
					requireSilence(t, c, r, s)
				}
				requireDums(t, c, r)
			}
		}
	}
}

func requireSilence(t *testing.T, c *rhythm.Cycle, r *round.Carried, s round.Silence) {
	t.Helper()
	from, to := when(c, r.BPM(), float64(s.From)), when(c, r.BPM(), float64(s.To))
	eight := to - from
	before, after, back := 0, 0, false
	for _, h := range r.Hits(audio.Rate, 0) {
		require.False(t, h.Frame >= from-1 && h.Frame < to-1, "%s %v: struck in the silence", c.ID, r.Setting.Level)
		if h.Voice != audio.BassDum && h.Voice != audio.BassTek {
			continue
		}
		if h.Frame >= from-eight && h.Frame < from {
			before++
		}
		if h.Frame >= to-1 && h.Frame < to+eight {
			after++
		}
		back = back || h.Frame >= to-1 && h.Frame <= to+1
	}
	require.Positive(t, before)
	require.Positive(t, after)
	require.Equal(t, c.Skeleton[0].Sounds(), back)
	for frames, silent := range map[int64]bool{from: true, to - 48: true, (from + to) / 2: true, to + 48: false,
		from - eight/2: false, when(c, r.BPM(), float64(s.From-c.StepsPerBeat())) + 48: true} {
		require.Equal(t, silent, r.Silent(audio.Rate.Duration(frames)), "%s: %d of %d to %d", c.ID, frames, from, to)
	}
}

func requireDums(t *testing.T, c *rhythm.Cycle, r *round.Carried) {
	t.Helper()
	var steps []int
	for _, o := range r.OpenSteps() {
		require.NotEqual(t, riff.Break, o.Kind)
	}
	for step := range r.Setting.Eights * c.CyclesIn(1) * c.Steps() {
		if c.Skeleton[step%c.Steps()].Low() && !slices.ContainsFunc(r.OpenSteps(), func(o riff.Span) bool { return o.Contains(step) }) {
			require.InDelta(t, when(c, r.BPM(), float64(step)), audio.Rate.Frame(r.Strokes()[len(steps)]), 1)
			steps = append(steps, step)
		}
	}
	require.Equal(t, steps, r.Steps())
	for _, s := range r.Silences() {
		for step := s.From; step < s.To; step++ {
			require.False(t, slices.ContainsFunc(r.OpenSteps(), func(o riff.Span) bool { return o.Contains(step) }), "all of its dums are asked for")
		}
	}
}

func TestCarriesRefused(t *testing.T) {
	good := round.Setting{Kind: round.Carries, Rhythm: supplied(t, "maqsum"), BPM: 100, Eights: 4}
	for want, spoil := range map[string]func(q *round.Setting){
		`round: kind "stop"; these are of kind "carry"`:     func(q *round.Setting) { q.Kind = round.Stops },
		"round: 3 eights; carrying on is asked in 4 to 32":  func(q *round.Setting) { q.Eights = 3 },
		"round: 33 eights; carrying on is asked in 4 to 32": func(q *round.Setting) { q.Eights = 33 },
		"round: 300 beats a minute; allowed is 40 to 220":   func(q *round.Setting) { q.BPM = 300 },
		"round: riff level Level(77) is not available":      func(q *round.Setting) { q.Level = 77 },
	} {
		bad := good
		spoil(&bad)
		_, err := round.NewCarried(bad)
		require.EqualError(t, err, want)
	}
	_, err := round.New(good)
	require.EqualError(t, err, `round: kind "carry" is for NewCarried`)
	_, err = round.NewCarried(good)
	require.NoError(t, err)
}

// oneSilence is a round of four eights of maqsum at 120, begun: 2 s of count-in, then
// a dum each second, and the second eight, from 6 to 10 s, silent.
func oneSilence(t testing.TB) *round.Carried {
	t.Helper()
	c := supplied(t, "maqsum")
	for seed := uint64(0); ; seed++ {
		if round.SilencesOf(c, 4, seed)[0].From == 16 {
			r := carried(t, c, 120, 4, riff.Bare, seed)
			r.Begin()
			return r
		}
	}
}

// The round of oneSilence by hand: all sixteen dums are asked for, two fifths of its
// count of 500 ms are 200 ms, and its eight has four dums and the 1 after it.
func TestOneSilenceByHand(t *testing.T) {
	r := oneSilence(t)
	var want []time.Duration
	for s := range 16 {
		want = append(want, time.Duration(2+s)*time.Second)
	}
	require.Equal(t, want, r.Strokes())
	require.Equal(t, []round.Silence{{From: 16, To: 32}}, r.Silences())
	require.Equal(t, 200*ms, r.Within())
	require.Equal(t, 4, r.Intervals())
	require.Equal(t, 6*time.Second, r.At(16))
	require.True(t, r.Silent(5500*ms), "from the count before")
	require.False(t, r.Silent(5499*ms))
	require.True(t, r.Silent(9999*ms))
	require.False(t, r.Silent(10*time.Second))
	require.Equal(t, 3, carried(t, supplied(t, "karachi"), 120, 4, riff.Bare, 1).Intervals(), "four dums, none on the 1")
	require.Equal(t, 2, carried(t, supplied(t, "wahda"), 80, 4, riff.Bare, 1).Intervals())
}

// From the first tap in the silence to the last the offsets grow by so much in so long.
func TestCarriedKept(t *testing.T) {
	for _, c := range []struct {
		name   string
		alone  []time.Duration // taps on the dums at 6, 7, 8, 9 and 10 s
		tapped int
		back   round.Landing
		slower float64
		spell  int // taps in it
	}{
		{"as the drums", []time.Duration{6000 * ms, 7000 * ms, 8000 * ms, 9000 * ms, 10000 * ms},
			4, round.Landing{Stroke: 8, Tapped: true}, 0, 5},
		{"two in a hundred slower", []time.Duration{6010 * ms, 7030 * ms, 8050 * ms, 9070 * ms, 10090 * ms},
			4, round.Landing{Stroke: 8, Tapped: true, Offset: 90 * ms}, 0.02, 5},
		{"faster", []time.Duration{5990 * ms, 6950 * ms, 7910 * ms, 8870 * ms, 9830 * ms},
			4, round.Landing{Stroke: 8, Tapped: true, Offset: -170 * ms}, -0.04, 5},
		{"so slow that the drums are heard first", []time.Duration{6000 * ms, 7030 * ms, 8060 * ms, 9090 * ms, 10120 * ms},
			4, round.Landing{Stroke: 8, Tapped: true, Offset: 120 * ms}, 0.03, 4},
		{"one left out", []time.Duration{6000 * ms, 8020 * ms, 9030 * ms, 10040 * ms},
			3, round.Landing{Stroke: 8, Tapped: true, Offset: 40 * ms}, 0.01, 4},
		{"the return left out", []time.Duration{6000 * ms, 7000 * ms, 8000 * ms, 9015 * ms},
			4, round.Landing{Stroke: 8}, 0.005, 4},
		{"too far off: whose are the others?", []time.Duration{6000 * ms, 7000 * ms, 8000 * ms, 9201 * ms, 10201 * ms},
			3, round.Landing{Stroke: 8}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := oneSilence(t)
			require.Empty(t, r.Kept())
			for s := 2; s < 6; s++ {
				r.Tap(round.Tap{At: time.Duration(s) * time.Second}, 0)
			}
			for _, at := range c.alone {
				require.True(t, r.Tap(round.Tap{At: at}, 0))
			}
			r.Hear(time.Minute, 0)
			kept := r.Kept()
			require.Len(t, kept, 1)
			k := kept[0]
			require.Equal(t, []any{r.Silences()[0], 4, 7, c.tapped, c.back}, []any{k.Silence, k.First, k.Last, k.Tapped, k.Back})
			require.True(t, k.Slower.Known)
			require.InDelta(t, c.slower, k.Slower.Value, 1e-9)
			require.Len(t, r.Spells()[0].Pairs, c.spell)
		})
	}
	r := oneSilence(t)
	r.Tap(round.Tap{At: 8 * time.Second}, 0)
	r.Hear(time.Minute, 0)
	require.False(t, r.Kept()[0].Slower.Known, "one tap has no tempo")
	require.Len(t, r.Result().Out, 15)
}

// Without a dum on the 1, the last dum of the silence tells where she was.
func TestCarriedWithoutDumOnTheOne(t *testing.T) {
	r := carried(t, supplied(t, "karachi"), 120, 4, riff.Bare, 1)
	r.Begin()
	for _, at := range r.Strokes() {
		r.Tap(round.Tap{At: at + 15*ms}, 0)
	}
	r.Hear(time.Minute, 0)
	k := r.Kept()[0]
	require.Equal(t, round.Landing{Stroke: k.Last, Tapped: true, Offset: 15 * ms}, k.Back)
	require.Equal(t, []int{3, 4}, []int{k.Last - k.First, k.Tapped})
	require.Len(t, r.Spells()[0].Pairs, 4)
}

// A player who is behind by her set-up has her taps moved before they are matched, and
// before it is asked whether a tap may have answered the drums.
func TestCarriedWithSetUp(t *testing.T) {
	r := oneSilence(t)
	const setup = 240 * ms
	for _, s := range r.Strokes() {
		require.True(t, r.Tap(round.Tap{At: s + setup + 95*ms}, setup))
	}
	r.Hear(r.End()+round.Grace, setup)
	require.Equal(t, round.Playing, r.Phase(), "so much longer")
	r.Hear(r.End()+round.Grace+setup, setup)
	require.Len(t, r.Result().Pairs, 16)
	require.Equal(t, 335*ms, r.Kept()[0].Back.Offset)
	require.Len(t, r.Spells()[0].Pairs, 5)
}

// FuzzCarried does things to a round in any order; see FuzzRound.
func FuzzCarried(f *testing.F) {
	f.Add([]byte("\x00\x00\x02\x40\x02\x68\x02\x90\x01\xff"), uint64(3))
	f.Add([]byte("\x00\x00\x02\x68\x03\x00\x01\xff"), uint64(1))
	c := supplied(f, "malfuf")
	f.Fuzz(func(t *testing.T, script []byte, seed uint64) {
		r := carried(t, c, 200, 4, riff.Level(seed%uint64(len(levels()))), seed)
		for ; len(script) >= 2; script = script[2:] {
			before, at := r.Phase(), (time.Duration(script[1])-20)*50*ms
			if script[0]%5 == 1 {
				r.Hear(at, at/9)
			} else {
				do(&r.Round, script[0]%5, at)
			}
			require.True(t, forward(before, r.Phase()), "from %v to %v", before, r.Phase())
			requireSound(t, &r.Round)
			n := map[bool]int{true: len(r.Silences())}[r.Phase() == round.Review]
			require.Len(t, r.Kept(), n)
			require.Len(t, r.Spells(), n)
			r.Spreads()
		}
	})
}
