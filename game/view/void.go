package view

import "groundbeat/game/say"

// Why says why a round does not count.
type Why uint8

// The reasons.
const (
	WhyCut    Why = iota // a gap in the sound
	WhyHidden            // the page was out of sight
	WhyPaused            // the audio context was interrupted
	WhySilent            // no sound came at all
)

func SayWhy(w say.Words, why Why) string {
	switch why {
	case WhyHidden:
		return w.Say("void-hidden")
	case WhyPaused:
		return w.Say("void-paused")
	case WhySilent:
		return w.Say("void-silent")
	}
	return w.Say("void-cut")
}

// voided returns the screen of a round that does not count: why in words, the drum at
// rest, and what to do next.
func VoidScreen(w say.Words, id, why string, head Item, next ...Item) Screen {
	s := Page(w, id, w.Say("void-page"), []Item{
		Heading("heading", w.Say("void-heading")),
		{ID: "why", Role: RoleText, Text: why, Look: LookWarning},
		{ID: "kept", Role: RoleText, Text: w.Say("void-nothing")},
		head,
		{ID: "again", Role: RoleGroup, Look: LookRow, Children: next}})
	s.Escape = ActChange
	return s
}
