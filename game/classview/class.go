package classview

import (
	"fmt"
	"slices"
	"time"

	"groundbeat/game/link"
	"groundbeat/game/riff"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// Class is what the screen is made from on which a teacher gets the warm-up ready.
type Class struct {
	Sets     []ClassSet // what can be begun at one press: last time's first, then what is supplied, then what she saved
	Unended  *ClassSet  // a warm-up that was left before its end; nil: there is none
	Set      warmup.Set // what is put together here
	Lasts    ClassLength
	Saved    bool          // Set is one that was saved, under its name
	Pools    []view.Option // out of which rhythms: what From may be, and its name
	Levels   []string      // riff levels
	Class    string        // nickname of the class
	Letters  bool          // letters are keys
	Hearing  bool          // the note on loudness is still to be said
	Problem  string        // why a file could not be read
	NoCopies bool          // what is counted cannot be kept
	Volume   int           // 0 to 100; below 0: there is no sound, and nothing to be heard
	Notes    []view.Note
}

// ClassSet is a set that can be begun at one press.
type ClassSet struct {
	ID    string // the value of ActClassBegin
	Name  string // of one that was saved; empty for the others
	Set   warmup.Set
	Lasts ClassLength
}

// ClassLength is how much a set brings, how long that takes, and when it ends if it is
// begun now.
type ClassLength struct {
	Tasks int
	Lasts time.Duration
	Ends  string // "18:42"
}

// The IDs of last time's set, and of what came by a link or was put together here.
const (
	LastSet = "last"
	PutSet  = "put"
)

// Screen returns the screen.
func (c *Class) Screen(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading", w.Say("class")), {ID: "why", Role: view.RoleText, Text: w.Say("class-why")}}
	if c.Unended != nil {
		items = append(items, view.Item{ID: "class-resume", Role: view.RoleButton, Name: w.Say("class-resume"),
			Action: view.ActClassResume, Look: view.LookPrimary})
	}
	items = append(items, c.sets(w), c.check(w), c.put(w), c.keys(w))
	if c.Hearing {
		items = append(items, view.Item{ID: "hearing", Role: view.RoleText, Look: view.LookNote, Text: w.Say("class-hearing")})
	}
	if c.NoCopies {
		items = append(items, view.Item{ID: "no-copies", Role: view.RoleText, Look: view.LookWarning, Text: w.Say("class-not-kept")})
	}
	items = append(items, view.NotesWithout(w, c.Notes, w.Say("class-no-sound"))...)
	s := view.ReadyScreen(w, view.ScreenClass, w.Say("class"), items)
	if c.Unended != nil {
		s.Keys = clicks(view.ActClassResume, "")
	}
	return s
}

// sets is what can be begun at one press.
func (c *Class) sets(w say.Words) view.Item {
	list := view.Item{ID: "class-sets", Role: view.RoleList, Look: view.LookDoors, Name: w.Say("class-sets")}
	for i, s := range c.Sets {
		id := fmt.Sprintf("set-%d", i+1)
		list.Children = append(list.Children, view.Item{ID: id + "-line", Role: view.RoleListItem, Children: []view.Item{
			{ID: id, Role: view.RoleButton, Name: sayClassSet(w, s), Text: s.say(w), Action: view.ActClassBegin, Value: s.ID, Disabled: c.Volume < 0}}})
	}
	return list
}

func sayClassSet(w say.Words, s ClassSet) string {
	switch {
	case s.ID == LastSet:
		return w.Say("class-last")
	case s.ID == PutSet && s.Name == "":
		return w.Say("class-linked")
	case s.Name != "":
		return s.Name
	case s.ID == "first":
		return w.Say("class-first")
	case s.ID == "ears":
		return w.Say("class-ears")
	case s.ID == "body":
		return w.Say("class-body")
	}
	return w.Say("class-riff")
}

// say tells in a line what a set brings.
func (s *ClassSet) say(w say.Words) string {
	var kinds []string
	for _, k := range s.Set.Kinds {
		kinds = append(kinds, sayTask(w, k))
	}
	what := say.Sentence(say.List(w, kinds))
	if level, _ := view.SayLevel(w, s.Set.Level.String()); s.Set.Level > riff.Bare {
		what += " " + w.Say("class-up-to", "level", level)
	}
	return what + " " + s.Lasts.say(w)
}

// LengthOf is how much a warm-up brings and how long it lasts, begun now: what the list
// promises, the walk-in says once more and the run keeps to.
func LengthOf(w *warmup.Warmup, now time.Time) ClassLength {
	return ClassLength{Tasks: len(w.Tasks), Lasts: w.Lasts(), Ends: now.Add(w.Lasts()).Format("15:04")}
}

func (l ClassLength) say(w say.Words) string {
	return w.Say("class-lasts", "n", l.Tasks, "time", sayMinutes(w, l.Lasts), "ends", l.Ends)
}

// sayMinutes says a length to the nearest half minute.
func sayMinutes(w say.Words, d time.Duration) string {
	half := int((d + 15*time.Second) / (30 * time.Second))
	if half%2 == 1 {
		return w.Say("class-minutes-half", "minutes", half/2)
	}
	return w.Say("class-minutes", "n", half/2)
}

func sayTask(w say.Words, k warmup.Kind) string {
	switch k {
	case warmup.HandsUp:
		return w.Say("kind-hands-up")
	case warmup.SayIt:
		return w.Say("kind-say-it")
	case warmup.WalkAndClap:
		return w.Say("kind-walk")
	case warmup.WhatChanged:
		return w.Say("kind-changed")
	case warmup.BaseOrRiff:
		return w.Say("kind-base")
	case warmup.FindTheOne:
		return w.Say("kind-one")
	}
	return w.Say("kind-stop")
}

// check leads to the sound check, which comes first.
func (c *Class) check(w say.Words) view.Item {
	return view.Item{ID: "class-check", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
		{ID: "check-first", Role: view.RoleText, Text: w.Say("class-check"), Look: view.LookNote},
		{ID: "to-check", Role: view.RoleButton, Name: w.Say("check"), Action: view.ActGo, Value: view.ScreenCheck, Look: view.LookQuiet}}}
}

