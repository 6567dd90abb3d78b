package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// What tells the strokes of one drum apart, and two strokes of one voice. All
// figures here are estimates of what hands do to a head; the one source is for
// the order of things: the shorter the contact and the nearer to the rim, the
// brighter (Mohajeri, "Notes on Tombak Acoustics", 2003). Figures are means of
// firm strokes in their room, as one hears them, unless said otherwise.

// mean returns the mean of a measure over strokes of a voice.
func mean(t *testing.T, v Voice, strength float32, of func(sound) float64) float64 {
	const n = 32
	var sum float64
	for seed := range uint64(n) {
		sum += of(one(t, v, strength, seed, second/2))
	}
	return sum / n
}

// above1k returns how much of the sound lies above 1 kHz, in dB.
func above1k(x sound) float64 { return decibels(x.highPass(1000).energy() / x.energy()) }

func decibels(power float64) float64 { return 10 * math.Log10(power) }

// A dum has the slap of the skin on top: −18 to −26 dB of it lie above 1 kHz
// if it is firm, and less the softer it is.
func TestDumHasASlap(t *testing.T) {
	for _, v := range []Voice{LeadDum, BassDum} {
		firm, less, soft := mean(t, v, 1, above1k), mean(t, v, 0.6, above1k), mean(t, v, 0.3, above1k)
		t.Logf("%v above 1 kHz: %.1f, %.1f, %.1f dB at 1, 0.6, 0.3", v, firm, less, soft)
		require.True(t, -26 <= firm && firm <= -18, "%v: %.1f dB", v, firm)
		require.Less(t, less, firm-0.5, "%v", v)
		require.Less(t, soft, less-0.5, "%v", v)
	}
}

// A tek rings: nine tenths of what lies above 300 Hz take 25 to 60 ms, and what
// is left of the upper partials after 30 ms decays by 60 dB in 0.15 to 0.30 s.
func TestTekRings(t *testing.T) {
	for _, v := range []Voice{LeadTek, LeadKa, LeadRollTek, LeadRollKa, BassTek} {
		lasts := mean(t, v, 1, func(x sound) float64 { return x.highPass(300).lasts() })
		var t60 float64
		for seed := range uint64(16) {
			t60 += dry(t, v, seed, second/2).highPass(1000)[1440:].t60() / 16
		}
		t.Logf("%v: %.1f ms, T60 above 1 kHz %.3f s", v, lasts, t60)
		require.True(t, 25 <= lasts && lasts <= 60, "%v: %.1f ms", v, lasts)
		require.True(t, 0.15 <= t60 && t60 <= 0.30, "%v: %.3f s", v, t60)
	}
}

// A sak cracks: louder than a tek by 3 dB or more in its first 20 ms, brighter
// by four tenths or more, and over long before. A ka is duller than a tek.
func TestSakCracksAndKaIsDull(t *testing.T) {
	first := func(x sound) float64 { return decibels(x[:960].energy()) }
	lasts := func(x sound) float64 { return x.highPass(300).lasts() }
	tek, sak := mean(t, LeadTek, 1, sound.centroid), mean(t, LeadSak, 1, sound.centroid)
	ka := mean(t, LeadKa, 1, sound.centroid)
	louder := mean(t, LeadSak, 1, first) - mean(t, LeadTek, 1, first)
	t.Logf("centroids: tek %.0f, ka %.0f, sak %.0f Hz; sak louder by %.1f dB", tek, ka, sak, louder)
	require.GreaterOrEqual(t, louder, 3.0)
	require.GreaterOrEqual(t, sak, 1.4*tek)
	require.Less(t, mean(t, LeadSak, 1, lasts), 0.5*mean(t, LeadTek, 1, lasts))
	require.Less(t, ka, 0.9*tek)
	require.Less(t, mean(t, LeadRollKa, 1, sound.centroid), 0.9*mean(t, LeadRollTek, 1, sound.centroid))
}

// Equal strokes are not equal: their levels stray by 0.7 to 1.5 dB (standard
// deviation), and two of them correlate by .97 or less, from their first frame.
func TestStrokesVary(t *testing.T) {
	const n = 40
	for v := range voices {
		var strokes []sound
		var sum, squares float64
		for seed := range uint64(n) {
			x := dry(t, v, seed, second/4)
			level := decibels(x.energy())
			sum, squares = sum+level, squares+level*level
			strokes = append(strokes, x)
		}
		deviation := math.Sqrt((squares - sum*sum/n) / (n - 1))
		alike := pairs(strokes)
		t.Logf("%v: %.2f dB, correlation %.3f", v, deviation, alike)
		require.True(t, 0.7 <= deviation && deviation <= 1.5, "%v: %.2f dB", v, deviation)
		require.LessOrEqual(t, alike, 0.97, "%v", v)
	}
}

// pairs returns the mean correlation of all pairs of sounds of one length.
func pairs(all []sound) float64 {
	var sum float64
	n := 0
	for i, a := range all {
		for _, b := range all[:i] {
			var product float64
			for k := range a {
				product += a[k] * b[k]
			}
			sum += product / math.Sqrt(a.energy()*b.energy())
			n++
		}
	}
	return sum / float64(n)
}

func TestPairs(t *testing.T) {
	one, other := sound{1, 0, 1, 0}, sound{0, 1, 0, 1}
	require.InDelta(t, 1, pairs([]sound{one, {2, 0, 2, 0}}), 1e-12)
	require.InDelta(t, 0, pairs([]sound{one, other}), 1e-12)
	require.InDelta(t, 1.0/3, pairs([]sound{one, one, other}), 1e-12)
}
