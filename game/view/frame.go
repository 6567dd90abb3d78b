package view

import "groundbeat/game/say"

// framed returns the items of a screen with its bar, which stays in the window at the
// same place from stage to stage: the way home at its start, the ways out of what plays,
// and at its end the one filled button. Whatever of these stands among the items goes
// into the bar; the bar takes the place of the first of them, so that the keyboard comes
// to it there. A bar that is there already takes up what was added since.
func Framed(w say.Words, id string, items []Item) []Item {
	f := framing{at: len(items)}
	if id != ScreenHome {
		f.bar = []Item{{ID: "home", Role: RoleButton, Name: w.Say("home"), Action: ActHome, Look: LookQuiet}}
	}
	var rest []Item
	for _, it := range items {
		if f.takes(&it) {
			f.at = min(f.at, len(rest))
		}
		if it.Role != RoleNone {
			rest = append(rest, it)
		}
	}
	bar := append(append(f.bar, f.out...), f.next...)
	if len(bar) == 0 {
		return rest
	}
	at := min(f.at, len(rest))
	return append(rest[:at:at], append([]Item{{ID: BarID, Role: RoleGroup, Look: LookBar, Children: bar}}, rest[at:]...)...)
}

// barID is the id of the bar on every screen that has one.
const BarID = "bar"

// framing is what of a screen goes into its bar.
type framing struct {
	bar, out, next []Item
	at             int // before which item the bar stands
}

// takes takes out of an item what belongs into the bar, and reports whether there was
// anything. What is left of the item has no role if nothing is.
func (f *framing) takes(it *Item) bool {
	switch {
	case it.ID == BarID:
		f.again(it.Children)
	case it.Role == RoleButton && it.Look == LookPrimary:
		f.takeNext(*it)
	case it.Role == RoleButton && it.Look == LookQuiet && it.Action == ActStop:
		f.out = append(f.out, *it)
	case it.Role == RoleGroup || it.Role == RoleList:
		return f.within(it)
	default:
		return false
	}
	*it = Item{}
	return true
}

// takeNext takes the filled button. There is one: of two, the first on the screen stays
// the filled one.
func (f *framing) takeNext(it Item) {
	if len(f.next) > 0 {
		it.Look = ""
	}
	f.next = append([]Item{it}, f.next...)
}

// again takes up what a bar holds that was made before.
func (f *framing) again(children []Item) {
	for _, c := range children {
		switch {
		case c.Look == LookPrimary:
			f.takeNext(c)
		case c.ID != "home":
			f.out = append(f.out, c)
		}
	}
}

// within takes the filled button out of a group.
func (f *framing) within(it *Item) bool {
	var rest []Item
	found := false
	for _, c := range it.Children {
		switch {
		case c.Role == RoleButton && c.Look == LookPrimary:
			f.takeNext(c)
			found = true
			continue
		case c.Role == RoleGroup || c.Role == RoleList || c.Role == RoleListItem:
			found = f.within(&c) || found
		}
		if c.Role != RoleNone {
			rest = append(rest, c)
		}
	}
	if !found {
		return false
	}
	if it.Children = rest; len(rest) == 0 {
		*it = Item{}
	}
	return true
}
