package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// What every voice must keep, whatever the strength and the seed.
func TestEveryVoice(t *testing.T) {
	for v := range voices {
		t.Run(v.String(), func(t *testing.T) {
			for seed := range uint64(6) {
				checkVoice(t, v, []float32{1, 0.6, 0.05}[seed%3], seed)
			}
		})
	}
}

func checkVoice(t *testing.T, v Voice, strength float32, seed uint64) {
	const at, n = 1005, 2 * int(Rate)
	s := NewStream(Rate)
	require.NoError(t, s.Schedule(Hit{at, v, strength, seed}))
	x, other := split(read(t, s, at+n))
	if !v.lead() {
		x, other = other, x
	}
	quiet, _ := split(read(t, NewStream(Rate), at+n))
	require.Equal(t, quiet, other, "the other drum stays silent")
	require.Equal(t, quiet[:at], x[:at], "nothing before the hit")
	require.NotEqual(t, quiet[at], x[at], "it begins at its frame")
	require.Less(t, math.Abs(x[at]), 0.002, "from zero, with no click")

	stroke := x[at:]
	for _, y := range stroke {
		require.False(t, math.IsNaN(y) || math.IsInf(y, 0))
	}
	require.LessOrEqual(t, stroke.peak(), 0.55)
	require.Greater(t, stroke.peak(), 0.1*float64(strength))
	require.Less(t, math.Abs(stroke.mean()), 1e-7, "no direct current")
	require.Less(t, stroke[second:].peak(), 0.001, "below −60 dBFS after a second")
	require.False(t, s.drum(v).awake, "at rest in the end")
	require.Equal(t, quiet[at+n-100:], x[at+n-100:], "the bare floor in the end")
}

// targets are what each voice should measure. They are estimates: no
// published measurement of a darbuka or dohola was found. Pitches of the
// dums are calculated from usual sizes (the dohola's set lower on purpose),
// decay times and centroids are choices. See the package comment.
var targets = [voices]struct {
	pitch    [2]float64 // Hz, of what is left after 50 ms; 0: not asked
	t60      [2]float64 // s, of what is heard above from Hz
	from     float64
	centroid [2]float64 // Hz
}{
	LeadDum: {pitch: [2]float64{95, 115}, t60: [2]float64{0.25, 0.5}, centroid: [2]float64{95, 200}},
	LeadTek: {from: 300, t60: [2]float64{0.05, 0.15}, centroid: [2]float64{1500, 3500}},
	LeadKa:  {from: 300, t60: [2]float64{0.05, 0.15}, centroid: [2]float64{1200, 2500}},
	LeadSak: {from: 300, t60: [2]float64{0.015, 0.05}, centroid: [2]float64{1100, 2500}},
	BassDum: {pitch: [2]float64{65, 85}, t60: [2]float64{0.4, 0.8}, centroid: [2]float64{65, 150}},
	BassTek: {from: 300, t60: [2]float64{0.05, 0.15}, centroid: [2]float64{700, 1700}},
}

func TestVoiceTargets(t *testing.T) {
	within := func(want [2]float64, got float64, what string, v Voice) {
		require.True(t, want[0] <= got && got <= want[1], "%v: %s %.4g is not within %v", v, what, got, want)
	}
	for v := range voices {
		want := targets[v]
		var pitch, t60, centroid, peak float64
		const seeds = 10
		for seed := range uint64(seeds) {
			x := one(t, v, 1, seed, second)
			if want.pitch[0] > 0 {
				p := x[second/20:].pitch()
				within(want.pitch, p, "pitch", v)
				pitch += p / seeds
			}
			y := x
			if want.from > 0 {
				y = x.highPass(want.from)
			}
			within(want.t60, y.t60(), "T60", v)
			within(want.centroid, x.centroid(), "centroid", v)
			t60, centroid, peak = t60+y.t60()/seeds, centroid+x.centroid()/seeds, max(peak, x.peak())
		}
		t.Logf("%-9v pitch %5.1f Hz, T60 %.3f s, centroid %4.0f Hz, greatest peak %.2f", v, pitch, t60, centroid, peak)
	}
}

