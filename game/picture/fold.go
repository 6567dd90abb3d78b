package picture

import "strings"

// The gutter before the rows, in CSS pixels: the drums' names stand in it, a word
// above the other.
const (
	Gutter   = 42.0
	nameSize = 13.0
	lineWide = 576.0 // of a line whose width is not known: the widest there is
)

// Columns returns how many steps of a line to put in a row of the given width in
// CSS pixels: all, or a half, or a quarter, but no less than two beats. A step
// then is at least 28 pixels wide (its count about 15 high), in a review 40 (so
// that 25 ms are at least 10 pixels).
func Columns(steps, perBeat int, width float64, review bool) int {
	n := steps
	for n%2 == 0 && n/2 >= 2*perBeat && width/float64(n) < leastStep(review) {
		n /= 2
	}
	return max(n, 1)
}

// ColumnsOf is [Columns] for a metre in groups of so many beats, whose rows end
// between them and are as alike as they can be.
func ColumnsOf(groups []int, steps, perBeat int, width float64, review bool) int {
	if len(groups) == 0 {
		return Columns(steps, perBeat, width, review)
	}
	beats, widest := 0, 1
	for _, g := range groups {
		beats, widest = beats+g, max(widest, g)
	}
	most := beats
	for most > widest && width/float64(most*perBeat) < leastStep(review) {
		most--
	}
	for rows := rowsOf(groups, most); most > widest && rowsOf(groups, most-1) == rows; {
		most--
	}
	return most * perBeat
}

func leastStep(review bool) float64 {
	if review {
		return 40
	}
	return 28
}

// rowsOf is how many rows groups take where none has more beats than most.
func rowsOf(groups []int, most int) int {
	rows, beats := 1, 0
	for _, g := range groups {
		if beats > 0 && beats+g > most {
			rows, beats = rows+1, 0
		}
		beats += g
	}
	return rows
}

// perBeat is how many steps of the line share one beat of its groups.
func (b *board) perBeat() int {
	beats := 0
	for _, g := range b.Groups {
		beats += g
	}
	return max(1, b.steps/max(1, beats))
}

// begins reports whether a group begins on a step.
func (b *board) begins(step int) bool {
	at := 0
	for _, g := range b.Groups {
		if at == step {
			return true
		}
		at += g * b.perBeat()
	}
	return false
}

// rowEnd is the step after a row's last, of the row that begins with a step.
func (b *board) rowEnd(first int) int {
	if len(b.Groups) == 0 {
		return min(first+b.columns, b.steps)
	}
	at, end := 0, first
	for _, g := range b.Groups {
		at += g * b.perBeat()
		if at > first && (end == first || at-first <= b.columns) {
			end = min(at, b.steps)
		}
	}
	if end == first { // groups that do not reach so far
		return b.steps
	}
	return end
}

// longest is how many steps the longest row has.
func (b *board) longest() int {
	longest := 1
	for first := 0; first < b.steps; {
		end := b.rowEnd(first)
		longest, first = max(longest, end-first), end
	}
	return longest
}

// rules draws the rule below the counts of a row: one stroke, or in a metre of groups a
// bracket over each of them.
func (b *board) rules(last int, y float64) {
	if len(b.Groups) == 0 {
		b.p.Line(InkGrain, b.x(float64(b.first))-0.4*b.cell, y, b.x(float64(last))-0.6*b.cell, y, 0.02*b.cell)
		return
	}
	for from := b.first; from < last; {
		to := from + 1
		for to < last && !b.begins(to) {
			to++
		}
		left, right := b.x(float64(from))-0.36*b.cell, b.x(float64(to))-0.64*b.cell
		b.p.Line(InkDim, left, y, right, y, 0.035*b.cell)
		b.p.Line(InkDim, left, y, left, y+0.13*b.cell, 0.035*b.cell)
		b.p.Line(InkDim, right, y, right, y+0.13*b.cell, 0.035*b.cell)
		from = to
	}
}

// wide is how wide the line is drawn, in CSS pixels.
func (b *board) wide() float64 {
	if b.Wide > 0 {
		return b.Wide
	}
	return lineWide
}

// gutter is how much of the width lies before the first step, for the names.
func (b *board) gutter() float64 {
	if b.Names == ([2]string{}) {
		return 0
	}
	return Gutter / b.wide()
}

// names writes the drums' names before the rows of the line, whose top is given.
func (b *board) names(top float64) {
	if b.Names == ([2]string{}) {
		return
	}
	b.name(b.Names[0], top+strokeRow*b.cell)
	b.name(b.Names[1], top+leadRow*b.cell)
}

// name writes a drum's name, a word below the other.
func (b *board) name(text string, y float64) {
	size := min(nameSize/b.wide(), 0.42*b.cell) // no higher than its row
	first, then, two := strings.Cut(text, " ")
	if !two {
		b.p.Text(InkDim, 0, y, size, first).At(AnchorStart)
		return
	}
	b.p.Text(InkDim, 0, y-0.55*size, size, first).At(AnchorStart)
	b.p.Text(InkDim, 0, y+0.55*size, size, then).At(AnchorStart)
}
