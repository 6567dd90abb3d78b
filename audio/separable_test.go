package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// cuts are where small loudspeakers begin, Hz.
var cuts = [2]float64{200, 400}

// Dums and teks must be told apart on loudspeakers that give nothing below
// 200 or 400 Hz, and in mono. The measure: over 200 strokes each, of three
// strengths, high-passed (24 dB an octave), in the sum of both channels, (1)
// the lowest centroid of power of any tek lies at least half as high again as
// the highest of any dum, on either drum or on both together, and (2) every
// dum takes longer to give nine tenths of its energy than any tek of the same
// drum. The thresholds are a choice, no source.
func TestDumsAndTeksDiffer(t *testing.T) {
	lead := [][]Voice{{LeadDum}, {LeadTek}, {LeadKa}, {LeadSak}, {LeadRollTek}, {LeadRollKa}}
	bass := [][]Voice{{BassDum}, {BassTek}}
	both := [][]Voice{{LeadDum, BassDum}, {LeadTek, BassTek}, {LeadKa, BassTek}}
	low, high := [2]float64{}, [2]float64{math.Inf(1), math.Inf(1)}
	for _, drum := range [][][]Voice{lead, bass, both} {
		dum := spread(t, drum[0])
		for _, v := range drum[1:] {
			for i, tek := range spread(t, v) {
				low[i] = max(low[i], dum[i].centroid[1])
				high[i] = min(high[i], tek.centroid[0])
				t.Logf("%v | %v above %v Hz: dum %.0f to %.0f Hz, tek %.0f to %.0f Hz; dum lasts %.1f ms or more, tek %.1f ms or less", drum[0], v, cuts[i],
					dum[i].centroid[0], dum[i].centroid[1], tek.centroid[0], tek.centroid[1], dum[i].lasts[0], tek.lasts[1])
				require.Greater(t, dum[i].lasts[0], tek.lasts[1], "%v above %v Hz", v, cuts[i])
			}
		}
	}
	for i, hz := range cuts {
		t.Logf("above %v Hz: highest dum %.0f Hz, lowest tek %.0f Hz", hz, low[i], high[i])
		require.Greater(t, high[i], 1.5*low[i])
	}
}

// A spreading is the least and the most of a measure over many strokes.
type spreading struct {
	centroid, lasts [2]float64 // Hz, ms
}

var nowhere = [2]float64{math.Inf(1), math.Inf(-1)}

func widen(a [2]float64, v float64) [2]float64 { return [2]float64{min(a[0], v), max(a[1], v)} }

