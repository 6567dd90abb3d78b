package diaryview

import (
	"math"
	"strconv"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// The picture of mix-ups, in parts of its width. It is at least 330 pixels wide.
const (
	mixedSmall = 0.037
	mixedLine  = 0.055 // from one name to the next
	mixedLeft  = 0.03  // between the names and the first column
	mixedCell  = 0.105 // a cell at most
)

// mixedGrid is the picture of mix-ups being drawn.
type mixedGrid struct {
	*picture.Picture
	diary.Mixed
	left, top, cell float64
	times           []int // that each was played
}

// mixed draws what was said for what was played: a row for each rhythm that was
// played, a column for each that was said, and where they cross a dot as large as
// its share of the row. What was said rightly lies on the diagonal and is quiet.
func (d *Diary) mixed(w say.Words) *picture.Picture {
	m := &mixedGrid{Picture: &picture.Picture{}, Mixed: d.Figures.Mixed}
	names, n := make([]string, len(m.Rhythms)), float64(len(m.Rhythms))
	for i, id := range m.Rhythms {
		names[i] = view.Plain(d.name(id))
		m.left = max(m.left, 1.12*picture.WideOf(names[i], mixedSmall)+mixedLeft)
		m.times = append(m.times, sum(m.Said[i]))
	}
	m.cell = min(mixedCell, (0.995-m.left)/n)
	m.top = 0.04 + mixedLine*(n-1) + 0.085
	m.Height = m.top + m.cell*n + 0.01
	m.heads(w, names)
	for i := range names {
		m.row(w, i)
	}
	m.Twin = d.sayMixed(w, m)
	return m.Picture
}

func sum(all []int) int {
	n := 0
	for _, one := range all {
		n += one
	}
	return n
}

// x and y are the middles of a column and of a row.
func (m *mixedGrid) x(j int) float64 { return m.left + m.cell*(float64(j)+0.5) }
func (m *mixedGrid) y(i int) float64 { return m.top + m.cell*(float64(i)+0.5) }

// heads writes the names: those of the rows before them, those of the columns as a
// stair above them, each at the upper end of its column's line.
func (m *mixedGrid) heads(w say.Words, names []string) {
	n := len(names)
	right, foot := m.x(n-1)+m.cell/2, m.y(n-1)+m.cell/2
	for i, name := range names {
		x, y := m.x(i), 0.04+mixedLine*float64(n-1-i)
		m.Line(picture.InkEdge, x, y, x, m.top, 0.0022)
		m.Line(picture.InkGrain, x, m.top, x, foot, 0.0025)
		if m.enough(i) {
			m.Line(picture.InkGrain, m.left-0.012, m.y(i), right, m.y(i), 0.0025)
		}
		m.Text(picture.InkBone, x-0.014, y, mixedSmall, name).At(picture.AnchorEnd)
		m.Text(m.nameInk(i), m.left-mixedLeft, m.y(i), mixedSmall, name).At(picture.AnchorEnd)
	}
	said := m.x(n-1) - 0.03 - 1.12*picture.WideOf(names[n-1]+w.Say("mixed-said"), mixedSmall)
	m.Text(picture.InkDim, max(0, said), 0.04, mixedSmall, w.Say("mixed-said")).At(picture.AnchorStart)
	m.Text(picture.InkDim, m.left-mixedLeft, m.top-0.02, mixedSmall, w.Say("mixed-played")).At(picture.AnchorEnd)
}

// enough reports whether a row rests on enough answers to be drawn.
func (m *mixedGrid) enough(i int) bool { return m.times[i] >= diary.LeastMixed }

func (m *mixedGrid) nameInk(i int) picture.Ink {
	if m.enough(i) {
		return picture.InkBone
	}
	return picture.InkDim
}

func (m *mixedGrid) row(w say.Words, i int) {
	if !m.enough(i) {
		text := w.Say("too-few-yet")
		m.Line(picture.InkGround, m.left, m.y(i), m.left+picture.WideOf(text, mixedSmall), m.y(i), 1.2*mixedSmall) // no lines through the words
		m.Text(picture.InkDim, m.left-0.012, m.y(i), mixedSmall, text).At(picture.AnchorStart)
		return
	}
	for j, n := range m.Said[i] {
		r := 0.46 * m.cell * math.Sqrt(float64(n)/float64(m.times[i]))
		switch {
		case n == 0:
		case i == j:
			m.Ring(picture.InkDim, m.x(j), m.y(i), max(0.002, r-0.002), 0.004)
		default:
			m.Dot(picture.InkBass, m.x(j), m.y(i), max(0.007, r))
		}
	}
}

func (d *Diary) sayMixed(w say.Words, m *mixedGrid) string {
	text := w.Say("mixed-twin")
	for i, played := range m.Rhythms {
		for j, n := range m.Said[i] {
			if i != j && n > 0 && m.enough(i) {
				text += " " + w.Say("mixed-twin-one", "played", d.name(played), "said", d.name(m.Rhythms[j]),
					"n", n, "of", m.times[i])
			}
		}
	}
	return text
}

// mixedKnown reports whether any row rests on enough answers.
func (d *Diary) mixedKnown() bool {
	for _, said := range d.Figures.Mixed.Said {
		if sum(said) >= diary.LeastMixed {
			return true
		}
	}
	return false
}

// leastMixed is how often, of one, a rhythm must be taken for another, even at the
// lower end of its interval, before it is called a mix-up: below one in twenty it may
// be a slip. Own choice.
const leastMixed = 0.05

// findMixed says the worst mix-up, if it is one beyond doubt, also beside what was said
// of the same rhythms before; else that none stands out.
func (d *Diary) findMixed(w say.Words, before []claim) finding {
	if !d.mixedKnown() {
		return finding{}
	}
	for _, m := range d.Figures.Mixed.Worst {
		if !m.Share.Known || m.Share.Low < leastMixed || doubted(before, m) {
			continue
		}
		return finding{
			w.Say("mixed-worst", "played", d.name(m.Played), "said", d.name(m.Said), "percent", sayShare(w, m.Share.Value), "between", sayBetween(w, m.Share)),
			[]claim{{says: saysTaken, rhythm: m.Played, other: m.Said, part: m.Share.Value}},
		}
	}
	return finding{w.Say("mixed-none"), []claim{{says: saysNoneTaken}}}
}

// mixedTable is the picture of mix-ups as a table: a line for each pair that came.
func (d *Diary) mixedTable(w say.Words) view.Item {
	it := view.Item{ID: "mixed-table", Role: view.RoleTable, Name: w.Say("mixed"), Columns: []string{
		w.Say("column-played"), w.Say("column-said"), w.Say("column-times")}}
	m := d.Figures.Mixed
	for i, said := range m.Said {
		all := sum(said)
		if all < diary.LeastMixed {
			it.Rows = append(it.Rows, []string{d.name(m.Rhythms[i]), w.Say("too-few-yet"), strconv.Itoa(all)})
			continue
		}
		for j, n := range said {
			if n > 0 {
				it.Rows = append(it.Rows, []string{d.name(m.Rhythms[i]), d.name(m.Rhythms[j]), w.Say("of", "n", n, "of", all)})
			}
		}
	}
	return it
}