// The head shares a mode with the goblet's air above the dum: small
// loudspeakers give little else of a dum.
func TestDumHasItsUpperMode(t *testing.T) {
	for v, band := range map[Voice][2]float64{LeadDum: {300, 365}, BassDum: {267, 334}} {
		p := one(t, v, 1, 1, second).highPass(200).pitch()
		require.True(t, band[0] <= p && p <= band[1], "%v: %v Hz", v, p)
	}
}

// A firm dum begins 2 to 6 % higher, and falls with a time constant of 25 to
// 65 ms (choices; the energy of a sound falls with T60/13.8: 28 and 43 ms).
func TestDumGlides(t *testing.T) {
	for _, v := range []Voice{LeadDum, BassDum} {
		s := NewStream(Rate)
		require.NoError(t, s.Schedule(Hit{0, v, 1, 4}))
		var most float64
		var at, half int
		for n := range 200 {
			read(t, s, block)
			if bend := s.drum(v).tension; bend > most {
				most, at = bend, n
			} else if half == 0 && bend < most/2 {
				half = n
			}
		}
		require.InDelta(t, 0.04, most, 0.02)
		tau := float64((half-at)*block) / float64(Rate) / math.Ln2
		require.InDelta(t, 0.045, tau, 0.020, "%v: s to fall to 1/e", v)
		t.Logf("%v: %.1f %%, falls to 1/e in %.0f ms", v, 100*most, 1000*tau)

		firm, soft := one(t, v, 1, 4, second).lowPass(150), one(t, v, 0.1, 4, second).lowPass(150)
		require.InDelta(t, 0.04, period(soft, 1, 3)/period(firm, 1, 3)-1, 0.02, "%v begins higher", v)
		require.InDelta(t, 0, period(soft, 14, 18)/period(firm, 14, 18)-1, 0.01, "%v ends alike", v)
	}
}

// period returns the mean period, in frames, between two upward crossings.
func period(x sound, from, to int) float64 {
	var crossings []float64
	for i := 1; i < len(x); i++ {
		if x[i-1] < 0 && x[i] >= 0 {
			crossings = append(crossings, float64(i)-x[i]/(x[i]-x[i-1]))
		}
	}
	return (crossings[to] - crossings[from]) / float64(to-from)
}

// Dums and teks must be told apart on loudspeakers that give nothing below
// 200 or 400 Hz, and in mono. The measure: over 100 strokes each, of three
// strengths, alone, high-passed (24 dB an octave), in the sum of both
// channels, (1) the lowest centroid of power of any tek lies at least half as
// high again as the highest of any dum, on either drum or on both together,
// and (2) every dum takes longer to give nine tenths of its energy than any
// tek of the same drum. The thresholds are a choice, no source.
func TestDumsAndTeksDiffer(t *testing.T) {
	lead := [][]Voice{{LeadDum}, {LeadTek}, {LeadKa}, {LeadSak}}
	bass := [][]Voice{{BassDum}, {BassTek}}
	both := [][]Voice{{LeadDum, BassDum}, {LeadTek, BassTek}, {LeadKa, BassTek}}
	low, high := [2]float64{}, [2]float64{math.Inf(1), math.Inf(1)}
	for _, drum := range [][][]Voice{lead, bass, both} {
		dum := spread(t, drum[0])
		for _, v := range drum[1:] {
			for i, tek := range spread(t, v) {
				low[i] = max(low[i], dum[i].centroid[1])
				high[i] = min(high[i], tek.centroid[0])
				require.Greater(t, dum[i].lasts[0], tek.lasts[1], "%v above %v Hz", v, cuts[i])
			}
		}
	}
	for i, hz := range cuts {
		t.Logf("above %v Hz: highest dum %.0f Hz, lowest tek %.0f Hz", hz, low[i], high[i])
		require.Greater(t, high[i], 1.5*low[i])
	}
}

// cuts are where small loudspeakers begin, Hz.
var cuts = [2]float64{200, 400}

