package picture

import (
	"slices"

	"groundbeat/game/rhythm"
)

// Line is what the whiteboard line shows: counts over strokes, as a teacher
// writes them, one cycle or an eight. In review each dum has a small scale below
// it, ±100 ms wide, with the taps' offsets, the first cycle on top.
//
// With the lead drum's strokes there are two rows below the counts, the base and
// what the lead plays, each with its drum's name before it. Lead may have more steps
// than Base, a whole number of times as many; then steps are the lead's, and the base
// stands on every second one, or third. Where the lead plays what no steps can hold,
// Riff stands in place of Lead: letters at their true places in time, under as many
// Counts as there are to be told. A line in review has no lead.
type Line struct {
	Base    rhythm.Pattern
	Lead    rhythm.Pattern
	Riff    RiffCycle
	Circled []int     // steps of Base that are ringed, as on a board
	Counts  []string  // the count of each step
	Groups  []int     // beats of each group of an odd metre, in order; nil: none are marked
	Names   [2]string // of the bass drum's row and of the lead drum's; only where there are both
	Columns int       // steps in a row before the line wraps; 0: all in one row. With Groups rows end between groups
	Wide    float64   // about how wide it is drawn, in CSS pixels; 0: as wide as a column of the page may be
	Hidden  bool      // counts only: the strokes are being asked
	Live    bool      // a step of Base is marked: the one that is heard
	Step    int       // which
	Calm    bool      // less motion was asked for: the mark stands on the stroke that was heard last
	Review  *Review
	Legend  Legend // what the marks mean; only with a review
}

// Legend names the marks of a review. An empty legend is not drawn.
type Legend struct {
	Ahead, On, Behind, LeftOut, Added, Mean string
	Scale                                   string // how wide a scale is
}

// board is a line being drawn: its measures in parts of the width.
type board struct {
	*Line
	p       *Picture
	steps   int
	columns int
	cell    float64 // width of a step
	left    float64 // where the first step begins
	top     float64 // where the row begins
	first   int     // the row's first step
}

// Where things stand in a row, in cells below its top.
const (
	countRow  = 0.42 // the counts
	ruleRow   = 0.78 // the rule below them
	strokeRow = 1.28 // the base
	leadRow   = 2.25 // the lead drum
	rowHigh   = 1.78 // of a row without the lead drum …
	leadHigh  = 0.97 // … how much more with it …
	riffHigh  = 0.36 // … and how much more with what no steps can hold
	rowsApart = 0.45
)

// Draw adds the line to an empty picture and sets its height.
func (l *Line) Draw(p *Picture) {
	b := &board{Line: l, p: p, steps: max(len(l.Base), len(l.Lead), len(l.Counts)), columns: l.Columns}
	if b.columns <= 0 || b.columns > b.steps {
		b.columns = max(1, b.steps)
	}
	pad, before := 0.1, b.gutter()
	if l.Review != nil {
		pad = 0.75 // room for the scale of a dum on the first or the last step
	}
	longest := b.longest()
	b.cell = min(0.155, (1-before)/(float64(longest)+2*pad+b.after()))
	if b.left = before + pad*b.cell; before == 0 {
		b.left = (1 - b.cell*(float64(longest)+b.after())) / 2
	}
	for b.first < b.steps {
		last := b.rowEnd(b.first)
		b.row(last)
		b.first = last
	}
	p.Height = max(b.top, 0.02)
	b.legend()
}

// after is how many steps of room a riff needs for what follows the last step.
func (b *board) after() float64 {
	if b.twoRows() && len(b.Lead) == 0 {
		return 0.45
	}
	return 0
}

// row draws the steps from the first one up to last.
func (b *board) row(last int) {
	if b.first > 0 {
		b.top += rowsApart * b.cell
	}
	top := b.top
	b.rules(last, top+ruleRow*b.cell)
	b.live(last, top+ruleRow*b.cell)
	b.top += rowHigh * b.cell
	if b.twoRows() {
		b.top += leadHigh * b.cell
		b.names(top)
	}
	if b.twoRows() && len(b.Lead) == 0 {
		b.top += riffHigh * b.cell
	}
	if b.Review != nil {
		b.scales(last)
	}
	if !b.Hidden {
		b.riff(last, top+leadRow*b.cell)
	}
	for i := b.first; i < last; i++ {
		b.step(i, top)
	}
}

// step draws what stands on one step.
func (b *board) step(i int, top float64) {
	b.count(i, top+countRow*b.cell)
	if b.Hidden {
		return
	}
	if i%b.apart() == 0 && i/b.apart() < len(b.Base) {
		b.stroke(i/b.apart(), top+strokeRow*b.cell)
	}
	if i < len(b.Lead) {
		b.lead(b.Lead[i], b.x(float64(i)), top+leadRow*b.cell)
	}
}

