package classview

import (
	"fmt"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/roundview"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// telling returns the screen that says what it was, and lets it be heard: in turn, and
// then once more under the riff.
func (r *Room) telling(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading-told", r.told(w))}
	items = append(items, r.reasons(w)...)
	if r.Stage == warmup.Hearing {
		items[0] = view.Heading("heading-hear", w.Say("class-hear-now"))
		items = items[:1]
	}
	line := view.Item{}
	if r.Rhythm != nil {
		items, line = append(items, r.shown(w)), r.line(w)
	}
	go1 := big("go", w.Say("class-on"), view.ActClassNext)
	if r.Stage == warmup.Telling && r.Kind.Counted() {
		go1.Name = w.Say("class-under")
	}
	once := small("once", w.Say("once-more"), view.ActClassOnce, "")
	if r.Sounds {
		once.Name, once.Value = w.Say("stop"), "stop"
	}
	return r.screen(w, append(items, r.problem()), line, go1, ways(w, small("back", w.Say("class-back"), view.ActClassBack, ""), once, r.Help.AloneButton(w, r.Sounds)), r.where(w))
}

// long reports whether names are long and the line is close, so that there is room for
// one sentence.
func (r *Room) long() bool { return r.Rhythm != nil && r.Rhythm.Steps() > mostInRow/2 }

// told is what it was, in large.
func (r *Room) told(w say.Words) string {
	if r.Told == nil {
		return r.name()
	}
	switch right := r.Told.Right; r.Kind {
	case warmup.HandsUp:
		return w.Say("it-was", "right", view.Plain(right.Label))
	case warmup.WhatChanged:
		return w.Say("class-was-count", "n", right.Value)
	case warmup.BaseOrRiff:
		return w.Say("class-was-base", "answer", sayBase(w, right.Value))
	case warmup.FindTheOne:
		return w.Say("class-was-on", "n", right.Value)
	}
	return r.name()
}

// reasons says by count what tells it from what it was taken for; of what was danced,
// and of the 1, where its dums are.
func (r *Room) reasons(w say.Words) []view.Item {
	var texts []string
	switch {
	case r.Rhythm == nil:
		return nil
	case r.Told == nil:
		texts = []string{sayDums(w, r.Rhythm)}
	case r.Kind == warmup.BaseOrRiff:
		texts = []string{r.sayBase(w)}
	case r.Kind == warmup.FindTheOne:
		texts = []string{sayDums(w, r.Told.Sides[0])}
	case r.Kind == warmup.WhatChanged && r.Told.Sides[1] != nil:
		texts = []string{r.sayMoved(w)}
	default:
		texts = r.differences(w)
	}
	var items []view.Item
	for i, t := range texts {
		items = append(items, roundview.Reason(fmt.Sprintf("reason-%d", i+1), t))
	}
	return items
}

func sayDums(w say.Words, c *rhythm.Cycle) string {
	return w.Say("where-dums", "n", len(c.Dums()), "rhythm", view.Plain(c.Name), "counts", say.List(w, roundview.DumCounts(c)))
}

// mostReasons is how many differences a room is told.
const mostReasons = 2

func (r *Room) differences(w say.Words) []string {
	t := r.Told
	q := &roundview.Which{Ask: view.AskRhythm}
	if t.Sides[1] == nil {
		return []string{sayDums(w, t.Sides[0])}
	}
	q.Sides = []roundview.Side{{Rhythm: t.Sides[0]}, {Rhythm: t.Sides[1]}}
	var texts []string
	if taken := r.taken(w); taken != "" && r.Kind == warmup.HandsUp {
		texts = append(texts, taken)
	}
	if len(t.Differences) == 0 {
		return append(texts, w.Say("metres-apart", "first", view.Plain(t.Sides[0].Name), "a", t.Sides[0].Metre, "second", view.Plain(t.Sides[1].Name), "b", t.Sides[1].Metre))
	}
	for i, d := range t.Differences {
		if i == mostReasons {
			break
		}
		texts = append(texts, q.SayDifference(w, d))
	}
	if r.long() && r.Sounds { // and what is heard is said too
		return texts[:1]
	}
	return texts[:min(len(texts), mostReasons)]
}

// taken says what the room took it for, with the hands as they were counted; nothing
// where they do not tell.
func (r *Room) taken(w say.Words) string {
	t, rhythm := r.Told, view.Plain(r.Told.Taken.Label)
	switch t.Hands {
	case "", warmup.None:
		return ""
	case warmup.Most:
		return w.Say("class-taken-most", "rhythm", rhythm)
	case warmup.Some:
		return w.Say("class-taken-some", "rhythm", rhythm)
	case warmup.Few:
		return w.Say("class-taken-few", "rhythm", rhythm)
	}
	n, _ := t.Hands.Number()
	return w.Say("class-taken", "n", n, "rhythm", rhythm)
}

// sayMoved says which stroke was moved, and from where to where.
func (r *Room) sayMoved(w say.Words) string {
	from, to := r.Told.moved()
	side := r.Told.Sides[0]
	return w.Say("class-moved", "stroke", picture.SayStroke(w, side.Skeleton[from]), "from", side.Spoken(from), "to", side.Spoken(to))
}

// sayBase says why it is on the base or off it: of what is heard now, if that is one of
// the two in turn, else of what was asked.
func (r *Room) sayBase(w say.Words) string {
	switch r.Turn {
	case warmup.OnBase:
		return w.Say("class-hears-on")
	case warmup.OffBase:
		return w.Say("class-hears-off")
	}
	if r.Told.Right.Value == warmup.OnBase {
		return w.Say("class-why-on")
	}
	return w.Say("class-why-off")
}

// shown says what the line and the head show, where there are two that they may.
func (r *Room) shown(w say.Words) view.Item {
	it := view.Item{ID: "shown", Role: view.RoleText}
	switch {
	case r.Told == nil || r.Told.Sides[1] == nil || r.Kind == warmup.BaseOrRiff:
		return view.Item{}
	case r.Kind == warmup.WhatChanged: // its rows are named
		return view.Item{}
	case r.Sounds:
		it.Text = w.Say("class-you-hear", "rhythm", r.name())
	default:
		return view.Item{}
	}
	return it
}
