package view

import (
	"fmt"
	"strings"

	"groundbeat/game/rhythm"
)

// sources is where the facts of a rhythm come from, shown when opened.
func sources(w Words, c *rhythm.Cycle) Item {
	it := Item{ID: "about", Role: RoleDetails, Name: w.Say("about")}
	if len(c.Spellings) > 0 {
		it.Children = append(it.Children, Item{ID: "spellings", Role: RoleText,
			Text: w.Say("about-spellings", "names", strings.Join(c.Spellings, ", "))})
	}
	it.Children = append(it.Children, facts("facts", w.Say("about-notes"), c.Notes)...)
	it.Children = append(it.Children, facts("sources", w.Say("about-sources"), c.Sources)...)
	it.Children = append(it.Children, facts("memory", w.Say("about-memory"), c.Memory)...)
	return it
}

// facts is a list of sentences under a heading; nothing without sentences.
func facts(id, name string, all []string) []Item {
	if len(all) == 0 {
		return nil
	}
	list := Item{ID: id, Role: RoleList, Name: name}
	for i, text := range all {
		list.Children = append(list.Children, Item{ID: fmt.Sprintf("%s-%d", id, i+1), Role: RoleListItem, Text: text})
	}
	return []Item{subheading(id+"-heading", name), list}
}
