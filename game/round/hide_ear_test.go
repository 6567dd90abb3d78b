package round_test

import (
	"math"
	"math/bits"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/dsp/window"
	"gonum.org/v1/gonum/stat"

	"groundbeat/audio"
	"groundbeat/game/round"
)

// An ear is an onset detector as textbooks have it (J. P. Bello, L. Daudet,
// S. Abdallah, C. Duxbury, M. Davies and M. B. Sandler, "A tutorial on onset
// detection in music signals", IEEE Transactions on Speech and Audio Processing 13,
// 1035–1047, 2005): how much the sound grows from one frame to the next, in the
// magnitudes of a band, and the peaks of that above a threshold, which is a share of
// the passage's greatest growth and a multiple of the mean near by.
type ear struct {
	name      string
	highPass  bool    // hears what lies above 200 Hz
	from, to  float64 // Hz
	power     bool    // compares the band's energy, not magnitudes bin by bin
	share     float64 // these two are what is tuned
	multiples float64
}

// The frames of an ear: every 10 ms, as long as one of its windows.
const (
	earHop    = int(audio.Rate) / 100
	earWindow = 2048
)

// ears are the detectors: of the fundamentals of dums; of what a small loudspeaker
// leaves of them; and for comparison two that hear all of what it gives.
func ears() []*ear {
	return []*ear{
		{name: "low band, 50 to 200 Hz", from: 50, to: 200},
		{name: "high-passed, 200 to 500 Hz", highPass: true, from: 200, to: 500},
		{name: "high-passed, energy of all", highPass: true, from: 0, to: 16000, power: true},
		{name: "high-passed, all", highPass: true, from: 0, to: 16000},
	}
}

// listen returns what each ear makes of frames of both drums at the centre.
func listen(all []*ear, frames []float32) [][]float64 {
	mono := make([]float64, len(frames)/2)
	for i := range mono {
		mono[i] = float64(frames[2*i] + frames[2*i+1])
	}
	whole, high := spectra(mono, highPassed(mono, 200))
	var growths [][]float64
	for _, e := range all {
		if e.highPass {
			growths = append(growths, e.growth(high))
		} else {
			growths = append(growths, e.growth(whole))
		}
	}
	return growths
}

// highPassed is a sound above a frequency in Hz: a Butterworth filter of fourth order, as two
// sections by the bilinear transform (A. V. Oppenheim and R. W. Schafer,
// "Discrete-Time Signal Processing").
func highPassed(sound []float64, hz float64) []float64 {
	out := slices.Clone(sound)
	k := math.Tan(math.Pi * hz / float64(audio.Rate))
	for _, q := range []float64{1 / (2 * math.Sin(math.Pi/8)), 1 / (2 * math.Sin(3*math.Pi/8))} {
		norm := 1 + k/q + k*k
		var x1, x2, y1, y2 float64
		for i, x := range out {
			y := (x - 2*x1 + x2 - 2*(k*k-1)*y1 - (1-k/q+k*k)*y2) / norm
			x1, x2, y1, y2 = x, x1, y, y1
			out[i] = y
		}
	}
	return out
}

// spectra are the magnitudes of two sounds' frames, each centred on its own time. Both are
// transformed at once, one as the real part and one as the imaginary part, and taken apart by
// the symmetry of a real sound's spectrum (Oppenheim and Schafer).
func spectra(one, other []float64) (ofOne, ofOther [][]float64) {
	hann := window.NewValues(window.Hann, earWindow)
	frame, twiddles := make([]complex128, earWindow), unity(earWindow)
	const bins = 16000 * earWindow / int(audio.Rate)
	for at := -earWindow / 2; at < len(one)-earWindow/2; at += earHop {
		clear(frame)
		for i := max(0, -at); i < min(earWindow, len(one)-at); i++ {
			frame[i] = complex(one[at+i]*hann[i], other[at+i]*hann[i])
		}
		transform(frame, twiddles)
		a, b := make([]float64, bins), make([]float64, bins)
		for i := range a {
			p, q := frame[i], cmplx.Conj(frame[(earWindow-i)%earWindow])
			a[i], b[i] = size(p+q)/2, size(p-q)/2
		}
		ofOne, ofOther = append(ofOne, a), append(ofOther, b)
	}
	return ofOne, ofOther
}