// put is where a set is put together.
func (c *Class) put(w say.Words) view.Item {
	s := c.Set
	own := ClassSet{Set: s, Lasts: c.Lasts}
	kinds := view.Item{ID: "class-kinds", Role: view.RoleGroup, Look: view.LookLines, Name: w.Say("class-kinds")}
	for _, k := range warmup.Kinds() {
		kinds.Children = append(kinds.Children, view.Item{ID: "kind-" + string(k), Role: view.RoleCheckBox, Name: sayTask(w, k),
			Action: view.ActClassKind + string(k), Checked: slices.Contains(s.Kinds, k)})
	}
	items := []view.Item{
		{ID: "class-name", Role: view.RoleField, Name: w.Say("class-name"), Action: view.ActClassName, Value: c.Class},
		c.pools(w), view.LeadDrum(w, s.Level.String(), c.Levels, view.NoHide, nil), kinds,
		{ID: "class-minutes", Role: view.RoleSlider, Name: w.Say("class-how-long"), Action: view.ActClassMinutes, Min: warmup.LeastMinutes,
			Max: 20, Step: 1, Num: float64(min(s.Minutes, 20)), Value: w.Say("class-minutes", "n", s.Minutes)},
		{ID: "class-seed", Role: view.RoleField, Name: w.Say("class-seed"), Action: view.ActClassSeed, Value: seedText(s.Seed)},
		{ID: "class-own", Role: view.RoleStatus, Live: view.LivePolite, Text: own.say(w)},
		{ID: "class-begin", Role: view.RoleButton, Name: w.Say("class-begin"), Action: view.ActClassBegin, Disabled: c.Volume < 0},
		{ID: "class-set-name", Role: view.RoleField, Name: w.Say("class-set-name"), Action: view.ActClassSetName, Value: s.Name},
		c.files(w),
	}
	if c.Problem != "" {
		items = append(items, view.Item{ID: "class-problem", Role: view.RoleStatus, Live: view.LiveAssertive, Look: view.LookWarning, Text: c.Problem})
	}
	return view.Item{ID: "class-put", Role: view.RoleDetails, Name: w.Say("class-put"), Children: items}
}

func seedText(seed uint64) string {
	if seed == 0 {
		return ""
	}
	return fmt.Sprint(seed)
}

func (c *Class) pools(w say.Words) view.Item {
	it := view.From(w, c.Set.From, nil)
	it.Options = append(slices.Clone(c.Pools), it.Options...)
	it.Value = view.Chosen(it.Options, c.Set.From)
	return it
}

// files is what becomes of a set: kept here, a file, a link, or forgotten.
func (c *Class) files(w say.Words) view.Item {
	row := view.Item{ID: "class-files", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
		{ID: "class-save", Role: view.RoleButton, Name: w.Say("class-save"), Action: view.ActClassSave},
		{ID: "class-file", Role: view.RoleButton, Name: w.Say("class-file"), Action: view.ActClassFile},
		{ID: "class-open", Role: view.RoleFile, Name: w.Say("class-open"), Action: view.ActFile},
		{ID: "class-link", Role: view.RoleLink, Name: w.Say("class-link"), Value: link.ClassLink(c.Set)},
	}}
	if c.Saved {
		row.Children = append(row.Children, view.Item{ID: "class-forget", Role: view.RoleButton, Name: w.Say("class-forget"), Action: view.ActClassForget, Look: view.LookQuiet})
	}
	return row
}

// keys tells the keys, and whether letters are among them.
func (c *Class) keys(w say.Words) view.Item {
	it := view.Item{ID: "class-keys", Role: view.RoleDetails, Name: w.Say("class-keys"), Children: []view.Item{
		{ID: "keys-go", Role: view.RoleText, Text: w.Say("class-keys-go")},
		{ID: "keys-hands", Role: view.RoleText, Text: w.Say("class-keys-hands")},
		{ID: "keys-more", Role: view.RoleText, Text: w.Say("class-keys-more")},
		{ID: "class-letters", Role: view.RoleCheckBox, Name: w.Say("class-letters"), Action: view.ActClassLetters, Checked: c.Letters},
	}}
	return it
}
