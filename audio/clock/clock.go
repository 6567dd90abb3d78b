package clock

import (
	"errors"
	"math"
)

// Errors of Heard.
var (
	// ErrNoReading: there is no reading yet, or the time is before those kept.
	ErrNoReading = errors.New("clock: no reading of the output time at or before that time")
	// ErrStale: the last reading before the time is more than 2 s older
	// (0.25 s once the readings after it were frozen).
	ErrStale = errors.New("clock: the last reading of the output time is too old")
	// ErrInterrupted: the time is after the last reading before a suspension,
	// and before the first reading after it.
	ErrInterrupted = errors.New("clock: the sound was interrupted at that time")
	// ErrGap: no block is known to have been scheduled at what was heard.
	ErrGap = errors.New("clock: no block was scheduled at that time")
	// ErrTime: the time is not a finite number.
	ErrTime = errors.New("clock: not a time")
)

// Position is what was heard at one moment.
type Position struct {
	// Epoch is the epoch of the block heard.
	Epoch int
	// Frame is the stream frame heard, 0 or more, with its fraction.
	Frame float64
	// Rate is stream frames per second of performance time: the nominal rate
	// within ±500 ppm.
	Rate float64
	// At is the performance time asked for, in ms.
	At float64
	// Coarse marks a position from ReadCoarse: its latency is a guess.
	Coarse bool
	// Reading is the last reading at or before At (or the first one).
	Reading Reading
}

// Clock tells which stream frame was heard when. It is not safe for use by
// several goroutines at once. Make it with New.
type Clock struct {
	rate   float64 // frames per second
	fine   *track
	coarse *track // made by the first coarse reading
	placed placed

	cut   int  // interruptions so far; readings and blocks carry it
	ran   bool // a running reading came since the last one
	epoch int
	begun bool // epoch is valid

	doubts share // stamps that contradict what was read beside them
	shifts share // stamps that the latency was taken off

	accepted, acceptedCoarse int
	corrected                int
	refused, refusedCoarse   [reasons]int
	refusedPlacements        int
	lastWhy                  Reason
}

// New returns a clock for a stream of rate frames per second, which is also
// the context's rate. It panics if the rate is not positive.
func New(rate int) *Clock {
	if rate <= 0 {
		panic("clock: the rate must be positive")
	}
	return &Clock{rate: float64(rate), fine: newTrack(), placed: newPlaced(rate)}
}

// Place tells of a scheduled block, in the order of context frames. With a block
// of a higher epoch than any before, blocks that were scheduled but not heard by
// the last reading are forgotten: a restart cuts them off. Readings go on, since
// the device's clock does. A block with a negative number, without frames or of
// an earlier epoch is ignored and counted.
func (c *Clock) Place(p Placement) {
	if !p.valid() || c.begun && p.Epoch < c.epoch {
		c.refusedPlacements++
		return
	}
	if c.begun && p.Epoch > c.epoch {
		c.forget()
	}
	c.epoch, c.begun = p.Epoch, true
	c.placed.add(p, c.cut)
}

// Read takes a reading of the output time stamp, in the order of time, and
// reports whether it is used. It does not allocate.
//
// A reading that is not running, after running ones, is an interruption.
// So are eight refused readings (backwards or wild) that agree among one
// another: the device was restarted without a word. The eighth is used.
func (c *Clock) Read(r Reading) bool {
	why := c.take(c.fine, r)
	c.lastWhy = why
	if why != Accepted {
		c.refused[why]++
		return false
	}
	c.accepted++
	return true
}

// ReadCoarse takes the context's current time and the performance time, both
// read now, and the output latency in seconds as the browser states it (0 if
// it states none), and reports whether they are accepted. They answer only for
// times where no good reading exists. The first call allocates.
func (c *Clock) ReadCoarse(now Reading, latency float64) bool {
	if c.coarse == nil {
		c.coarse = newTrack()
	}
	why := Invalid
	if latency >= 0 && latency <= 5 {
		now.Context -= latency
		why = c.take(c.coarse, now)
	} else {
		c.state(now.Running)
	}
	if why != Accepted {
		c.refusedCoarse[why]++
		return false
	}
	c.acceptedCoarse++
	return true
}

// take gives a reading to a track.
func (c *Clock) take(t *track, r Reading) Reason {
	c.state(r.Running)
	if why := r.check(); why != Accepted {
		return why
	}
	why, lost := t.read(r, c.cut)
	if lost {
		c.interrupt()
		c.ran = true
		why, _ = t.read(r, c.cut)
	}
	return why
}

// state notes whether the context runs.
func (c *Clock) state(running bool) {
	if !running && c.ran {
		c.interrupt()
	}
	c.ran = running
}

// interrupt parts what follows from all that was.
func (c *Clock) interrupt() {
	c.forget()
	c.cut++
	c.ran = false
}

// forget drops the blocks that were scheduled but not heard by the last
// reading: all of them, if there was no reading.
func (c *Clock) forget() {
	heard := 0.0
	for _, t := range []*track{c.fine, c.coarse} {
		if t != nil && t.live(c.cut) {
			heard = max(heard, t.last().context*c.rate)
		}
	}
	c.placed.truncate(int64(math.Ceil(heard)), c.cut)
}

// Heard returns the stream frame that was heard at a performance time in ms,
// the time stamp of a tap for example. It does not allocate.
//
// Where readings are steady, the last one at or before the time answers, not
// one after it; only a time up to 0.5 s before the very first reading is
// answered by that one. Where readings are noisy, the line through all of them
// answers, later ones included, so the answer for one time becomes better
// while more is read.
func (c *Clock) Heard(at float64) (Position, error) {
	if !(math.Abs(at) <= maxSeconds*1000) {
		return Position{}, ErrTime
	}
	in, coarse, err := c.instant(at)
	if err != nil {
		return Position{}, err
	}
	frame := in.heard / 1000 * c.rate
	r, ok := c.placed.find(frame, int(in.point.cut))
	if !ok {
		return Position{}, ErrGap
	}
	return Position{
		Epoch:   r.Epoch,
		Frame:   float64(r.Stream) + (frame - float64(r.Context)),
		Rate:    c.rate * (1 + in.slope),
		At:      at,
		Coarse:  coarse,
		Reading: Reading{in.point.context, in.point.performance, true},
	}, nil
}

// instant asks the fine track, and the coarse one where that knows nothing.
func (c *Clock) instant(at float64) (in instant, coarse bool, err error) {
	in, err = c.fine.at(at, c.cut)
	if err == nil || c.coarse == nil {
		return in, false, err
	}
	rough, roughErr := c.coarse.at(at, c.cut)
	if roughErr != nil {
		if errors.Is(err, ErrNoReading) {
			err = roughErr
		}
		return in, true, err
	}
	if errors.Is(err, ErrInterrupted) && rough.point.cut <= in.point.cut {
		return in, false, err
	}
	return rough, true, nil
}

// Whole reports whether the stream frames [from, to) were placed in one
// unbroken run of context frames of that epoch. It is false for an empty
// range, across a suspension, and for frames already forgotten (see the
// package comment).
func (c *Clock) Whole(epoch int, from, to int64) bool {
	return c.placed.whole(epoch, from, to)
}
