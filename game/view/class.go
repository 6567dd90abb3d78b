package view

import (
	"fmt"
	"slices"
	"time"

	"groundbeat/game/quiz"
	"groundbeat/game/riff"
)

// Class is what the screen is made from on which a teacher gets the warm-up ready.
type Class struct {
	Sets     []ClassSet // what can be begun at one press: last time's first, then what is supplied, then what she saved
	Unended  *ClassSet  // a warm-up that was left before its end; nil: there is none
	Set      quiz.Set   // what is put together here
	Lasts    ClassLength
	Saved    bool     // Set is one that was saved, under its name
	Pools    []Option // out of which rhythms: what From may be, and its name
	Levels   []string // riff levels
	Class    string   // nickname of the class
	Letters  bool     // letters are keys
	Hearing  bool     // the note on loudness is still to be said
	Problem  string   // why a file could not be read
	NoCopies bool     // what is counted cannot be kept
	Volume   int      // 0 to 100; below 0: there is no sound, and nothing to be heard
	Notes    []Note
}

// ClassSet is a set that can be begun at one press.
type ClassSet struct {
	ID    string // the value of ActClassBegin
	Name  string // of one that was saved; empty for the others
	Set   quiz.Set
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
func (c *Class) Screen(w Words) Screen {
	items := []Item{heading("heading", w.Say("class")), {ID: "why", Role: RoleText, Text: w.Say("class-why")}}
	if c.Unended != nil {
		items = append(items, Item{ID: "class-resume", Role: RoleButton, Name: w.Say("class-resume"),
			Action: ActClassResume, Look: LookPrimary})
	}
	items = append(items, c.sets(w), c.check(w), c.put(w), c.keys(w))
	if c.Hearing {
		items = append(items, Item{ID: "hearing", Role: RoleText, Look: LookNote, Text: w.Say("class-hearing")})
	}
	if c.NoCopies {
		items = append(items, Item{ID: "no-copies", Role: RoleText, Look: LookWarning, Text: w.Say("class-not-kept")})
	}
	items = append(items, notesWithout(w, c.Notes, w.Say("class-no-sound"))...)
	s := ready(w, ScreenClass, w.Say("class"), items)
	if c.Unended != nil {
		s.Keys = clicks(ActClassResume, "")
	}
	return s
}

// sets is what can be begun at one press.
func (c *Class) sets(w Words) Item {
	list := Item{ID: "class-sets", Role: RoleList, Look: LookDoors, Name: w.Say("class-sets")}
	for i, s := range c.Sets {
		id := fmt.Sprintf("set-%d", i+1)
		list.Children = append(list.Children, Item{ID: id + "-line", Role: RoleListItem, Children: []Item{
			{ID: id, Role: RoleButton, Name: sayClassSet(w, s), Text: s.say(w), Action: ActClassBegin, Value: s.ID, Disabled: c.Volume < 0}}})
	}
	return list
}

func sayClassSet(w Words, s ClassSet) string {
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
func (s *ClassSet) say(w Words) string {
	var kinds []string
	for _, k := range s.Set.Kinds {
		kinds = append(kinds, sayTask(w, k))
	}
	what := sentence(sayList(w, kinds))
	if level, _ := sayLevel(w, s.Set.Level.String()); s.Set.Level > riff.Bare {
		what += " " + w.Say("class-up-to", "level", level)
	}
	return what + " " + s.Lasts.say(w)
}

// LengthOf is how much a warm-up brings and how long it lasts, begun now: what the list
// promises, the walk-in says once more and the run keeps to.
func LengthOf(w *quiz.Warmup, now time.Time) ClassLength {
	return ClassLength{Tasks: len(w.Tasks), Lasts: w.Lasts(), Ends: now.Add(w.Lasts()).Format("15:04")}
}

func (l ClassLength) say(w Words) string {
	return w.Say("class-lasts", "n", l.Tasks, "time", sayMinutes(w, l.Lasts), "ends", l.Ends)
}

// sayMinutes says a length to the nearest half minute.
func sayMinutes(w Words, d time.Duration) string {
	half := int((d + 15*time.Second) / (30 * time.Second))
	if half%2 == 1 {
		return w.Say("class-minutes-half", "minutes", half/2)
	}
	return w.Say("class-minutes", "n", half/2)
}

func sayTask(w Words, k quiz.Kind) string {
	switch k {
	case quiz.HandsUp:
		return w.Say("kind-hands-up")
	case quiz.SayIt:
		return w.Say("kind-say-it")
	case quiz.WalkAndClap:
		return w.Say("kind-walk")
	case quiz.WhatChanged:
		return w.Say("kind-changed")
	case quiz.BaseOrRiff:
		return w.Say("kind-base")
	case quiz.FindTheOne:
		return w.Say("kind-one")
	}
	return w.Say("kind-stop")
}

// check leads to the sound check, which comes first.
func (c *Class) check(w Words) Item {
	return Item{ID: "class-check", Role: RoleGroup, Look: LookRow, Children: []Item{
		{ID: "check-first", Role: RoleText, Text: w.Say("class-check"), Look: LookNote},
		{ID: "to-check", Role: RoleButton, Name: w.Say("check"), Action: ActGo, Value: ScreenCheck, Look: LookQuiet}}}
}

// put is where a set is put together.
func (c *Class) put(w Words) Item {
	s := c.Set
	own := ClassSet{Set: s, Lasts: c.Lasts}
	kinds := Item{ID: "class-kinds", Role: RoleGroup, Look: LookLines, Name: w.Say("class-kinds")}
	for _, k := range quiz.Kinds() {
		kinds.Children = append(kinds.Children, Item{ID: "kind-" + string(k), Role: RoleCheckBox, Name: sayTask(w, k),
			Action: ActClassKind + string(k), Checked: slices.Contains(s.Kinds, k)})
	}
	items := []Item{
		{ID: "class-name", Role: RoleField, Name: w.Say("class-name"), Action: ActClassName, Value: c.Class},
		c.pools(w), leadDrum(w, s.Level.String(), c.Levels, noHide, nil), kinds,
		{ID: "class-minutes", Role: RoleSlider, Name: w.Say("class-how-long"), Action: ActClassMinutes, Min: quiz.LeastMinutes,
			Max: 20, Step: 1, Num: float64(min(s.Minutes, 20)), Value: w.Say("class-minutes", "n", s.Minutes)},
		{ID: "class-seed", Role: RoleField, Name: w.Say("class-seed"), Action: ActClassSeed, Value: seedText(s.Seed)},
		{ID: "class-own", Role: RoleStatus, Live: LivePolite, Text: own.say(w)},
		{ID: "class-begin", Role: RoleButton, Name: w.Say("class-begin"), Action: ActClassBegin, Disabled: c.Volume < 0},
		{ID: "class-set-name", Role: RoleField, Name: w.Say("class-set-name"), Action: ActClassSetName, Value: s.Name},
		c.files(w),
	}
	if c.Problem != "" {
		items = append(items, Item{ID: "class-problem", Role: RoleStatus, Live: LiveAssertive, Look: LookWarning, Text: c.Problem})
	}
	return Item{ID: "class-put", Role: RoleDetails, Name: w.Say("class-put"), Children: items}
}

func seedText(seed uint64) string {
	if seed == 0 {
		return ""
	}
	return fmt.Sprint(seed)
}

func (c *Class) pools(w Words) Item {
	it := from(w, c.Set.From, nil)
	it.Options = append(slices.Clone(c.Pools), it.Options...)
	it.Value = chosen(it.Options, c.Set.From)
	return it
}

// files is what becomes of a set: kept here, a file, a link, or forgotten.
func (c *Class) files(w Words) Item {
	row := Item{ID: "class-files", Role: RoleGroup, Look: LookRow, Children: []Item{
		{ID: "class-save", Role: RoleButton, Name: w.Say("class-save"), Action: ActClassSave},
		{ID: "class-file", Role: RoleButton, Name: w.Say("class-file"), Action: ActClassFile},
		{ID: "class-open", Role: RoleFile, Name: w.Say("class-open"), Action: ActFile},
		{ID: "class-link", Role: RoleLink, Name: w.Say("class-link"), Value: ClassLink(c.Set)},
	}}
	if c.Saved {
		row.Children = append(row.Children, Item{ID: "class-forget", Role: RoleButton, Name: w.Say("class-forget"), Action: ActClassForget, Look: LookQuiet})
	}
	return row
}

// ClassLink is the query of the link to a set.
func ClassLink(s quiz.Set) string { return Address{Screen: ScreenClass, Set: s.Link()}.String() }

// keys tells the keys, and whether letters are among them.
func (c *Class) keys(w Words) Item {
	it := Item{ID: "class-keys", Role: RoleDetails, Name: w.Say("class-keys"), Children: []Item{
		{ID: "keys-go", Role: RoleText, Text: w.Say("class-keys-go")},
		{ID: "keys-hands", Role: RoleText, Text: w.Say("class-keys-hands")},
		{ID: "keys-more", Role: RoleText, Text: w.Say("class-keys-more")},
		{ID: "class-letters", Role: RoleCheckBox, Name: w.Say("class-letters"), Action: ActClassLetters, Checked: c.Letters},
	}}
	return it
}
