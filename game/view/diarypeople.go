package view

import "fmt"

// people is whose diary it is: a choice where there are several, and the ways to add
// one, to call one otherwise, and to put two together.
func (d *Diary) people(w Words) Item {
	it := Item{ID: "people", Role: RoleGroup, Look: LookRow}
	it.Children = append(it.Children, who(w, d.People, d.Who)...)
	it.Children = append(it.Children, Item{ID: "persons", Role: RoleDetails, Name: w.Say("persons"), Children: d.persons(w)})
	return it
}

// who is the choice among people, where there are several.
func who(w Words, people []Person, chosenID string) []Item {
	if len(people) < 2 {
		return nil
	}
	it := Item{ID: "who", Role: RoleChoice, Name: w.Say("who"), Action: ActDiaryWho}
	for _, p := range people {
		it.Options = append(it.Options, Option{p.ID, p.say(w)})
	}
	it.Value = chosen(it.Options, chosenID)
	return []Item{it}
}

func (d *Diary) persons(w Words) []Item {
	who := d.nickname(w, d.Who)
	items := []Item{
		{ID: "nicknames", Role: RoleText, Text: w.Say("nicknames"), Look: LookNote},
		{ID: "nickname", Role: RoleField, Name: w.Say("nickname"), Action: ActDiaryName, Value: d.Typed},
		{ID: "name-it", Role: RoleGroup, Look: LookRow, Children: []Item{
			{ID: "add", Role: RoleButton, Name: w.Say("person-add"), Action: ActDiaryAdd},
			{ID: "rename", Role: RoleButton, Name: w.Say("person-rename", "who", who), Action: ActDiaryRename},
		}},
		{ID: "name-problem", Role: RoleStatus, Text: d.Problem.say(w), Look: LookWarning, Live: LiveAssertive},
	}
	merge := Item{ID: "merge", Role: RoleGroup, Look: LookRow}
	for i, p := range d.People {
		if p.ID != d.Who {
			merge.Children = append(merge.Children, Item{ID: fmt.Sprintf("merge-%d", i+1), Role: RoleButton, Look: LookQuiet,
				Name: w.Say("person-merge", "other", d.nickname(w, p.ID), "who", who), Action: ActDiaryMerge, Value: p.ID})
		}
	}
	if len(merge.Children) > 0 {
		items = append(items, merge)
	}
	return items
}

// output is the choice of the output, which says once why there is one.
func (d *Diary) output(w Words) Item {
	if len(d.Outputs) < 2 {
		return Item{}
	}
	choice := Item{ID: "output", Role: RoleChoice, Name: w.Say("diary-output"), Action: ActDiaryOutput, Value: d.Figures.Output}
	for _, name := range d.Outputs {
		label := name
		if label == "" {
			label = w.Say("diary-output-none")
		}
		choice.Options = append(choice.Options, Option{name, label})
	}
	choice.Value = chosen(choice.Options, d.Figures.Output)
	return Item{ID: "outputs", Role: RoleGroup, Look: LookLines, Children: []Item{choice,
		{ID: "outputs-apart", Role: RoleText, Text: w.Say("diary-apart"), Look: LookNote}}}
}

// NameProblem is what is wrong with a nickname.
type NameProblem uint8

// The problems.
const (
	NameFine    NameProblem = iota
	NameMissing             // no letters
	NameLong                // too long
	NameUsed                // another person has it
	NameGone                // whoever was to be called so is no longer here
)

// say is "" of what is fine.
func (p NameProblem) say(w Words) string {
	switch p {
	case NameMissing:
		return w.Say("name-missing")
	case NameLong:
		return w.Say("name-long")
	case NameUsed:
		return w.Say("name-used")
	case NameGone:
		return w.Say("name-gone")
	}
	return ""
}

// asked is the dialog of what cannot be taken back, if it is asked for.
func (d *Diary) asked(w Words) Item {
	who := d.nickname(w, d.Who)
	if d.Merging != "" {
		return dialog("merge-ask", w.Say("merge-ask", "other", d.nickname(w, d.Merging), "who", who), w.Say("merge-sure"),
			Item{ID: "merge-no", Role: RoleButton, Name: w.Say("merge-no"), Action: ActDiaryMergeNo, Look: LookPrimary},
			Item{ID: "merge-yes", Role: RoleButton, Name: w.Say("merge-yes"), Action: ActDiaryMergeYes, Value: d.Merging})
	}
	name, whose := w.Say("erase-ask", "who", who, "n", d.Rounds), d.Who
	switch d.Erasing {
	case EraseNothing:
		return Item{}
	case EraseEverybody:
		name, whose = w.Say("erase-ask-all"), ""
	}
	return dialog("erase-ask", name, w.Say("erase-sure"),
		Item{ID: "erase-no", Role: RoleButton, Name: w.Say("erase-no"), Action: ActDiaryEraseNo, Look: LookPrimary},
		Item{ID: "erase-yes", Role: RoleButton, Name: w.Say("erase-yes"), Action: ActDiaryEraseYes, Value: whose})
}

// dialog asks a question that is answered by one of two buttons. The first changes
// nothing, has the focus, and is what Escape does.
func dialog(id, name, text string, no, yes Item) Item {
	return Item{ID: id, Role: RoleDialog, Name: name, Action: no.Action, Children: []Item{
		{ID: id + "-what", Role: RoleGroup, Look: LookLines, Children: []Item{
			subheading(id+"-name", name), {ID: id + "-text", Role: RoleText, Text: text}}},
		{ID: id + "-do", Role: RoleGroup, Look: LookRow, Children: []Item{no, yes}},
	}}
}
