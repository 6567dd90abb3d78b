package view

import (
	"time"

	"groundbeat/game/rhythm"
)

// The drumhead's measures, in parts of the picture's width.
const (
	headMiddle = 0.5
	skinEdge   = 0.368 // where the skin bends over
	rimRadius  = 0.387 // middle of the metal
	rimWidth   = 0.022
	dumRadius  = 0.182 // where dums lie, about half way out
	dumSize    = 0.046 // a dum's disc
	tekRadius  = 0.327 // where teks lie, at the edge
	leadDum    = 0.105 // the lead drum's ring of dums
	leadTek    = 0.285 // the lead drum's ring of teks
	tapScale   = 0.239 // the arc of 100 ms either way of a dum, in review
	firstTap   = 0.256 // taps of a review: the first cycle …
	lastTap    = 0.306 // … and the last
	// CountSize is the size of the drumhead's counts in parts of its width: 18
	// pixels where the head is 300 wide.
	CountSize   = 0.06
	countRadius = 0.456
)

// Head is what the drumhead shows: the drum seen from above. Time runs once
// round, clockwise from the top, in one cycle. Dums lie nearer the centre and
// teks at the rim, where the hand strikes them.
type Head struct {
	Base   rhythm.Pattern // the bass drum's strokes
	Lead   rhythm.Pattern // the lead drum's strokes in the same cycle, perhaps on more steps; empty: not shown
	Counts []string       // the count of each step; figures stand outside the rim
	Hidden bool           // no strokes: they are being asked
	Centre string         // a count-in's figure, or nothing

	Turning bool    // the sweep is shown
	Turn    float64 // where the sweep is, in turns; whole turns do not matter

	Taps   []Tap   // marks of taps while playing
	Review *Review // how the taps lay, afterwards
}

// Tap is a mark where in the cycle a tap came, and nothing more.
type Tap struct {
	Turn float64 // in turns; whole turns do not matter
	Age  int     // how many cycles ago; older marks are fainter
}

// Draw adds the head to an empty picture. It allocates nothing once the picture
// has grown.
func (h *Head) Draw(p *Picture) {
	p.Height = 1
	h.drum(p)
	h.counts(p)
	h.sweep(p)
	if !h.Hidden {
		h.ring(p, h.Lead, leadTek, leadDum, InkLead, 0.62)
		h.ring(p, h.Base, tekRadius, dumRadius, InkBass, 1)
	}
	h.taps(p)
	if h.Review != nil {
		h.review(p)
	}
	if n := h.Enlarged(); n > 1 {
		p.Text(InkDim, headMiddle, headMiddle, 0.05, enlargements[n])
	}
	if h.Centre != "" {
		p.Text(InkBone, headMiddle, headMiddle, 0.17, h.Centre).Strong()
	}
}

// enlargements says by how much offsets are enlarged.
var enlargements = [...]string{"", "", "×2", "×3", "×4", "×5", "×6", "×7", "×8"}

// drum draws the skin, lighter where the hand wears it, and the metal round it.
func (h *Head) drum(p *Picture) {
	p.Dot(InkSkin, headMiddle, headMiddle, rimRadius)
	for _, r := range [...]float64{0.31, 0.28, 0.25, 0.22, 0.19, 0.16, 0.13, 0.10} {
		p.Dot(InkGrain, headMiddle, headMiddle, r).Fade(0.035)
	}
	for _, r := range [...]float64{0.09, 0.15, 0.21, 0.27, 0.33} {
		p.Ring(InkGrain, headMiddle, headMiddle, r, 0.0016).Fade(0.45)
	}
	p.Ring(InkGrain, headMiddle, headMiddle, skinEdge, 0.009).Fade(0.55)
	p.Ring(InkRim, headMiddle, headMiddle, rimRadius, rimWidth)
	p.Ring(InkLug, headMiddle, headMiddle, rimRadius-rimWidth/2, 0.004)
	for _, half := range [...]float64{0.11, 0.08, 0.05} { // light from the upper left
		p.Arc(InkShine, headMiddle, headMiddle, rimRadius+0.006, 0.875-half, 0.875+half, 0.005).Fade(0.16)
	}
	n := h.lugs()
	for i := range n {
		x, y := around(headMiddle, headMiddle, rimRadius, (float64(i)+0.5)/float64(n))
		p.Dot(InkLug, x, y, 0.0075)
	}
}

// lugs returns how many screws hold the rim: between the eighths, so that none
// is taken for a count.
func (h *Head) lugs() int {
	n := beats(h.Counts)
	switch {
	case n == 0:
		return 8
	case n < 6:
		return 2 * n
	}
	return n
}

func (h *Head) counts(p *Picture) {
	for i, c := range h.Counts {
		turn := float64(i) / float64(len(h.Counts))
		if !isBeat(c) {
			h.spoke(p, InkDim, turn, rimRadius+0.021, rimRadius+0.023, 0.0045)
			continue
		}
		h.spoke(p, InkBone, turn, rimRadius+0.021, rimRadius+0.030, 0.006)
		x, y := around(headMiddle, headMiddle, countRadius, turn)
		p.Text(InkBone, x, y, CountSize, c).Strong()
	}
}

func (h *Head) spoke(p *Picture, ink Ink, turn, from, to, width float64) *Shape {
	x, y := around(headMiddle, headMiddle, from, turn)
	x2, y2 := around(headMiddle, headMiddle, to, turn)
	return p.Line(ink, x, y, x2, y2, width)
}

