package riff

import "groundbeat/game/rhythm"

// A fill takes the place of the end of a cycle, grows, and leads into the next 1.

// fillKind is how a fill is played.
type fillKind uint8

const (
	run    fillKind = iota // light strokes on every cell, an accent on every fourth
	threes                 // accents in threes and twos, the cells between them filled
	sixed                  // six strokes in the time of four
	twos                   // a run that ends twice as fast
	stops                  // accents with silence between them, then a pick-up
)

// fills are the kinds of fill at a level, the likelier ones more often.
var fills = [...][]fillKind{
	Ornamented: {run, run, threes, twos, sixed},
	Riffing:    {run, threes, threes, sixed, twos, stops},
	Solo:       {run, threes, threes, sixed, sixed, twos, stops},
}

// fill plays a kind of fill from a tick to the end; a run if the rhythm has no time
// for it.
func (s *shape) fill(l line, c chance, level Level, kind fillKind, from int) {
	l.clear(from, len(l))
	accents := contour(c, (len(l)-from)/s.cell)
	if level == Ornamented {
		accents = nil
	}
	switch {
	case kind == threes:
		s.fillThrees(l, c, accents, from)
	case kind == sixed && s.thrice:
		s.fillSixes(l, accents, from)
	case kind == stops:
		s.fillStops(l, accents, from)
	default:
		s.fillRun(l, accents, from, kind == twos && s.twice)
	}
	l.crescendo(from, 65, 110)
}

// full is the n-th of some accents; a tek where there is none.
func full(accents rhythm.Pattern, n int) struck {
	sound := rhythm.Tek
	if n < len(accents) {
		sound = accents[n]
	}
	return struck{sound: sound, force: accent(sound)}
}

var lightStroke = struck{sound: rhythm.LightTek, force: lightForce}

func (s *shape) fillRun(l line, accents rhythm.Pattern, from int, fast bool) {
	for at := from; at < len(l); at += s.cell {
		l[at] = lightStroke
		if i := (at - from) / s.cell; i%4 == 0 {
			l[at] = full(accents, i/4)
		}
		if fast && at >= len(l)-2*s.cell {
			l[at+s.cell/2] = lightStroke
		}
	}
}

func (s *shape) fillThrees(l line, c chance, accents rhythm.Pattern, from int) {
	at := from
	for i, cells := range divide(c, (len(l)-from)/s.cell) {
		l[at] = full(accents, i)
		for j := 1; j < cells; j++ {
			l[at+j*s.cell] = lightStroke
		}
		at += cells * s.cell
	}
}

// fillSixes plays a run where four cells are not left, and where a dum of the base
// would fall to the other hand.
func (s *shape) fillSixes(l line, accents rhythm.Pattern, from int) {
	at := from + (len(l)-from)%(4*s.cell)
	s.fillRun(l[:at], accents, from, false)
	for i := 0; at < len(l); i++ {
		end := at + 4*s.cell
		if s.dum(at + 2*s.cell) {
			s.fillRun(l[:end], accents, at, false)
			at = end
			continue
		}
		for j := range 6 {
			l[at+j*s.cell*2/3] = lightStroke
		}
		l[at] = full(accents, i)
		l[at+2*s.cell] = full(nil, 0)
		at = end
	}
}

// fillStops leaves the last two cells for the pick-up.
func (s *shape) fillStops(l line, accents rhythm.Pattern, from int) {
	last := max(from, len(l)-2*s.cell)
	for i, at := 0, from; at < last; i, at = i+1, at+3*s.cell {
		l[at] = full(accents, i)
	}
	for at := last; at < len(l); at += s.cell {
		l[at] = lightStroke
	}
}
