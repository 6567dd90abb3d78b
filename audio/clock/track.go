package clock

import "math"

const (
	kept      = 1 << 15 // readings kept: nine minutes of 60 a second
	reach     = 2000.0  // ms that a reading is used beyond itself
	reachIce  = 250.0   // the same once the readings after it are frozen
	iceCount  = 4       // frozen readings that prove it
	lead      = 500.0   // ms that the very first reading is used before itself
	step      = 0.4     // ms of change in one reading that is a step
	smooth    = 8       // readings averaged between steps
	smoothGap = 250.0   // ms without a reading after which the average starts anew
	wild      = 1000.0  // ms of change in one reading that is not believed
	rivals    = 8       // refused readings agreeing with one another: the device restarted
	rivalGap  = 50.0    // ms within which they agree
	slopeSpan = 10000.0 // ms between steps needed to state a steady rate
	linesKept = 32      // stretches of noisy readings kept
)

// point is an accepted reading.
type point struct {
	context, performance float64 // s, ms, as read
	offset               float64 // ms, averaged since the last step
	floor                float64 // context time in ms already reached; −∞ after a step
	slope                float32 // of the offset, ms per ms
	cut                  int32
}

// stretch is a time of noisy readings with one line through them.
type stretch struct {
	line
	from, to float64 // performance times in ms; from is part of it
	cut      int32
}

// track is what has been read from one source of output times.
type track struct {
	points  []point // ring
	n       int     // points ever accepted; point i is at i mod kept
	scatter scatter
	fit     fit
	lines   []stretch // oldest first; the last is open while noisy

	run      int     // readings averaged
	anchor   float64 // performance time where the slope is measured from, ms; 0 = none
	anchored float64 // offset there
	slope    float64 // steady
	frozen   int     // in a row
	rival    Reading
	rivals   int

	steps    int
	lastStep float64 // ms
}

func newTrack() *track {
	return &track{points: make([]point, kept), fit: newFit(), lines: make([]stretch, 0, linesKept+1)}
}

func (t *track) point(i int) *point { return &t.points[i%kept] }

func (t *track) last() *point { return t.point(t.n - 1) }

// live reports whether the newest reading is of this cut.
func (t *track) live(cut int) bool { return t.n > 0 && t.last().cut == int32(cut) }

// read takes a reading that is good by itself, or says why not. Lost means
// that the refused ones agree among themselves: a device that restarted
// without a word.
func (t *track) read(r Reading, cut int) (why Reason, lost bool) {
	why = t.compare(r, cut)
	switch why {
	case Accepted:
		t.frozen, t.rivals = 0, 0
		t.accept(r, cut)
	case Frozen:
		t.frozen++
	case Backwards, Wild:
		lost = t.contest(r)
	}
	return why, lost
}

// compare judges a reading by the last one.
func (t *track) compare(r Reading, cut int) Reason {
	if t.n == 0 {
		return Accepted
	}
	last := t.last()
	switch {
	case r.Context == last.context && r.Performance == last.performance:
		return Repeated
	case r.Performance <= last.performance:
		return Backwards
	case r.Context == last.context:
		return Frozen
	case last.cut != int32(cut):
		return Accepted
	case r.Context < last.context:
		return Backwards
	case math.Abs(r.offset()-last.offset) > wild:
		return Wild
	}
	return Accepted
}

// contest counts refused readings that go on from one another.
func (t *track) contest(r Reading) bool {
	agrees := t.rivals > 0 && r.Context > t.rival.Context && r.Performance > t.rival.Performance &&
		math.Abs(r.offset()-t.rival.offset()) <= rivalGap
	if !agrees {
		t.rivals = 0
	}
	t.rival, t.rivals = r, t.rivals+1
	return t.rivals >= rivals && r.Performance > t.last().performance
}