// sweep draws the hand that turns with the sound, and a faint trail behind it.
func (h *Head) sweep(p *Picture) {
	if !h.Turning {
		return
	}
	for i := range 5 {
		p.Wedge(InkSweep, headMiddle, headMiddle, skinEdge-0.005, h.Turn-0.012*float64(i+1), h.Turn).Fade(0.022)
	}
	h.spoke(p, InkSweep, h.Turn, 0.02, skinEdge-0.012, 0.005).Fade(0.85)
	p.Dot(InkSweep, headMiddle, headMiddle, 0.012)
	x, y := around(headMiddle, headMiddle, rimRadius, h.Turn)
	p.Dot(InkSweep, x, y, 0.012)
}

// ring draws one drum's strokes: a dum is a disc, a tek a short mark along the
// rim. scale makes the lead drum's smaller.
func (h *Head) ring(p *Picture, strokes rhythm.Pattern, tek, dum float64, ink Ink, scale float64) {
	for i := range len(strokes) {
		turn := float64(i) / float64(len(strokes))
		x, y := around(headMiddle, headMiddle, dum, turn)
		switch s := strokes[i]; {
		case !s.Sounds():
		case s.Low() && h.leftOut(i):
			p.Ring(ink, x, y, dumSize*scale-0.003, 0.006)
		case s.Low():
			h.glow(p, ink, turn, x, y, dumSize*scale)
			p.Dot(ink, x, y, dumSize*scale)
		default:
			h.tek(p, s, turn, tek, ink, scale)
		}
	}
}

func (h *Head) tek(p *Picture, s rhythm.Stroke, turn, r float64, ink Ink, scale float64) {
	half, width := 0.014*scale, 0.017*scale
	if s.Light() {
		half, width = half*0.6, width*0.65
	}
	p.Arc(ink, headMiddle, headMiddle, r, turn-half, turn+half, width)
	if s == rhythm.Sak { // a slap: the whole hand, one more finger's breadth
		p.Arc(ink, headMiddle, headMiddle, r-0.022*scale, turn-half*0.8, turn+half*0.8, width*0.5)
	}
}

// glow lets a dum shine a little just after the sweep has passed it.
func (h *Head) glow(p *Picture, ink Ink, turn, x, y, size float64) {
	if !h.Turning {
		return
	}
	if since := wrap(h.Turn - turn); since < 0.09 {
		p.Dot(ink, x, y, size+0.014).Fade(0.35 * (1 - since/0.09))
	}
}

// leftOut reports whether the dum at a step was left out in every cycle.
func (h *Head) leftOut(step int) bool {
	if h.Review == nil {
		return false
	}
	_, n := h.Review.mean(step, len(h.Base))
	return n == 0
}

func (h *Head) taps(p *Picture) {
	for _, t := range h.Taps {
		fade := max(0.25, 0.95-0.25*float64(t.Age))
		h.spoke(p, InkMark, t.Turn, 0.246, 0.276, 0.009).Fade(fade)
	}
}

// Enlarged returns by how much offsets are enlarged on the head in review, a
// whole number, 1 or more: as much as fits beside the neighbouring dum. At 1 an
// offset lies at its true angle.
func (h *Head) Enlarged() int {
	if h.Review == nil || len(h.Base) == 0 || h.Review.StepTime <= 0 {
		return 1
	}
	room := 0.11
	for i := range len(h.Base) {
		if h.Base[i].Low() {
			room = min(room, 0.46*float64(gap(h.Base, i))/float64(len(h.Base)))
		}
	}
	return max(1, min(len(enlargements)-1, int(room/h.turns(Reach))))
}

// turns returns how far the sweep turns in a time.
func (h *Head) turns(d time.Duration) float64 {
	return float64(d) / (float64(h.Review.StepTime) * float64(len(h.Base)))
}

// review draws the taps between the dums and the rim, the first cycle innermost:
// ahead before the dum's own line, behind after it.
func (h *Head) review(p *Picture) {
	n := len(h.Base)
	if n == 0 {
		return
	}
	half := h.turns(Reach) * float64(h.Enlarged())
	for i := range n {
		if h.Base[i].Low() {
			turn := float64(i) / float64(n)
			p.Arc(InkDim, headMiddle, headMiddle, tapScale, turn-half, turn+half, 0.0025)
			h.spoke(p, InkDim, turn, tapScale-0.006, tapScale+0.006, 0.0035)
			h.spoke(p, InkDim, turn-half, tapScale, tapScale+0.007, 0.0025)
			h.spoke(p, InkDim, turn+half, tapScale, tapScale+0.007, 0.0025)
		}
	}
	for _, l := range h.Review.Landed {
		h.tapAt(p, l, half)
	}
	for _, step := range h.Review.LeftOut {
		p.leftOutMark(h.place(float64(step)/float64(n), step/n))
	}
	for _, a := range h.Review.Added {
		at := h.place(a/float64(n), int(a)/n)
		p.addedMark(at.x, at.y, at.size)
	}
}

func (h *Head) tapAt(p *Picture, l Landed, half float64) {
	turn := float64(l.Step)/float64(len(h.Base)) + half*part(l.Offset)
	p.tapMark(h.place(turn, l.Step/len(h.Base)), l.Offset, h.Review.On)
}

// place returns where a tap of a cycle lies at a turn.
func (h *Head) place(turn float64, cycle int) place {
	last := max(1, h.Review.cycles(len(h.Base))-1)
	r := firstTap + (lastTap-firstTap)*float64(cycle)/float64(last)
	x, y := around(headMiddle, headMiddle, r, turn)
	ax, ay := around(0, 0, 1, turn+0.25)
	return place{x: x, y: y, size: 0.0095, alongX: ax, alongY: ay}
}

// wrap returns a turn as 0 to 1.
func wrap(turn float64) float64 {
	for turn < 0 {
		turn++
	}
	for turn >= 1 {
		turn--
	}
	return turn
}
