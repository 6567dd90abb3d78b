package view

// Practice is a practice of some minutes that is under way.
type Practice struct {
	Part, Parts int  // which part it is at, from 1, of how many
	Minutes     int  // about how many are left; 0: less than one
	Done        bool // this part is done: on to the next
}

// Strip is where a practice stands and the ways on and out.
func (p Practice) Strip(w Words) Item {
	left := w.Say("practice-left-none")
	if p.Minutes > 0 {
		left = w.Say("practice-left", "n", p.Minutes)
	}
	on := Item{ID: "practice-on", Role: RoleButton, Name: w.Say("practice-skip"), Action: ActPracticeNext}
	switch {
	case p.Done && p.Part == p.Parts:
		on = Item{}
	case p.Done:
		on.Name, on.Look = w.Say("practice-next"), LookPrimary
	}
	return Item{ID: "practice-strip", Role: RoleGroup, Name: w.Say("practice"), Look: LookStrip, Children: present([]Item{
		{ID: "practice-where", Role: RoleText, Text: w.Say("practice-where", "part", p.Part, "parts", p.Parts, "left", left)},
		on,
		{ID: "practice-end", Role: RoleButton, Name: w.Say("practice-end"), Action: ActPracticeEnd, Look: LookQuiet},
	})}
}

// On puts the strip on top of a screen; while a round is played there is nothing but
// the drumhead and the way out of it, and so no strip.
func (p Practice) On(s Screen, w Words) Screen {
	playing := false
	s.Each(func(it *Item) { playing = playing || it.Role == RoleTapArea })
	if !playing {
		s.Focus = s.FocusID() // the strip takes no focus from the screen
		s.Items = framed(w, s.ID, append([]Item{p.Strip(w)}, s.Items...))
	}
	return s
}
