package view

import (
	"strings"
	"unicode"

	"groundbeat/game/rhythm"
	"groundbeat/game/say"
)

// RhythmName is how a rhythm is written.
type RhythmName struct {
	ID, Name string
	Script   string // in its own script; empty if unknown
	Lang     string // of Script, BCP 47; empty if unknown
	Dir      string // of Script
}

// NameOf returns how a rhythm is written. A script in Arabic letters is taken
// for Arabic; of any other the language is not known.
func NameOf(c *rhythm.Cycle) RhythmName {
	n := RhythmName{ID: c.ID, Name: c.Name, Script: c.Script}
	for _, r := range c.Script {
		if unicode.Is(unicode.Arabic, r) {
			n.Lang, n.Dir = "ar", "rtl"
		}
	}
	return n
}

// plain returns a name without what stands in brackets after it: "baladi" of
// "baladi (masmudi saghir)".
func Plain(name string) string {
	before, _, _ := strings.Cut(name, " (")
	return before
}

// RhythmOption returns a rhythm as one of a choice. Its label tells an odd metre,
// unless the name does, and that the sources differ.
func RhythmOption(c *rhythm.Cycle, w say.Words) Option {
	o := Option{Value: c.ID, Label: c.Name}
	if c.Odd() && !strings.Contains(c.Name, c.Metre.String()) {
		o.Label = w.Say("rhythm-odd", "rhythm", o.Label, "metre", c.Metre)
	}
	if c.Differ {
		o.Label = w.Say("rhythm-differ", "rhythm", o.Label)
	}
	return o
}

// title is a screen's heading with a rhythm's name in its own script beside it.
func Title(w say.Words, text string, n RhythmName) Item {
	it := Item{ID: "title", Role: RoleGroup, Look: LookRow, Children: []Item{Heading("heading", text)}}
	if n.Script != "" {
		it.Children = append(it.Children, Item{ID: "script", Role: RoleText, Text: n.Script,
			Lang: n.Lang, Dir: n.Dir, Look: LookScript})
	}
	return it
}
