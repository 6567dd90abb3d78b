package audio

import "math"

// An attack is the hand on the skin: the push on every mode, and the noise
// that is heard at once.
type attack struct {
	age    int // frames since the hand met the skin
	pulse  int // frames of the push
	hiss   int // frames of the noise
	length float64
	slap   float64                          // a second push from the same frame on, a part of the first
	quick  float64                          // its frames; 0: there is none
	tight  float64                          // how much the head tightens under it, about 1
	weight [maxModes / lanes][lanes]float64 // of the push on each mode

	rng         random
	loud, fall  float64 // the noise's envelope and its fall per frame
	rise, climb float64 // what is left of its rise, and the fall of that
	b0, a1, a2  float64 // band-pass, normalised
	z1, z2      float64
}

// over reports whether the attack has nothing more to give.
func (a *attack) over() bool { return a.age >= a.pulse && a.age >= a.hiss }

// start sets the attack up for a hit on a drum whose modes are given. Every
// stroke strays a little: in place, contact, force, slap and noise. It gives
// less than was meant, never more, as the drums' headroom is for firm strokes.
func (a *attack) start(h Hit, modes []mode, b *bank, rate float64) {
	s := &strokes[h.Voice]
	*a = attack{rng: random(h.Seed)}
	radius := s.radius + s.stray*a.rng.signed()
	force := float64(h.Strength)
	// A harder hand is faster off the skin: a third longer at no strength.
	a.length = max(2, s.contact*rate*a.rng.about(0.12)*(4-force)/3)
	a.pulse = int(math.Ceil(a.length))
	a.slap = s.slap * math.Sqrt(force) * a.rng.about(0.25)
	a.quick = s.quick * rate * a.rng.about(0.20)
	given := force * a.rng.short(0.245)
	level := s.level * given
	a.tight = a.rng.about(0.35)
	for i, m := range modes {
		g, k := i/lanes, i%lanes
		a.weight[g][k] = level * m.shape(radius) * b.groups[g].drive[k]
	}
	a.startNoise(s, given, rate)
}

// startNoise sets up the noise: white, under a rise of 0.2 ms and a fall of
// tau, through the band-pass of Bristow-Johnson's "Audio EQ Cookbook" with a
// peak of 0 dB. It grows a little faster than the force, as hard strokes are
// brighter, and ends at −100 dB of its start.
func (a *attack) startNoise(s *stroke, force, rate float64) {
	const quick, end = 0.0002, 11.5
	tau := s.tau * a.rng.about(0.10)
	hz := math.Min(s.hz*a.rng.about(0.08), 0.4*rate)
	a.loud = s.noise * math.Pow(force, 1.25) * a.rng.about(0.10)
	a.fall = math.Exp(-1 / (tau * rate))
	a.rise, a.climb = 1, math.Exp(-1/(quick*rate))
	a.hiss = int(end * tau * rate)
	sin, cos := math.Sincos(2 * math.Pi * hz / rate)
	alpha := sin / (2 * s.q)
	a.b0, a.a1, a.a2 = alpha/(1+alpha), -2*cos/(1+alpha), (1-alpha)/(1+alpha)
}

// push fills x with the force of the next frames: a Hann pulse of unit area
// and the quicker one of the slap, zero after them.
func (a *attack) push(x []float64) {
	for i := range x {
		t := float64(a.age+i) + 0.5
		x[i] = hann(t, a.length) + float64(a.slap*hann(t, a.quick))
	}
}

// hann returns a Hann pulse of unit area from 0 to length, at t. Its spectrum
// is 6 dB down at 1/length and has its first zero at 2/length.
func hann(t, length float64) float64 {
	if t >= length {
		return 0
	}
	return (1 - math.Cos(2*math.Pi*t/length)) / length
}

// sound adds the noise of the next frames to out.
func (a *attack) sound(out []float64) {
	n := min(len(out), a.hiss-a.age)
	for i := range max(n, 0) {
		a.rise *= a.climb
		a.loud *= a.fall
		up := 1 - a.rise
		v := float64(a.loud * up * up * a.rng.signed())
		// transposed direct form, b1 = 0, b2 = −b0
		y := float64(a.b0*v) + a.z1
		a.z1 = a.z2 - float64(a.a1*y)
		a.z2 = -float64(a.b0*v) - float64(a.a2*y)
		out[i] += y
	}
}
