package diaryview

import (
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/scoring"
)

// The measures of the diary's panels, in parts of their width. A panel is at least
// 270 pixels wide: its small text is then 12.5 high, as in the other pictures.
const (
	panelTitle = 0.062
	panelSmall = 0.046
	panelTop   = 0.15  // below the title
	panelDeep  = 0.43  // usual height of what is drawn
	panelFoot  = 0.075 // and of a line of text below it
)

// trend is a panel of how something went over time: one mark for each stretch of
// days at its value, in its interval, the latest the largest.
type trend struct {
	title, value string
	rules        []rule
	low, high    float64 // the values at the foot and at the top
	deep         float64 // height of what is drawn
	days         timeline
	from, to     string // what stands at the ends of the line
	points       []point
}

// rule is a level line with a word before it.
type rule struct {
	at   float64
	word string
	line bool // else the word alone
}

type point struct {
	from, to string
	scoring.Estimate
}

// draw adds the panel to an empty picture.
func (t *trend) draw(p *picture.Picture) {
	p.Height = panelTop + t.deep + panelFoot + 0.03
	panelHead(p, t.title, t.value)
	t.days.left, t.days.right = t.margin()+0.055, 0.965
	for _, r := range t.rules {
		t.rule(p, r)
	}
	y := panelTop + t.deep + panelFoot
	p.Text(picture.InkDim, t.days.left-0.035, y, panelSmall, t.from).At(picture.AnchorStart)
	if t.to != t.from {
		p.Text(picture.InkDim, 1, y, panelSmall, t.to).At(picture.AnchorEnd)
	}
	t.marks(p)
}

// panelHead writes what a panel is about, and its figure.
func panelHead(p *picture.Picture, title, value string) {
	p.Text(picture.InkBone, 0, 0.045, panelTitle, title).At(picture.AnchorStart).Strong()
	p.Text(picture.InkBone, 1, 0.045, 0.9*panelTitle, value).At(picture.AnchorEnd)
}

// margin is the room that the words before the rules need.
func (t *trend) margin() float64 {
	most := 0.0
	for _, r := range t.rules {
		most = max(most, 1.12*picture.WideOf(r.word, panelSmall))
	}
	return most
}

func (t *trend) y(value float64) float64 {
	part := max(0, min(1, (value-t.low)/(t.high-t.low)))
	return panelTop + t.deep*(1-part)
}

func (t *trend) rule(p *picture.Picture, r rule) {
	y := t.y(r.at)
	if r.line {
		p.Line(picture.InkEdge, t.days.left-0.03, y, 0.995, y, 0.0022)
	}
	if r.word != "" {
		p.Text(picture.InkDim, t.margin(), y, panelSmall, r.word).At(picture.AnchorEnd)
	}
}

// marks draws the points that are known, each in its interval, and a thread from
// one to the next.
func (t *trend) marks(p *picture.Picture) {
	known := t.known()
	wide := min(0.03, 0.55*t.apart(known))
	for i := 1; i < len(known); i++ {
		a, b := known[i-1], known[i]
		p.Line(picture.InkBass, t.days.x(a.from, a.to), t.y(a.Value), t.days.x(b.from, b.to), t.y(b.Value), 0.004).Fade(0.55)
	}
	for i, at := range known {
		x, r := t.days.x(at.from, at.to), 0.4*wide
		if i == len(known)-1 {
			r = 0.0165
		}
		if top, foot := t.y(at.High)+wide/2, t.y(at.Low)-wide/2; top < foot { // round ends reach as far as the line
			p.Line(picture.InkBass, x, top, x, foot, wide).Fade(0.2)
		}
		p.Line(picture.InkBass, x, t.y(at.High), x, t.y(at.Low), 0.005)
		p.Dot(picture.InkBass, x, t.y(at.Value), r)
	}
}

// apart is how far the nearest two points lie from one another.
func (t *trend) apart(known []point) float64 {
	least := 1.0
	for i := 1; i < len(known); i++ {
		least = min(least, t.days.x(known[i].from, known[i].to)-t.days.x(known[i-1].from, known[i-1].to))
	}
	return least
}

func (t *trend) known() []point {
	var known []point
	for _, at := range t.points {
		if at.Known {
			known = append(known, at)
		}
	}
	return known
}

// timeline places days along a picture: first at left, last at right, in parts of
// its width. Where there is but one day, it lies in the middle.
type timeline struct {
	first, last string
	left, right float64
}

// span widens the line by a stretch of days.
func (l *timeline) span(from, to string) {
	if l.first == "" || say.DayNumber(from) < say.DayNumber(l.first) {
		l.first = from
	}
	if l.last == "" || say.DayNumber(to) > say.DayNumber(l.last) {
		l.last = to
	}
}

// x is where the middle of a stretch of days lies.
func (l *timeline) x(from, to string) float64 {
	first, all := say.DayNumber(l.first), say.DayNumber(l.last)-say.DayNumber(l.first)
	if all <= 0 {
		return (l.left + l.right) / 2
	}
	at := float64(say.DayNumber(from)+say.DayNumber(to))/2 - float64(first)
	return l.left + (l.right-l.left)*at/float64(all)
}
