package clock

// Placement says where a block of the stream was scheduled: its stream frames
// [Stream, Stream+Frames) at the context frames [Context, Context+Frames).
type Placement struct {
	// Epoch numbers the restarts of the sound; it never falls.
	Epoch int
	// Context and Stream are frames, 0 or more; Frames is more than 0.
	Context, Stream, Frames int64
}

func (p Placement) valid() bool {
	const most = 1 << 52 // a float64 still holds every frame
	return p.Context >= 0 && p.Stream >= 0 && p.Frames > 0 &&
		p.Context <= most && p.Stream <= most && p.Frames <= most
}

func (p Placement) end() int64 { return p.Context + p.Frames }

const (
	runsKept    = 256 // unbroken runs of blocks
	secondsKept = 300 // of the present stretch of sound
)

// run is an unbroken run of blocks.
type run struct {
	Placement
	cut int
}

// placed keeps runs of blocks, oldest first: merged where both their context
// and their stream frames join, so that unbroken sound is one run however
// long. Dropped are runs that ended five minutes before the newest (of the
// same cut), and all but the newest 256.
type placed struct {
	runs []run
	rate int64
}

func newPlaced(rate int) placed {
	return placed{runs: make([]run, 0, runsKept+1), rate: int64(rate)}
}

// add takes a block. Where it overlaps blocks placed before, it replaces them
// and all that follow.
func (p *placed) add(b Placement, cut int) {
	p.truncate(b.Context, cut)
	if n := len(p.runs); n > 0 {
		last := &p.runs[n-1]
		if last.cut == cut && last.Epoch == b.Epoch && last.end() == b.Context && last.Stream+last.Frames == b.Stream {
			last.Frames += b.Frames
			return
		}
	}
	p.runs = append(p.runs, run{b, cut})
	p.prune(b.end()-secondsKept*p.rate, cut)
}

// truncate forgets all frames of a cut from a context frame on.
func (p *placed) truncate(from int64, cut int) {
	for n := len(p.runs); n > 0 && p.runs[n-1].cut == cut; n-- {
		last := &p.runs[n-1]
		if last.Context < from {
			last.Frames = min(last.Frames, from-last.Context)
			return
		}
		p.runs = p.runs[:n-1]
	}
}

func (p *placed) prune(before int64, cut int) {
	kept := p.runs[:0]
	for i, r := range p.runs {
		old := r.cut == cut && r.end() < before
		if !old && i >= len(p.runs)-runsKept {
			kept = append(kept, r)
		}
	}
	p.runs = kept
}

// find returns the run that holds a context frame.
func (p *placed) find(frame float64, cut int) (run, bool) {
	for i := len(p.runs) - 1; i >= 0; i-- {
		r := p.runs[i]
		if r.cut == cut && frame >= float64(r.Context) && frame < float64(r.end()) {
			return r, true
		}
	}
	return run{}, false
}

// whole reports whether one run holds the stream frames [from, to).
func (p *placed) whole(epoch int, from, to int64) bool {
	for _, r := range p.runs {
		if r.Epoch == epoch && from >= r.Stream && to <= r.Stream+r.Frames && from < to {
			return true
		}
	}
	return false
}