// A dum through such a loudspeaker must not vanish beside a tek either.
func TestDumsStayAudible(t *testing.T) {
	for _, pair := range [][2]Voice{{LeadDum, LeadTek}, {BassDum, BassTek}} {
		dum := one(t, pair[0], 1, 1, second).highPass(400).energy()
		tek := one(t, pair[1], 1, 1, second).highPass(400).energy()
		require.Greater(t, 10*math.Log10(dum/tek), -6.0, "%v", pair)
	}
}

// A spreading is the least and the most of a measure over many strokes.
type spreading struct {
	centroid, lasts [2]float64 // Hz, ms
}

// spread measures 100 strokes of some voices together, above each cut.
func spread(t *testing.T, together []Voice) (s [2]spreading) {
	for i := range s {
		s[i] = spreading{[2]float64{math.Inf(1), 0}, [2]float64{math.Inf(1), 0}}
	}
	for seed := range uint64(100) {
		var hits []Hit
		for _, v := range together {
			hits = append(hits, Hit{0, v, []float32{1, 0.75, 0.5}[seed%3], seed})
		}
		x := renderMono(t, 9600, hits...)
		for i, hz := range cuts {
			y := x.highPass(hz)
			s[i].centroid = widen(s[i].centroid, y.centroid())
			s[i].lasts = widen(s[i].lasts, y.lasts())
		}
	}
	return s
}

func widen(a [2]float64, v float64) [2]float64 { return [2]float64{min(a[0], v), max(a[1], v)} }

// Two drums at full strength, each stroke on the one before: the sum of both
// channels stays below −1 dBTP.
func TestHeadroom(t *testing.T) {
	const sixteenth = 4500 // frames, at 160 quarters a minute
	for name, pair := range map[string][]Voice{
		"dums":        {LeadDum, BassDum},
		"teks":        {LeadTek, BassTek},
		"slap on dum": {LeadSak, BassDum},
		"all":         {LeadDum, BassDum, LeadTek, BassTek},
	} {
		t.Run(name, func(t *testing.T) {
			var hits []Hit
			for i := range 64 {
				for _, v := range pair {
					hits = append(hits, Hit{int64(i) * sixteenth, v, 1, uint64(i)})
				}
			}
			peak := renderMono(t, 64*sixteenth, hits...).truePeak()
			t.Logf("%.2f dBTP", 20*math.Log10(peak))
			if name != "all" { // more than two hands have
				require.Less(t, peak, math.Pow(10, -1.0/20))
			}
			require.Less(t, peak, 1.0)
		})
	}
}

// A hand laid on the head ends the ring within some 40 ms, without a step.
func TestChoke(t *testing.T) {
	s := NewStream(Rate)
	require.NoError(t, s.Schedule(Hit{0, BassDum, 1, 1}))
	read(t, s, 4800)
	s.bass.handUntil = 4800 + 9600
	_, x := split(read(t, s, 9600))
	require.InDelta(t, 0.036, x.t60(), 0.006)
	for i := 1; i < len(x); i++ {
		// a 74 Hz sine of .35 moves by at most .0034 a frame
		require.Less(t, math.Abs(x[i]-x[i-1]), 0.004)
	}

	// A slap on a ringing head leaves nothing of the dum.
	slapped := renderMono(t, 14400, Hit{0, LeadDum, 1, 1}, Hit{4800, LeadSak, 0.5, 1})
	open := renderMono(t, 14400, Hit{0, LeadDum, 1, 1})
	require.Less(t, 10*math.Log10(slapped[8640:].energy()/open[8640:].energy()), -30.0)
	// The next stroke lifts the hand.
	again := renderMono(t, 28800, Hit{0, LeadSak, 0.5, 1}, Hit{4800, LeadDum, 1, 1})
	require.InDelta(t, 0.38, again[4800:].t60(), 0.06)
}

func TestNoTwoStrokesEqual(t *testing.T) {
	for v := range voices {
		first := one(t, v, 1, 1, 4800)
		require.Equal(t, first, one(t, v, 1, 1, 4800))
		for seed := range uint64(10) {
			if seed != 1 {
				require.NotEqual(t, first, one(t, v, 1, seed, 4800))
			}
		}
		require.Greater(t, first.energy(), 2*one(t, v, 0.5, 1, 4800).energy(), "firm is louder")
	}
}
