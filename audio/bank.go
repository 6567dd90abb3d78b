package audio

import "math"

const (
	lanes    = 4  // modes worked on side by side
	maxModes = 48 // of one drum, a multiple of lanes
	block    = 32 // frames between control steps, on the stream's own grid

	// silence is the swing below which a mode is stopped: −120 dBFS.
	silence = 1e-6
)

// A bank rings. Each mode is a two-pole resonator
//
//	y[n] = 2r·cos θ·y[n−1] − r²·y[n−2] + x[n]
//
// with θ = 2πf/fs and r = exp(−decay/fs): a unit pulse of r·sin θ starts a
// sine of unit amplitude at zero, which decays by r each frame (the modal
// form of physmodels.lib, Faust; Smith, "Physical Audio Signal Processing").
// The state is float64: at 75 Hz 2r·cos θ is within 10⁻⁴ of 2, and the
// pitch would suffer in float32.
//
// Products are converted explicitly, which keeps compilers from fusing them
// into the sums, so that every machine gets the same bits.
type bank struct {
	groups [maxModes / lanes]group
	n      int // groups in use
}

// A group is some modes side by side: their chains of operations are
// independent, and a processor works on them at the same time.
type group struct {
	y1, y2 [lanes]float64 // the last two values
	a1, a2 [lanes]float64 // 2r·cos θ, r², as tuned now
	live   bool           // false: every value is zero

	theta, cos, sin, r [lanes]float64 // at rest
	drive              [lanes]float64 // r·sin θ, times the mode's gain
}

// newBank returns a bank at rest.
func newBank(modes []mode, rate SampleRate) bank {
	var b bank
	b.n = (len(modes) + lanes - 1) / lanes
	for i, m := range modes {
		b.groups[i/lanes].set(i%lanes, m, float64(rate))
	}
	b.tune(0, 1)
	return b
}

func (g *group) set(k int, m mode, rate float64) {
	theta := 2 * math.Pi * m.hz / rate
	r := math.Exp(-m.decay / rate)
	g.theta[k], g.r[k] = theta, r
	g.sin[k], g.cos[k] = math.Sincos(theta)
	g.drive[k] = r * g.sin[k] * m.gain
}

// tune raises every pitch by the part bend (0 to about 0.1) and multiplies
// every decay per frame by damp (1 leaves it alone, less is shorter).
func (b *bank) tune(bend, damp float64) {
	for i := range b.n {
		b.groups[i].tune(bend, damp)
	}
}

func (g *group) tune(bend, damp float64) {
	for k := range lanes {
		// cos(θ+d), the sine and cosine of the small d by their series
		d := g.theta[k] * bend
		dd := float64(d * d)
		c := float64(g.cos[k]*(1-float64(dd/2))) - float64(g.sin[k]*float64(d*(1-float64(dd/6))))
		r := g.r[k] * damp
		g.a1[k] = 2 * r * c
		g.a2[k] = r * r
	}
}

// wake marks every group as ringing.
func (b *bank) wake() {
	for i := range b.n {
		b.groups[i].live = true
	}
}

// rest stops the groups that have become silent and returns the sum of the
// squared amplitudes of the others, and whether any is left.
func (b *bank) rest() (energy float64, ringing bool) {
	for i := range b.n {
		g := &b.groups[i]
		if !g.live {
			continue
		}
		e := g.energy()
		if e < silence*silence {
			g.y1, g.y2, g.live = [lanes]float64{}, [lanes]float64{}, false
			continue
		}
		energy += e
		ringing = true
	}
	return energy, ringing
}

// energy returns the sum of the squared amplitudes. The amplitude A of a sine
// through y[n] and y[n−1] is given by A² sin²θ = y1² + y2² − 2·y1·y2·cos θ.
func (g *group) energy() float64 {
	var sum float64
	for k := range lanes {
		if g.sin[k] == 0 {
			continue // no mode here
		}
		y1, y2 := g.y1[k], g.y2[k]
		q := float64(y1*y1) + float64(y2*y2) - float64(2*y1*y2*g.cos[k])
		sum += q / float64(g.sin[k]*g.sin[k])
	}
	return sum
}

// ring adds len(out) frames of the group to out.
func (g *group) ring(out []float64) {
	a10, a11, a12, a13 := g.a1[0], g.a1[1], g.a1[2], g.a1[3]
	a20, a21, a22, a23 := g.a2[0], g.a2[1], g.a2[2], g.a2[3]
	p0, p1, p2, p3 := g.y1[0], g.y1[1], g.y1[2], g.y1[3]
	q0, q1, q2, q3 := g.y2[0], g.y2[1], g.y2[2], g.y2[3]
	for i := range out {
		q0, p0 = p0, float64(a10*p0)-float64(a20*q0)
		q1, p1 = p1, float64(a11*p1)-float64(a21*q1)
		q2, p2 = p2, float64(a12*p2)-float64(a22*q2)
		q3, p3 = p3, float64(a13*p3)-float64(a23*q3)
		out[i] += (p0 + p1) + (p2 + p3)
	}
	g.y1 = [lanes]float64{p0, p1, p2, p3}
	g.y2 = [lanes]float64{q0, q1, q2, q3}
}

// push is ring with a force x for each mode. Where x is zero it gives the
// same bits as ring.
func (g *group) push(out []float64, x *[block][lanes]float64) {
	y1, y2 := g.y1, g.y2
	for i := range out {
		var sum [lanes]float64
		for k := range lanes {
			y := float64(g.a1[k]*y1[k]) - float64(g.a2[k]*y2[k]) + x[i&(block-1)][k]
			y2[k], y1[k], sum[k] = y1[k], y, y
		}
		out[i] += (sum[0] + sum[1]) + (sum[2] + sum[3])
	}
	g.y1, g.y2 = y1, y2
}
