package view

import (
	"slices"

	"groundbeat/game/rhythm"
)

// Line is what the whiteboard line shows: counts over strokes, as a teacher
// writes them, one cycle or an eight. In review each dum has a small scale below
// it, ±100 ms wide, with the taps' offsets, the first cycle on top.
//
// With the lead drum's strokes there are two rows below the counts, the base and
// what the lead plays. Lead may have more steps than Base, a whole number of
// times as many; then steps are the lead's, and the base stands on every second
// one, or third. Where the lead plays what no steps can hold, Riff stands in place
// of Lead: marks at their true places in time. A line in review has no lead.
type Line struct {
	Base    rhythm.Pattern
	Lead    rhythm.Pattern
	Riff    RiffCycle
	Circled []int    // steps of Base that are ringed, as on a board
	Counts  []string // the count of each step
	Columns int      // steps in a row before the line wraps; 0: all in one row
	Hidden  bool     // counts only: the strokes are being asked
	Live    bool     // a step of Base is marked: the one that is heard
	Step    int      // which
	Review  *Review
	Legend  Legend // what the marks mean; only with a review
}

// Legend names the marks of a review. An empty legend is not drawn.
type Legend struct {
	Ahead, On, Behind, LeftOut, Added, Mean string
	Scale                                   string // how wide a scale is
}

// Columns returns how many steps of a line to put in a row of the given width in
// CSS pixels: all, or a half, or a quarter, but no less than two beats. A step
// then is at least 28 pixels wide (its count about 15 high), in a review 40 (so
// that 25 ms are at least 10 pixels).
func Columns(steps, perBeat int, width float64, review bool) int {
	least := 28.0
	if review {
		least = 40
	}
	n := steps
	for n%2 == 0 && n/2 >= 2*perBeat && width/float64(n) < least {
		n /= 2
	}
	return max(n, 1)
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

// Draw adds the line to an empty picture and sets its height.
func (l *Line) Draw(p *Picture) {
	b := &board{Line: l, p: p, steps: max(len(l.Base), len(l.Lead)), columns: l.Columns}
	if b.columns <= 0 || b.columns > b.steps {
		b.columns = max(1, b.steps)
	}
	pad := 0.1
	if len(l.Riff.Strokes) > 0 {
		pad = 0.6 // and for what follows the last step
	}
	if l.Review != nil {
		pad = 0.75 // room for the scale of a dum on the first or the last step
	}
	b.cell = min(0.155, 1/(float64(b.columns)+2*pad))
	b.left = (1 - b.cell*float64(b.columns)) / 2
	for ; b.first < b.steps; b.first += b.columns {
		b.row()
	}
	p.Height = max(b.top, 0.02)
	b.legend()
}

func (b *board) row() {
	if b.first > 0 {
		b.top += 0.45 * b.cell
	}
	countY, strokeY := b.top+0.42*b.cell, b.top+1.28*b.cell
	last := min(b.first+b.columns, b.steps)
	b.rule(b.top+0.78*b.cell, last-b.first)
	if at := b.Step * b.apart(); b.Live && at >= b.first && at < last {
		b.p.Line(InkBrass, b.x(float64(at))-0.3*b.cell, b.top+0.78*b.cell, b.x(float64(at))+0.3*b.cell, b.top+0.78*b.cell, 0.075*b.cell)
	}
	b.top += 1.78 * b.cell
	if len(b.Lead) > 0 || len(b.Riff.Strokes) > 0 {
		b.top += 0.9 * b.cell
	}
	if b.Review != nil {
		b.scales(last)
	}
	if !b.Hidden {
		b.riff(last, strokeY+1.08*b.cell)
	}
	for i := b.first; i < last; i++ {
		b.count(i, countY)
		if b.Hidden {
			continue
		}
		if i%b.apart() == 0 {
			b.stroke(i/b.apart(), strokeY)
		}
		if i < len(b.Lead) {
			b.lead(b.Lead[i], b.x(float64(i)), strokeY+0.9*b.cell)
		}
	}
}

// apart returns how many of the line's steps are one of the base.
func (b *board) apart() int { return max(1, b.steps/max(1, len(b.Base))) }

// x returns the middle of a step of this row; steps may be fractions.
func (b *board) x(step float64) float64 {
	return b.left + (step-float64(b.first)+0.5)*b.cell
}

func (b *board) rule(y float64, steps int) {
	b.p.Line(InkGrain, b.left+0.1*b.cell, y, b.left+(float64(steps)-0.1)*b.cell, y, 0.02*b.cell)
}

func (b *board) count(i int, y float64) {
	c := at(b.Counts, i)
	if isBeat(c) {
		b.p.Text(InkBone, b.x(float64(i)), y, 0.56*b.cell, c).Strong()
		return
	}
	b.p.Text(InkDim, b.x(float64(i)), y, 0.46*b.cell, c)
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
	if b.Review == nil {
		return false
	}
	_, n := b.Review.mean(i, len(b.Base))
	return n == 0
}
