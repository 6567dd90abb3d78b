package picture

import (
	"slices"
	"strings"

	"groundbeat/game/rhythm"
	"groundbeat/game/say"
)

// Beside is the whiteboard line of several rhythms one above another under the same
// counts, as a teacher writes them to show where they differ. What differs from the line
// above is ringed.
type Beside struct {
	Names   []string         // over each line; one alone needs none
	Lines   []rhythm.Pattern // of equal length
	Counts  []string         // of each step
	Groups  []int            // beats of each group of an odd metre, in order; nil: none are marked
	Columns int              // steps in a row before all lines wrap; 0: all in one row
	Width   float64          // about how wide it is drawn, in CSS pixels, so that names are legible; 0: wide
}

// besideOf lays rhythms one above another beat against beat, as they are counted; nothing
// where neither cycle goes into the other. width is about how wide they are together, in
// CSS pixels; 0: as wide as they like.
func BesideOf(names []string, cycles []*rhythm.Cycle, width float64) *Beside {
	form := cycles[0].Base()
	for _, c := range cycles[1:] {
		if ApartInMetre(form.Metre.Beats, c.Beats()) {
			return nil
		}
		form, _ = rhythm.CommonPulse(form, c.Base())
	}
	b := &Beside{Names: names, Counts: CountsOf(form), Groups: cycles[0].Grouping, Width: width}
	for _, c := range cycles {
		if !slices.Equal(c.Grouping, b.Groups) {
			b.Groups = nil
		}
		line, _ := rhythm.CommonPulse(c.Base(), form)
		b.Lines = append(b.Lines, line.Pattern)
	}
	if width > 0 {
		b.Columns = ColumnsOf(b.Groups, form.Steps(), form.StepsPerBeat(), width, false)
	}
	return b
}

// apartInMetre reports whether neither of two numbers of beats goes into the other.
func ApartInMetre(a, b int) bool { return a%b != 0 && b%a != 0 }

// Draw adds the lines to an empty picture and sets its height.
func (s *Beside) Draw(p *Picture) {
	b := &board{Line: &Line{Counts: s.Counts, Groups: s.Groups}, p: p, steps: len(s.Counts), columns: s.Columns}
	if b.columns <= 0 || b.columns > b.steps {
		b.columns = b.steps
	}
	longest := float64(b.longest())
	b.cell = min(0.155, 1/(longest+0.2))
	for b.left = (1 - b.cell*longest) / 2; b.first < b.steps; {
		if b.first > 0 {
			b.top += rowsApart * b.cell
		}
		last := b.rowEnd(b.first)
		s.row(b, last)
		b.first = last
	}
	p.Height = b.top
}

// row draws one row of counts, and each line below them.
func (s *Beside) row(b *board, last int) {
	for i := b.first; i < last; i++ {
		b.count(i, b.top+countRow*b.cell)
	}
	b.rules(last, b.top+ruleRow*b.cell)
	b.top += ruleRow * b.cell
	for n, line := range s.Lines {
		b.Base, b.Circled = line, s.Ringed(n)
		b.top += s.name(b, n)
		for i := b.first; i < last; i++ {
			b.stroke(i, b.top+(strokeRow-ruleRow)*b.cell)
		}
		b.top += cellOfLine * b.cell
	}
}

// cellOfLine is how high a line of strokes is, in cells.
const cellOfLine = rowHigh - ruleRow + 0.02

// name writes the name of a line above it, and returns how much room that takes.
func (s *Beside) name(b *board, n int) float64 {
	if len(s.Lines) < 2 {
		return 0
	}
	size := 0.03
	if s.Width > 0 {
		size = max(size, 14/s.Width)
	}
	b.p.Text(InkDim, b.left+0.14*b.cell, b.top+0.95*size, size, s.Names[n]).At(AnchorStart)
	return 1.5 * size
}

// ringed are the steps on which a line differs from the one above it.
func (s *Beside) Ringed(n int) (steps []int) {
	if n == 0 {
		return nil
	}
	for i, stroke := range s.Lines[n] {
		if stroke != s.Lines[n-1][i] {
			steps = append(steps, i)
		}
	}
	return steps
}

// Twin says in words what the lines show.
func (s *Beside) Twin(w say.Words) string {
	var all []string
	for n, line := range s.Lines {
		text := SayStrokes(w, line, s.Counts)
		if len(s.Lines) > 1 {
			text = w.Say("beside-line", "name", s.Names[n], "strokes", text)
		}
		all = append(all, text)
	}
	return strings.Join(all, " ") + sayGroups(w, s.Groups)
}