func size(c complex128) float64 { return math.Sqrt(real(c)*real(c) + imag(c)*imag(c)) }

// unity are the first half of the n-th roots of one, clockwise.
func unity(n int) []complex128 {
	all := make([]complex128, n/2)
	for i := range all {
		all[i] = cmplx.Rect(1, -2*math.Pi*float64(i)/float64(n))
	}
	return all
}

// transform is Fourier's, in place, of a power of two of values (J. W. Cooley and J. W. Tukey,
// Mathematics of Computation 19, 297–301, 1965).
func transform(values, twiddles []complex128) {
	n := len(values)
	shift := 64 - bits.Len(uint(n-1))
	for i := range values {
		if j := int(bits.Reverse64(uint64(i)) >> shift); i < j {
			values[i], values[j] = values[j], values[i]
		}
	}
	for half := 1; half < n; half *= 2 {
		step := n / 2 / half
		for from := 0; from < n; from += 2 * half {
			low, high := values[from:from+half], values[from+half:from+2*half]
			for i, a := range low {
				b := high[i] * twiddles[i*step]
				low[i], high[i] = a+b, a-b
			}
		}
	}
}

// The transform is gonum's.
func TestTransform(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 2))
	values := make([]complex128, 64)
	for i := range values {
		values[i] = complex(chance.NormFloat64(), chance.NormFloat64())
	}
	want := fourier.NewCmplxFFT(len(values)).Coefficients(nil, values)
	transform(values, unity(len(values)))
	for i := range want {
		require.InDelta(t, 0, cmplx.Abs(want[i]-values[i]), 1e-12)
	}
}

// growth is how much the ear's band grows into each frame.
func (e *ear) growth(spectra [][]float64) []float64 {
	from := int(math.Ceil(e.from * earWindow / float64(audio.Rate)))
	to := int(e.to * earWindow / float64(audio.Rate))
	grown := make([]float64, len(spectra))
	for i := 1; i < len(spectra); i++ {
		before, now := spectra[i-1][from:to], spectra[i][from:to]
		energy := 0.0
		for bin := range now {
			if e.power {
				energy += now[bin]*now[bin] - before[bin]*before[bin]
			} else {
				grown[i] += max(0, now[bin]-before[bin])
			}
		}
		if e.power {
			grown[i] = max(0, energy)
		}
	}
	return grown
}

// onsets are the times of the peaks: the greatest of 30 ms to either side, at least
// 50 ms apart, above the ear's threshold.
func (e *ear) onsets(growth []float64) []time.Duration {
	const beside, apart, near = 3, 5, 50
	greatest := slices.Max(growth)
	var all []time.Duration
	last := -apart
	for i, g := range growth {
		if i-last < apart || g < e.share*greatest ||
			g < slices.Max(growth[max(0, i-beside):min(len(growth), i+beside+1)]) {
			continue
		}
		mean := stat.Mean(growth[max(0, i-near):min(len(growth), i+near+1)], nil)
		if g >= e.share*greatest+e.multiples*mean {
			all, last = append(all, time.Duration(i)*10*time.Millisecond), i
		}
	}
	return all
}

