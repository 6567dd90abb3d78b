package picture

import (
	"math"
	"strconv"
	"time"
	"unicode/utf8"
)

// rowStep is how far below one another the taps of two cycles lie, in cells.
func (b *board) rowStep() float64 {
	return min(0.17, 1.7/float64(b.Review.cycles(len(b.Base)))) * b.cell
}

// scales draws what hangs below the dums of a row, and moves the top below it.
func (b *board) scales(last int) {
	depth := b.rowStep() * float64(b.Review.cycles(len(b.Base)))
	y := b.top + 0.12*b.cell
	for i := b.first; i < last; i++ {
		if b.Review.asks(b.Base[i]) {
			b.scale(i, y, depth)
		}
	}
	b.marks(last, y+0.6*b.rowStep()+0.06*b.cell)
	b.top = y + depth + 0.62*b.cell
}

// half returns the length of 100 ms below a dum: a fixed length, or less where
// the next dum is near.
func (b *board) half(step int) float64 {
	return min(1.15, 0.46*float64(b.Review.gap(b.Base, step))) * b.cell
}

func (b *board) scale(i int, y, depth float64) {
	x, half, low := b.x(float64(i)), b.half(i), y+depth+0.12*b.cell
	zone := 2 * half * part(b.Review.On)
	b.p.Line(InkGrain, x, y+zone/2, x, low-zone/2, zone).Fade(0.35)
	b.p.Line(InkDim, x-half, y, x+half, y, 0.02*b.cell)
	for _, tick := range [...]float64{-1, -0.5, 0.5, 1} {
		b.p.Line(InkDim, x+tick*half, y, x+tick*half, y+0.07*b.cell, 0.02*b.cell)
	}
	b.p.Line(InkDim, x, y-0.08*b.cell, x, y+0.07*b.cell, 0.03*b.cell)
	b.mean(i, x, half, y, low)
}

// mean marks the mean of a dum's taps and writes it below.
func (b *board) mean(i int, x, half, y, low float64) {
	mean, n := b.Review.mean(i, len(b.Base))
	if n == 0 {
		return
	}
	at := x + half*part(mean)
	b.p.Line(InkBass, at, y, at, low, 0.04*b.cell).Fade(0.9)
	value := Milliseconds(mean)
	if b.Review.gap(b.Base, i) > 1 { // else there is no room for the unit
		value += " ms"
	}
	b.p.Text(InkBone, x, low+0.32*b.cell, 0.36*b.cell, value)
}

func (b *board) marks(last int, y float64) {
	n := len(b.Base)
	for _, l := range b.Review.Landed {
		if i := l.Step % n; i >= b.first && i < last {
			x := b.x(float64(i)) + b.half(i)*part(l.Offset)
			b.p.tapMark(b.place(x, y, l.Step/n), l.Offset, b.Review.On)
		}
	}
	for _, step := range b.Review.LeftOut {
		if i := step % n; i >= b.first && i < last {
			b.p.leftOutMark(b.place(b.x(float64(i)), y, step/n))
		}
	}
	for _, a := range b.Review.Added {
		cycle := int(a) / n
		if i := a - float64(cycle*n); i >= float64(b.first) && i < float64(last) {
			at := b.place(b.x(i), y, cycle)
			b.p.addedMark(at.x, at.y, at.size)
		}
	}
}

func (b *board) place(x, y float64, cycle int) place {
	return place{x: x, y: y + float64(cycle)*b.rowStep(), size: 0.07 * b.cell, alongX: 1}
}

// legend writes what the marks mean below the line, wrapping as it must.
func (b *board) legend() {
	if b.Review == nil || b.Legend == (Legend{}) {
		return
	}
	l := legendRow{board: b, size: max(0.034, min(0.046, 0.3*b.cell)), x: legendLeft, y: b.p.Height + 0.05}
	l.entry(b.Legend.Ahead, func(at place) { b.p.tapMark(at, -Reach, b.Review.On) })
	l.entry(b.Legend.On, func(at place) { b.p.tapMark(at, 0, b.Review.On) })
	l.entry(b.Legend.Behind, func(at place) { b.p.tapMark(at, Reach, b.Review.On) })
	l.entry(b.Legend.LeftOut, b.p.leftOutMark)
	l.entry(b.Legend.Added, func(at place) { b.p.addedMark(at.x, at.y, at.size) })
	l.entry(b.Legend.Mean, func(at place) {
		b.p.Line(InkBass, at.x, at.y-1.4*at.size, at.x, at.y+1.4*at.size, 0.5*at.size)
	})
	l.entry(b.Legend.Scale, func(at place) {
		b.p.Line(InkDim, at.x-1.3*at.size, at.y, at.x+1.3*at.size, at.y, 0.25*at.size)
	})
	b.p.Height = l.y + 0.03
}

const legendLeft = 0.045

// legendRow is the row of a legend that is being written.
type legendRow struct {
	*board
	size, x, y float64
}

func (l *legendRow) entry(word string, mark func(place)) {
	if word == "" {
		return
	}
	// A letter of a sans serif is about 0.56 em wide in the mean.
	wide := 0.65*l.size + 0.56*l.size*float64(utf8.RuneCountInString(word))
	if l.x > legendLeft && l.x+wide > 1 {
		l.x, l.y = legendLeft, l.y+1.7*l.size
	}
	mark(place{x: l.x, y: l.y, size: 0.27 * l.size, alongX: 1})
	l.p.Text(InkDim, l.x+0.65*l.size, l.y, l.size, word).At(AnchorStart)
	l.x += wide + 0.06
}

// Milliseconds writes an offset as whole milliseconds with its sign, as it stands
// below a dum: "+38", "−12", "0".
func Milliseconds(d time.Duration) string {
	ms := int(math.Round(float64(d) / float64(time.Millisecond)))
	switch {
	case ms > 0:
		return "+" + strconv.Itoa(ms)
	case ms < 0:
		return "−" + strconv.Itoa(-ms)
	}
	return "0"
}
