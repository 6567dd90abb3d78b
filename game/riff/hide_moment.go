package riff

import (
	"time"

	"groundbeat/game/rhythm"
)

// heard is a stroke as it is heard: when, in µs from the part's first step, and how
// firm, in thousandths.
type heard struct {
	at    int64
	low   bool
	force int
}

func heardOf(c *rhythm.Cycle, strokes []Stroke, bpm int) []heard {
	all := make([]heard, len(strokes))
	for i, s := range strokes {
		all[i] = heard{s.At(c, bpm).Microseconds(), s.Sound.Low(), int(float64(s.Strength*1000) + 0.5)}
	}
	return all
}

// moment is one dum of the base and what the lead drum does about it.
type moment struct {
	at     int64 // µs
	stated bool  // the lead drum has it too
	fused  int   // force of the high stroke that falls on it
	masked int   // by a dum before it, in thousandths
	rivals int   // force of the dums beside the base that are nearest to it, together
	crowd  int   // and of the high strokes beside the base
}

func momentsOf(base []heard) []moment {
	var all []moment
	for _, s := range base {
		if s.low {
			all = append(all, moment{at: s.at})
		}
	}
	return all
}

// Within together two strokes are one; over forward the earlier one masks the later.
const (
	together = int64(22 * time.Millisecond / time.Microsecond)
	forward  = int64(200 * time.Millisecond / time.Microsecond)
)

// gather lets each stroke of the lead drum work on the dum of the base nearest to
// it, the later of two as near, and mask those after it.
func gather(moments []moment, lead, base []heard) {
	near, beside := 0, 0
	for _, s := range lead {
		for near+1 < len(moments) && moments[near+1].at-s.at <= s.at-moments[near].at {
			near++
		}
		for beside+1 < len(base) && base[beside].at < s.at-together {
			beside++
		}
		onBase := apart(s.at, base[beside].at) <= together
		moments[near].meet(s, onBase)
		for j := near; j < len(moments) && s.low && moments[j].at-s.at <= forward; j++ {
			moments[j].mask(s)
		}
	}
}

// meet takes in a stroke that no other dum is nearer to; onBase: it falls on some
// stroke of the base.
func (m *moment) meet(s heard, onBase bool) {
	switch onDum := apart(s.at, m.at) <= together; {
	case onDum && s.low:
		m.stated = true
	case onDum:
		m.fused = max(m.fused, s.force)
	case s.low:
		m.rivals += s.force
	case !onBase:
		m.crowd += s.force
	}
}

// mask takes in a dum of the lead drum before the moment.
func (m *moment) mask(s heard) {
	if since := m.at - s.at; since > together {
		m.masked = max(m.masked, s.force*lasting(since)/1000)
	}
}

func apart(a, b int64) int64 { return max(a-b, b-a) }

// lasting is how much of its masking, in dB, a sound has left after some µs, in
// thousandths: all of it for 5 ms, then falling with the logarithm of the time to
// nothing at the end of forward,
//
//	1 − ln(t / 5 ms) / ln 40
//
// read from a table of every 10 ms, in between along straight lines.
func lasting(since int64) int {
	const every = forward / int64(len(lastings)-1)
	i := min(since/every, int64(len(lastings)-2))
	from, to := lastings[i], lastings[i+1]
	return from + (to-from)*int(since-i*every)/int(every)
}

var lastings = [...]int{
	1000, 812, 624, 514, 436, 376, 326, 285, 248, 216, 188,
	162, 138, 117, 97, 78, 60, 44, 29, 14, 0,
}
