package clock_test

import (
	"math"
	"math/rand/v2"

	"groundbeat/audio/clock"
)

const rate = 48000

// device is a stub of an audio context with an output time stamp. Its truth is
// the context time heard at a performance time; its readings are the truth
// with noise, as a browser would give them.
type device struct {
	rng   *rand.Rand
	zero  float64 // performance time at which context time 0 is heard, ms
	drift float64 // ppm
	steps []stepAt
	noise func(d *device, now float64) float64 // ms added to the offset
	grain float64                              // resolution of performance times, ms
}

type stepAt struct{ at, by float64 } // performance ms, ms of context time

func newDevice(seed uint64) *device {
	return &device{rng: rand.New(rand.NewPCG(seed, 1)), zero: 5000, grain: 0.1, noise: steady}
}

// heard is the true context time in ms.
func (d *device) heard(at float64) float64 {
	c := (at - d.zero) * (1 + d.drift*1e-6)
	for _, s := range d.steps {
		if at >= s.at {
			c += s.by
		}
	}
	return c
}

func (d *device) read(now float64) clock.Reading {
	c := d.heard(now) + d.noise(d, now)
	p := now
	if d.grain > 0 {
		p = math.Floor(now/d.grain) * d.grain
	}
	return clock.Reading{Context: c / 1000, Performance: p, Running: true}
}

// steady noise: within ±0.1 ms, as measured with Chromium 156.
func steady(d *device, _ float64) float64 { return d.rng.Float64()*0.2 - 0.1 }

func gaussian(sd float64) func(*device, float64) float64 {
	return func(d *device, _ float64) float64 { return d.rng.NormFloat64() * sd }
}

// scattered is noise with the figures measured with Firefox 153: 5th
// percentile −13.7 ms, 95th +4.0 ms about the first reading, 26 ms in all,
// straight in between; its mean is taken off, since no filter can know it.
func scattered(d *device, _ float64) float64 {
	const mean = .05*(-19-13.7)/2 + .9*(-13.7+4)/2 + .05*(4+7)/2
	q := [4]float64{0, .05, .95, 1}
	v := [4]float64{-19, -13.7, 4, 7}
	u := d.rng.Float64()
	for i := 1; ; i++ {
		if u <= q[i] {
			return v[i-1] + (v[i]-v[i-1])*(u-q[i-1])/(q[i]-q[i-1]) - mean
		}
	}
}

// batched is a context time that moves only once in length ms (of the device)
// and is handed over up to late ms after that, so that it lies behind: the
// likely make of the noise above.
func batched(length, late float64) func(*device, float64) float64 {
	batch, due := -1.0, 0.0
	held := math.Inf(-1)
	return func(d *device, now float64) float64 {
		c := d.heard(now)
		if b := math.Floor(c / length); b != batch {
			batch, due = b, b*length+d.rng.Float64()*late
		}
		if c >= due {
			held = batch * length
		} else {
			held = max(held, (batch-1)*length)
		}
		return held - c
	}
}

// play reads the device from one performance time to another at about poll ms
// intervals (a third of it more or less), calling each after each reading.
func play(c *clock.Clock, d *device, from, to, poll float64, each func(now float64)) {
	for now := from; now < to; now += poll * (2 + 2*d.rng.Float64()) / 3 {
		c.Read(d.read(now))
		if each != nil {
			each(now)
		}
	}
}

// place schedules seconds of one epoch in blocks of 2,048 frames, stream frame
// 0 at a context frame.
func place(c *clock.Clock, epoch int, context int64, seconds float64) {
	for f := int64(0); f < int64(seconds*rate); f += 2048 {
		c.Place(clock.Placement{Epoch: epoch, Context: context + f, Stream: f, Frames: 2048})
	}
}

// off is the position's error in ms, where stream frame 0 is at context frame.
func off(p clock.Position, d *device, context int64) float64 {
	return (p.Frame+float64(context))/rate*1000 - d.heard(p.At)
}
