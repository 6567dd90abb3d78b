package clock

import (
	"math"
	"math/bits"
)

// Stamp is what a browser tells of its output at one moment: the output time stamp,
// and beside it what the stamp can be checked against. All is read in one breath.
type Stamp struct {
	Reading         // the output time stamp; zeros or NaN where there is none
	Current float64 // the context's current time, s: the next frame to be rendered
	Now     float64 // performance time, ms
	Output  float64 // output latency in s as the browser states it; 0 where it states none
	Base    float64 // base latency in s, likewise
}

const (
	farPast   = 1000.0 // ms; an older stamp tells nothing of now
	farFuture = 100.0  // ms; a block's time of playing may lie that far ahead, see below
	unheard   = 0.05   // s by which what is heard cannot be ahead of what is rendered
	leastSum  = 0.15   // s of context time from which on a sum can be told from a stamp
	sumEarly  = 10.0   // ms about now plus context time that a sum lies in
	sumLate   = 70.0   // ms; WebKitGTK renders 43 ms at once
	leastLag  = 0.003  // s of stated latency below which a shift does not matter
	shiftOff  = 1.5    // ms about the latency that a shift lies in: Firefox's clock has grains of 1 ms
	judged    = 4      // stamps before anything is judged by its share of them
)

// lag is how long before now the stamp's moment was, ms.
func (s *Stamp) lag() float64 { return s.Now - s.Performance }

// check judges a stamp by what was read beside it.
//
// Summed: WebKitGTK 2.50 writes now + context time into the performance time (measured:
// it lies 0 to 45 ms below that sum), so that a stamp runs away from the clock of the
// taps by a second in each second.
//
// Shifted: Firefox takes the output latency off both times (AudioContext::GetOutputTimestamp,
// dom/media/webaudio/AudioContext.cpp: current time − latency, and now − latency), where
// the specification has the frame that is heard now, so each tap reads late by the
// latency. Measured with Firefox 153: both differences are the stated 43.08 ms, to
// 0.01 ms. In a stamp that is right the times lie apart by the latency, so that not both
// differences can be as large as it.
//
// Far: no device is a second behind; on macOS the moment may lie ahead of now by the
// buffer that is yet to be played. Ahead: a frame is heard before it is rendered.
func (s *Stamp) check() Reason {
	if why := s.Reading.check(); why != Accepted {
		return why
	}
	behind := s.Current - s.Context
	sum := s.Now + s.Context*1000 - s.Performance
	switch {
	case !(s.Current >= 0 && s.Current <= maxSeconds && s.Now >= 0 && s.Now <= maxSeconds*1000):
		return Invalid
	case s.Context >= leastSum && sum > -sumEarly && sum < sumLate:
		return Summed
	case s.lag() > farPast || s.lag() < -farFuture:
		return Far
	case behind < -unheard:
		return Ahead
	case s.Output >= leastLag && math.Abs(behind-s.Output)*1000 < shiftOff && math.Abs(s.lag()-s.Output*1000) < shiftOff:
		return Shifted
	}
	return Accepted
}

// share is which of the last 64 stamps showed something.
type share struct {
	last uint64 // newest in bit 0
	n    int    // of them
	most bool   // more than a quarter of them; until fewer than one in twenty of a full 64
}

// add notes one and reports whether the judgement has become that most do.
func (s *share) add(shows bool) bool {
	s.last <<= 1
	if shows {
		s.last |= 1
	}
	s.n = min(s.n+1, 64)
	ones, before := bits.OnesCount64(s.last), s.most
	switch {
	case s.n >= judged && ones*4 > s.n:
		s.most = true
	case s.n == 64 && ones*20 < s.n:
		s.most = false
	}
	return s.most && !before
}

// Stamp takes a stamp, in the order of time, and reports whether it is used as a good
// reading. What is not believed is no reading: instead the
// context's current time less the stated latency is taken, as by ReadCoarse.
//
// Most of a browser's stamps are of one kind: where more than a quarter of the last 64
// contradict what was read beside them, none is believed, and what was believed before
// is forgotten. Where so many are shifted by the latency, it is put on them again (a
// stamp without the shift is then left out); the first few of them wait for that.
func (c *Clock) Stamp(s Stamp) bool {
	why := s.check()
	switch why {
	case NotRunning:
		return c.Read(s.Reading)
	case Unset, Invalid: // there is none, as at the start
	case Shifted, Accepted:
		if why = c.shift(&s, why); why == Shifted {
			c.lastWhy = why
			c.refused[why]++
			return false
		}
		c.doubts.add(false)
	default:
		if c.doubts.add(true) {
			c.fine = newTrack()
		}
	}
	if why == Accepted && !c.doubts.most {
		return c.Read(s.Reading)
	}
	if why == Accepted {
		why = Doubtful
	}
	c.lastWhy = why
	c.refused[why]++
	c.ReadCoarse(Reading{s.Current, s.Now, true}, s.Output+s.Base)
	return false
}

// shift puts the latency on a stamp of which it was taken off, where most are so. It
// returns Shifted for one that is to be left out.
func (c *Clock) shift(s *Stamp, why Reason) Reason {
	shifted := why == Shifted
	c.shifts.add(shifted)
	switch {
	case shifted && c.shifts.most:
		s.Performance += s.Output * 1000
		c.corrected++
	case c.shifts.most, shifted && c.shifts.n < judged:
		return Shifted
	}
	return Accepted
}
