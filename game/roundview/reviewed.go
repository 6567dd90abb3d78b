package roundview

import (
	"fmt"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"time"
)

// reviewing returns the screen after a round: the one sentence, the figures, the
// two pictures, what to do next, and every tap for those who want it.
func (d *Dums) reviewing(w say.Words) view.Screen {
	r := d.Result
	items := []view.Item{
		view.Heading("heading", w.Say("review-heading", "rhythm", d.Rhythm.Name)),
		{ID: "finding", Role: view.RoleText, Look: view.LookFinding, Text: Finding(*r, w)}, r.remedy(w),
		{ID: "next", Role: view.RoleGroup, Look: view.LookRow, Children: d.next(w)},
		{ID: "figures", Role: view.RoleGroup, Look: view.LookFigures, Children: d.figures(w)},
		d.line(w), d.head(w), d.again(w),
	}
	return d.reviewed(w, w.Say("review-page", "rhythm", d.Rhythm.Name), items)
}

// reviewed is the screen after a round, of this or another exercise whose strokes are
// tapped: the items, and below them what is aside, every tap, and the notes.
func (d *Dums) reviewed(w say.Words, title string, items []view.Item) view.Screen {
	items = append(append(items, d.asides(w)...), d.everyTap(w))
	return review(view.Page(w, d.screen(), title, append(items, view.Notes(w, d.Notes)...)), d.Replay.Hearing)
}

// review is the screen after a round: Escape leads out of it, or ends what is heard once
// more.
func review(s view.Screen, hearing bool) view.Screen {
	s.Escape = view.ActChange
	if hearing {
		s.Escape = view.ActStop
	}
	return s
}

// everyTap has the figures for those who want them, shown when opened.
func (d *Dums) everyTap(w say.Words) view.Item {
	r := d.Result
	it := view.Item{ID: "details", Role: view.RoleDetails, Name: w.Say("review-details"), Children: []view.Item{byCount(w, r)}}
	if len(r.Taps) > 0 {
		it.Children = append(it.Children, d.oneByOne(w))
	}
	it.Children = append(it.Children, view.Item{ID: "export", Role: view.RoleButton, Name: w.Say("export"), Action: view.ActExport})
	return it
}

// remedy is the way to Set-up, where it is what would help; else nothing.
func (r *Result) remedy(w say.Words) view.Item {
	if !r.sends(w) {
		return view.Item{}
	}
	return ToSetUp(w)
}

// takenOff says which set-up mean is taken off; nothing without one.
func takenOff(w say.Words, setUp *time.Duration) view.Item {
	if setUp == nil {
		return view.Item{}
	}
	return view.Item{ID: "set-up", Role: view.RoleText, Look: view.LookNote, Text: w.Say("review-set-up", "offset", say.Offset(w, *setUp))}
}

// next is what to do after a round. With Any the rhythm is named by now: the next
// round brings another, and this one can be had once more.
func (d *Dums) next(w say.Words) []view.Item {
	once := d.once(w)
	if !d.Any {
		return []view.Item{once, d.slower(w), d.change(w)}
	}
	once.Look = ""
	return []view.Item{{ID: "next-rhythm", Role: view.RoleButton, Name: w.Say("next-rhythm"), Action: view.ActNext, Look: view.LookPrimary},
		once, d.slower(w), d.change(w)}
}

func (d *Dums) slower(w say.Words) view.Item {
	return view.Item{ID: "slower", Role: view.RoleButton, Name: w.Say("slower"), Action: view.ActSlower, Disabled: d.BPM <= d.Slow}
}

func (d *Dums) figures(w say.Words) []view.Item {
	r := d.Result
	items := []view.Item{view.Figure("on", tappingOf(d.Kind).found(w, foundOn), w.Say("of", "n", r.On, "of", r.Asked))}
	if r.Lean.Known {
		items = append(items, view.Figure("bias", w.Say("review-whole"), SayLean(w, r.Lean)))
	}
	if r.Landed > 1 {
		items = append(items, view.Figure("spread", w.Say("spread"), w.Say("ms", "ms", say.WholeMs(r.Spread))))
	}
	return append(items, view.Figure("left-out", w.Say("left-out"), fmt.Sprint(r.LeftOut)),
		view.Figure("added", w.Say("added"), fmt.Sprint(r.Added)),
		view.Figure("tempo", w.Say("counts-a-minute"), fmt.Sprint(d.BPM)))
}

// asides says what has to be known to read the figures rightly.
func (d *Dums) asides(w say.Words) []view.Item {
	items := []view.Item{{ID: "fingers", Role: view.RoleText, Look: view.LookNote, Text: w.Say("review-fingers")},
		{ID: "close", Role: view.RoleText, Look: view.LookNote, Text: tappingOf(d.Kind).found(w, foundClose, "ms", say.WholeMs(d.Review.On), "tempo", w.Say("tempo", "bpm", d.BPM))}}
	h := d.Head()
	if times := h.Enlarged(); times > 1 {
		items = append(items, view.Item{ID: "enlarged", Role: view.RoleText, Look: view.LookNote, Text: w.Say("enlarged", "times", times)})
	}
	if text := d.Result.sayOpened(w, d.Review.Open, d.Result.Open); text != "" {
		items = append(items, view.Item{ID: "open", Role: view.RoleText, Look: view.LookNote, Text: text})
	}
	return append(items, takenOff(w, d.Result.SetUp))
}

func byCount(w say.Words, r *Result) view.Item {
	it := view.Item{ID: "by-count", Role: view.RoleTable, Name: w.Say("review-counts"),
		Columns: []string{w.Say("column-count"), w.Say("column-tapped"),
			w.Say("column-mean"), w.Say("column-spread")}}
	for _, c := range r.Counts {
		row := []string{c.Count, w.Say("of", "n", c.Tapped, "of", c.Asked), view.None, view.None}
		if c.Tapped > 0 {
			row[2] = say.Offset(w, c.Mean)
		}
		if c.Tapped > 1 {
			row[3] = w.Say("ms", "ms", say.WholeMs(c.Spread))
		}
		it.Rows = append(it.Rows, row)
	}
	if r.Landed > 1 && len(r.Counts) > 1 {
		it.Rows = append(it.Rows, []string{w.Say("count-all"), w.Say("of", "n", r.Landed, "of", r.Asked),
			say.Offset(w, r.Bias), w.Say("ms", "ms", say.WholeMs(r.Spread))})
	}
	return it
}

func (d *Dums) oneByOne(w say.Words) view.Item {
	it := view.Item{ID: "one-by-one", Role: view.RoleTable, Name: w.Say("review-taps"),
		Columns: []string{w.Say("column-eight"), w.Say("column-count"), w.Say("column-offset"), w.Say("column-how")}}
	for _, t := range d.Result.Taps {
		offset := view.None
		if t.State < TapLeftOut {
			offset = picture.Milliseconds(t.Offset) + " ms"
		}
		it.Rows = append(it.Rows, []string{fmt.Sprint(t.Eight), t.Count, offset, d.sayState(w, t.State)})
	}
	return it
}

func (d *Dums) sayState(w say.Words, s TapState) string {
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
	return tappingOf(d.Kind).found(w, foundOn)
}
