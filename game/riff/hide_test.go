package riff_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// over returns a part whose bass drum plays the base of a rhythm, and whose lead
// drum plays cycles written as letters, one for each step; all as firm as can be.
func over(t testing.TB, c *rhythm.Cycle, cycles ...string) riff.Part {
	t.Helper()
	p, err := riff.Play(c, riff.Bare, len(cycles), 0)
	require.NoError(t, err)
	p.Lead = nil
	for i, s := range strings.Join(cycles, "") {
		if sound := rhythm.Stroke(s); sound.Sounds() {
			p.Lead = append(p.Lead, riff.Stroke{Step: i, Sound: sound, Strength: 1})
		}
	}
	return p
}

// What each thing hides, reckoned by hand in thousandths: a part of the dum is
// heard after each. Maqsum's dums fall on steps 0 and 4. But for the one case the lead
// drum's full strokes are no more syncopated than the base.
func TestHideOneThingAtATime(t *testing.T) {
	const bpm = 60 // a step is 500 ms: nothing masks
	maqsum := named(t, "maqsum")
	for _, tt := range []struct {
		name, lead string
		want       float64
	}{
		{"the base itself", "DT-TD-T-", 0},
		{"its dums alone", "D---D---", 0},
		{"nothing", "--------", 150},
		{"one dum only", "D-------", 75},
		{"a tek on each dum", "T---T---", 1000 * (1 - .85*.7)},
		{"a slap on each dum", "S---S---", 1000 * (1 - .85*.7)},
		{"a tek on one, the other said", "T---D---", 500 * (1 - .85*.7)},
		{"the teks of the base", "-T-T--T-", 1000 * (1 - .85*(1-.15*4/12))}, // moved by 5, the base itself by 1
		{"a dum for a tek of the base, as near to 1", "DT-TD-D-", 500 * .8 / 3},
		{"a light tek off the base", "D-t-D---", 500 * .4 / 6},
		{"two, nearer to one dum", "D---Dk-k", 500 * .4 * 2 / 7},
		{"a dum beside, and a light tek", "DD--Dt--", 500 * (.8/3 + .4/6)},
	} {
		require.InDelta(t, tt.want, riff.HideThousandths(maqsum, over(t, maqsum, tt.lead), bpm), 1, tt.name)
	}
}

// The force of a stroke counts: half as firm, half as much of what has an end, and
// less of what saturates.
func TestHideByForce(t *testing.T) {
	maqsum := named(t, "maqsum")
	for _, tt := range []struct {
		lead string
		want func(force float64) float64
	}{
		{"T---T---", func(f float64) float64 { return 1 - .85*(1-.3*f) }},
		{"DT-TD-D-", func(f float64) float64 { return .4 * f / (f + 2) }},
		{"D-t-D---", func(f float64) float64 { return .2 * f / (f + 5) }},
	} {
		for _, force := range []float64{0.001, 0.25, 0.5, 0.8, 1} {
			p := over(t, maqsum, tt.lead)
			for i := range p.Lead {
				p.Lead[i].Strength = force
			}
			require.InDelta(t, tt.want(force), riff.Hide(maqsum, p, 60), 0.002, "%s at %v", tt.lead, force)
		}
	}
}

// A dum of the lead drum shortly before one that it passes over masks it: by the
// logarithm of the delay, from 22 ms, below which they are one, to 200.
func TestHideByMasking(t *testing.T) {
	maqsum := named(t, "maqsum")
	for bpm := 60; bpm <= 240; bpm++ {
		for ticks := 1; ticks < 12; ticks++ {
			delay := 30_000 / float64(bpm) * float64(ticks) / 12 // ms
			for _, force := range []float64{1, 0.4} {
				p := over(t, maqsum, "D-------")
				p.Lead = append(p.Lead, riff.Stroke{Step: 3, Sub: 12 - ticks, Sound: rhythm.Dum, Strength: force})
				shown := 1.0 // as good as on it
				if delay > 22 {
					masked := max(0, 1-math.Log(delay/5)/math.Log(40))
					shown = .85 * (1 - .3*masked*force) * (1 - .8*force/(force+2))
				}
				shown = (1 + shown) / 2 * early(ticks)
				require.InDelta(t, 1-shown, riff.Hide(maqsum, p, bpm), 0.003, "%d at %d", ticks, bpm)
			}
		}
	}
}

