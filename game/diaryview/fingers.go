package diaryview

import (
	"math"
	"strconv"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/roundview"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// The panel of finger timing, in parts of its width.
const (
	fingersFoot  = 0.47 // where the stems stand
	fingersTall  = 0.24 // the longest stem
	fingersBeam  = 0.17 // where bias and spread are marked
	fingersWidth = 0.94 // from −Reached to +Reached
)

// msAt is where an offset lies.
func msAt(ms float64) float64 {
	return 0.5 + fingersWidth*max(-0.5, min(0.5, ms/(2*diary.Reached)))
}

// fingers draws how the taps lay about the dums of one rhythm: a stem for every
// few milliseconds, as long as there are taps; over them the bias in its interval,
// and the spread to either side.
func (d *Diary) fingers(w say.Words, f diary.Fingers) *picture.Picture {
	p := &picture.Picture{Height: fingersFoot + 0.215}
	panelHead(p, d.name(f.Rhythm), roundview.SayLean(w, f.Bias))
	stems(p, f.Bins)
	p.Line(picture.InkDim, 0.02, fingersFoot, 0.98, fingersFoot, 0.003)
	for _, ms := range [...]float64{-100, -50, 50, 100} {
		p.Line(picture.InkDim, msAt(ms), fingersFoot, msAt(ms), fingersFoot+0.014, 0.003)
		p.Text(picture.InkDim, msAt(ms), fingersFoot+0.06, panelSmall, strconv.Itoa(int(math.Abs(ms))))
	}
	p.Line(picture.InkDim, 0.5, fingersBeam+0.05, 0.5, fingersFoot, 0.003)
	p.Dot(picture.InkBass, 0.5, fingersFoot+0.058, 0.038)
	p.Text(picture.InkOnBass, 0.5, fingersFoot+0.058, panelSmall, "D").Strong()
	y := fingersFoot + 0.16
	p.Text(picture.InkAhead, 0.02, y, panelSmall, w.Say("ahead")).At(picture.AnchorStart)
	p.Text(picture.InkDim, 0.5, y, panelSmall, w.Say("fingers-ms"))
	p.Text(picture.InkBehind, 0.98, y, panelSmall, w.Say("behind")).At(picture.AnchorEnd)
	beam(p, f)
	p.Twin = sayFingers(w, f)
	return p
}

// stems draws one stem for each bin in which there is a tap.
func stems(p *picture.Picture, bins []int) {
	most := 1
	for _, n := range bins {
		most = max(most, n)
	}
	for i, n := range bins {
		if n == 0 {
			continue
		}
		ms := float64(diary.BinWidth)*(float64(i)+0.5) - diary.Reached
		ink := picture.InkBehind
		if ms < 0 {
			ink = picture.InkAhead
		}
		x := msAt(ms)
		p.Line(ink, x, fingersFoot-0.008, x, fingersFoot-0.008-(fingersTall-0.008)*float64(n)/float64(most), 0.0085)
	}
}

// beam marks the bias as a bar across, in its interval, and the spread to either
// side of it.
func beam(p *picture.Picture, f diary.Fingers) {
	at, low, high := msAt(f.Bias.Value), msAt(f.Bias.Low), msAt(f.Bias.High)
	if f.Spread.Known {
		left, right := msAt(f.Bias.Value-f.Spread.Value), msAt(f.Bias.Value+f.Spread.Value)
		p.Line(picture.InkBone, left, fingersBeam, right, fingersBeam, 0.004)
		for _, x := range [...]float64{left, right} {
			p.Line(picture.InkBone, x, fingersBeam-0.014, x, fingersBeam+0.014, 0.004)
		}
	}
	p.Line(picture.InkBone, low, fingersBeam, high, fingersBeam, 0.018)
	p.Line(picture.InkBone, at, fingersBeam-0.026, at, fingersBeam+0.026, 0.008)
}

func sayFingers(w say.Words, f diary.Fingers) string {
	text := w.Say("fingers-twin", "n", f.Taps, "mean", say.Offset(w, say.Millis(f.Bias.Value)), "between", sayFromTo(w, f.Bias))
	if f.Spread.Known {
		text += " " + w.Say("fingers-twin-spread", "ms", say.WholeMs(say.Millis(f.Spread.Value)))
	}
	return text
}

// sayFromTo says the interval of an offset: "4 to 12 ms behind", or, where it goes
// over the dum, "4 ms ahead to 12 ms behind".
func sayFromTo(w say.Words, e scoring.Estimate) string {
	low, high := say.WholeMs(say.Millis(e.Low)), say.WholeMs(say.Millis(e.High))
	switch {
	case high < 0:
		return w.Say("ms-from-ahead", "low", -high, "high", -low)
	case low > 0:
		return w.Say("ms-from-behind", "low", low, "high", high)
	}
	return w.Say("from-to", "from", say.Offset(w, say.Millis(e.Low)), "to", say.Offset(w, say.Millis(e.High)))
}

// leastLean is the least bias, in ms, that a sentence is made of: less is nothing
// that a dancer can use. Own choice.
const leastLean = 8

// findFingers says the one thing about finger timing: that the taps of all rhythms
// lean to one side; else the rhythm whose taps lean farthest, if its interval leaves no
// doubt to which side; else two rhythms whose spreads differ; else that no lean shows.
// Of an output without a set-up nobody knows where the dum is heard: a lean is first
// told as its delay.
func (d *Diary) findFingers(w say.Words) finding {
	all := known(d.Figures.Fingers, func(f diary.Fingers) bool { return f.Bias.Known })
	if len(all) == 0 {
		return finding{}
	}
	leaning := known(all, leansSurely)
	least, most := extremes(all)
	oneSide := most < 0 || least > 0
	switch {
	case len(leaning) == 0:
		return d.findSpread(w, all)
	case d.unmeasured():
		return finding{roundview.SayUnmeasured(w, say.Millis(least), say.Millis(most)), []claim{{says: side(most)}}}
	case d.Figures.Output == "":
		return d.findLater(w, all)
	case len(all) > 1 && len(leaning) == len(all) && oneSide:
		return sayThroughout(w, least, most)
	}
	return d.sayFarthest(w, leaning)
}

// unmeasured reports whether the taps lean to one side in all rhythms, surely in one at
// least, on an output whose delay was never measured.
func (d *Diary) unmeasured() bool {
	all := known(d.Figures.Fingers, func(f diary.Fingers) bool { return f.Bias.Known })
	if d.Figures.Output != "" || len(known(all, leansSurely)) == 0 {
		return false
	}
	least, most := extremes(all)
	return most < 0 || least > 0
}

// leansSurely reports whether the taps of a rhythm lean to a side, beyond doubt and so far that
// it matters.
func leansSurely(f diary.Fingers) bool {
	return math.Abs(f.Bias.Value) >= leastLean && f.Bias.Excludes(0)
}

// extremes are the least and the most of the biases, in ms.
func extremes(all []diary.Fingers) (least, most float64) {
	least, most = all[0].Bias.Value, all[0].Bias.Value
	for _, f := range all {
		least, most = min(least, f.Bias.Value), max(most, f.Bias.Value)
	}
	return least, most
}

// side is to which side an offset lies.
func side(ms float64) says {
	if ms < 0 {
		return saysAhead
	}
	return saysBehind
}

func sayThroughout(w say.Words, least, most float64) finding {
	text := w.Say("fingers-all-behind", "low", say.WholeMs(say.Millis(least)), "high", say.WholeMs(say.Millis(most)))
	if most < 0 {
		text = w.Say("fingers-all-ahead", "low", say.WholeMs(say.Millis(-most)), "high", say.WholeMs(say.Millis(-least)))
	}
	return finding{text, []claim{{says: side(most)}}}
}

func (d *Diary) sayFarthest(w say.Words, leaning []diary.Fingers) finding {
	far := leaning[0]
	for _, f := range leaning {
		if math.Abs(f.Bias.Value) > math.Abs(far.Bias.Value) {
			far = f
		}
	}
	name, ms, between := d.name(far.Rhythm), say.WholeMs(say.Millis(math.Abs(far.Bias.Value))), sayWithin(w, far.Bias)
	text := w.Say("fingers-behind", "rhythm", name, "ms", ms, "between", between)
	if far.Bias.Value < 0 {
		text = w.Say("fingers-ahead", "rhythm", name, "ms", ms, "between", between)
	}
	return finding{text, []claim{{says: side(far.Bias.Value), rhythm: far.Rhythm}}}
}

// findLater says which rhythm is tapped later than which, if their intervals do not meet:
// that is so whatever the delay of the output is.
func (d *Diary) findLater(w say.Words, all []diary.Fingers) finding {
	early, late := all[0], all[0]
	for _, f := range all {
		if f.Bias.High < early.Bias.High {
			early = f
		}
		if f.Bias.Low > late.Bias.Low {
			late = f
		}
	}
	if !apart(early.Bias, late.Bias) {
		return d.findSpread(w, all)
	}
	by := late.Bias.Value - early.Bias.Value
	return finding{text: w.Say("fingers-later", "late", d.name(late.Rhythm), "early", d.name(early.Rhythm), "ms", say.WholeMs(say.Millis(by)))}
}

// findSpread says in which rhythm taps lie closest together, and in which farthest
// apart, if their intervals do not meet; else which rhythm leans, if one does, or that no
// lean shows.
func (d *Diary) findSpread(w say.Words, all []diary.Fingers) finding {
	var near, wide diary.Fingers
	for _, f := range all {
		if f.Spread.Known && (!near.Spread.Known || f.Spread.High < near.Spread.High) {
			near = f
		}
		if f.Spread.Known && (!wide.Spread.Known || f.Spread.Low > wide.Spread.Low) {
			wide = f
		}
	}
	if apart(near.Spread, wide.Spread) {
		return finding{text: w.Say("fingers-apart", "close", d.name(near.Rhythm), "wide", d.name(wide.Rhythm))}
	}
	if leaning := known(all, leansSurely); len(leaning) > 0 {
		return d.sayFarthest(w, leaning)
	}
	return finding{w.Say("fingers-none"), []claim{{says: saysNoLean}}}
}

// sayWithin says the interval of a lean to one side, in ms, without the side.
func sayWithin(w say.Words, e scoring.Estimate) string {
	low, high := math.Abs(e.Low), math.Abs(e.High)
	return w.Say("ms-between", "low", say.WholeMs(say.Millis(min(low, high))), "high", say.WholeMs(say.Millis(max(low, high))))
}

// fingersTable is the pictures of finger timing as a table.
func (d *Diary) fingersTable(w say.Words) view.Item {
	it := view.Item{ID: "fingers-table", Role: view.RoleTable, Name: w.Say("fingers"), Columns: []string{
		w.Say("rhythm"), w.Say("column-mean"), w.Say("column-between"), w.Say("column-spread"), w.Say("column-out"), w.Say("column-added")}}
	for _, f := range d.Figures.Fingers {
		row := []string{d.name(f.Rhythm), w.Say("too-few-yet"), view.None, view.None, view.None, view.None}
		if f.Bias.Known {
			row[1], row[2] = say.Offset(w, say.Millis(f.Bias.Value)), sayFromTo(w, f.Bias)
			row[4], row[5] = w.Say("of", "n", f.Out, "of", f.Out+f.Taps), strconv.Itoa(f.Added)
		}
		if f.Spread.Known {
			row[3] = w.Say("ms", "ms", say.WholeMs(say.Millis(f.Spread.Value)))
		}
		it.Rows = append(it.Rows, row)
	}
	return it
}
