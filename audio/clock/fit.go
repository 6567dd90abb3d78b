package clock

import (
	"math"
	"slices"
)

const (
	binLength   = 1000.0 // ms of readings in one bin
	binReadings = 128    // at most, in one bin
	binCount    = 300    // bins kept: five minutes
	binsFast    = 10     // below this the open bin takes part in the fit

	priorSlope = 100e-6 // SD of a device's rate about nominal, before it is known
	maxSlope   = 500e-6 // no device is further off

	stepBins  = 4  // bins that together may show a step
	stepPrior = 20 // bins needed before them
	minStep   = 1  // ms; smaller ones are left to the window
	stepSigma = 5  // standard errors
)

// line is the offset (context time less performance time, ms) as a straight
// line in performance time.
type line struct {
	pivot  float64 // performance time, ms
	offset float64 // at the pivot, ms
	slope  float64 // ms per ms: the device's rate against nominal
}

func (l line) at(performance float64) float64 {
	return l.offset + l.slope*(performance-l.pivot)
}

// bin is one second of noisy readings.
type bin struct {
	start  float64 // performance time of its first reading, ms
	time   float64 // mean performance time, ms
	offset float64 // trimmed mean, ms
	sd     float64 // of one reading, from the deciles, ms
	weight float64 // readings
	ahead  float64 // offset less what the bins before foretold, ms
}

// fit draws a line through noisy readings: in each second the mean of the
// offsets with a tenth trimmed at either end (Tukey 1962, "The future of data
// analysis"), through these a least-squares line with Huber's weights (Huber
// 1964, "Robust estimation of a location parameter"). The slope has a Gaussian
// prior, without which two seconds of readings would turn the line at will.
//
// A noisy device may also step. That shows as four seconds in a row on one
// side of what the seconds before them foretold; the fit then starts anew at
// the first of the four and keeps the slope as its prior.
type fit struct {
	bins   []bin // closed, oldest first
	values []float64
	times  float64 // sum of (performance time − start) in the open bin
	start  float64 // performance time of the open bin's first reading, ms

	prior   float64 // slope
	priorSD float64
	known   line    // as of the last closed bin
	scale   float64 // SD of one reading about the line, ms, 0 = not known
	scratch []float64
	huber   []float64
}

func newFit() fit {
	return fit{
		bins:    make([]bin, 0, binCount+1),
		values:  make([]float64, 0, binReadings),
		scratch: make([]float64, 0, binCount+1+binReadings),
		huber:   make([]float64, binCount+1),
	}
}

// reset forgets all readings and the slope.
func (f *fit) reset() {
	f.bins, f.values, f.times = f.bins[:0], f.values[:0], 0
	f.prior, f.priorSD, f.scale = 0, priorSlope, 0
}

// add takes a reading. It reports a step: then old is the line until the
// performance time from.
func (f *fit) add(performance, offset float64) (old line, from float64, stepped bool) {
	if len(f.values) > 0 && (performance-f.start >= binLength || len(f.values) == binReadings) {
		old, from, stepped = f.close()
	}
	if len(f.values) == 0 {
		f.start, f.times = performance, 0
	}
	f.times += performance - f.start
	f.values = append(f.values, offset)
	return old, from, stepped
}

// open summarises the open bin, which must hold a reading.
func (f *fit) open() bin {
	v := append(f.scratch[:0], f.values...)
	slices.Sort(v)
	n := len(v)
	cut := n / 10
	sum := 0.0
	for _, x := range v[cut : n-cut] {
		sum += x - v[n/2]
	}
	return bin{
		start:  f.start,
		time:   f.start + f.times/float64(n),
		offset: v[n/2] + sum/float64(n-2*cut),
		sd:     (v[n-1-cut] - v[cut]) / 2.563, // between the deciles of a Gaussian
		weight: float64(n),
	}
}

// close turns the open bin into a closed one and draws the line again.
func (f *fit) close() (old line, from float64, stepped bool) {
	b := f.open()
	if len(f.bins) > 0 {
		b.ahead = b.offset - f.known.at(b.time)
	}
	f.bins = append(f.bins, b)
	f.values = f.values[:0]
	if f.stepped() {
		k := len(f.bins) - stepBins
		old, from, stepped = f.draw(f.bins[:k]), f.bins[k].start, true
		f.prior, f.priorSD = old.slope, priorSlope/4
		f.bins = f.bins[:copy(f.bins, f.bins[k:])]
	}
	if len(f.bins) > binCount {
		f.bins = f.bins[:copy(f.bins, f.bins[1:])]
	}
	f.known = f.draw(f.bins)
	return old, from, stepped
}

// stepped reports whether the last four bins lie together off the line.
func (f *fit) stepped() bool {
	n := len(f.bins) - stepBins
	if n < stepPrior {
		return false
	}
	before, sum, weight := 0.0, 0.0, 0.0
	for _, b := range f.bins[:n] {
		before += b.weight
	}
	for _, b := range f.bins[n:] {
		if (b.ahead > 0) != (f.bins[n].ahead > 0) {
			return false
		}
		sum += b.weight * b.ahead
		weight += b.weight
	}
	// The end of a line of w readings has the variance 4σ²/w.
	se := f.scale * math.Sqrt(1/weight+4/before)
	return math.Abs(sum/weight) > max(minStep, stepSigma*se)
}

// line returns the line through everything so far; there must be a reading.
func (f *fit) line() line {
	if len(f.bins) >= binsFast || len(f.values) == 0 {
		return f.known
	}
	f.bins = append(f.bins, f.open())
	l := f.draw(f.bins)
	f.bins = f.bins[:len(f.bins)-1]
	return l
}

// draw fits the line: Huber's weights in three passes, the slope held by its
// prior (ridge regression) and bounded.
func (f *fit) draw(bins []bin) line {
	huber := f.huber[:len(bins)]
	for i := range huber {
		huber[i] = 1
	}
	l := f.solve(bins, huber)
	for range 3 {
		if len(bins) < 5 {
			break
		}
		f.scale = f.spread(bins, l)
		for i, b := range bins {
			huber[i] = 1
			if r := math.Abs(b.offset-l.at(b.time)) * math.Sqrt(b.weight); r > 2*f.scale {
				huber[i] = 2 * f.scale / r
			}
		}
		l = f.solve(bins, huber)
	}
	return l
}

// spread is the SD of one reading about the line, from the median absolute
// residual of the bins.
func (f *fit) spread(bins []bin, l line) float64 {
	v := f.scratch[:0]
	for _, b := range bins {
		v = append(v, math.Abs(b.offset-l.at(b.time))*math.Sqrt(b.weight))
	}
	slices.Sort(v)
	return 1.4826 * v[len(v)/2]
}

// solve is one pass of weighted least squares.
func (f *fit) solve(bins []bin, huber []float64) line {
	origin := bins[0]
	var w, x, y, sd float64
	for i, b := range bins {
		k := b.weight * huber[i]
		w += k
		x += k * (b.time - origin.time)
		y += k * (b.offset - origin.offset)
		sd += k * b.sd
	}
	l := line{pivot: origin.time + x/w, offset: origin.offset + y/w}
	var xx, xy float64
	for i, b := range bins {
		k, dx := b.weight*huber[i], b.time-l.pivot
		xx += k * dx * dx
		xy += k * dx * (b.offset - l.offset)
	}
	ridge := math.Pow(max(sd/w, 0.01)/f.priorSD, 2)
	l.slope = min(max((xy+ridge*f.prior)/(xx+ridge), -maxSlope), maxSlope)
	return l
}
