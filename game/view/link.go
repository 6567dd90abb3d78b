package view

import "fmt"

// WrongLink is what the screen of a link that cannot be opened is made from.
type WrongLink struct {
	Problems []Problem
	Nearest  Address
	Rhythm   string // name of the nearest address's rhythm
}

// Screen returns the screen that says what is wrong with a link, what is allowed,
// and offers the nearest link that can be opened.
func (l *WrongLink) Screen(w Words) Screen {
	list := Item{ID: "problems", Role: RoleList}
	for i, p := range l.Problems {
		list.Children = append(list.Children, Item{ID: fmt.Sprintf("problem-%d", i+1),
			Role: RoleListItem, Text: sayProblem(w, p)})
	}
	return Screen{ID: "link", Title: w.Say("link-page") + " – " + w.Say("product"),
		Lang: w.Say("language"), Dir: w.Say("direction"), Items: []Item{
			heading("heading", w.Say("link-heading")), list,
			{ID: "open", Role: RoleButton, Name: l.open(w), Action: ActOpen, Look: LookPrimary},
		}}
}

func (l *WrongLink) open(w Words) string {
	length := w.Say("eights", "n", l.Nearest.Eights)
	if l.Nearest.BPM == 0 {
		return w.Say("link-open", "rhythm", l.Rhythm, "length", length)
	}
	return w.Say("link-open-at", "rhythm", l.Rhythm, "bpm", w.Say("tempo", "bpm", l.Nearest.BPM), "length", length)
}

func sayProblem(w Words, p Problem) string {
	if p.Unknown {
		return w.Say("link-unknown", "name", p.Name, "allowed", p.Allowed)
	}
	return w.Say("link-wrong", "name", p.Name, "value", p.Value, "allowed", p.Allowed)
}
