package view

import (
	"math"
	"strconv"
	"time"
	"unicode/utf8"

	"groundbeat/scoring"
	"groundbeat/scoring/diary"
)

// millis is a number of milliseconds as a time.
func millis(ms float64) time.Duration {
	return time.Duration(math.Round(ms * float64(time.Millisecond)))
}

// wideOf is about how wide a text is; a letter of a sans serif is 0.56 em in the mean.
func wideOf(text string, size float64) float64 {
	return 0.56 * size * float64(utf8.RuneCountInString(text))
}

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
func (d *Diary) fingers(w Words, f diary.Fingers) *Picture {
	p := &Picture{Height: fingersFoot + 0.215}
	p.panelHead(d.name(f.Rhythm), sayLean(w, f.Bias))
	p.stems(f.Bins)
	p.Line(InkDim, 0.02, fingersFoot, 0.98, fingersFoot, 0.003)
	for _, ms := range [...]float64{-100, -50, 50, 100} {
		p.Line(InkDim, msAt(ms), fingersFoot, msAt(ms), fingersFoot+0.014, 0.003)
		p.Text(InkDim, msAt(ms), fingersFoot+0.06, panelSmall, strconv.Itoa(int(math.Abs(ms))))
	}
	p.Line(InkDim, 0.5, fingersBeam+0.05, 0.5, fingersFoot, 0.003)
	p.Dot(InkBass, 0.5, fingersFoot+0.058, 0.038)
	p.Text(InkOnBass, 0.5, fingersFoot+0.058, panelSmall, "D").Strong()
	y := fingersFoot + 0.16
	p.Text(InkAhead, 0.02, y, panelSmall, w.Say("ahead")).At(AnchorStart)
	p.Text(InkDim, 0.5, y, panelSmall, w.Say("fingers-ms"))
	p.Text(InkBehind, 0.98, y, panelSmall, w.Say("behind")).At(AnchorEnd)
	p.beam(f)
	p.Twin = sayFingers(w, f)
	return p
}

// sayLean says to which side taps lean and how far, or that it cannot be told.
func sayLean(w Words, bias scoring.Estimate) string {
	if bias.Excludes(0) {
		return sayOffset(w, millis(bias.Value))
	}
	return w.Say("lean-none")
}

// stems draws one stem for each bin in which there is a tap.
func (p *Picture) stems(bins []int) {
	most := 1
	for _, n := range bins {
		most = max(most, n)
	}
	for i, n := range bins {
		if n == 0 {
			continue
		}
		ms := float64(diary.BinWidth)*(float64(i)+0.5) - diary.Reached
		ink := InkBehind
		if ms < 0 {
			ink = InkAhead
		}
		x := msAt(ms)
		p.Line(ink, x, fingersFoot-0.008, x, fingersFoot-0.008-(fingersTall-0.008)*float64(n)/float64(most), 0.0085)
	}
}

// beam marks the bias as a bar across, in its interval, and the spread to either
// side of it.
func (p *Picture) beam(f diary.Fingers) {
	at, low, high := msAt(f.Bias.Value), msAt(f.Bias.Low), msAt(f.Bias.High)
	if f.Spread.Known {
		left, right := msAt(f.Bias.Value-f.Spread.Value), msAt(f.Bias.Value+f.Spread.Value)
		p.Line(InkBone, left, fingersBeam, right, fingersBeam, 0.004)
		for _, x := range [...]float64{left, right} {
			p.Line(InkBone, x, fingersBeam-0.014, x, fingersBeam+0.014, 0.004)
		}
	}
	p.Line(InkBone, low, fingersBeam, high, fingersBeam, 0.018)
	p.Line(InkBone, at, fingersBeam-0.026, at, fingersBeam+0.026, 0.008)
}

func sayFingers(w Words, f diary.Fingers) string {
	text := w.Say("fingers-twin", "n", f.Taps, "mean", sayOffset(w, millis(f.Bias.Value)), "between", sayFromTo(w, f.Bias))
	if f.Spread.Known {
		text += " " + w.Say("fingers-twin-spread", "ms", wholeMs(millis(f.Spread.Value)))
	}
	return text
}