// A dum that the lead drum says too is not masked: however near the dum before it, it
// hides no more than any other beside the base; and of two before one that it passes
// over the firmer one counts, or the nearer.
func TestHideStatedIsNotMasked(t *testing.T) {
	even := cycle(t, "2/4", "D---D---")
	with := func(lead string, subs ...int) float64 {
		p := over(t, even, lead)
		for _, sub := range subs {
			p.Lead = append(p.Lead, riff.Stroke{Step: 3, Sub: sub, Sound: rhythm.Dum, Strength: 1})
		}
		return riff.Hide(even, p, 150) // a step is 100 ms
	}
	said := over(t, even, "D--DD---")
	require.InDelta(t, (1-.8/3)/2+.5, 1-riff.Hide(even, said, 150), 0.002)
	for _, subs := range [][2]int{{0, 6}, {3, 9}} { // 100 and 50 ms before, 75 and 25
		nearer := 1 - math.Log(float64(12-subs[1])/12*100/5)/math.Log(40)
		syncopation := 1 - .15*float64(2)/(2+8) // the a of 1, −3, before the 2, −1
		if subs[1] > 0 {
			syncopation = 1 - .15*3.0/(3+8)
		}
		want := (1 + .85*(1-.3*nearer)*(1-.8/2)) / 2 * syncopation
		require.InDelta(t, want, 1-with("D-------", subs[:]...), 0.004, "%v", subs)
	}
}

// early is what syncopation leaves where maqsum's 1 is struck and its 3 so many
// ticks early, on a grid of half steps. The stroke weighs −4 in the second half of
// its step, else −3; the rest on 3 −1, the others less than the note before them.
// Maqsum's own index is 1: of its & of 1, −3, into the 2, −2. By hand.
func early(ticks int) float64 {
	more := 2.0 - 1
	if ticks <= riff.TicksPerStep/2 {
		more = 3 - 1
	}
	return 1 - .15*more/(more+8)
}

// Full strokes off the beat hide what is more syncopated than the base, in the mean
// of the cycles; light ones do not in this way. By hand, in weights: of "---T---T" in
// 2/4, with 1 0, 2 −1, their & −2 and their a −3, all four rests outweigh the a before
// them: by 3, 1, 2 and 1.
func TestHideBySyncopation(t *testing.T) {
	even := cycle(t, "2/4", "D---D---") // not syncopated: 1 and 2
	for _, tt := range []struct {
		cycles []string
		crowd  float64 // of firm strokes, for the second of two dums
		more   float64
	}{
		{[]string{"---k---k"}, 2, 0},
		{[]string{"---T---T"}, 2, 3 + 1 + 2 + 1},
	} {
		p := over(t, even, tt.cycles...)
		shown := (.85 + .85*(1-.4*tt.crowd/(tt.crowd+5))) / 2 * (1 - .15*tt.more/(tt.more+8))
		require.InDelta(t, 1-shown, riff.Hide(even, p, 60), 0.002, "%s", tt.cycles)
	}
}

