package audio

import "math"

// crowd is how many strokes of one drum may be in their attack (some 50 ms)
// at once. One more takes the place of the oldest, whose noise is cut.
const crowd = 32

// A drum is one head with its goblet, and the hands on it.
type drum struct {
	head    *drumhead
	rate    float64
	modes   []mode
	bank    bank
	attacks [crowd]attack
	busy    int // attacks that may be under way: those after it are over

	awake bool // false: the drum gives nothing at all

	tension    float64 // part of the pitch, followed
	tight      float64 // how much the last stroke tightens the head, about 1
	hand       float64 // decay rate that the resting hand adds, 1/s, followed
	handUntil  int64   // frame at which the hand leaves
	bent, held float64 // tension and hand to which the bank is tuned

	dcIn, dcOut float64 // of the high-pass
	dc          float64 // its pole
}

// newDrum returns a drum at rest.
func newDrum(head *drumhead, rate SampleRate) *drum {
	modes := head.list(0.45 * float64(rate))
	return &drum{
		head:  head,
		rate:  float64(rate),
		modes: modes,
		bank:  newBank(modes, rate),
		dc:    math.Exp(-2 * math.Pi * 20 / float64(rate)),
	}
}

// strike lets a hand meet the head at frame f, which is the next.
func (d *drum) strike(h Hit, f int64) {
	a := d.slot()
	a.start(h, d.modes, &d.bank, d.rate)
	d.tight = a.tight
	d.handUntil = f + int64(strokes[h.Voice].choke*d.rate)
	d.bank.wake()
	d.awake = true
}

// slot returns an attack that is over, or else the oldest.
func (d *drum) slot() *attack {
	oldest := 0
	for i := range d.busy {
		if d.attacks[i].over() {
			return &d.attacks[i]
		}
		if d.attacks[i].age > d.attacks[oldest].age {
			oldest = i
		}
	}
	if d.busy < crowd {
		d.busy++
		return &d.attacks[d.busy-1]
	}
	return &d.attacks[oldest]
}

// control does what is not done for every frame. It is called at every frame
// f on the grid of blocks, however the stream is read.
func (d *drum) control(f int64) {
	if !d.awake {
		return
	}
	for d.busy > 0 && d.attacks[d.busy-1].over() {
		d.busy--
	}
	energy, ringing := 0.0, true
	if d.pushed() {
		energy = d.energy()
	} else {
		energy, ringing = d.bank.rest()
	}
	d.follow(f, energy)
	if !ringing && d.busy == 0 && math.Abs(d.dcOut) < silence {
		d.sleep()
	}
}

// pushed reports whether a hand is pushing the head.
func (d *drum) pushed() bool {
	for i := range d.busy {
		if a := &d.attacks[i]; a.age < a.pulse {
			return true
		}
	}
	return false
}

func (d *drum) energy() float64 {
	var sum float64
	for i := range d.bank.n {
		sum += d.bank.groups[i].energy()
	}
	return sum
}

// follow lets tension and hand approach their targets and retunes the bank.
// The tension rises with the energy of the swing (in Marogna, Avanzini &
// Bank f = f0·√(1 + β·E)) and levels off, so that a roll cannot bend the
// pitch without end. It falls with the energy: twice as fast as the sound,
// which for a dum takes some 40 ms.
func (d *drum) follow(f int64, energy float64) {
	target := d.head.glide * d.tight * energy / (energy + d.head.reach)
	d.tension += d.step(0.0015) * (target - d.tension)
	if f < d.handUntil {
		d.hand += d.step(0.001) * (decay60/0.040 - d.hand)
	} else {
		d.hand -= d.step(0.008) * d.hand
	}
	if d.hand < 0.1 {
		d.hand = 0
	}
	if math.Abs(d.tension-d.bent) > 1e-6 || d.hand != d.held {
		d.bent, d.held = d.tension, d.hand
		d.bank.tune(d.bent, math.Exp(-d.held/d.rate))
	}
}

// step returns the part of the way to go in one block, for a time constant
// in seconds.
func (d *drum) step(tau float64) float64 {
	return 1 - math.Exp(-block/(tau*d.rate))
}

// sleep puts everything at rest, so that nothing decays into numbers too
// small for the processor to be fast with.
func (d *drum) sleep() {
	d.awake = false
	d.tension, d.hand, d.bent, d.held = 0, 0, 0, 0
	d.dcIn, d.dcOut = 0, 0
	d.bank.tune(0, 1)
}

// render writes the next frames to out, at most a block. It reports false,
// and writes nothing, if the drum is at rest.
func (d *drum) render(out []float64) bool {
	if !d.awake {
		return false
	}
	clear(out)
	if d.pushed() {
		d.push(out)
	} else {
		d.ring(out)
	}
	for i := range d.busy {
		d.attacks[i].sound(out)
		d.attacks[i].age += len(out)
	}
	d.block(out)
	return true
}

func (d *drum) ring(out []float64) {
	for i := range d.bank.n {
		if g := &d.bank.groups[i]; g.live {
			g.ring(out)
		}
	}
}

// push rings the head under the hands that push it.
func (d *drum) push(out []float64) {
	var force [crowd][block]float64
	for i := range d.busy {
		d.attacks[i].push(force[i][:len(out)])
	}
	for i := range d.bank.n {
		var x [block][lanes]float64
		for j := range d.busy {
			if a := &d.attacks[j]; a.age < a.pulse {
				addForce(&x, &a.weight[i], force[j][:len(out)])
			}
		}
		d.bank.groups[i].push(out, &x)
	}
}

func addForce(x *[block][lanes]float64, weight *[lanes]float64, force []float64) {
	for i, f := range force {
		for k := range lanes {
			x[i&(block-1)][k] += float64(weight[k] * f)
		}
	}
}

// block takes the direct current out: a high-pass of the first order at 20 Hz.
func (d *drum) block(out []float64) {
	in, y := d.dcIn, d.dcOut
	for i, x := range out {
		y = x - in + float64(d.dc*y)
		in = x
		out[i] = y
	}
	d.dcIn, d.dcOut = in, y
}
