package paper

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/game/host"
)

// How the page's bridge deals with blocks, with its own figures.
const (
	block = 2048      // frames
	lead  = 0.8       // s that are scheduled ahead of the device
	late  = 0.02      // s; nearer than this a block may miss its frame
	start = 0.06      // s from a start to its first frame
	head  = 4 * block // frames that must be there before a start
	fade  = 0.012     // s that what is cut still sounds
	rate  = float64(audio.Rate)
)

// A Device says what the way out of the sound is like.
type Device struct {
	Latency  float64 // ms from when a frame is rendered to when it is heard, as the browser states it
	Wireless float64 // ms that it is later still, of which nobody knows
	Wakes    float64 // ms that it takes to start; below 0: it never does
	Scatter  float64 // ms, the most by which a reading is wrong
	Unsaid   bool    // the browser gives no output time stamps
	None     bool    // there is no sound at all
	Ideal    bool    // it is heard as the latency says after it is played, and nothing needs to be timed
}

// device is a context with its queue of blocks.
type device struct {
	Device
	wall  *Wall
	tell  func(host.Event)
	clock *clock.Clock
	take  func(to int64) []audio.Hit
	rng   *rand.Rand
	none  bool // nothing is placed: what would be heard goes by the page's own time
	asked bool // whether there is any sound has turned out

	frame int64 // of the stream, next to be rendered

	running bool
	wanted  bool    // not while hidden
	woken   float64 // when it will run, if it was asked to; 0: it was not
	context float64 // s of the context's time …
	since   float64 // … at this performance time, from which on it runs

	epoch   int
	next    int64   // context frame of the next block
	waiting []int64 // stream frames of blocks that are not placed yet
	fresh   bool    // nothing is placed in this epoch yet
	torn    bool    // it was interrupted since it began
	opens   int64   // stream frame from which on it is to be heard; below 0: none is waited for
	open    bool    // what is placed now is heard …
	from    int64   // … from this context frame on

	strikes []Strike // that are heard, or will be
	began   float64  // without sound: when frame 0 would have been heard
}

func newDevice(d Device, wall *Wall, tell func(host.Event), seed uint64) *device {
	x := &device{
		Device: d, wall: wall, tell: tell, none: d.None || d.Ideal, clock: clock.New(int(audio.Rate)),
		rng: rand.New(rand.NewPCG(seed, 1)), wanted: true, opens: -1,
	}
	x.restart("")
	return x
}

// remembered is for how long what was heard is known, in ms: longer than any round.
const remembered = 240_000

// now is the context's time, s.
func (d *device) now() float64 {
	if !d.running {
		return d.context
	}
	return d.context + (d.wall.Now()-d.since)/1000
}

// heardAt is the performance time in ms at which a context frame is heard.
func (d *device) heardAt(frame int64) float64 {
	return d.wall.Now() + (float64(frame)/rate-d.now())*1000 + d.Latency + d.Wireless
}

// Play cuts what was queued; from base on it is heard.
func (d *device) Play(base int64) {
	if d.none {
		d.epoch++
		now := d.wall.Now()
		d.strikes = slices.DeleteFunc(d.strikes, func(s Strike) bool { return s.At >= now })
		d.frame, d.began = base, now+d.Latency-float64(base)/rate*1000
		d.picture()
		return
	}
	d.Stop()
	d.opens = base
	d.restart("")
}

// Stop silences it.
func (d *device) Stop() {
	d.opens, d.open = -1, false
	d.cut()
}

// cut ends what has not sounded yet.
func (d *device) cut() {
	from := int64((d.now() + fade) * rate)
	d.strikes = slices.DeleteFunc(d.strikes, func(s Strike) bool { return s.context >= from })
}

// restart begins a new epoch.
func (d *device) restart(why string) {
	d.epoch++
	d.cut()
	d.waiting, d.fresh, d.torn = nil, true, false
	if why != "" {
		d.tell(host.Event{Kind: host.Stopped, Reason: why})
	}
}

