package view

import (
	"fmt"
	"time"
)

// reviewing returns the screen after a round: the one sentence, the figures, the
// two pictures, what to do next, and every tap for those who want it.
func (d *Dums) reviewing(w Words) Screen {
	r := d.Result
	items := []Item{
		heading("heading", w.Say("review-heading", "rhythm", d.Rhythm.Name)),
		{ID: "finding", Role: RoleText, Look: LookFinding, Text: Finding(*r, w)}, r.remedy(w),
		{ID: "next", Role: RoleGroup, Look: LookRow, Children: d.next(w)},
		{ID: "figures", Role: RoleGroup, Look: LookFigures, Children: d.figures(w)},
		d.line(w), d.head(w), d.again(w),
	}
	return d.reviewed(w, ScreenDums, w.Say("review-page", "rhythm", d.Rhythm.Name), items)
}

// reviewed is the screen after a round, of this or another exercise whose strokes are
// tapped: the items, and below them what is aside, every tap, and the notes.
func (d *Dums) reviewed(w Words, screen, title string, items []Item) Screen {
	items = append(append(items, d.asides(w)...), everyTap(w, d.Result))
	return review(page(w, screen, title, append(items, notes(w, d.Notes)...)), d.Again.Hearing)
}

// review is the screen after a round: Escape leads out of it, or ends what is heard once
// more.
func review(s Screen, hearing bool) Screen {
	s.Escape = ActChange
	if hearing {
		s.Escape = ActStop
	}
	return s
}

// everyTap has the figures for those who want them, shown when opened.
func everyTap(w Words, r *Result) Item {
	it := Item{ID: "details", Role: RoleDetails, Name: w.Say("review-details"), Children: []Item{byCount(w, r)}}
	if len(r.Taps) > 0 {
		it.Children = append(it.Children, oneByOne(w, r))
	}
	it.Children = append(it.Children, Item{ID: "export", Role: RoleButton, Name: w.Say("export"), Action: ActExport})
	return it
}

// remedy is the way to Set-up, where it is what would help; else nothing.
func (r *Result) remedy(w Words) Item {
	if !r.sends(w) {
		return Item{}
	}
	return toSetUp(w)
}

// takenOff says which set-up mean is taken off; nothing without one.
func takenOff(w Words, setUp *time.Duration) Item {
	if setUp == nil {
		return Item{}
	}
	return Item{ID: "set-up", Role: RoleText, Look: LookNote, Text: w.Say("review-set-up", "offset", sayOffset(w, *setUp))}
}

// next is what to do after a round. With Any the rhythm is named by now: the next
// round brings another, and this one can be had once more.
func (d *Dums) next(w Words) []Item {
	once := d.once(w)
	if !d.Any {
		return []Item{once, d.slower(w), d.change(w)}
	}
	once.Look = ""
	return []Item{{ID: "next-rhythm", Role: RoleButton, Name: w.Say("next-rhythm"), Action: ActNext, Look: LookPrimary},
		once, d.slower(w), d.change(w)}
}

func (d *Dums) slower(w Words) Item {
	return Item{ID: "slower", Role: RoleButton, Name: w.Say("slower"), Action: ActSlower, Disabled: d.BPM <= d.Slow}
}

func (d *Dums) figures(w Words) []Item {
	r := d.Result
	items := []Item{figure("on", w.Say("on"), w.Say("of", "n", r.On, "of", r.Asked))}
	if r.Lean.Known {
		items = append(items, figure("bias", w.Say("review-whole"), sayLean(w, r.Lean)))
	}
	if r.Landed > 1 {
		items = append(items, figure("spread", w.Say("spread"), w.Say("ms", "ms", wholeMs(r.Spread))))
	}
	return append(items, figure("left-out", w.Say("left-out"), fmt.Sprint(r.LeftOut)),
		figure("added", w.Say("added"), fmt.Sprint(r.Added)),
		figure("tempo", w.Say("counts-a-minute"), fmt.Sprint(d.BPM)))
}

// asides says what has to be known to read the figures rightly.
func (d *Dums) asides(w Words) []Item {
	items := []Item{{ID: "fingers", Role: RoleText, Look: LookNote, Text: w.Say("review-fingers")}}
	h := d.Head()
	if times := h.Enlarged(); times > 1 {
		items = append(items, Item{ID: "enlarged", Role: RoleText, Look: LookNote, Text: w.Say("enlarged", "times", times)})
	}
	if text := sayOpened(w, d.Review.Open, d.Result.Open); text != "" {
		items = append(items, Item{ID: "open", Role: RoleText, Look: LookNote, Text: text})
	}
	return append(items, takenOff(w, d.Result.SetUp))
}

func byCount(w Words, r *Result) Item {
	it := Item{ID: "by-count", Role: RoleTable, Name: w.Say("review-counts"),
		Columns: []string{w.Say("column-count"), w.Say("column-tapped"),
			w.Say("column-mean"), w.Say("column-spread")}}
	for _, c := range r.Counts {
		row := []string{c.Count, w.Say("of", "n", c.Tapped, "of", c.Asked), none, none}
		if c.Tapped > 0 {
			row[2] = sayOffset(w, c.Mean)
		}
		if c.Tapped > 1 {
			row[3] = w.Say("ms", "ms", wholeMs(c.Spread))
		}
		it.Rows = append(it.Rows, row)
	}
	if r.Landed > 1 && len(r.Counts) > 1 {
		it.Rows = append(it.Rows, []string{w.Say("count-all"), w.Say("of", "n", r.Landed, "of", r.Asked),
			sayOffset(w, r.Bias), w.Say("ms", "ms", wholeMs(r.Spread))})
	}
	return it
}

func oneByOne(w Words, r *Result) Item {
	it := Item{ID: "one-by-one", Role: RoleTable, Name: w.Say("review-taps"),
		Columns: []string{w.Say("column-eight"), w.Say("column-count"), w.Say("column-offset"), w.Say("column-how")}}
	for _, t := range r.Taps {
		offset := none
		if t.State < TapLeftOut {
			offset = Milliseconds(t.Offset) + " ms"
		}
		it.Rows = append(it.Rows, []string{fmt.Sprint(t.Eight), t.Count, offset, sayState(w, t.State)})
	}
	return it
}

func sayState(w Words, s TapState) string {
	switch s {
	case TapAhead:
		return w.Say("ahead")
	case TapBehind:
		return w.Say("behind")
	case TapLeftOut:
		return w.Say("left-out")
	case TapAdded:
		return w.Say("added")
	}
	return w.Say("on")
}
