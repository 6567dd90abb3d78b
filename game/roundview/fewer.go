package roundview

import (
	"groundbeat/game/quiz"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Fewer is why questions have fewer names to choose from than were asked for.
type Fewer struct {
	Least, Most int
	Few         string    // the rhythm around which there are Least
	Apart       [2]string // two that are never asked together; empty: unknown
	Speed       bool      // since they are the same strokes at two speeds; else since they have no tempo in common
}

// FewerOf returns it of the questions of a pool, nil where none has fewer.
func FewerOf(n quiz.Names) *Fewer {
	if n.Few == nil {
		return nil
	}
	f := &Fewer{Least: n.Least, Most: n.Most, Few: n.Few.Name, Speed: n.Speed}
	for i, c := range n.Apart {
		if c != nil {
			f.Apart[i] = c.Name
		}
	}
	return f
}

// say says it beside the choice of how many names.
func (f *Fewer) say(w say.Words) view.Item {
	if f == nil {
		return view.Item{}
	}
	it := view.Item{ID: "fewer", Role: view.RoleText, Look: view.LookNote}
	switch a, b := view.Plain(f.Apart[0]), view.Plain(f.Apart[1]); {
	case f.Least < f.Most:
		it.Text = w.Say("fewer-some", "n", f.Least, "rhythm", view.Plain(f.Few))
	case f.Apart[0] == "":
		it.Text = w.Say("fewer", "n", f.Most)
	case f.Speed:
		it.Text = w.Say("fewer-speed", "n", f.Most, "a", a, "b", b)
	default:
		it.Text = w.Say("fewer-tempo", "n", f.Most, "a", a, "b", b)
	}
	return it
}
