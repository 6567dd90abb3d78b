package roundview

import (
	"fmt"
	"slices"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Side is one of at most two rhythms shown side by side in a review: the right
// one first, then the one that was said; for AskSame what was heard first, then
// what came after, if it was changed. AskHowMany has one. After a change there may be
// a third, what was said that it became, which is heard and has no drumhead. For AskStroke a dum and
// a tek are always shown, and Sides only says which is heard.
type Side struct {
	ID      string        // the value of ActHear; for AskStroke "dum" or "tek"
	Rhythm  *rhythm.Cycle // for AskStroke nil
	Hearing bool          // this one is heard now
}

// sidePlaces and sideLetters are those of the sides.
var (
	sidePlaces  = [2]string{view.PlaceHeadA, view.PlaceHeadB}
	SideLetters = [3]string{"a", "b", "c"}
)

// hearing reports whether a side is heard now.
func (q *Which) hearing() bool {
	return slices.ContainsFunc(q.Sides, func(s Side) bool { return s.Hearing })
}

// sides returns what is shown side by side, two at most.
func (q *Which) sides() []Side {
	if q.form().Pool {
		return q.Sides[:min(2, len(q.Sides))]
	}
	both := []Side{{ID: "dum"}, {ID: "tek"}}
	for i := range both {
		both[i].Hearing = slices.Contains(q.Sides, Side{ID: both[i].ID, Hearing: true})
	}
	return both
}

// SideHead returns what the drumhead of a side shows when Reviewing, 0 for
// PlaceHeadA and 1 for PlaceHeadB; the painter adds the sweep to the one that is
// heard. It is a bare drum where there is no such side.
func (q *Which) SideHead(i int) picture.Head {
	sides := q.sides()
	switch {
	case !q.form().Pool:
		return picture.Head{Base: [2]rhythm.Pattern{{rhythm.Dum}, {rhythm.Tek}}[i]}
	case i >= len(sides):
		return picture.Head{Hidden: true}
	}
	c := sides[i].Rhythm
	return picture.Head{Base: c.Skeleton, Counts: picture.CountsOf(c.Base()), Groups: c.Grouping}
}

// shown returns the drumheads of the sides, each with a button that names it and lets it
// be heard, and what can be set of how.
func (q *Which) shown(w say.Words) view.Item {
	it := view.Item{ID: "sides", Role: view.RoleGroup, Look: view.LookPair}
	for i, s := range q.sides() {
		letter := SideLetters[i]
		it.Children = append(it.Children, view.Item{ID: "side-" + letter, Role: view.RoleGroup, Name: q.name(w, i), Children: view.Present([]view.Item{
			{ID: "picture-" + letter, Role: view.RolePicture, Name: w.Say("head-name"), Text: q.sideTwin(w, i),
				Place: sidePlaces[i], Aspect: 1},
			q.hear(w, i, s),
			q.sideLine(w, i),
		})})
	}
	if len(it.Children) == 0 {
		return view.Item{}
	}
	it.Children = view.Present(append(it.Children, q.again(w)))
	return it
}

func (q *Which) sideTwin(w say.Words, i int) string {
	switch {
	case q.form().Pool:
		h := q.SideHead(i)
		return h.Twin(w)
	case i == 0:
		return w.Say("head-dum")
	}
	return w.Say("head-tek")
}

// sideLine is the line of a side that has no counts in common with the other.
func (q *Which) sideLine(w say.Words, i int) view.Item {
	if !q.form().Pool || q.lines(w) != nil {
		return view.Item{}
	}
	l := picture.LineOf(q.Sides[i].Rhythm, q.Sides[i].Rhythm.Base(), nil, q.Board/2)
	return view.Still(w, "line-"+SideLetters[i], &l)
}

// name is what stands over the line of a side.
func (q *Which) name(w say.Words, i int) string { return q.asked().side(q, w, i) }

// hear is one button in two states, so that the focus stays on it.
func (q *Which) hear(w say.Words, i int, s Side) view.Item {
	it := view.Item{ID: fmt.Sprintf("hear-%s", SideLetters[i]), Role: view.RoleButton, Name: q.sayHear(w, i),
		Action: view.ActHear, Value: s.ID, Disabled: q.Volume < 0}
	if s.Hearing {
		it.Name, it.Action, it.Value = w.Say("stop"), view.ActStop, ""
	}
	return it
}

func (q *Which) sayHear(w say.Words, i int) string { return q.asked().hear(q, w, i) }