// spread measures strokes of some voices together, above each cut.
func spread(t *testing.T, together []Voice) (s [2]spreading) {
	for i := range s {
		s[i] = spreading{nowhere, nowhere}
	}
	for seed := range seeds(200) {
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

// The stroke of one drum must be heard under any stroke of the other at the
// same instant: whether the base has a dum or a tek there while the lead drum
// plays what it likes, and the reverse. The measure: high-passed, in mono,
// over 200 strokes each, the power round the upper mode of the asked drum
// (where it rings and the other does not) from 25 to 150 ms after the stroke.
// Every dum lies at least 3 dB above any tek. The asked drum plays a firm dum
// or a tek as soft as a base has it; the other any strength. Threshold and
// strengths are a choice, no source.
func TestStrokesAreHeardUnderOthers(t *testing.T) {
	for _, c := range []struct {
		dum, tek Voice
		soft     float32
		band     [2]float64
		others   []Voice
	}{
		{BassDum, BassTek, 0.3, [2]float64{255, 300}, []Voice{LeadDum, LeadTek, LeadKa, LeadSak, LeadRollTek}},
		{LeadDum, LeadTek, 0.8, [2]float64{320, 360}, []Voice{BassDum, BassTek}},
	} {
		for _, other := range c.others {
			dum := under(t, other, Hit{0, c.dum, 1, 1000}, c.band)
			tek := under(t, other, Hit{0, c.tek, c.soft, 1000}, c.band)
			for i, hz := range cuts {
				t.Logf("%v or %v under %v above %v Hz: %.1f to %.1f dB, %.1f to %.1f dB", c.dum, c.tek, other, hz, dum[i][0], dum[i][1], tek[i][0], tek[i][1])
				require.Greater(t, dum[i][0], tek[i][1]+3, "%v under %v", c.dum, other)
			}
		}
	}
}

// under returns the spread of power in a band, above each cut, of many
// strokes like h with one of another voice at the same frame.
func under(t *testing.T, other Voice, h Hit, band [2]float64) [2][2]float64 {
	s := [2][2]float64{nowhere, nowhere}
	for seed := range seeds(200) {
		h.Seed++
		x := renderMono(t, 7200, h, Hit{0, other, []float32{1, 0.75, 0.5}[seed%3], seed})
		for i, hz := range cuts {
			s[i] = widen(s[i], x.highPass(hz)[1200:].band(band[0], band[1]))
		}
	}
	return s
}

// A dum through such a loudspeaker must not vanish beside a tek either.
func TestDumsStayAudible(t *testing.T) {
	for _, pair := range [][2]Voice{{LeadDum, LeadTek}, {BassDum, BassTek}} {
		dum := one(t, pair[0], 1, 1, second).highPass(400).energy()
		tek := one(t, pair[1], 1, 1, second).highPass(400).energy()
		t.Logf("%v: %.1f dB", pair, 10*math.Log10(dum/tek))
		require.Greater(t, 10*math.Log10(dum/tek), -6.0, "%v", pair)
	}
}

// The two dums must be told apart there too. The measure: in the third octaves
// from 400 to 1000 Hz, high-passed, in the mean of many strokes, the two differ
// by 6 dB or more (root mean square); and every dum of the bass drum has more at
// 800 Hz, where its goblet rings, against 500 Hz, where the darbuka's does, than
// any of the lead drum. The threshold is a choice.
func TestTheTwoDumsDiffer(t *testing.T) {
	for _, hz := range cuts {
		lead, bass := inThirds(t, LeadDum, hz), inThirds(t, BassDum, hz)
		var squares float64
		for i := range lead.mean {
			d := bass.mean[i] - lead.mean[i]
			squares += d * d / float64(len(lead.mean))
		}
		t.Logf("above %v Hz: %.1f dB; 800 against 500 Hz: lead %.1f to %.1f, bass %.1f to %.1f dB", hz, math.Sqrt(squares),
			lead.slope[0], lead.slope[1], bass.slope[0], bass.slope[1])
		require.GreaterOrEqual(t, math.Sqrt(squares), 6.0, "above %v Hz", hz)
		require.Greater(t, bass.slope[0], lead.slope[1], "above %v Hz", hz)
	}
}

// thirds are levels in the third octaves of 400, 500, 630, 800 and 1000 Hz.
type thirds struct {
	mean  [5]float64
	slope [2]float64 // least and most of 800 against 500 Hz, in dB
}

func inThirds(t *testing.T, v Voice, cut float64) (s thirds) {
	s.slope = nowhere
	n := seeds(200)
	for seed := range n {
		x := one(t, v, []float32{1, 0.75, 0.5}[seed%3], seed, 9600).highPass(cut)
		var levels [5]float64
		for i := range levels {
			centre := 1000 * math.Pow(10, float64(i-4)/10) // IEC 61260-1
			levels[i] = x.band(centre*math.Pow(10, -0.05), centre*math.Pow(10, 0.05))
			s.mean[i] += levels[i] / float64(n)
		}
		s.slope = widen(s.slope, levels[3]-levels[1])
	}
	return s
}

// A dum of the base's must not vanish under the lead drum's stroke of the same
// strength on the same frame: the measure is the energy of the first 80 ms.
func TestBaseDumIsLouderThanLeadDum(t *testing.T) {
	for _, hz := range cuts {
		const n = 100
		louder := 0
		for seed := range uint64(n) {
			bass := one(t, BassDum, 1, seed, 3840).highPass(hz).energy()
			if bass > one(t, LeadDum, 1, seed+1000, 3840).highPass(hz).energy() {
				louder++
			}
		}
		t.Logf("above %v Hz: %d of %d", hz, louder, n)
		require.GreaterOrEqual(t, 2*louder, n)
	}
}
