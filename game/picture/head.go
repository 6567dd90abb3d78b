package picture

import (
	"time"

	"groundbeat/game/rhythm"
)

// The drumhead's measures, in parts of the picture's width.
const (
	Middle    = 0.5
	dumRadius = 0.182 // where dums lie, about half way out
	dumSize   = 0.046 // a dum's disc
	tekRadius = 0.327 // where teks lie, at the edge
	tapScale  = 0.239 // the arc of 100 ms either way of a dum, in review
	firstTap  = 0.256 // taps of a review: the first cycle …
	lastTap   = 0.306 // … and the last
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
	Riff   RiffCycle      // what the lead drum plays in the same cycle; empty: not shown
	Counts []string       // the count of each step; figures stand outside the rim
	Groups []int          // beats of each group of an odd metre, in order; nil: none are marked
	Hidden bool           // no strokes: they are being asked
	Centre string         // a count-in's figure, or nothing

	Beads int // eights of a round that is played, one bead each; 0: none are shown
	Gone  int // how many of them are over

	Glow float64 // how much the rim shines because something sounds, 0 to 1; it tells nothing of what

	Turning bool    // the sweep is shown
	Turn    float64 // where the sweep is, in turns; whole turns do not matter
	Calm    bool    // less motion was asked for: the sweep stands, see [Head.Stands]

	ShowHands bool    // the drummer's hands are drawn over it
	Hands     [2]Hand // the strong one first

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
	Drum(p)
	h.shine(p)
	h.beads(p)
	h.DrawCounts(p)
	h.sweep(p)
	if !h.Hidden {
		h.riff(p)
		h.base(p)
	}
	h.taps(p)
	if h.Review != nil {
		h.review(p)
	}
	if n := h.Enlarged(); n > 1 {
		p.Text(InkDim, Middle, Middle, 0.05, enlargements[n])
	}
	h.hands(p)
	if h.Centre != "" {
		p.Text(InkBone, Middle, Middle, 0.17, h.Centre).Strong()
	}
}

// enlargements says by how much offsets are enlarged.
var enlargements = [...]string{"", "", "×2", "×3", "×4", "×5", "×6", "×7", "×8"}

// base draws the bass drum's strokes: a dum is a disc, a tek a short mark along
// the rim. In a break or roll it does not play them, and they are faint.
func (h *Head) base(p *Picture) {
	for i := range h.Base {
		turn := float64(i) / float64(len(h.Base))
		x, y := Around(Middle, Middle, dumRadius, turn)
		switch s := h.Base[i]; {
		case !s.Sounds():
		case h.Riff.open(turn) && s.Low():
			p.Ring(InkBass, x, y, dumSize-0.003, 0.004).Fade(0.5)
		case h.Riff.open(turn):
			h.DrawTek(p, s, turn, 0.4)
		case h.leftOut(i) && s.Low():
			p.Ring(InkBass, x, y, dumSize-0.003, 0.006)
		case s.Low():
			h.glow(p, turn, x, y)
			p.Dot(InkBass, x, y, dumSize)
		case h.leftOut(i):
			h.DrawTek(p, s, turn, 0.4)
		default:
			h.DrawTek(p, s, turn, 1)
		}
	}
}

func (h *Head) DrawTek(p *Picture, s rhythm.Stroke, turn, opacity float64) {
	half, width := 0.014, 0.017
	if s.Light() {
		half, width = half*0.6, width*0.65
	}
	p.Arc(InkBass, Middle, Middle, tekRadius, turn-half, turn+half, width).Fade(opacity)
	if s == rhythm.Sak { // a slap: the whole hand, one more finger's breadth
		p.Arc(InkBass, Middle, Middle, tekRadius-0.022, turn-half*0.8, turn+half*0.8, width*0.5).Fade(opacity)
	}
}

// glow lets a dum shine a little just after the sweep has passed it.
func (h *Head) glow(p *Picture, turn, x, y float64) {
	if !h.Turning {
		return
	}
	if since := Wrap(h.Stands() - turn); since < 0.09 {
		p.Dot(InkBass, x, y, dumSize+0.014).Fade(0.35 * (1 - since/0.09))
	}
}

// leftOut reports whether the stroke at a step was asked for and left out in every cycle.
func (h *Head) leftOut(step int) bool {
	if h.Review == nil || !h.Review.asks(h.Base[step]) {
		return false
	}
	_, n := h.Review.mean(step, len(h.Base))
	return n == 0
}

func (h *Head) taps(p *Picture) {
	for _, t := range h.Taps {
		fade := max(0.25, 0.95-0.25*float64(t.Age))
		h.DrawSpoke(p, InkMark, t.Turn, 0.246, 0.276, 0.009).Fade(fade)
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
		if h.Review.asks(h.Base[i]) {
			room = min(room, 0.46*float64(h.Review.gap(h.Base, i))/float64(len(h.Base)))
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
		if h.Review.asks(h.Base[i]) {
			turn := float64(i) / float64(n)
			p.Arc(InkDim, Middle, Middle, tapScale, turn-half, turn+half, 0.0025)
			h.DrawSpoke(p, InkDim, turn, tapScale-0.006, tapScale+0.006, 0.0035)
			h.DrawSpoke(p, InkDim, turn-half, tapScale, tapScale+0.007, 0.0025)
			h.DrawSpoke(p, InkDim, turn+half, tapScale, tapScale+0.007, 0.0025)
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
	x, y := Around(Middle, Middle, r, turn)
	ax, ay := Around(0, 0, 1, turn+0.25)
	return place{x: x, y: y, size: 0.0095, alongX: ax, alongY: ay}
}

// wrap returns a turn as 0 to 1.
func Wrap(turn float64) float64 {
	for turn < 0 {
		turn++
	}
	for turn >= 1 {
		turn--
	}
	return turn
}
