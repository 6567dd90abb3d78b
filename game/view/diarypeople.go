package view

import "fmt"

// people is whose diary it is: a choice where there are several, and the ways to add
// one, to call one otherwise, and to put two together.
func (d *Diary) people(w Words) Item {
	it := Item{ID: "people", Role: RoleGroup, Look: LookRow}
	if len(d.People) > 1 {
		choice := Item{ID: "who", Role: RoleChoice, Name: w.Say("who"), Action: ActDiaryWho}
		for _, p := range d.People {
			choice.Options = append(choice.Options, Option{p.ID, p.Name})
		}
		choice.Value = chosen(choice.Options, d.Who)
		it.Children = append(it.Children, choice)
	}
	it.Children = append(it.Children, Item{ID: "persons", Role: RoleDetails, Name: w.Say("persons"), Children: d.persons(w)})
	return it
}

func (d *Diary) persons(w Words) []Item {
	items := []Item{
		{ID: "nicknames", Role: RoleText, Text: w.Say("nicknames"), Look: LookNote},
		{ID: "nickname", Role: RoleField, Name: w.Say("nickname"), Action: ActDiaryName, Value: d.Typed},
		{ID: "name-it", Role: RoleGroup, Look: LookRow, Children: []Item{
			{ID: "add", Role: RoleButton, Name: w.Say("person-add"), Action: ActDiaryAdd},
			{ID: "rename", Role: RoleButton, Name: w.Say("person-rename", "who", d.who()), Action: ActDiaryRename},
		}},
	}
	merge := Item{ID: "merge", Role: RoleGroup, Look: LookRow}
	for i, p := range d.People {
		if p.ID != d.Who {
			merge.Children = append(merge.Children, Item{ID: fmt.Sprintf("merge-%d", i+1), Role: RoleButton, Look: LookQuiet,
				Name: w.Say("person-merge", "other", p.Name, "who", d.who()), Action: ActDiaryMerge, Value: p.ID})
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

// asked is the dialog of what cannot be taken back, if it is asked for.
func (d *Diary) asked(w Words) Item {
	switch {
	case d.Erasing:
		return dialog("erase-ask", w.Say("erase-ask", "who", d.who(), "n", d.Rounds), w.Say("erase-sure"),
			Item{ID: "erase-no", Role: RoleButton, Name: w.Say("erase-no"), Action: ActDiaryEraseNo, Look: LookPrimary},
			Item{ID: "erase-yes", Role: RoleButton, Name: w.Say("erase-yes"), Action: ActDiaryEraseYes})
	case d.Merging != "":
		return dialog("merge-ask", w.Say("merge-ask", "other", d.nickname(d.Merging), "who", d.who()), w.Say("merge-sure"),
			Item{ID: "merge-no", Role: RoleButton, Name: w.Say("merge-no"), Action: ActDiaryMergeNo, Look: LookPrimary},
			Item{ID: "merge-yes", Role: RoleButton, Name: w.Say("merge-yes"), Action: ActDiaryMergeYes, Value: d.Merging})
	}
	return Item{}
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
