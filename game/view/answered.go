package view

import (
	"fmt"

	"groundbeat/game/rhythm"
)

// answered returns the screen after a question: what it was in a sentence, where that
// differs from what was said, on the line, and both to be heard in turn. The rest is
// shown when opened.
func (q *Which) answered(w Words) Screen {
	items := []Item{heading("heading", q.Finding(w))}
	items = append(items, q.reasons(w)...)
	items = append(items, q.beside(w), q.shown(w),
		Item{ID: "next", Role: RoleGroup, Look: LookRow, Children: []Item{nextQuestion(w), changeQuestion(w)}},
		inWords(w, q.differences(w), q.listen(w), q.at(w)))
	return review(page(w, ScreenWhich, sayAsk(w, q.Ask), append(items, notes(w, q.Notes)...)), q.hearing())
}

// inWords is what a review has to tell besides, shown when opened; nothing where there is
// nothing.
func inWords(w Words, items ...Item) Item {
	if items = present(items); len(items) == 0 {
		return Item{}
	}
	return Item{ID: "details", Role: RoleDetails, Name: w.Say("in-words"), Children: items}
}

// beside is the line of what was right, and under it that of what was said; of a round in
// which it changed, what was played first, what it became and what was said. Where they
// have no common counts each line stands with its own picture.
func (q *Which) beside(w Words) Item {
	if b := q.lines(w); b != nil {
		return besideItem(w, b)
	}
	return Item{}
}

// lines is as many of the sides as can be laid one above another; nil where that are not
// two of two.
func (q *Which) lines(w Words) *Beside {
	if !q.form().Pool {
		return nil
	}
	var names []string
	var cycles []*rhythm.Cycle
	for i, s := range q.Sides {
		names, cycles = append(names, plain(q.name(w, i))), append(cycles, s.Rhythm)
	}
	for n := len(cycles); n > 0 && n >= min(2, len(cycles)); n-- {
		if b := besideOf(names[:n], cycles[:n], q.Board); b != nil {
			return b
		}
	}
	return nil
}

// at says how fast it was played.
func (q *Which) at(w Words) Item {
	if q.BPM == 0 || !q.form().Pool {
		return Item{}
	}
	return Item{ID: "tempo", Role: RoleText, Look: LookNote,
		Text: w.Say("tempo-played", "tempo", w.Say("tempo", "bpm", q.BPM))}
}

// Finding says in one sentence what it was and, if that is another, what was
// said.
func (q *Which) Finding(w Words) string {
	return q.asked().finding(q, w, q.Right.Value == q.Said.Value)
}

// reasons says what decides it: never more than a few lines.
func (q *Which) reasons(w Words) []Item { return q.asked().reasons(q, w) }

// listen says what to listen for in what was right.
func (q *Which) listen(w Words) Item {
	if !q.form().Named || len(q.Sides) == 0 {
		return Item{}
	}
	return listenForIn(w, q.Sides[0].Rhythm)
}

// listenForIn says what to listen for in a rhythm; nothing where it has nothing to
// tell it by.
func listenForIn(w Words, c *rhythm.Cycle) Item {
	if c.Listen == "" {
		return Item{}
	}
	return reason("listen", w.Say("listen-for-in", "rhythm", plain(c.Name), "what", c.Listen))
}

func reason(id, text string) Item { return Item{ID: id, Role: RoleText, Text: text} }

func dumCounts(c *rhythm.Cycle) []string {
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
func (q *Which) differences(w Words) Item {
	if len(q.Differences) == 0 || len(q.Sides) < 2 || q.metresApart() {
		return Item{}
	}
	it := Item{ID: "differences", Role: RoleList, Name: w.Say("where-differ")}
	for i, d := range q.Differences {
		if i == mostDifferences {
			it.Children = append(it.Children, Item{ID: "difference-more", Role: RoleListItem,
				Text: w.Say("differences-more", "n", len(q.Differences)-i)})
			break
		}
		it.Children = append(it.Children, Item{ID: fmt.Sprintf("difference-%d", i+1), Role: RoleListItem, Text: q.difference(w, d)})
	}
	return it
}

// metresApart reports whether neither cycle goes into the other, so that no list
// of counts is of use.
func (q *Which) metresApart() bool {
	return apartInMetre(q.Sides[0].Rhythm.Beats(), q.Sides[1].Rhythm.Beats())
}

func (q *Which) difference(w Words, d rhythm.Difference) string {
	a, b := sayStroke(w, d.A), sayStroke(w, d.B)
	if q.form().Halves {
		return w.Say("difference-then", "count", d.Count, "a", a, "b", b)
	}
	return w.Say("difference", "count", d.Count, "a", a, "first", plain(q.Sides[0].Rhythm.Name),
		"b", b, "second", plain(q.Sides[1].Rhythm.Name))
}

// besideItem is lines of rhythms on a screen, the ones above the others.
func besideItem(w Words, s *Beside) Item {
	p := &Picture{}
	s.Draw(p)
	p.Twin = s.Twin(w)
	return Item{ID: "beside", Role: RolePicture, Name: w.Say("line-name"), Text: p.Twin,
		Picture: p, Aspect: p.Aspect(), Look: LookBoard}
}