// accept keeps the reading.
func (t *track) accept(r Reading, cut int) {
	p := point{
		context: r.Context, performance: r.Performance,
		offset: r.offset(), floor: math.Inf(-1), cut: int32(cut),
	}
	changed := false
	if t.live(cut) {
		last := t.last()
		changed = t.scatter.add(math.Abs(p.offset - (Reading{last.context, last.performance, true}).offset()))
		t.follow(&p, last)
	} else {
		t.begin(p)
	}
	p.slope = float32(t.slope)
	t.points[t.n%kept] = p
	t.n++
	t.learn(p, changed)
}

// begin starts a stretch of readings that knows nothing of those before, but
// that they were noisy.
func (t *track) begin(p point) {
	if len(t.lines) > 0 && math.IsInf(t.lines[len(t.lines)-1].to, 1) && t.scatter.noisy {
		t.shut(math.Inf(1))
	}
	t.run, t.anchor, t.slope = 1, 0, 0
	if t.scatter.noisy {
		t.fit.reset()
		t.openLine(p.performance, p.cut)
	}
}

// follow averages p with the readings before it, unless it is a step.
func (t *track) follow(p, last *point) {
	gap := p.performance - last.performance
	expected := last.offset + t.slope*gap
	if d := p.offset - expected; math.Abs(d) > step {
		if !t.scatter.noisy {
			t.steps++
			t.lastStep = d
		}
		t.run, t.anchor = 1, 0
		return
	}
	p.floor = max(last.floor, last.performance+expected)
	if gap > smoothGap {
		t.run = 0
	}
	t.run = min(t.run+1, smooth)
	p.offset = expected + (p.offset-expected)/float64(t.run)
	t.measure(*p)
}

// measure learns the slope between steps.
func (t *track) measure(p point) {
	switch span := p.performance - t.anchor; {
	case t.anchor == 0 && t.run == smooth:
		t.anchor, t.anchored = p.performance, p.offset
	case t.anchor > 0 && span >= slopeSpan:
		t.slope = min(max((p.offset-t.anchored)/span, -maxSlope), maxSlope)
	}
}

// learn feeds the fit while the readings are noisy, and changes over.
func (t *track) learn(p point, changed bool) {
	switch {
	case changed && t.scatter.noisy:
		t.recognise(p.cut)
	case changed:
		t.shut(p.performance)
	case t.scatter.noisy:
		t.feed(p)
	}
}

// recognise starts a fit with the readings that showed the noise.
func (t *track) recognise(cut int32) {
	i := t.n - 1
	for i > 0 && t.n-i < min(64, kept) && t.point(i-1).cut == cut {
		i--
	}
	from := t.point(i).performance
	if k := len(t.lines); k > 0 && t.lines[k-1].cut == cut {
		from = max(from, t.lines[k-1].to)
	}
	t.fit.reset()
	t.openLine(from, cut)
	t.lastStep = 0
	for ; i < t.n; i++ {
		p := t.point(i)
		if p.performance < from {
			continue
		}
		if i < t.n-1 && i > 0 && math.IsInf(p.floor, -1) && t.point(i-1).cut == cut {
			t.steps-- // was noise
		}
		t.feed(*p)
	}
}

// feed gives one reading to the fit.
func (t *track) feed(p point) {
	raw := Reading{p.context, p.performance, true}.offset()
	old, from, stepped := t.fit.add(p.performance, raw)
	if !stepped {
		return
	}
	open := &t.lines[len(t.lines)-1]
	t.steps++
	t.lastStep = t.fit.known.at(from) - old.at(from)
	open.line, open.to = old, from
	t.openLine(from, p.cut)
}

func (t *track) openLine(from float64, cut int32) {
	t.lines = append(t.lines, stretch{from: from, to: math.Inf(1), cut: cut})
	if len(t.lines) > linesKept {
		t.lines = t.lines[:copy(t.lines, t.lines[1:])]
	}
}

// shut keeps the open line as it is.
func (t *track) shut(to float64) {
	open := &t.lines[len(t.lines)-1]
	open.line, open.to = t.fit.line(), to
}
