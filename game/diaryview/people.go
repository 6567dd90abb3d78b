package diaryview

import (
	"fmt"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// people is whose diary it is: a choice where there are several, and the ways to add
// one, to call one otherwise, and to put two together.
func (d *Diary) people(w say.Words) view.Item {
	it := view.Item{ID: "people", Role: view.RoleGroup, Look: view.LookRow}
	it.Children = append(it.Children, Who(w, d.People, d.Who)...)
	it.Children = append(it.Children, view.Item{ID: "persons", Role: view.RoleDetails, Name: w.Say("persons"), Children: d.persons(w)})
	return it
}

// who is the choice among people, where there are several.
func Who(w say.Words, people []Person, chosenID string) []view.Item {
	if len(people) < 2 {
		return nil
	}
	it := view.Item{ID: "who", Role: view.RoleChoice, Name: w.Say("who"), Action: view.ActDiaryWho}
	for _, p := range people {
		it.Options = append(it.Options, view.Option{Value: p.ID, Label: p.say(w)})
	}
	it.Value = view.Chosen(it.Options, chosenID)
	return []view.Item{it}
}

func (d *Diary) persons(w say.Words) []view.Item {
	who := d.nickname(w, d.Who)
	items := []view.Item{
		{ID: "nicknames", Role: view.RoleText, Text: w.Say("nicknames"), Look: view.LookNote},
		{ID: "nickname", Role: view.RoleField, Name: w.Say("nickname"), Action: view.ActDiaryName, Value: d.Typed},
		{ID: "name-it", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
			{ID: "add", Role: view.RoleButton, Name: w.Say("person-add"), Action: view.ActDiaryAdd},
			{ID: "rename", Role: view.RoleButton, Name: w.Say("person-rename", "who", who), Action: view.ActDiaryRename},
		}},
		{ID: "name-problem", Role: view.RoleStatus, Text: d.Problem.say(w), Look: view.LookWarning, Live: view.LiveAssertive},
	}
	merge := view.Item{ID: "merge", Role: view.RoleGroup, Look: view.LookRow}
	for i, p := range d.People {
		if p.ID != d.Who {
			merge.Children = append(merge.Children, view.Item{ID: fmt.Sprintf("merge-%d", i+1), Role: view.RoleButton, Look: view.LookQuiet,
				Name: w.Say("person-merge", "other", d.nickname(w, p.ID), "who", who), Action: view.ActDiaryMerge, Value: p.ID})
		}
	}
	if len(merge.Children) > 0 {
		items = append(items, merge)
	}
	return items
}

// output is the choice of the output, which says once why there is one.
func (d *Diary) output(w say.Words) view.Item {
	if len(d.Outputs) < 2 {
		return view.Item{}
	}
	choice := view.Item{ID: "output", Role: view.RoleChoice, Name: w.Say("diary-output"), Action: view.ActDiaryOutput, Value: d.Figures.Output}
	for _, name := range d.Outputs {
		label := name
		if label == "" {
			label = w.Say("diary-output-none")
		}
		choice.Options = append(choice.Options, view.Option{Value: name, Label: label})
	}
	choice.Value = view.Chosen(choice.Options, d.Figures.Output)
	return view.Item{ID: "outputs", Role: view.RoleGroup, Look: view.LookLines, Children: []view.Item{choice,
		{ID: "outputs-apart", Role: view.RoleText, Text: w.Say("diary-apart"), Look: view.LookNote}}}
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
func (p NameProblem) say(w say.Words) string {
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
func (d *Diary) asked(w say.Words) view.Item {
	who := d.nickname(w, d.Who)
	if d.Merging != "" {
		return dialog("merge-ask", w.Say("merge-ask", "other", d.nickname(w, d.Merging), "who", who), w.Say("merge-sure"),
			view.Item{ID: "merge-no", Role: view.RoleButton, Name: w.Say("merge-no"), Action: view.ActDiaryMergeNo, Look: view.LookPrimary},
			view.Item{ID: "merge-yes", Role: view.RoleButton, Name: w.Say("merge-yes"), Action: view.ActDiaryMergeYes, Value: d.Merging})
	}
	name, whose := w.Say("erase-ask", "who", who, "n", d.Rounds), d.Who
	switch d.Erasing {
	case EraseNothing:
		return view.Item{}
	case EraseEverybody:
		name, whose = w.Say("erase-ask-all"), ""
	}
	return dialog("erase-ask", name, w.Say("erase-sure"),
		view.Item{ID: "erase-no", Role: view.RoleButton, Name: w.Say("erase-no"), Action: view.ActDiaryEraseNo, Look: view.LookPrimary},
		view.Item{ID: "erase-yes", Role: view.RoleButton, Name: w.Say("erase-yes"), Action: view.ActDiaryEraseYes, Value: whose})
}

// dialog asks a question that is answered by one of two buttons. The first changes
// nothing, has the focus, and is what Escape does.
func dialog(id, name, text string, no, yes view.Item) view.Item {
	return view.Item{ID: id, Role: view.RoleDialog, Name: name, Action: no.Action, Children: []view.Item{
		{ID: id + "-what", Role: view.RoleGroup, Look: view.LookLines, Children: []view.Item{
			view.Subheading(id+"-name", name), {ID: id + "-text", Role: view.RoleText, Text: text}}},
		{ID: id + "-do", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{no, yes}},
	}}
}
