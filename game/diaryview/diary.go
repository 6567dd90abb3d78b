package diaryview

import (
	"groundbeat/game/diary"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Diary is what the screen Practice diary is made from: whose it is and on which
// output, what to practise next, what the rounds tell, and the ways to keep it.
type Diary struct {
	People  []Person    // all on this machine, in the order shown; at least the one whose diary it is
	Who     string      // ID of the one whose diary it is
	Typed   string      // the nickname that is being typed
	Problem NameProblem // what is wrong with the nickname that was to be taken
	Merging string      // ID of the one to be put together with Who, while that is asked; "": it is not

	Outputs []string // names of those with rounds; fewer than two: there is no choice
	Reading bool     // it is still being read
	Rounds  int      // of this person, on all outputs
	Behind  int      // of these, how many are not in the figures yet
	Failed  bool     // what is kept could not be read just now
	Figures diary.Figures
	Today   string          // 2006-01-02, where the player is
	Rhythms []*rhythm.Cycle // at least those of the figures; one that is not here is called by its ID

	Next    []Next // what to practise, the most useful first
	Minutes int    // how long a practice is: one of PracticeMinutes
	Silent  bool   // there is no sound, and so nothing to begin

	Import   *Import // a file that was opened, until it is taken or left
	Imported Imported
	SetAside int   // records that could not be read, set aside unchanged
	Newer    int   // records of a newer version, left alone
	MayGo    bool  // the browser may clear what is kept when space is short
	Erasing  Erase // whose rounds it is asked whether to erase
	Invented bool  // the rounds are invented
	Notes    []view.Note
}

// Person is someone who practises on this machine. The first has no nickname until she
// takes one.
type Person struct{ ID, Name string }

// Invented is the nickname of those whose rounds are invented, to show what a diary looks
// like.
const Invented = "Invented"

// PracticeMinutes are how long a practice may be.
func PracticeMinutes() []int { return []int{5, 10, 20} }

// Screen returns the screen.
func (d *Diary) Screen(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading", w.Say("diary"))}
	if d.Invented {
		items = append(items, view.Item{ID: "invented", Role: view.RoleText, Text: w.Say("diary-invented"), Look: view.LookWarning})
	}
	items = append(items, d.people(w), d.output(w))
	switch {
	case d.Reading:
		items = append(items, view.Item{ID: "reading", Role: view.RoleText, Text: w.Say("diary-reading"), Look: view.LookNote})
	case d.Failed:
		items = append(items, view.Item{ID: "failed", Role: view.RoleText, Text: w.Say("diary-failed"), Look: view.LookWarning})
	case d.Behind > 0:
		items = append(items, view.Item{ID: "behind", Role: view.RoleStatus, Text: w.Say("diary-behind", "n", d.Behind), Look: view.LookNote, Live: view.LivePolite})
	case d.Rounds == 0:
		items = append(items, view.Item{ID: "empty", Role: view.RoleText, Text: w.Say("diary-empty"), Look: view.LookFinding})
	}
	if !d.Reading {
		told := d.find(w)
		items = append(items, d.next(w, told.claims())...)
		items = append(items, d.told(w, told)...)
	}
	items = append(items, d.keep(w)...)
	items = append(items, view.Notes(w, d.Notes)...)
	s := view.ReadyScreen(w, view.ScreenDiary, w.Say("diary"), items)
	if ask := d.asked(w); ask.Role != view.RoleNone {
		s.Items = append(s.Items, ask)
		s.Focus, s.Escape = ask.Children[1].Children[0].ID, ask.Action
	}
	return s
}

// rhythm returns a rhythm by its ID, or nil.
func (d *Diary) rhythm(id string) *rhythm.Cycle {
	for _, c := range d.Rhythms {
		if c.ID == id {
			return c
		}
	}
	return nil
}

// longName is how many letters of an ID are shown at most, so that pictures have room.
const longName = 18

// name is how a rhythm is called in the diary: without what stands in brackets. One that
// is not here may be called anything, by the file it came from: its ID is cut short.
func (d *Diary) name(id string) string {
	if c := d.rhythm(id); c != nil {
		return view.Plain(c.Name)
	}
	if letters := []rune(id); len(letters) > longName {
		return string(letters[:longName-1]) + "…"
	}
	return id
}

// nickname is how a person is called.
func (d *Diary) nickname(w say.Words, id string) string {
	for _, p := range d.People {
		if p.ID == id {
			return p.say(w)
		}
	}
	return Person{}.say(w)
}

func (p Person) say(w say.Words) string {
	if p.Name == "" {
		return w.Say("person-first")
	}
	return p.Name
}
