package soundview

import (
	"fmt"
	"strings"

	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// sources is where the facts of a rhythm come from, shown when opened.
func sources(w say.Words, c *rhythm.Cycle) view.Item {
	it := view.Item{ID: "about", Role: view.RoleDetails, Name: w.Say("about")}
	if len(c.Spellings) > 0 {
		it.Children = append(it.Children, view.Item{ID: "spellings", Role: view.RoleText,
			Text: w.Say("about-spellings", "names", strings.Join(c.Spellings, ", "))})
	}
	it.Children = append(it.Children, facts("facts", w.Say("about-notes"), c.Notes)...)
	it.Children = append(it.Children, facts("sources", w.Say("about-sources"), c.Sources)...)
	it.Children = append(it.Children, facts("memory", w.Say("about-memory"), c.Memory)...)
	return it
}

// facts is a list of sentences under a heading; nothing without sentences.
func facts(id, name string, all []string) []view.Item {
	if len(all) == 0 {
		return nil
	}
	list := view.Item{ID: id, Role: view.RoleList, Name: name}
	for i, text := range all {
		list.Children = append(list.Children, view.Item{ID: fmt.Sprintf("%s-%d", id, i+1), Role: view.RoleListItem, Text: text})
	}
	return []view.Item{view.Subheading(id+"-heading", name), list}
}
