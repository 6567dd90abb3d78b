package audio

import "math"

// A section is a filter of the second order with its state, in the
// transposed direct form; a0 is 1.
type section struct {
	b0, b1, b2, a1, a2 float64
	z1, z2             float64
}

func (s *section) next(x float64) float64 {
	y := float64(s.b0*x) + s.z1
	s.z1 = float64(s.b1*x) - float64(s.a1*y) + s.z2
	s.z2 = float64(s.b2*x) - float64(s.a2*y)
	return y
}

// kWeighting returns the two filters of ITU-R BS.1770 for any rate: a shelf
// of +4 dB for what the head adds above some 2 kHz, and a high-pass for what
// the ear misses below 100 Hz. The recommendation gives coefficients for
// 48 kHz alone and asks for the same response at other rates; these are the
// analogue prototypes behind them by the bilinear transform, which give the
// published numbers at 48 kHz to 10⁻¹² (as many public meters do).
func kWeighting(rate SampleRate) [2]section {
	return [2]section{shelf(float64(rate)), highPass(float64(rate))}
}

func shelf(fs float64) section {
	const hz, gain, q = 1681.974450955533, 3.999843853973347, 0.7071752369554196
	k := math.Tan(math.Pi * hz / fs)
	vh := math.Pow(10, gain/20)
	vb := math.Pow(vh, 0.4996667741545416)
	a0 := 1 + k/q + k*k
	return section{
		b0: (vh + vb*k/q + k*k) / a0,
		b1: 2 * (k*k - vh) / a0,
		b2: (vh - vb*k/q + k*k) / a0,
		a1: 2 * (k*k - 1) / a0,
		a2: (1 - k/q + k*k) / a0,
	}
}

func highPass(fs float64) section {
	const hz, q = 38.13547087602444, 0.5003270373238773
	k := math.Tan(math.Pi * hz / fs)
	a0 := 1 + k/q + k*k
	return section{b0: 1, b1: -2, b2: 1, a1: 2 * (k*k - 1) / a0, a2: (1 - k/q + k*k) / a0}
}
