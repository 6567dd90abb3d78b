package view

import "fmt"

// WrongLink is what the screen of a link that cannot be opened is made from.
type WrongLink struct {
	Problems []Problem
	Nearest  Address
	Rhythm   string // name of the nearest address's rhythm; empty for those that have none, and for Any
}

// Screen returns the screen that says what is wrong with a link, what is allowed,
// and offers the nearest link that can be opened.
func (l *WrongLink) Screen(w Words) Screen {
	list := Item{ID: "problems", Role: RoleList}
	for i, p := range l.Problems {
		list.Children = append(list.Children, Item{ID: fmt.Sprintf("problem-%d", i+1),
			Role: RoleListItem, Text: sayProblem(w, p)})
	}
	head := l.Head()
	s := page(w, "link", w.Say("link-page"), []Item{
		heading("heading", w.Say("link-heading")), list,
		{ID: "nearest", Role: RoleText, Text: w.Say("link-nearest", "what", l.nearest(w))}, stage(w, head.Twin(w)),
		{ID: "open", Role: RoleButton, Name: w.Say("link-open-it"), Action: ActOpen, Look: LookPrimary},
	})
	s.Escape = ActHome
	return s
}

// Head returns what the drumhead shows: the drum at rest.
func (l *WrongLink) Head() Head { return Head{Hidden: true} }

// nearest names the nearest link.
func (l *WrongLink) nearest(w Words) string {
	if opens := targetOf(l.Nearest.Screen).opens; opens != nil {
		return opens(w, l)
	}
	return w.Say("link-open-which", "ask", sayScreen(w, l.Nearest.Screen))
}

func opensHome(w Words, _ *WrongLink) string  { return w.Say("link-open-home") }
func opensSetUp(w Words, _ *WrongLink) string { return w.Say("link-open-set-up") }
func opensCheck(w Words, _ *WrongLink) string { return w.Say("link-open-check") }

func opensAsk(w Words, l *WrongLink) string {
	return w.Say("link-open-which", "ask", sayAsk(w, l.Nearest.Ask))
}

func opensListen(w Words, l *WrongLink) string {
	return w.Say("link-open-listen", "rhythm", l.Rhythm)
}

func opensRound(w Words, l *WrongLink) string {
	a := l.Nearest
	length := w.Say("eights", "n", a.Eights)
	switch {
	case a.Rhythm == Any:
		return w.Say("link-open-any", "length", length)
	case a.BPM == 0:
		return w.Say("link-open", "rhythm", l.Rhythm, "length", length)
	}
	return w.Say("link-open-at", "rhythm", l.Rhythm, "bpm", w.Say("tempo", "bpm", a.BPM), "length", length)
}

func sayProblem(w Words, p Problem) string {
	switch {
	case p.Unknown:
		return w.Say("link-unknown", "name", p.Name, "allowed", p.Allowed)
	case p.Screen != "":
		return w.Say("link-elsewhere", "name", p.Name, "screen", sayScreen(w, p.Screen), "allowed", p.Allowed)
	}
	return w.Say("link-wrong", "name", p.Name, "value", p.Value, "allowed", p.Allowed)
}
