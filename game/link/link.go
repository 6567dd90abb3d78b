package link

import (
	"fmt"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// WrongLink is what the screen of a link that cannot be opened is made from.
type WrongLink struct {
	Problems []Problem
	Nearest  Address
	Rhythm   string // name of the nearest address's rhythm; empty for those that have none, and for Any
}

// Screen returns the screen that says what is wrong with a link, what is allowed,
// and offers the nearest link that can be opened.
func (l *WrongLink) Screen(w say.Words) view.Screen {
	list := view.Item{ID: "problems", Role: view.RoleList}
	for i, p := range l.Problems {
		list.Children = append(list.Children, view.Item{ID: fmt.Sprintf("problem-%d", i+1),
			Role: view.RoleListItem, Text: sayProblem(w, p)})
	}
	head := l.Head()
	s := view.Page(w, "link", w.Say("link-page"), []view.Item{
		view.Heading("heading", w.Say("link-heading")), list,
		{ID: "nearest", Role: view.RoleText, Text: w.Say("link-nearest", "what", l.nearest(w))}, view.Stage(w, head.Twin(w)),
		{ID: "open", Role: view.RoleButton, Name: w.Say("link-open-it"), Action: view.ActOpen, Look: view.LookPrimary},
	})
	s.Escape = view.ActHome
	return s
}

// Head returns what the drumhead shows: the drum at rest.
func (l *WrongLink) Head() picture.Head { return picture.Head{Hidden: true} }

// nearest names the nearest
func (l *WrongLink) nearest(w say.Words) string {
	if opens := targetOf(l.Nearest.Screen).opens; opens != nil {
		return opens(w, l)
	}
	return w.Say("link-open-which", "ask", view.SayScreen(w, l.Nearest.Screen))
}

func opensHome(w say.Words, _ *WrongLink) string  { return w.Say("link-open-home") }
func opensSetUp(w say.Words, _ *WrongLink) string { return w.Say("link-open-set-up") }
func opensCheck(w say.Words, _ *WrongLink) string { return w.Say("link-open-check") }

func opensAsk(w say.Words, l *WrongLink) string {
	return w.Say("link-open-which", "ask", view.SayAsk(w, l.Nearest.Ask))
}

func opensListen(w say.Words, l *WrongLink) string {
	return w.Say("link-open-listen", "rhythm", l.Rhythm)
}

func opensRound(w say.Words, l *WrongLink) string {
	a := l.Nearest
	length := w.Say("eights", "n", a.Eights)
	switch {
	case a.Rhythm == view.Any:
		return w.Say("link-open-any", "length", length)
	case a.BPM == 0:
		return w.Say("link-open", "rhythm", l.Rhythm, "length", length)
	}
	return w.Say("link-open-at", "rhythm", l.Rhythm, "bpm", w.Say("tempo", "bpm", a.BPM), "length", length)
}

func sayProblem(w say.Words, p Problem) string {
	switch {
	case p.Unknown:
		return w.Say("link-unknown", "name", p.Name, "allowed", p.Allowed)
	case p.Screen != "":
		return w.Say("link-elsewhere", "name", p.Name, "screen", view.SayScreen(w, p.Screen), "allowed", p.Allowed)
	}
	return w.Say("link-wrong", "name", p.Name, "value", p.Value, "allowed", p.Allowed)
}

// ClassLink is the query of the link to a set.
func ClassLink(s warmup.Set) string {
	return Address{Screen: view.ScreenClass, Set: s.Link()}.String()
}
