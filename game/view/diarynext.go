package view

import (
	"fmt"
	"strconv"
)

// Next is something to practise next, and why. Kind and Reason are always there, the
// rest where the reason needs it.
type Next struct {
	Reason  Reason
	Kind    string   // of round, as in package history
	Rhythms []string // IDs of what it is about; none where one stroke is asked; ReasonMixUp: what is played, and what it is taken for
	Level   string   // riff level; ReasonEdge
	BPM     int      // counts a minute; ReasonTempo and ReasonSlow
}

// Reason is why something is to be practised.
type Reason uint8

// The reasons.
const (
	ReasonDue   Reason = iota // it has rested for so long that it may fade
	ReasonMixUp               // it is often taken for another
	ReasonEdge                // as much riff as is about to be heard through
	ReasonWell                // it is done well
	ReasonFirst               // it is new
	ReasonSlow                // slowly, to begin and to end with
	ReasonTempo               // a little faster than before
)

// next is what to practise: a practice of some minutes at one press, and single
// rounds with their reasons. Nothing without sound or anything to offer.
func (d *Diary) next(w Words) []Item {
	if len(d.Next) == 0 || d.Silent {
		return nil
	}
	list := Item{ID: "next-list", Role: RoleList, Look: LookDoors}
	for i, n := range d.Next {
		id := fmt.Sprintf("next-%d", i+1)
		list.Children = append(list.Children, Item{ID: id, Role: RoleListItem, Children: []Item{
			{ID: id + "-begin", Role: RoleButton, Name: w.Say("next-begin", "kind", sayKind(w, n.Kind)), Text: d.sayNext(w, n),
				Action: ActDiaryNext, Value: strconv.Itoa(i)},
		}})
	}
	return []Item{
		subheading("next", w.Say("diary-next")),
		{ID: "practice", Role: RoleGroup, Look: LookRow, Children: []Item{
			d.minutes(w),
			{ID: "practise", Role: RoleButton, Name: sayPractise(w, d.Minutes), Action: ActDiaryPractise,
				Value: strconv.Itoa(d.Minutes), Look: LookPrimary}}},
		list,
	}
}

func (d *Diary) minutes(w Words) Item {
	it := Item{ID: "minutes", Role: RoleChoice, Name: w.Say("practice-length"), Action: ActDiaryMinutes}
	for _, n := range PracticeMinutes() {
		it.Options = append(it.Options, Option{strconv.Itoa(n), w.Say("minutes", "n", n)})
	}
	it.Value = chosen(it.Options, strconv.Itoa(d.Minutes))
	return it
}

func sayPractise(w Words, minutes int) string {
	switch minutes {
	case 5:
		return w.Say("practise-five")
	case 20:
		return w.Say("practise-twenty")
	}
	return w.Say("practise-ten")
}

func (d *Diary) sayNext(w Words, n Next) string {
	var names []string
	for _, id := range n.Rhythms {
		names = append(names, d.name(id))
	}
	name := sayList(w, names)
	switch {
	case len(names) == 0:
		return w.Say("next-rung")
	case n.Reason == ReasonMixUp && len(names) > 1:
		return w.Say("next-mix-up", "rhythm", names[0], "other", names[1])
	}
	switch n.Reason {
	case ReasonEdge:
		return w.Say("next-edge", "rhythm", name, "level", levelName(w, n.Level))
	case ReasonWell:
		return w.Say("next-well", "rhythm", name)
	case ReasonFirst:
		return w.Say("next-first", "rhythm", name)
	case ReasonSlow:
		return w.Say("next-slow", "rhythm", name, "tempo", w.Say("tempo", "bpm", n.BPM))
	case ReasonTempo:
		return w.Say("next-tempo", "rhythm", name, "tempo", w.Say("tempo", "bpm", n.BPM))
	}
	return w.Say("next-due", "rhythm", name)
}

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