// Half the cycles syncopated is half the syncopation; in 9/8 it is spread over 18
// pulses, not 16.
func TestHideBySyncopationOfCycles(t *testing.T) {
	even := cycle(t, "2/4", "D---D---")
	straight, moved := "---k---k", "---T---T"
	shown := func(cycles ...string) float64 { return 1 - riff.Hide(even, over(t, even, cycles...), 60) }
	for _, n := range []int{2, 4, 10} {
		var half, none []string
		for i := range n {
			none = append(none, straight)
			half = append(half, [2]string{straight, moved}[i%2])
		}
		require.InDelta(t, 1-.15*3.5/(3.5+8), shown(half...)/shown(none...), 0.002)
	}
	odd := named(t, "karsilama") // 0 in itself; the last tek weighs −2, the dum on 5 −1
	left := func(more float64) float64 { return 1 - .15*more*16/18/(more*16/18+8) }
	full, light := riff.Hide(odd, over(t, odd, "--T-D---T"), 60), riff.Hide(odd, over(t, odd, "--T-D---k"), 60)
	require.InDelta(t, left(2)/left(1), (1-full)/(1-light), 0.002)
}

// Saying a dum, or not striking on it, never hides more than striking high on it.
func TestHideSupport(t *testing.T) {
	for _, c := range supplied(t) {
		skeleton := c.Skeleton.String()
		said := riff.Hide(c, over(t, c, skeleton), c.Tempo.Usual)
		struck := riff.Hide(c, over(t, c, strings.ReplaceAll(skeleton, "D", "T")), c.Tempo.Usual)
		passed := riff.Hide(c, over(t, c, strings.ReplaceAll(skeleton, "D", "-")), c.Tempo.Usual)
		require.Zero(t, said, c.ID)
		require.Greater(t, struck, 0.3, c.ID)
		require.Greater(t, passed, 0.14, c.ID)
	}
}

// Bare hides nothing, in any number of cycles and at any tempo.
func TestHideBare(t *testing.T) {
	for _, c := range supplied(t) {
		for _, cycles := range []int{1, 2, 7, 64} {
			p, err := riff.Play(c, riff.Bare, cycles, 1)
			require.NoError(t, err)
			for _, bpm := range []int{1, 20, c.Tempo.Usual, rhythm.MaxBPM} {
				require.Zero(t, riff.Hide(c, p, bpm), "%s, %d cycles at %d", c.ID, cycles, bpm)
			}
		}
	}
}

// What lies in open spans counts for nothing: neither the base there nor what the
// lead drum does.
func TestHideOutsideOpenSpans(t *testing.T) {
	maqsum := named(t, "maqsum")
	closed := over(t, maqsum, "DT-TD-T-", "T---T---", "DDDDDDDD")
	require.Greater(t, riff.Hide(maqsum, closed, 60), 0.25)
	for _, tt := range []struct {
		open []riff.Span
		want float64
	}{
		{[]riff.Span{{From: 8, To: 24}}, 0},
		{[]riff.Span{{From: 8, To: 16, Kind: riff.Roll}, {From: 16, To: 24}}, 0},
		{[]riff.Span{{From: 16, To: 24}}, (1 - .85*.7) / 2},             // half of four dums
		{[]riff.Span{{From: 12, To: 24}}, (1 - .85*.7) / 3},             // one of three
		{[]riff.Span{{From: 0, To: 24}}, 0},                             // no dum is left
		{[]riff.Span{{From: 0, To: 8}, {From: 16, To: 24}}, 1 - .85*.7}, // both of two
	} {
		p := closed
		p.Open = tt.open
		require.InDelta(t, tt.want, riff.Hide(maqsum, p, 60), 0.002, "%v", tt.open)
	}
}

// A cycle that lies in a span with a part of it adds nothing to syncopation.
func TestHideNoSyncopationInOpenCycles(t *testing.T) {
	even := cycle(t, "2/4", "D---D---")
	p := over(t, even, "D---D---", "--------")
	p.Lead = append(p.Lead, riff.Stroke{Step: 11, Sound: rhythm.Tek, Strength: 1})
	p.Open = []riff.Span{{From: 12, To: 16}}
	require.InDelta(t, (1-.85*(1-.4/6))/3, riff.Hide(even, p, 60), 0.002)
}