// sayFromTo says the interval of an offset: "4 to 12 ms behind", or, where it goes
// over the dum, "4 ms ahead to 12 ms behind".
func sayFromTo(w Words, e scoring.Estimate) string {
	low, high := wholeMs(millis(e.Low)), wholeMs(millis(e.High))
	switch {
	case high < 0:
		return w.Say("ms-from-ahead", "low", -high, "high", -low)
	case low > 0:
		return w.Say("ms-from-behind", "low", low, "high", high)
	}
	return w.Say("from-to", "from", sayOffset(w, millis(e.Low)), "to", sayOffset(w, millis(e.High)))
}

// leastLean is the least bias, in ms, that a sentence is made of: less is nothing
// that a dancer can use. Own choice.
const leastLean = 8

// findFingers says the one thing about finger timing: that the taps of all rhythms
// lean to one side; else the rhythm whose taps lean farthest, if its interval leaves no
// doubt to which side; else two rhythms whose spreads differ; else that no lean shows.
func (d *Diary) findFingers(w Words) string {
	all := known(d.Figures.Fingers, func(f diary.Fingers) bool { return f.Bias.Known })
	if len(all) == 0 {
		return ""
	}
	least, most, far := all[0].Bias, all[0].Bias, diary.Fingers{}
	for _, f := range all {
		if f.Bias.Value < least.Value {
			least = f.Bias
		}
		if f.Bias.Value > most.Value {
			most = f.Bias
		}
		if f.Bias.Excludes(0) && math.Abs(f.Bias.Value) > math.Abs(far.Bias.Value) {
			far = f
		}
	}
	lean := func(f diary.Fingers) bool { return math.Abs(f.Bias.Value) >= leastLean && f.Bias.Excludes(0) }
	throughout := len(all) > 1 && len(known(all, lean)) == len(all)
	switch v := far.Bias.Value; {
	case throughout && most.Value < 0:
		return w.Say("fingers-all-ahead", "low", wholeMs(millis(-most.Value)), "high", wholeMs(millis(-least.Value)))
	case throughout && least.Value > 0:
		return w.Say("fingers-all-behind", "low", wholeMs(millis(least.Value)), "high", wholeMs(millis(most.Value)))
	case v >= leastLean:
		return w.Say("fingers-behind", "rhythm", d.name(far.Rhythm), "ms", wholeMs(millis(v)), "between", sayWithin(w, far.Bias))
	case v <= -leastLean:
		return w.Say("fingers-ahead", "rhythm", d.name(far.Rhythm), "ms", wholeMs(millis(-v)), "between", sayWithin(w, far.Bias))
	}
	return d.findSpread(w, all)
}

// findSpread says in which rhythm taps lie closest together, and in which farthest
// apart, if their intervals do not meet; else that no lean shows.
func (d *Diary) findSpread(w Words, all []diary.Fingers) string {
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
		return w.Say("fingers-apart", "close", d.name(near.Rhythm), "wide", d.name(wide.Rhythm))
	}
	return w.Say("fingers-none")
}

// sayWithin says the interval of a lean to one side, in ms, without the side.
func sayWithin(w Words, e scoring.Estimate) string {
	low, high := math.Abs(e.Low), math.Abs(e.High)
	return w.Say("ms-between", "low", wholeMs(millis(min(low, high))), "high", wholeMs(millis(max(low, high))))
}

// fingersTable is the pictures of finger timing as a table.
func (d *Diary) fingersTable(w Words) Item {
	it := Item{ID: "fingers-table", Role: RoleTable, Name: w.Say("fingers"), Columns: []string{
		w.Say("rhythm"), w.Say("column-mean"), w.Say("column-between"), w.Say("column-spread"), w.Say("column-out"), w.Say("column-added")}}
	for _, f := range d.Figures.Fingers {
		row := []string{d.name(f.Rhythm), w.Say("too-few-yet"), none, none, none, none}
		if f.Bias.Known {
			row[1], row[2] = sayOffset(w, millis(f.Bias.Value)), sayFromTo(w, f.Bias)
			row[4], row[5] = w.Say("of", "n", f.Out, "of", f.Out+f.Taps), strconv.Itoa(f.Added)
		}
		if f.Spread.Known {
			row[3] = w.Say("ms", "ms", wholeMs(millis(f.Spread.Value)))
		}
		it.Rows = append(it.Rows, row)
	}
	return it
}
