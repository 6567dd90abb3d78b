package picture

import (
	"math"
	"strings"

	"groundbeat/game/rhythm"
	"groundbeat/game/say"
)

// Wall is the whiteboard line as a room sees it: over the whole width, its counts and
// letters as large as there is room for. Below the counts stands one row of strokes, or
// two: two versions of a rhythm one above the other, or the bass drum and the lead drum.
type Wall struct {
	Counts  []string // the count of each step
	Rows    []WallRow
	Columns int    // steps side by side before it wraps; 0: all
	Moved   [2]int // steps of the first row and of the second between which a stroke was moved; equal: none
	Groups  []int  // beats of each group of an odd metre, in order; nil: none are marked
	Live    bool   // a step is marked: the one that is heard
	Step    int    // which
	Calm    bool   // less motion was asked for: the mark stands on the stroke that was heard last
}

// WallRow is one row of strokes: one to each step, or a lead drum's at their true places.
type WallRow struct {
	Name    string // in a word or two; empty: it needs none
	Base    rhythm.Pattern
	Lead    []RiffStroke // where it is the lead drum's; then Base is empty
	Circled []int        // steps that are ringed
	Heard   bool         // of several, this one is heard now
}

// The wall's measures, in parts of its width. Own choice, so that the smallest capital is
// 3.5 % of a picture's height or more, at 16:9 and at 4:3.
const (
	wallOne    = 0.088  // how high a row is where there is one …
	wallTwo    = 0.075  // … and where there are two
	wallLetter = 0.0425 // the least size of a letter
	wallNames  = 0.135  // how wide the names of rows are, where there are any
	wallNamed  = 12     // on how many steps at most there is room for names
)

// wall is one being drawn.
type wall struct {
	*Wall
	p       *Picture
	columns int
	left    float64 // where the first step begins
	pitch   float64 // from step to step
	cell    float64 // how high a row is
	top     float64 // where the counts begin
	first   int     // the line's first step
}

// Draw adds the wall to an empty picture and sets its height.
func (l *Wall) Draw(p *Picture) {
	b := &wall{Wall: l, p: p, columns: l.Columns}
	if steps := len(l.Counts); b.columns <= 0 || b.columns > steps {
		b.columns = max(1, steps)
	}
	if l.named() {
		b.left = wallNames
	}
	after := 0.0 // room for what a lead drum plays after the last step
	if len(l.Rows) > 1 && len(l.Rows[1].Lead) > 0 {
		after = 0.4
	}
	b.pitch = (1 - b.left) / (float64(b.columns) + after)
	b.cell = min(b.pitch, wallOne)
	if len(l.Rows) > 1 {
		b.cell = min(b.pitch, wallTwo)
	}
	for ; b.first < len(l.Counts); b.first += b.columns {
		b.line()
	}
	p.Height = max(b.top, 0.02)
}

// named reports whether rows have names, and there is room for them.
func (l *Wall) named() bool {
	return len(l.Rows) > 1 && l.Rows[0].Name != "" && len(l.Counts) <= wallNamed
}

// line draws as many steps as stand side by side, and moves the top below them.
func (b *wall) line() {
	if b.first > 0 {
		b.top += 0.3 * b.cell
	}
	last := min(b.first+b.columns, len(b.Counts))
	y := b.top + 0.42*b.cell
	for i := b.first; i < last; i++ {
		b.count(i, y)
	}
	rule := b.top + 0.86*b.cell
	b.p.Line(InkGrain, b.left+0.004, rule, max(b.left+float64(last-b.first)*b.pitch-0.004, b.end()), rule, 0.02*b.cell)
	b.groups(last)
	if step := b.marked(); b.Live && step >= b.first && step < last {
		b.p.Line(InkBrass, b.x(float64(step))-0.3*b.cell, rule, b.x(float64(step))+0.3*b.cell, rule, 0.085*b.cell)
	}
	b.top += 0.92 * b.cell
	for i := range b.Rows {
		b.row(&b.Rows[i], b.top+(float64(i)*1.16+0.58)*b.cell, last)
	}
	b.moved(last)
	b.top += (float64(len(b.Rows))*1.16 + 0.02) * b.cell
}

// marked is the step that is marked.
func (b *wall) marked() int {
	if !b.Calm || len(b.Rows) == 0 || b.Step >= len(b.Rows[0].Base) {
		return b.Step
	}
	base := b.Rows[0].Base
	return lastStep(len(base), b.Step, func(i int) bool { return base[i].Sounds() })
}

// groups draws a short stroke between the groups of an odd metre.
func (b *wall) groups(last int) {
	beats, step := 0, 0
	for _, g := range b.Groups {
		beats += g
	}
	for _, g := range b.Groups {
		if step > b.first && step < last {
			x := b.left + float64(step-b.first)*b.pitch
			b.p.Line(InkDim, x, b.top+0.1*b.cell, x, b.top+0.86*b.cell, 0.035*b.cell)
		}
		step += g * len(b.Counts) / beats
	}
}

// end is where the rule ends of a line that is full.
func (b *wall) end() float64 {
	if b.columns < len(b.Counts) {
		return 0
	}
	return 0.996
}

// x is the middle of a step of this line; steps may be fractions.
func (b *wall) x(step float64) float64 {
	return b.left + (step-float64(b.first)+0.5)*b.pitch
}

// letter is the size of a letter that is so large where there is room, in rows.
func (b *wall) letter(rows float64) float64 { return max(rows*b.cell, wallLetter) }

