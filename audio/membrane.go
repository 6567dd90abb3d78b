package audio

import (
	"cmp"
	"math"
	"slices"
)

// airDensity is that of air at 20 °C, kg/m³.
const airDensity = 1.2

// A drumhead describes one drum: its head, and the two modes into which the
// air of the goblet splits the head's lowest.
type drumhead struct {
	radius  float64 // of the head, m
	density float64 // of the film, kg/m²
	pitch   float64 // of mode (1,1) with its air, Hz

	low, high air   // the lowest mode, split by the air in the goblet
	hollow    []air // the goblet's own next modes, which the head hardly holds back

	modes  int     // how many modes in all, a multiple of lanes
	loss   float64 // decay rate at 0 Hz, 1/s
	lossHF float64 // its growth, 1/s per kHz²
	tilt   float64 // radiation falls with frequency to this power
	spread float64 // radiation falls by this factor for each nodal diameter
	glide  float64 // rise of pitch by tension without end, a part of the pitch
	reach  float64 // squared amplitude at which half of it is reached
}

// An air is one of the modes that the goblet's air makes or shares.
type air struct {
	hz, t60, gain float64 // t60 in seconds
}

// The drums. Sizes are those usual in shops (from memory): darbuka head
// 22 cm, dohola head 29 cm, film 0.35 kg/m². The air modes are calculated
// from them, see the package comment; decay and radiation are choices. So are
// the pitches of the goblets' own modes, which a small loudspeaker lives on:
// in the third octaves of 400 and 800 Hz for the dohola, of 500 Hz for the
// darbuka, so that the dums of the two are told apart there.
var (
	darbuka = drumhead{
		radius: 0.11, density: 0.35, pitch: 392,
		low:    air{hz: 104, t60: 0.38, gain: 1},
		high:   air{hz: 334, t60: 0.26, gain: 1},
		hollow: []air{{hz: 546, t60: 0.34, gain: 2.6}},
		modes:  48, loss: 33, lossHF: 3, tilt: 0.2, spread: 0.97,
		glide: 0.16, reach: 0.45,
	}
	dohola = drumhead{
		radius: 0.145, density: 0.35, pitch: 292,
		low:    air{hz: 74, t60: 0.60, gain: 1},
		high:   air{hz: 276, t60: 0.32, gain: 0.935},
		hollow: []air{{hz: 424, t60: 0.32, gain: 1.6}, {hz: 820, t60: 0.30, gain: 2.7}},
		modes:  40, loss: 31, lossHF: 4, tilt: 0.25, spread: 0.95,
		glide: 0.16, reach: 0.33,
	}
)

// A mode is one way in which the drum rings.
type mode struct {
	zero
	hz    float64
	decay float64 // rate of decay, 1/s: 6.9078/T60
	gain  float64 // how loud a unit swing is heard, signed
	size  float64 // the norm of its shape
}

// shape returns how far the mode swings at the distance r from the centre, as a part of
// the head's radius (0 ≤ r ≤ 1), along its greatest diameter. By reciprocity it is also
// how much a stroke there excites the mode.
func (m mode) shape(r float64) float64 { return m.size * math.Jn(m.m, m.j*r) }

// list returns the modes below limit Hz, the longest-lived first.
func (d *drumhead) list(limit float64) []mode {
	all := []mode{}
	for _, z := range thinned(d.modes - 1 - len(d.hollow)) {
		if z.m == 0 && z.n == 1 {
			all = append(all, d.low.mode(z), d.high.mode(z))
			for _, a := range d.hollow {
				all = append(all, a.mode(z))
			}
		} else {
			all = append(all, d.mode(z))
		}
	}
	all = slices.DeleteFunc(all, func(m mode) bool { return m.hz > limit })
	slices.SortStableFunc(all, func(a, b mode) int { return cmp.Compare(a.decay, b.decay) })
	return all
}

// sparse is the place in the list of zeros from which on every second mode is
// left out: they lie so close (dozens in an octave) that no ear counts them, and
// the strokes reach an octave higher for the same work.
const sparse = 16

// thinned returns count modes of the membrane, lowest first.
func thinned(count int) []zero {
	if count <= sparse {
		return zeros(count)
	}
	all := zeros(2*count - sparse)
	for i := sparse; i < count; i++ {
		all[i] = all[2*i-sparse]
	}
	return all[:count]
}

func (a air) mode(z zero) mode {
	return mode{zero: z, hz: a.hz, decay: decay60 / a.t60, gain: a.gain, size: z.norm()}
}

// decay60 is ln 1000: T60 is the time in which a sound falls by 60 dB.
const decay60 = 6.907755278982137

func (d *drumhead) mode(z zero) mode {
	one := zero{1, 1, 3.831705970207512}
	hz := d.pitch * z.j / one.j * math.Sqrt(d.load(one)/d.load(z))
	khz := hz / 1000
	return mode{
		zero:  z,
		hz:    hz,
		decay: d.loss + d.lossHF*khz*khz,
		gain:  math.Copysign(math.Pow(hz/d.pitch, -d.tilt)*math.Pow(d.spread, float64(z.m)), heard(z.m)),
		size:  z.norm(),
	}
}

// load returns the factor by which the air on both sides adds to the mass of
// the film. A pattern of wave number k = j/a that is too slow to radiate
// carries a layer of air ρ/k thick with it on each side (Fletcher & Rossing,
// ch. 3 and 18: air loading lowers the low modes most).
func (d *drumhead) load(z zero) float64 {
	return 1 + 2*airDensity*d.radius/(d.density*z.j)
}

// heard returns the sign with which a mode of m diameters reaches a listener
// one radian round the head from the stroke. Its size is averaged over the
// room and left to the radiation.
func heard(m int) float64 { return math.Cos(float64(m)) }
