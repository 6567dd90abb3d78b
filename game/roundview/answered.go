package roundview

import (
	"fmt"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// answered returns the screen after a question: what it was in a sentence, where that
// differs from what was said, on the line, and both to be heard in turn. The rest is
// shown when opened.
func (q *Which) answered(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading", q.Finding(w))}
	items = append(items, q.reasons(w)...)
	items = append(items, q.beside(w), q.shown(w),
		view.Item{ID: "next", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{nextQuestion(w), changeQuestion(w)}},
		inWords(w, q.differences(w), q.listen(w), q.at(w)))
	return review(view.Page(w, view.ScreenWhich, view.SayAsk(w, q.Ask), append(items, view.Notes(w, q.Notes)...)), q.hearing())
}

// inWords is what a review has to tell besides, shown when opened; nothing where there is
// nothing.
func inWords(w say.Words, items ...view.Item) view.Item {
	if items = view.Present(items); len(items) == 0 {
		return view.Item{}
	}
	return view.Item{ID: "details", Role: view.RoleDetails, Name: w.Say("in-words"), Children: items}
}

// beside is the line of what was right, and under it that of what was said; of a round in
// which it changed, what was played first, what it became and what was said. Where they
// have no common counts each line stands with its own picture.
func (q *Which) beside(w say.Words) view.Item {
	if b := q.lines(w); b != nil {
		return besideItem(w, b)
	}
	return view.Item{}
}

// lines is as many of the sides as can be laid one above another; nil where that are not
// two of two.
func (q *Which) lines(w say.Words) *picture.Beside {
	if !q.form().Pool {
		return nil
	}
	var names []string
	var cycles []*rhythm.Cycle
	for i, s := range q.Sides {
		names, cycles = append(names, view.Plain(q.name(w, i))), append(cycles, s.Rhythm)
	}
	for n := len(cycles); n > 0 && n >= min(2, len(cycles)); n-- {
		if b := picture.BesideOf(names[:n], cycles[:n], q.Board); b != nil {
			return b
		}
	}
	return nil
}

// at says how fast it was played.
func (q *Which) at(w say.Words) view.Item {
	if q.BPM == 0 || !q.form().Pool {
		return view.Item{}
	}
	return view.Item{ID: "tempo", Role: view.RoleText, Look: view.LookNote,
		Text: w.Say("tempo-played", "tempo", w.Say("tempo", "bpm", q.BPM))}
}

// Finding says in one sentence what it was and, if that is another, what was
// said.
func (q *Which) Finding(w say.Words) string {
	return q.asked().finding(q, w, q.Right.Value == q.Said.Value)
}

// reasons says what decides it: never more than a few lines.
func (q *Which) reasons(w say.Words) []view.Item { return q.asked().reasons(q, w) }

// listen says what to listen for in what was right.
func (q *Which) listen(w say.Words) view.Item {
	if !q.form().Named || len(q.Sides) == 0 {
		return view.Item{}
	}
	return listenForIn(w, q.Sides[0].Rhythm)
}

// listenForIn says what to listen for in a rhythm; nothing where it has nothing to
// tell it by.
func listenForIn(w say.Words, c *rhythm.Cycle) view.Item {
	if c.Listen == "" {
		return view.Item{}
	}
	return Reason("listen", w.Say("listen-for-in", "rhythm", view.Plain(c.Name), "what", c.Listen))
}

func Reason(id, text string) view.Item { return view.Item{ID: id, Role: view.RoleText, Text: text} }

func DumCounts(c *rhythm.Cycle) []string {
	var all []string
	for _, step := range c.Dums() {
		all = append(all, c.Spoken(step))
	}
	return all
}

// mostDifferences is how many places are told; who confused rhythms farther
// apart than this is helped by the first few.
const mostDifferences = 4

// differences says count by count where the two sides differ; nothing where they have no
// counts in common, or there is only one.
func (q *Which) differences(w say.Words) view.Item {
	if len(q.Differences) == 0 || len(q.Sides) < 2 || q.MetresApart() {
		return view.Item{}
	}
	it := view.Item{ID: "differences", Role: view.RoleList, Name: w.Say("where-differ")}
	for i, d := range q.Differences {
		if i == mostDifferences {
			it.Children = append(it.Children, view.Item{ID: "difference-more", Role: view.RoleListItem,
				Text: w.Say("differences-more", "n", len(q.Differences)-i)})
			break
		}
		it.Children = append(it.Children, view.Item{ID: fmt.Sprintf("difference-%d", i+1), Role: view.RoleListItem, Text: q.SayDifference(w, d)})
	}
	return it
}

// metresApart reports whether neither cycle goes into the other, so that no list
// of counts is of use.
func (q *Which) MetresApart() bool {
	return picture.ApartInMetre(q.Sides[0].Rhythm.Beats(), q.Sides[1].Rhythm.Beats())
}

func (q *Which) SayDifference(w say.Words, d rhythm.Difference) string {
	a, b := picture.SayStroke(w, d.A), picture.SayStroke(w, d.B)
	if q.form().Halves {
		return w.Say("difference-then", "count", d.Count, "a", a, "b", b)
	}
	return w.Say("difference", "count", d.Count, "a", a, "first", view.Plain(q.Sides[0].Rhythm.Name),
		"b", b, "second", view.Plain(q.Sides[1].Rhythm.Name))
}

// besideItem is lines of rhythms on a screen, the ones above the others.
func besideItem(w say.Words, s *picture.Beside) view.Item {
	p := &picture.Picture{}
	s.Draw(p)
	p.Twin = s.Twin(w)
	return view.Item{ID: "beside", Role: view.RolePicture, Name: w.Say("line-name"), Text: p.Twin,
		Picture: p, Aspect: p.Aspect(), Look: view.LookBoard}
}