// The limits, on riffs of the generator: what their comment says.
func TestLimitsOfHide(t *testing.T) {
	var reached [levels][4]int // riffs that reach so many limits
	for _, c := range supplied(t) {
		for level := range levels {
			for seed := range 4 * seeds() {
				p, err := riff.Play(c, level, 16, seed)
				require.NoError(t, err)
				h, n := riff.Hide(c, p, c.Tempo.Usual), 0
				for _, limit := range []float64{riff.HideLittle, riff.HideSome, riff.HideMuch} {
					if h >= limit {
						n++
					}
				}
				reached[level][n]++
			}
		}
	}
	all := 0
	for _, n := range reached[riff.Bare] {
		all += n
	}
	share := func(level riff.Level, n int) float64 { return float64(reached[level][n]) / float64(all) }
	require.Equal(t, 1.0, share(riff.Bare, 0))
	require.Greater(t, share(riff.Filled, 1), 0.8)
	require.Equal(t, 1.0, share(riff.Filled, 0)+share(riff.Filled, 1))
	require.Equal(t, 1.0, share(riff.Ornamented, 1))
	require.InDelta(t, 0.9, share(riff.Riffing, 2), 0.05)
	require.Less(t, share(riff.Riffing, 3), 0.02)
	require.InDelta(t, 0.75, share(riff.Solo, 3), 0.05)
	require.Equal(t, 1.0, share(riff.Solo, 2)+share(riff.Solo, 3))
}

// The same on every machine: these are whole numbers. If they change, riffs asked
// for by how much they hide may change too: raise Version.
func TestHideIsKept(t *testing.T) {
	for _, tt := range []struct {
		id    string
		leads []string
		bpm   int
		want  int
	}{
		{"maqsum", []string{"DTkTDkTk", "S-TD-DTD"}, 105, 297},
		{"malfuf", []string{"-D-T-D-T", "T--D--TD", "--------"}, 173, 501},
		{"samai-thaqil", []string{"TD-TDT-DSk"}, 216, 525},
		{"ciftetelli", []string{"-DkkTkDkT-kDkDTk"}, 400, 592},
	} {
		c := named(t, tt.id)
		require.Equal(t, tt.want, riff.HideThousandths(c, over(t, c, tt.leads...), tt.bpm), tt.id)
	}
}

// Whatever is struck where, it is from 0 to 1000.
func FuzzHide(f *testing.F) {
	f.Add(uint64(1), "DTSkt-DT", uint16(100), byte(0))
	f.Add(uint64(2), "---------------D", uint16(399), byte(7))
	f.Add(uint64(3), "SSSSSSSSSSSSSSSSSSSSSSSSSSSS", uint16(20), byte(12))
	all := supplied(f)
	f.Fuzz(func(t *testing.T, which uint64, lead string, bpm uint16, open byte) {
		c := all[which%uint64(len(all))]
		p, err := riff.Play(c, riff.Bare, 4, 0)
		require.NoError(t, err)
		p.Lead = nil
		for i := range 4 * c.Steps() * riff.TicksPerStep {
			step, sub := i/riff.TicksPerStep, i%riff.TicksPerStep
			if sound := rhythm.Stroke(append([]byte(lead), '-')[i%(len(lead)+1)]); sound.Sounds() {
				p.Lead = append(p.Lead, riff.Stroke{Step: step, Sub: sub, Sound: sound, Strength: float64(1+i%9) / 9})
			}
		}
		if from := int(open) % (4 * c.Steps()); from%3 == 0 {
			p.Open = []riff.Span{{From: from, To: min(from+5, 4*c.Steps())}}
		}
		h := riff.HideThousandths(c, p, int(bpm)+1)
		require.True(t, h >= 0 && h <= 1000, "%d", h)
	})
}

func BenchmarkHide(b *testing.B) {
	for _, level := range []riff.Level{riff.Filled, riff.Solo} {
		b.Run(level.String(), func(b *testing.B) {
			c := named(b, "masmudi-kabir")
			p, err := riff.Play(c, level, 16, 1)
			require.NoError(b, err)
			b.ReportAllocs()
			for range b.N {
				riff.HideThousandths(c, p, 90)
			}
		})
	}
}
