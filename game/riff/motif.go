package riff

import "groundbeat/game/rhythm"

// A motif is what a theme says in one cycle: groups of two, three or four cells,
// each an accent and what trails after it.
type motif []group

// group is one accent with its tail.
type group struct {
	at, cells int
	accent    rhythm.Stroke
	tail      string // a mark for each cell after the accent, or "sixes"
}

// Marks of a tail: a light stroke, or two in one cell; "-" is nothing. sixes
// stands for a whole group of four cells: six strokes in their time, the fourth an
// accent.
const (
	markLight = 'l'
	markTwice = '2'
	sixes     = "sixes"
)

// groupings are the ways to divide a number of cells: those that drummers use
// most stand twice. (Eight as 3-3-2 and its turns, sixteen as 3+3+2+3+2+3 and
// 3+3+3+3+2+2: toppetcaretraining.blogspot.com, 2021, "Darbuka lesson 2-8", a weak
// source; the rest common practice, no source.)
var groupings = map[int][][]int{
	1:  {{1}},
	2:  {{2}},
	3:  {{3}},
	4:  {{4}, {4}, {2, 2}},
	5:  {{3, 2}, {2, 3}},
	6:  {{3, 3}, {3, 3}, {4, 2}, {2, 4}},
	7:  {{3, 2, 2}, {2, 2, 3}, {4, 3}},
	8:  {{3, 3, 2}, {3, 3, 2}, {3, 2, 3}, {2, 3, 3}, {4, 4}, {4, 2, 2}},
	12: {{3, 3, 3, 3}, {4, 4, 4}, {3, 3, 4, 2}, {4, 3, 3, 2}},
	16: {{3, 3, 3, 3, 2, 2}, {3, 3, 2, 3, 2, 3}, {3, 3, 4, 3, 3}, {4, 3, 3, 3, 3}},
}

// contours are the accents of so many groups.
var contours = map[int][]string{
	1: {"D", "T", "T"},
	2: {"DT", "DT", "TD", "TT", "DS"},
	3: {"DTT", "DTD", "TTD", "TDT", "DTS", "DST"},
	4: {"DTDT", "DTTD", "TTDT", "DTTS", "DTST"},
	5: {"DTTDT", "DTDTS", "TTDTD", "DTDTT"},
	6: {"DTTDTT", "DTDTDS", "TTDTTD", "DTTDTS"},
}

// tails are what may trail after an accent in a group of so many cells, from the
// sparest to the fullest.
var tails = map[int][]string{
	1: {""},
	2: {"-", "l", "l"},
	3: {"--", "-l", "ll", "ll"},
	4: {"---", "--l", "-ll", "l-l", "lll"},
}

// divide divides some cells into groups.
func divide(c chance, cells int) []int {
	if ways, ok := groupings[cells]; ok {
		return one(c, ways)
	}
	head := min(8, cells-4)
	return append(append([]int(nil), divide(c, head)...), divide(c, cells-head)...)
}

// draft draws a motif over a whole cycle, chunk by chunk.
func (s *shape) draft(c chance, level Level) motif {
	var m motif
	for i := 1; i < len(s.chunks); i++ {
		start, end := s.chunks[i-1], s.chunks[i]
		// Two even chunks are one where threes run across the middle.
		if i+1 < len(s.chunks) && s.cycle.Grouping == nil && (end-start)/s.cell == 8 && c.percent(35) {
			i++
			end = s.chunks[i]
		}
		m = append(m, s.groupsOver(c, level, start, end)...)
	}
	return m
}

// groupsOver draws the groups from one tick to another.
func (s *shape) groupsOver(c chance, level Level, start, end int) motif {
	var m motif
	sizes := divide(c, (end-start)/s.cell)
	accents := contour(c, len(sizes))
	at := start
	for i, cells := range sizes {
		g := group{at: at, cells: cells, accent: accents[i], tail: one(c, tails[cells])}
		switch {
		case cells == 4 && s.onBeat(at) && !s.seam(at, at+4*s.cell) && c.percent(sixesOdds[level]):
			g.tail = sixes
		case cells > 1 && s.twice && c.percent(twiceOdds[level]):
			g.tail = g.tail[:len(g.tail)-1] + string(markTwice)
		}
		m = append(m, g)
		at += cells * s.cell
	}
	return m
}

// How often, in a hundred, a group has six strokes in the time of four cells, or
// two in its last one.
var (
	sixesOdds = [...]int{Riffing: 10, Solo: 22}
	twiceOdds = [...]int{Riffing: 12, Solo: 22}
)

// contour draws the accents of some groups.
func contour(c chance, groups int) rhythm.Pattern {
	var p rhythm.Pattern
	for len(p) < groups {
		p = append(p, rhythm.Pattern(one(c, contours[min(groups-len(p), 6)]))...)
	}
	return p
}

// render plays a motif.
func (s *shape) render(m motif) line {
	l := make(line, s.length)
	for _, g := range m {
		s.renderGroup(l, g)
	}
	return l
}

func (s *shape) renderGroup(l line, g group) {
	l.put(g.at, g.accent, accent(g.accent))
	if g.tail == sixes {
		for i := 1; i < 6; i++ {
			l.put(g.at+i*s.cell*2/3, rhythm.LightTek, lightForce)
		}
		l.put(g.at+2*s.cell, rhythm.Tek, plainForce)
		return
	}
	for i, mark := range g.tail {
		at := g.at + (i+1)*s.cell
		switch mark {
		case markLight:
			l.put(at, rhythm.LightTek, lightForce)
		case markTwice:
			l.put(at, rhythm.LightTek, lightForce)
			l.put(at+s.cell/2, rhythm.LightTek, lightForce)
		}
	}
}
