package riff

import (
	"slices"

	"groundbeat/game/rhythm"
)

// ornament is how a gap between two full strokes is dressed.
type ornament uint8

const (
	echo   ornament = iota // one light stroke just before the next
	bridge                 // two before the next
	flow                   // light strokes on every cell
	double                 // flow, the last cell's stroke doubled
	triple                 // three strokes in the time of two cells, or six in that of four
	press                  // the light strokes that are there, growing firmer
	slap                   // a slap for the tek that begins the gap
)

// ornaments are those that are drawn, the likelier ones more often.
var ornaments = []ornament{bridge, flow, flow, double, double, triple, triple, press, slap}

// dress plays an ornament between two ticks with full strokes on them (or the
// end), and reports whether it can be played there and adds something.
func (s *shape) dress(l line, o ornament, from, to int) bool {
	inside := 0
	for at := from + 1; at < to; at++ {
		if l[at].force > 0 {
			inside++
		}
	}
	switch o {
	case press:
		for at := from + 1; at < to; at++ {
			if l[at].force > 0 {
				l[at].force = lightForce + (plainForce-lightForce)*(at-from)/(to-from)
			}
		}
		return inside > 0
	case slap:
		if l[from].sound != rhythm.Tek {
			return false
		}
		l.put(from, rhythm.Sak, slapForce)
		return true
	}
	ticks := s.inGap(o, from, to)
	if len(ticks) <= inside {
		return false
	}
	l.clear(from+1, to)
	for _, at := range ticks {
		l[at] = lightStroke
	}
	return true
}

// inGap are the ticks of an ornament's strokes between two others; none where it
// cannot be played.
func (s *shape) inGap(o ornament, from, to int) []int {
	cells, third := (to-from)/s.cell, s.cell*2/3
	first, step := to-s.cell, s.cell
	switch {
	case (to-from)%s.cell != 0 || cells < 2:
		return nil
	case o == bridge:
		first = max(from, to-3*s.cell) + s.cell
	case o == flow, o == double && s.twice:
		first = from + s.cell
	case o == triple && !s.seam(from, to) && (cells == 4 && s.onBeat(from) || cells == 2 && s.lasts(third) >= HandGap):
		first, step = from+third, third
	case o != echo:
		return nil
	}
	var ticks []int
	for at := first; at < to; at += step {
		ticks = append(ticks, at)
	}
	if o == double {
		ticks = append(ticks, to-s.cell/2)
	}
	return ticks
}

// gaps are the ticks of the full strokes of the skeleton, and the end.
func (s *shape) gaps() []int {
	var all []int
	for i, stroke := range s.cycle.Skeleton {
		if stroke.Sounds() {
			all = append(all, i*TicksPerStep)
		}
	}
	return append(all, s.length)
}

// filled is the rhythm's filled form, or, where none is known, its skeleton with
// an echo before every full stroke that leaves room.
func (s *shape) filled() line {
	if s.cycle.Filled != nil {
		return s.lay(s.cycle.Filled)
	}
	l := s.lay(s.cycle.Skeleton)
	gaps := s.gaps()
	for i := range gaps[1:] {
		s.dress(l, echo, gaps[i], gaps[i+1])
	}
	return l
}

// ornamentedTheme dresses two gaps or more of the filled form anew, and another in
// the varied bar; the answer has a slap for the last tek.
func (s *shape) ornamentedTheme(c chance, busy int) theme {
	plain := s.filled()
	for range 1 + (busy+1)/3 {
		s.dressOne(plain, c)
	}
	varied := slices.Clone(plain)
	s.dressOne(varied, c)
	other := slices.Clone(varied)
	gaps := s.gaps()
	for i := len(gaps) - 2; i >= 0; i-- {
		if s.dress(other, slap, gaps[i], gaps[i+1]) {
			break
		}
	}
	return theme{plain, varied, other}
}

// dressOne dresses a gap that chance takes, if it finds one with room in a few
// draws.
func (s *shape) dressOne(l line, c chance) {
	gaps := s.gaps()
	for range 8 {
		i := c.below(len(gaps) - 1)
		if s.dress(l, one(c, ornaments), gaps[i], gaps[i+1]) {
			return
		}
	}
}