func (b *wall) count(i int, y float64) {
	if c := at(b.Counts, i); IsBeat(c) {
		b.p.Text(InkBone, b.x(float64(i)), y, b.letter(0.74), c).Strong()
	} else {
		b.p.Text(InkDim, b.x(float64(i)), y, b.letter(0.6), c)
	}
}

func (b *wall) row(r *WallRow, y float64, last int) {
	if b.named() && b.first == 0 {
		b.name(r, y)
	}
	for i := b.first; i < min(last, len(r.Base)); i++ {
		b.stroke(r, i, y)
	}
	for i := range r.Lead {
		if at := r.Lead[i].Turn * float64(len(b.Counts)); at > float64(b.first)-0.001 && at < float64(last)-0.001 {
			b.lead(r.Lead, i, y)
		}
	}
}

// name names a row, with a bar before that of the one that is heard.
func (b *wall) name(r *WallRow, y float64) {
	b.p.Text(InkBone, 0.018, y, wallLetter, r.Name).At(AnchorStart)
	if r.Heard {
		b.p.Line(InkBrass, 0.004, y-0.34*b.cell, 0.004, y+0.34*b.cell, 0.006)
	}
}

// disc is how large a dum is: it leaves room for its neighbours.
func (b *wall) disc() float64 { return 0.43 * min(b.cell, b.pitch) }

// ring is how large a ring round a stroke is: that of the first step or the last one lies
// within the picture.
func (b *wall) ring() float64 { return min(0.51*b.cell, 0.5*b.pitch-0.5*ringWide*b.cell) }

// ringWide is how broad a ring's line is, in rows.
const ringWide = 0.035

func (b *wall) stroke(r *WallRow, i int, y float64) {
	x := b.x(float64(i))
	for _, step := range r.Circled {
		if step == i {
			b.p.Ring(InkSweep, x, y, b.ring(), ringWide*b.cell)
		}
	}
	switch s := r.Base[i]; {
	case !s.Sounds():
		b.p.Line(InkDim, x-0.1*b.cell, y, x+0.1*b.cell, y, 0.04*b.cell)
	case s.Low():
		b.p.Dot(InkBass, x, y, b.disc())
		b.p.Text(InkOnBass, x, y, b.letter(0.6), "D").Strong()
	default:
		b.tek(s, InkBass, x, y)
	}
}

func (b *wall) tek(s rhythm.Stroke, drum Ink, x, y float64) {
	ink, bar := InkBone, 0.17*b.cell
	if s.Light() {
		ink, bar = InkDim, 0.1*b.cell
	}
	b.p.Text(ink, x, y-0.06*b.cell, b.letter(0.6), letters[s]).Strong()
	b.p.Line(drum, x-bar, y+0.36*b.cell, x+bar, y+0.36*b.cell, 0.07*b.cell)
}

// lead draws one stroke of the lead drum: a letter where there is room for one, else a
// mark, the higher the firmer; a roll is a bar.
func (b *wall) lead(all []RiffStroke, i int, y float64) {
	s := &all[i]
	steps := float64(len(b.Counts))
	x, room := b.x(s.Turn*steps), b.room(all, i)*b.pitch
	switch {
	case s.Long > 0:
		b.p.Line(InkLead, x, y, min(x+s.Long*steps*b.pitch, 1-0.15*b.cell), y, 0.3*b.cell).Fade(0.8)
	case room < 0.9*wallLetter && s.Sound.Low():
		b.p.Dot(InkLead, x, y, min(0.2*b.cell, 0.45*room))
	case room < 0.9*wallLetter:
		high := (0.12 + 0.2*s.Strength) * b.cell
		b.p.Line(InkLead, x, y-high, x, y+high, min(0.07*b.cell, 0.4*room))
	case s.Sound.Low():
		b.p.Dot(InkLead, x, y, min(b.disc(), 0.5*room))
		b.p.Text(InkGround, x, y, b.letter(0.6), "D").Strong()
	default:
		b.tek(s.Sound, InkLead, x, y)
	}
}

// room is how far the nearest other stroke is from one of the lead drum's, in steps.
func (b *wall) room(all []RiffStroke, i int) float64 {
	steps, near := float64(len(b.Counts)), 1.0
	if i > 0 {
		near = min(near, (all[i].Turn-all[i-1].Turn-all[i-1].Long)*steps)
	}
	if i+1 < len(all) {
		near = min(near, (all[i+1].Turn-all[i].Turn)*steps)
	}
	return near
}

// moved draws from where to where a stroke was moved.
func (b *wall) moved(last int) {
	from, to := b.Moved[0], b.Moved[1]
	if from == to || min(from, to) < b.first || max(from, to) >= last {
		return
	}
	x, y := b.x(float64(from)), b.top+0.58*b.cell
	dx, dy := b.x(float64(to))-x, 1.16*b.cell
	part := b.ring() / math.Hypot(dx, dy)
	b.p.Line(InkSweep, x+part*dx, y+part*dy, x+(1-part)*dx, y+(1-part)*dy, 0.05*b.cell)
}

// Twin says in words what the wall shows.
func (l *Wall) Twin(w say.Words) string {
	var all []string
	for i := range l.Rows {
		r := &l.Rows[i]
		text := w.Say("wall-lead-twin")
		if len(r.Base) > 0 {
			text = SayStrokes(w, r.Base, l.Counts)
		}
		if r.Name != "" {
			text = w.Say("wall-row", "name", r.Name, "strokes", text)
		}
		all = append(all, text)
	}
	return strings.Join(all, " ")
}
