package audio

import (
	"encoding/binary"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/dsp/fourier"
)

// sound is one channel of a stream, from a hit's frame on.
type sound []float64

const second = int(Rate)

// read returns the next n frames of s as bytes.
func read(t testing.TB, s *Stream, n int) []byte {
	t.Helper()
	p := make([]byte, n*frameSize)
	got, err := s.Read(p)
	require.NoError(t, err)
	require.Equal(t, len(p), got)
	return p
}

// split returns the two channels of p.
func split(p []byte) (left, right sound) {
	left, right = make(sound, 0, len(p)/frameSize), make(sound, 0, len(p)/frameSize)
	for ; len(p) > 0; p = p[frameSize:] {
		left = append(left, float64(math.Float32frombits(binary.LittleEndian.Uint32(p))))
		right = append(right, float64(math.Float32frombits(binary.LittleEndian.Uint32(p[4:]))))
	}
	return left, right
}

// renderMono returns n frames of the sum of both channels, from frame 0 on.
func renderMono(t testing.TB, n int, hits ...Hit) sound {
	t.Helper()
	s := NewStream(Rate)
	require.NoError(t, s.Schedule(hits...))
	left, right := split(read(t, s, n))
	for i := range left {
		left[i] += right[i]
	}
	return left
}

// one returns n frames of a single stroke.
func one(t testing.TB, v Voice, strength float32, seed uint64, n int) sound {
	t.Helper()
	return renderMono(t, n, Hit{Voice: v, Strength: strength, Seed: seed})
}

func (x sound) peak() float64 {
	var p float64
	for _, v := range x {
		p = max(p, math.Abs(v))
	}
	return p
}

func (x sound) mean() float64 {
	var sum float64
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}

func (x sound) energy() float64 {
	var sum float64
	for _, v := range x {
		sum += v * v
	}
	return sum
}

// butterworth returns x through a fourth-order high-pass or low-pass at hz:
// two sections of the Audio EQ Cookbook with the Q of a Butterworth filter.
func (x sound) butterworth(hz float64, high bool) sound {
	y := append(sound{}, x...)
	sin, cos := math.Sincos(2 * math.Pi * hz / float64(Rate))
	for _, q := range []float64{0.54119610, 1.30656296} {
		alpha := sin / (2 * q)
		b0, b1 := (1-cos)/2, 1-cos
		if high {
			b0, b1 = (1+cos)/2, -(1 + cos)
		}
		var z1, z2 float64
		for i, v := range y {
			out := (b0*v + z1) / (1 + alpha)
			z1 = z2 + b1*v + 2*cos*out
			z2 = b0*v - (1-alpha)*out
			y[i] = out
		}
	}
	return y
}

func (x sound) highPass(hz float64) sound { return x.butterworth(hz, true) }
func (x sound) lowPass(hz float64) sound  { return x.butterworth(hz, false) }

// transforms are kept, as they take long to prepare. Tests run one by one.
var transforms = map[int]*fourier.FFT{}

// power returns the power spectrum of x and the distance of its bins in Hz.
func (x sound) power() (spectrum []float64, bin float64) {
	fft := transforms[len(x)]
	if fft == nil {
		fft = fourier.NewFFT(len(x))
		transforms[len(x)] = fft
	}
	spectrum = make([]float64, 0, len(x)/2+1)
	for _, c := range fft.Coefficients(nil, x) {
		spectrum = append(spectrum, real(c)*real(c)+imag(c)*imag(c))
	}
	return spectrum, float64(Rate) / float64(len(x))
}

// pitch returns the frequency of the strongest bin, in Hz, of x padded to
// half a hertz.
func (x sound) pitch() float64 {
	spectrum, bin := append(append(sound{}, x...), make(sound, 2*second-len(x))...).power()
	best := 0
	for i, p := range spectrum {
		if p > spectrum[best] {
			best = i
		}
	}
	return float64(best) * bin
}

// centroid returns the mean frequency in Hz, weighted by power.
func (x sound) centroid() float64 {
	spectrum, bin := x.power()
	var sum, weighted float64
	for i, p := range spectrum {
		sum += p
		weighted += p * float64(i) * bin
	}
	return weighted / sum
}

// t60 returns the decay time in seconds: the time from −5 to −25 dB of the
// backward-integrated energy, times three (Schroeder, JASA 37, 1965, and the
// T20 of ISO 3382-1).
func (x sound) t60() float64 {
	total, rest := x.energy(), x.energy()
	from, to := 0, 0
	for i, v := range x {
		switch level := 10 * math.Log10(rest/total); {
		case level > -5:
			from, to = i, i
		case level > -25:
			to = i
		}
		rest -= v * v
	}
	return 3 * float64(to-from) / float64(Rate)
}

// lasts returns the time in ms in which nine tenths of the energy have come.
func (x sound) lasts() float64 {
	total := x.energy()
	var sum float64
	for i, v := range x {
		if sum += v * v; sum > 0.9*total {
			return 1000 * float64(i) / float64(Rate)
		}
	}
	return math.Inf(1)
}

// band returns the power between two frequencies in Hz, in dB.
func (x sound) band(from, to float64) float64 {
	spectrum, bin := x.power()
	var sum float64
	for i, p := range spectrum {
		if f := float64(i) * bin; from <= f && f < to {
			sum += p
		}
	}
	return 10 * math.Log10(sum/float64(len(x)))
}

// dryStream returns a stream with no room round its drums.
func dryStream() *Stream {
	s := NewStream(Rate)
	for _, r := range []*room{s.leadRoom, s.bassRoom} {
		r.echo, r.tail = [echoes]float64{}, 0
	}
	return s
}

// dry returns n frames of a single stroke with no room round the drum.
func dry(t testing.TB, v Voice, seed uint64, n int) sound {
	t.Helper()
	s := dryStream()
	require.NoError(t, s.Schedule(Hit{Voice: v, Strength: 1, Seed: seed}))
	left, right := split(read(t, s, n))
	if v.lead() {
		return left
	}
	return right
}

// seeds returns how many strokes to look at: few in a short run.
func seeds(all uint64) uint64 {
	if testing.Short() {
		return max(all/64, 2)
	}
	return all
}

// Check of the measures themselves on signals whose answers are known.
func TestMeasures(t *testing.T) {
	damped := make(sound, 2*second)
	for i := range damped {
		s := float64(i) / float64(Rate)
		damped[i] = 0.5 * math.Exp(-decay60*s/0.4) * math.Sin(2*math.Pi*1000*s)
	}
	require.InDelta(t, 0.4, damped.t60(), 0.002)
	require.InDelta(t, 1000, damped.pitch(), 1)
	require.InDelta(t, 1000, damped.lowPass(4000).centroid(), 20)
	// 90 % of exp(−2·6.9078·t/T60): t = T60·ln 10/13.8155 = T60/6
	require.InDelta(t, 400.0/6, damped.lasts(), 1)
	// −24 dB per octave
	require.InDelta(t, -24.1, 10*math.Log10(damped.highPass(2000).energy()/damped.energy()), 0.5)
}
