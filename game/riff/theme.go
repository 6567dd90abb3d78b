package riff

import "groundbeat/game/rhythm"

// A theme is what the bars of four phrases are made of.
type theme struct {
	plain  line // what is stated and repeated
	varied line // the same with another end
	other  line // what answers it
}

// candidates is how many motifs are drawn for one that is played.
const candidates = 12

// riffTheme draws the theme of a riff that goes its own way. Of some motifs it
// takes the one that covers the base about as much as wanted.
func (s *shape) riffTheme(c chance, level Level, busy int) theme {
	m, plain := s.motif(c, level, busy)
	varied := s.play(s.vary(c, level, m), c, level, busy)
	_, other := s.motif(c, level, busy)
	s.closing(other)
	return theme{plain, varied, other}
}

// motif draws a motif and plays it.
func (s *shape) motif(c chance, level Level, busy int) (motif, line) {
	var m motif
	var l line
	nearest := -1
	for range candidates {
		draft := s.draft(c, level)
		played := s.play(draft, c, level, busy)
		off := s.cover(played) - wanted(level, busy)
		if off = max(off, -off); nearest < 0 || off < nearest {
			m, l, nearest = draft, played, off
		}
	}
	return m, l
}

// vary gives a motif another end: other groups from its last chunk on, or, if it
// has only one, another last group.
func (s *shape) vary(c chance, level Level, m motif) motif {
	from := s.chunks[len(s.chunks)-2]
	if from == 0 {
		from = m[len(m)-1].at
	}
	var kept motif
	end := 0
	for _, g := range m {
		if after := g.at + g.cells*s.cell; after <= from {
			kept, end = append(kept, g), after
		}
	}
	return append(kept, s.groupsOver(c, level, end, s.length)...)
}

// play plays a motif as the level wants the base's dums: Riffing says some of
// them, Solo none.
func (s *shape) play(m motif, c chance, level Level, busy int) line {
	l := s.render(m)
	for at := 0; at < len(l); at += TicksPerStep {
		if !s.dum(at) {
			continue
		}
		switch {
		case level == Solo && l[at].sound.Low():
			l.put(at, s.instead(at), slapForce)
		case level == Solo && !l.full(at) && s.alone(l, at) && c.percent(30+7*busy):
			l.put(at, rhythm.Tek, accentForce)
		case level == Riffing && s.alone(l, at) && c.percent(75-9*busy):
			l.put(at, rhythm.Dum, firmForce)
		}
	}
	for at := range l {
		if l[at].sound == rhythm.Tek && s.beside(at) && s.alone(l, at) && c.percent(besideOdds(level, busy)) {
			l.put(at, rhythm.Dum, firmForce)
		}
	}
	return l
}

// instead is what the lead drum strikes where it leaves a dum to the bass drum: a
// slap on the first step, where something must land.
func (s *shape) instead(at int) rhythm.Stroke {
	if at == 0 {
		return rhythm.Sak
	}
	return rhythm.Tek
}

// besideOdds is how often, in a hundred, an accent just beside a dum of the base
// is a dum too.
func besideOdds(level Level, busy int) int {
	if level == Solo {
		return 15 + 8*busy
	}
	return 5 * busy
}

// cover is about how far, in thousandths, a line leads away from the dums of the
// base: 0 where it says them all and nothing else. Dums of its own on either side
// lead furthest, then a stroke in a dum's place, then a crowd of others. It is the
// generator's own, in strokes and whole numbers and the same at every tempo; what
// listeners are told is [Hide].
func (s *shape) cover(l line) int {
	dums := s.cycle.Dums()
	sum := 0
	for i, step := range dums {
		at := step * TicksPerStep
		before := dums[(i+len(dums)-1)%len(dums)] * TicksPerStep
		after := dums[(i+1)%len(dums)] * TicksPerStep
		sum += s.covered(l, at, (at-before+s.length-1)%s.length/2, (after-at+s.length-1)%s.length/2)
	}
	return sum / len(dums)
}

// covered is the cover of one dum by what is struck so many ticks around it.
func (s *shape) covered(l line, at, before, after int) int {
	rivals, crowd := 0, 0
	for i := at - before; i <= at+after; i++ {
		switch other := l[(i+s.length)%s.length]; {
		case i == at:
		case other.sound.Low():
			rivals += other.force
		default:
			crowd += other.force
		}
	}
	said := (1000 - 600*rivals/(rivals+1000)) * (1000 - 300*crowd/(crowd+3000)) / 1000
	if !l[at].sound.Low() {
		said = said * (900 - 250*l[at].force/1000) / 1000
	}
	return 1000 - said
}

// wanted is the cover that a level aims at.
func wanted(level Level, busy int) int {
	if level == Solo {
		return 410 + 35*busy
	}
	return 200 + 30*busy
}

// closing makes the last accent of a line a slap.
func (s *shape) closing(l line) {
	for at := len(l) - 1; at >= 0; at-- {
		if l.full(at) && s.alone(l, at) {
			l.put(at, rhythm.Sak, slapForce)
			return
		}
	}
}
