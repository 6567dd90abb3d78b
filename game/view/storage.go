package view

import (
	"groundbeat/game/say"
	"slices"
)

// Storage is how it stands with what is kept, as far as there is something to say of it.
type Storage struct {
	Waiting int  // rounds that the browser refused to keep, and that are tried again
	Aside   bool // those stay in this browser until then, also when the page is closed
	None    bool // the browser gives the page no storage
	Older   bool // what is kept here is a later page's: a reload brings that page
	Blocked bool // a window with an earlier page keeps this one from what is kept
}

// Items are what a screen says of it, and what can be done; none if all is well.
func (s Storage) Items(w say.Words) []Item {
	var items []Item
	say := func(id, text string) {
		items = append(items, Item{ID: id, Role: RoleStatus, Live: LivePolite, Look: LookWarning, Text: text})
	}
	switch {
	case s.Older:
		say("storage", w.Say("storage-older"))
		items = append(items, Item{ID: "reload", Role: RoleButton, Name: w.Say("storage-reload"), Action: ActReload})
	case s.Blocked:
		say("storage", w.Say("storage-blocked"))
	case s.None && !(s.Aside && s.Waiting > 0):
		say("storage", w.Say("note-not-kept"))
	}
	if s.Waiting > 0 {
		say("waiting", s.waiting(w))
		items = append(items, Item{ID: "save-waiting", Role: RoleButton, Name: w.Say("storage-save"), Action: ActSaveWaiting, Look: LookQuiet})
	}
	return items
}

// waiting says how many rounds wait, and whether they would be lost.
func (s Storage) waiting(w say.Words) string {
	switch {
	case !s.Aside:
		return w.Say("storage-waiting-lost", "n", s.Waiting)
	case s.Older:
		return w.Say("storage-waiting-older", "n", s.Waiting)
	}
	return w.Say("storage-waiting", "n", s.Waiting)
}

// On returns a screen with what is to be said of it: above the way to other screens, or
// at the end. While a round is under way it is not disturbed.
func (s Storage) On(screen Screen, w say.Words) Screen {
	items := s.Items(w)
	playing := false
	screen.Each(func(it *Item) { playing = playing || it.Role == RoleTapArea })
	if len(items) == 0 || playing || screen.Room {
		return screen
	}
	at := slices.IndexFunc(screen.Items, func(it Item) bool { return it.Look == LookNav })
	if at < 0 {
		at = len(screen.Items)
	}
	screen.Items = slices.Insert(slices.Clone(screen.Items), at,
		Item{ID: "keeping", Role: RoleGroup, Look: LookRow, Children: items})
	return screen
}