// resume asks for the sound to run, as each press does.
func (d *device) resume() {
	if !d.running && d.wanted && d.Wakes >= 0 && d.woken == 0 {
		d.woken = d.wall.Now() + d.Wakes
	}
}

// suspend lets it run no longer.
func (d *device) suspend(why string) {
	if d.running {
		d.context, d.running = d.now(), false
		d.torn = true
		d.cut()
		d.clock.Read(clock.Reading{})
	}
	d.woken = 0
	d.tell(host.Event{Kind: host.Stopped, Reason: why})
}

// tick lets the device go on to what time it is.
func (d *device) tick() {
	d.strikes = slices.Delete(d.strikes, 0, d.heardFrom(d.wall.Now()-remembered))
	switch {
	case d.none:
		d.picture()
		return
	case !d.running && d.woken > 0 && d.wall.Now() >= d.woken:
		d.woken, d.running, d.since = 0, true, d.wall.Now()
		if d.torn {
			d.restart("")
		}
		d.tell(host.Event{Kind: host.Running})
	}
	d.pump()
	d.read()
}

// pump schedules blocks as far ahead as they are to be.
func (d *device) pump() {
	for d.running {
		at := int64(math.Round(d.now() * rate))
		switch {
		case !d.fresh && d.next < at+int64(late*rate):
			d.restart(host.WhyGap)
			continue
		case !d.fresh && d.next >= at+int64(lead*rate):
			return
		}
		d.waiting = append(d.waiting, d.frame)
		d.frame += block
		if d.fresh {
			if len(d.waiting)*block < head {
				continue
			}
			d.next, d.fresh = int64(math.Ceil((d.now()+start)*rate)), false
		}
		for _, stream := range d.waiting {
			d.place(stream)
		}
		d.waiting = nil
	}
}

// place schedules the block that begins at a stream frame.
func (d *device) place(stream int64) {
	if d.opens >= 0 && stream+block > d.opens {
		d.open, d.from, d.opens = true, d.next+max(0, d.opens-stream), -1
	}
	for _, h := range d.take(stream + block) {
		at := d.next + h.Frame - stream
		if d.open && h.Frame >= stream && at >= d.from {
			d.strikes = append(d.strikes, Strike{At: d.heardAt(at), Voice: h.Voice, Epoch: d.epoch, context: at})
		}
	}
	d.clock.Place(clock.Placement{Epoch: d.epoch, Context: d.next, Stream: stream, Frames: block})
	d.next += block
}

// read tells the clock how the device stands.
func (d *device) read() {
	s := clock.Stamp{Current: d.now(), Now: d.wall.Now(), Output: d.Latency / 1000}
	s.Running = d.running
	if context := s.Current - d.Latency/1000; context > 0 && !d.Unsaid {
		s.Context, s.Performance = context+d.Scatter/1000*(2*d.rng.Float64()-1), s.Now
	}
	d.clock.Stamp(s)
}

// pictured is what would be heard where nothing is placed.
func (d *device) pictured(at float64) clock.Position {
	return clock.Position{Epoch: d.epoch, Frame: (at - d.began) / 1000 * rate, Rate: rate, At: at, Coarse: d.None}
}

// picture takes the strokes of the next second, which are seen, or heard, all the same.
func (d *device) picture() {
	d.frame = max(0, int64((d.wall.Now()-d.began)/1000*rate))
	for _, h := range d.take(d.frame + int64(rate)) {
		d.strikes = append(d.strikes, Strike{At: d.began + float64(h.Frame)/rate*1000, Voice: h.Voice, Epoch: d.epoch})
	}
}

// Strikes are the strokes that are heard from one performance time on and before
// another, in ms, as far as they are known.
func (d *device) Strikes(from, to float64) []Strike {
	return slices.Clone(d.strikes[d.heardFrom(from):max(d.heardFrom(from), d.heardFrom(to))])
}

// heardFrom is which of the strokes is the first that is heard at a time or later.
func (d *device) heardFrom(at float64) int {
	i, _ := slices.BinarySearchFunc(d.strikes, at, func(s Strike, at float64) int { return cmp.Compare(s.At, at) })
	return i
}
