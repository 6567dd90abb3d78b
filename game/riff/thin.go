package riff

import (
	"time"

	"groundbeat/game/rhythm"
)

// At returns the riff as two hands can play it at bpm beats a minute. Up to the
// rhythm's fastest tempo that is the riff itself. Above it light strokes are left
// out, first those between the cells of a run, then every second one and so on;
// dums and slaps too close together become teks. Nothing else changes: slow or
// fast, it is the same riff. Bare and Filled are played as they are written.
func (r Riff) At(bpm int) Riff {
	r.bpm = bpm
	return r
}

// thin leaves out of a line what is too fast at a tempo or at the rhythm's
// fastest, as a filled form may be that ornaments were added to.
func (s *shape) thin(l line, bpm int) {
	bpm = max(bpm, s.cycle.Tempo.Fast)
	lasts := func(ticks int) time.Duration { return s.cycle.At(ticks, bpm*TicksPerStep) }
	grid := s.cell
	for grid < s.beat && lasts(grid) < HandGap {
		grid *= 2
	}
	for at := range l {
		switch onCell := at%s.cell == 0; {
		case !l[at].sound.Light() || l[at].force == 0:
		case onCell && at%grid != 0,
			!onCell && at%(s.cell/2) == 0 && lasts(s.cell/2) < TwoHandsGap,
			!onCell && at%(s.cell/2) != 0 && lasts(s.cell*2/3) < TwoHandsGap:
			l[at] = struck{}
		}
	}
	for s.part(l, lasts) {
	}
}

// part looks for two strokes of the strong hand with strokes so close between
// them that the hands, taking turns, would be out of step. It leaves out the last
// light one between, or makes a tek of a slap or a dum that is not the base's. It
// reports whether it did. The strong hand begins each cycle.
func (s *shape) part(l line, lasts func(int) time.Duration) bool {
	before, light, last, turns := -1, -1, -1, 0
	for at := 0; at <= len(l); at++ {
		ends := at == len(l)
		if !ends && l[at].force == 0 {
			continue
		}
		if turns++; last < 0 || lasts(at-last) >= HandGap {
			before, light, turns = -1, -1, 0
		}
		last = at
		switch {
		case !ends && l[at].sound.Light():
			light = at
		case !ends && l[at].sound == rhythm.Tek && at > 0:
		case before < 0 || turns%2 == 0:
			before, light, turns = at, -1, 0
		case light >= 0:
			l[light] = struck{}
			return true
		case l[before].sound != rhythm.Tek && !s.dum(before):
			l[before].sound = rhythm.Tek
			return true
		case !ends && l[at].sound != rhythm.Tek && !s.dum(at):
			l[at].sound = rhythm.Tek
			return true
		default: // the base itself is too fast
			before, light, turns = at, -1, 0
		}
	}
	return false
}
