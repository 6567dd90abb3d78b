package view

import (
	"fmt"
	"groundbeat/game/say"
)

// Note is an aside at the foot of a screen.
type Note uint8

// The notes.
const (
	NoteQuiet       Note = iota // the sound starts quietly; once for each person
	NoteNoSound                 // no sound here
	NoteNotKept                 // storage is blocked
	NoteCoarse                  // the clock is coarse
	NoteNoSetUp                 // no set-up for this output
	NoteRiffs                   // the link was made for another version of the riffs
	NoteNotExported             // the file of all rounds could not be made, just now
)

func Notes(w say.Words, all []Note) []Item {
	var items []Item
	for _, n := range all {
		it := Item{ID: fmt.Sprintf("note-%d", n), Role: RoleText, Look: LookNote, Text: sayNote(w, n)}
		if n == NoteNotExported { // the answer to a press
			it.Role, it.Look, it.Live = RoleStatus, LookWarning, LiveAssertive
		}
		items = append(items, it)
	}
	return items
}

// notesWithout is notes on a screen that says in its own words that there is no
// sound.
func NotesWithout(w say.Words, all []Note, noSound string) []Item {
	items := Notes(w, all)
	for i, n := range all {
		if n == NoteNoSound {
			items[i].Text = noSound
		}
	}
	return items
}

func sayNote(w say.Words, n Note) string {
	switch n {
	case NoteNoSound:
		return w.Say("note-no-sound")
	case NoteNotKept:
		return w.Say("note-not-kept")
	case NoteCoarse:
		return w.Say("note-coarse")
	case NoteNoSetUp:
		return w.Say("note-no-set-up")
	case NoteRiffs:
		return w.Say("note-riffs")
	case NoteNotExported:
		return w.Say("note-not-exported")
	}
	return w.Say("note-quiet")
}