// found is the F-measure of onsets as the dums of a passage: the harmonic mean of
// how many of them are dums and how many of the dums are among them, one for one
// within 50 ms (MIREX, Audio Onset Detection). Onsets in open spans are no error.
func found(onsets, dums []time.Duration, open []round.Span) float64 {
	const within = 50 * time.Millisecond
	onsets = slices.DeleteFunc(slices.Clone(onsets), func(t time.Duration) bool {
		return slices.ContainsFunc(open, func(s round.Span) bool { return s.From-within <= t && t < s.To-within })
	})
	hits := 0
	for i, j := 0, 0; i < len(onsets) && j < len(dums); {
		switch d := onsets[i] - dums[j]; {
		case d < -within:
			i++
		case d > within:
			j++
		default:
			i, j, hits = i+1, j+1, hits+1
		}
	}
	if len(onsets)+len(dums) == 0 {
		return 1
	}
	return 2 * float64(hits) / float64(len(onsets)+len(dums))
}

func TestFound(t *testing.T) {
	dums := []time.Duration{1000 * ms, 2000 * ms, 3000 * ms}
	open := []round.Span{{From: 4000 * ms, To: 5000 * ms}}
	for _, tt := range []struct {
		name   string
		onsets []time.Duration
		want   float64
	}{
		{"all", dums, 1},
		{"none", nil, 0},
		{"50 ms beside", []time.Duration{950 * ms, 2050 * ms, 3000 * ms}, 1},
		{"51 ms beside", []time.Duration{949 * ms, 2051 * ms, 3000 * ms}, 1. / 3},
		{"one left out", dums[1:], 2 * 1 * (2. / 3) / (1 + 2./3)},
		{"three too many", append([]time.Duration{0, 100 * ms, 200 * ms}, dums...), 2 * .5 * 1 / 1.5},
		{"two for one", []time.Duration{990 * ms, 1010 * ms, 2000 * ms, 3000 * ms}, 2 * .75 * 1 / 1.75},
		{"some where nothing is asked", append(slices.Clone(dums), 4000*ms, 4500*ms), 1},
		{"one on the base again, just after", append(slices.Clone(dums), 4990*ms), 2 * .75 * 1 / 1.75},
	} {
		require.InDelta(t, tt.want, found(tt.onsets, dums, open), 1e-12, tt.name)
	}
}

// The hours and marks of Wikipedia's "Spearman's rank correlation coefficient",
// −29/165; equals by hand.
func TestSpearman(t *testing.T) {
	iq := []float64{106, 100, 86, 101, 99, 103, 97, 113, 112, 110}
	hours := []float64{7, 27, 2, 50, 28, 29, 20, 12, 6, 17}
	require.InDelta(t, -29./165, spearman(iq, hours), 1e-12)
	require.Equal(t, []float64{2, 5, 2, 4, 2}, ranks([]float64{1, 9, 1, 3, 1}))
}

// What Hide takes for granted about the sound of firm strokes: where dums have their
// fundamentals a high stroke of the lead drum has a hundredth of the energy or less,
// and a dum of both drums has some 3 dB more than the bass drum's alone.
func TestHighStrokesDoNotMask(t *testing.T) {
	energy := func(voices ...audio.Voice) float64 {
		var hits []audio.Hit
		for _, v := range voices {
			hits = append(hits, audio.Hit{Frame: earWindow, Voice: v, Strength: 1, Seed: 1})
		}
		frames, err := audio.Render(audio.Rate, int64(audio.Rate)/2, hits...)
		require.NoError(t, err)
		mono := make([]float64, len(frames)/2)
		for i := range mono {
			mono[i] = float64(frames[2*i] + frames[2*i+1])
		}
		sum := 0.0
		whole, _ := spectra(mono, mono)
		for _, bins := range whole {
			for _, m := range bins[50*earWindow/int(audio.Rate) : 200*earWindow/int(audio.Rate)] {
				sum += m * m
			}
		}
		return sum
	}
	dum := energy(audio.BassDum)
	for _, high := range []audio.Voice{audio.LeadTek, audio.LeadKa, audio.LeadSak, audio.LeadRollTek, audio.LeadRollKa} {
		require.Less(t, energy(high), dum/100, high)
	}
	require.InDelta(t, 3, 10*math.Log10(energy(audio.BassDum, audio.LeadDum)/dum), 1)
}