// live marks the step that is heard, if it lies in the row.
func (b *board) live(last int, y float64) {
	if at := b.stands() * b.apart(); b.Live && at >= b.first && at < last {
		x := b.x(float64(at))
		b.p.Line(InkBrass, x-0.3*b.cell, y, x+0.3*b.cell, y, 0.075*b.cell)
	}
}

// twoRows reports whether the lead drum has a row of its own.
func (b *board) twoRows() bool {
	return len(b.Lead) > 0 || len(b.Riff.Strokes) > 0 || b.Names != [2]string{}
}

// apart returns how many of the line's steps are one of the base.
func (b *board) apart() int { return max(1, b.steps/max(1, len(b.Base))) }

// x returns the middle of a step of this row; steps may be fractions.
func (b *board) x(step float64) float64 {
	return b.left + (step-float64(b.first)+0.5)*b.cell
}

// count writes a count: a beat strong, and in a metre of groups the one that begins a
// group.
func (b *board) count(i int, y float64) {
	c := at(b.Counts, i)
	if !IsBeat(c) {
		b.p.Text(InkDim, b.x(float64(i)), y, 0.46*b.cell, c)
		return
	}
	t := b.p.Text(InkBone, b.x(float64(i)), y, 0.56*b.cell, c)
	t.Bold = len(b.Groups) == 0 || b.begins(i)
}

// stroke draws one of the base.
func (b *board) stroke(i int, y float64) {
	x := b.x(float64(i * b.apart()))
	if slices.Contains(b.Circled, i) {
		b.p.Ring(InkSweep, x, y, 0.46*b.cell, 0.035*b.cell)
	}
	switch s := b.Base[i]; {
	case !s.Sounds():
		b.p.Line(InkDim, x-0.09*b.cell, y, x+0.09*b.cell, y, 0.035*b.cell)
	case s.Low() && b.leftOut(i):
		b.p.Ring(InkBass, x, y, 0.37*b.cell, 0.05*b.cell)
		b.p.Text(InkBass, x, y, 0.48*b.cell, "D").Strong()
	case s.Low():
		b.p.Dot(InkBass, x, y, 0.395*b.cell)
		b.p.Text(InkOnBass, x, y, 0.48*b.cell, "D").Strong()
	case b.leftOut(i):
		b.tek(s, InkDim, x, y)
	default:
		b.tek(s, InkBass, x, y)
	}
}

// lead draws one of the lead drum, a little smaller.
func (b *board) lead(s rhythm.Stroke, x, y float64) {
	switch {
	case !s.Sounds():
		b.p.Line(InkDim, x-0.09*b.cell, y, x+0.09*b.cell, y, 0.035*b.cell)
	case s.Low():
		b.p.Dot(InkLead, x, y, 0.34*b.cell)
		b.p.Text(InkGround, x, y, 0.42*b.cell, "D").Strong()
	default:
		b.tek(s, InkLead, x, y)
	}
}

// letters holds each stroke's letter, so that drawing one makes no string.
var letters = map[rhythm.Stroke]string{rhythm.Tek: "T", rhythm.Sak: "S", rhythm.LightTek: "t", rhythm.Ka: "k"}

func (b *board) tek(s rhythm.Stroke, drum Ink, x, y float64) {
	ink, size, bar := InkBone, 0.48*b.cell, 0.15*b.cell
	if s.Light() {
		ink, size, bar = InkDim, 0.42*b.cell, 0.08*b.cell
	}
	b.p.Text(ink, x, y-0.04*b.cell, size, letters[s]).Strong()
	b.p.Line(drum, x-bar, y+0.30*b.cell, x+bar, y+0.30*b.cell, 0.07*b.cell)
}

func (b *board) leftOut(i int) bool {
	if b.Review == nil || !b.Review.asks(b.Base[i]) {
		return false
	}
	_, n := b.Review.mean(i, len(b.Base))
	return n == 0
}

// lineOf returns the whiteboard line of a rhythm in the counts of a form, or of its
// lead's pattern where that is finer, wrapped to a width in CSS pixels.
func LineOf(c *rhythm.Cycle, form rhythm.Form, lead rhythm.Pattern, width float64) Line {
	if len(lead) > len(form.Pattern) {
		form = c.Form(lead)
	}
	l := Line{Base: c.Skeleton, Lead: lead, Counts: CountsOf(form), Groups: c.Grouping, Wide: width}
	if width > 0 {
		l.Columns = ColumnsOf(c.Grouping, form.Steps(), form.StepsPerBeat(), width, false)
	}
	return l
}
