package diaryview

import (
	"math"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// The drumhead of the diary, in parts of its width.
const (
	roundDum   = 0.192 // where dums lie
	roundSize  = 0.056 // a dum's disc, large enough for its figure
	roundScale = 0.292 // the arc on which a dum's taps lie
	roundTitle = 0.10  // height of what stands above
	// RoundReach is how far an arc of the diary's drumhead goes to either side of its
	// dum, in ms; what lies farther is drawn at its end.
	RoundReach = 50
)

// round draws how far ahead or behind each dum of a rhythm comes, at its place on
// the drumhead: the figure on the dum, and between it and the rim an arc of time
// with the interval and a mark, before the dum's own line or after it.
func (d *Diary) round(w say.Words, c *rhythm.Cycle, f diary.Fingers) *picture.Picture {
	p := &picture.Picture{Height: 1}
	h := picture.Head{Base: c.Skeleton, Counts: picture.CountsOf(c.Base())}
	picture.Drum(p)
	h.DrawCounts(p)
	n := len(h.Base)
	for i, s := range h.Base {
		if s.Sounds() && !s.Low() {
			h.DrawTek(p, s, float64(i)/float64(n), 0.45)
		}
	}
	for _, of := range f.Counts {
		if of.Step < n {
			drawDum(&h, p, of)
		}
	}
	shift(p, roundTitle)
	panelHead(p, d.name(f.Rhythm), "")
	p.Twin = d.sayRound(w, &h, f)
	return p
}

// shift moves all shapes down and makes room above them.
func shift(p *picture.Picture, by float64) {
	for i := range p.Shapes {
		p.Shapes[i].Y += by
		p.Shapes[i].Y2 += by
	}
	p.Height += by
}

// drawDum draws one dum: what is not known yet is an empty ring.
func drawDum(h *picture.Head, p *picture.Picture, of diary.Count) {
	n := len(h.Base)
	turn := float64(of.Step) / float64(n)
	x, y := picture.Around(picture.Middle, picture.Middle, roundDum, turn)
	if !of.Offset.Known {
		p.Ring(picture.InkBass, x, y, roundSize-0.003, 0.004)
		p.Text(picture.InkDim, x, y, panelSmall, view.None)
		return
	}
	p.Dot(picture.InkBass, x, y, roundSize)
	p.Text(picture.InkOnBass, x, y, panelSmall, picture.Milliseconds(say.Millis(of.Offset.Value))).Strong()
	roundArc(h, p, turn, min(0.16, 0.46*float64(picture.Gap(h.Base, of.Step, rhythm.Stroke.Low))/float64(n)), of.Offset)
}

// roundArc draws the arc of a dum: half is how many turns RoundReach is.
func roundArc(h *picture.Head, p *picture.Picture, turn, half float64, e scoring.Estimate) {
	at := func(ms float64) float64 { return turn + half*max(-1, min(1, ms/RoundReach)) }
	p.Arc(picture.InkDim, picture.Middle, picture.Middle, roundScale, turn-half, turn+half, 0.003)
	for _, end := range [...]float64{turn - half, turn + half} {
		h.DrawSpoke(p, picture.InkDim, end, roundScale-0.008, roundScale+0.008, 0.003)
	}
	h.DrawSpoke(p, picture.InkDim, turn, roundScale-0.013, roundScale+0.013, 0.004)
	ink, mark := picture.InkGood, 0.0
	if e.Excludes(0) {
		mark = e.Value
		ink = inkOf(mark)
	}
	if from, to := at(e.Low), at(e.High); from < to { // none of what lies wholly beyond an end
		p.Arc(ink, picture.Middle, picture.Middle, roundScale, from, to, 0.008)
	}
	x, y := picture.Around(picture.Middle, picture.Middle, roundScale, at(e.Value))
	ax, ay := picture.Around(0, 0, 1, at(e.Value)+0.25)
	p.Dot(picture.InkSkin, x, y, 0.0075) // shows within a ring
	p.TapMark(x, y, 0.0135, ax, ay, say.Millis(mark), 0)
}

// inkOf is the ink of an offset's side.
func inkOf(ms float64) picture.Ink {
	if ms < 0 {
		return picture.InkAhead
	}
	return picture.InkBehind
}

func (d *Diary) sayRound(w say.Words, h *picture.Head, f diary.Fingers) string {
	text := w.Say("head-strokes", "beats", picture.Beats(h.Counts), "strokes", picture.SayStrokes(w, h.Base, h.Counts))
	for _, of := range f.Counts {
		if of.Step >= len(h.Base) {
			continue
		}
		count := picture.CountName(h.Counts, of.Step)
		if !of.Offset.Known {
			text += " " + w.Say("round-few", "count", count)
			continue
		}
		text += " " + w.Say("round-twin", "count", count, "mean", say.Offset(w, say.Millis(of.Offset.Value)), "between", sayFromTo(w, of.Offset))
	}
	return text
}

// roundKnown reports whether there is anything to draw round the drumhead.
func roundKnown(f diary.Fingers) bool {
	for _, of := range f.Counts {
		if of.Offset.Known {
			return true
		}
	}
	return false
}

// findRound says which count of which rhythm comes farthest from where its dums come on
// the whole, if that leaves no doubt, however many counts are looked at; else that none
// stands out. What all taps have in common, such as the delay of an output, is none of a
// count's.
func (d *Diary) findRound(w say.Words) finding {
	all, many := d.counted()
	if many == 0 {
		return finding{}
	}
	var far oneCount
	for _, c := range all {
		e := stat.Among(c.apart, many)
		if e.Excludes(0) && math.Abs(e.Value) >= max(leastLean, math.Abs(far.apart.Value)) {
			far = oneCount{c.rhythm, c.count, e}
		}
	}
	if far.rhythm == "" {
		return finding{text: w.Say("round-none")}
	}
	name, ms, between := d.name(far.rhythm), say.WholeMs(say.Millis(math.Abs(far.apart.Value))), sayWithin(w, far.apart)
	if far.apart.Value < 0 {
		return finding{text: w.Say("round-earlier", "rhythm", name, "count", far.count, "ms", ms, "between", between)}
	}
	return finding{text: w.Say("round-later", "rhythm", name, "count", far.count, "ms", ms, "between", between)}
}

// oneCount is how far one count of a rhythm comes from its dums on the whole, in ms.
type oneCount struct {
	rhythm, count string
	apart         scoring.Estimate
}

// counted are the counts that can be held against the whole of their rhythm; many is how
// many counts are known at all.
func (d *Diary) counted() (all []oneCount, many int) {
	for _, f := range d.Figures.Fingers {
		c := d.rhythm(f.Rhythm)
		for _, of := range f.Counts {
			if c == nil || of.Step >= c.Steps() || !of.Offset.Known {
				continue
			}
			many++
			if e := of.Offset; f.Bias.Known {
				e.Value, e.Low, e.High = e.Value-f.Bias.Value, e.Low-f.Bias.Value, e.High-f.Bias.Value
				all = append(all, oneCount{f.Rhythm, picture.CountName(picture.CountsOf(c.Base()), of.Step), e})
			}
		}
	}
	return all, many
}

// roundTable is the pictures round the drumhead as a table.
func (d *Diary) roundTable(w say.Words) view.Item {
	it := view.Item{ID: "round-table", Role: view.RoleTable, Name: w.Say("round"), Columns: []string{
		w.Say("rhythm"), w.Say("column-count"), w.Say("column-mean"), w.Say("column-between")}}
	for _, f := range d.Figures.Fingers {
		c := d.rhythm(f.Rhythm)
		if c == nil {
			continue
		}
		for _, of := range f.Counts {
			if of.Step >= c.Steps() {
				continue
			}
			row := []string{d.name(f.Rhythm), picture.CountName(picture.CountsOf(c.Base()), of.Step), w.Say("too-few-yet"), view.None}
			if of.Offset.Known {
				row[2], row[3] = say.Offset(w, say.Millis(of.Offset.Value)), sayFromTo(w, of.Offset)
			}
			it.Rows = append(it.Rows, row)
		}
	}
	return it
}
