package roundview

import (
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Which drums are heard again in a review.
const (
	DrumsBoth = "both"
	DrumsBass = "bass"
	DrumsLead = "lead"
)

// Replay is how what was played is heard once more in a review.
type Replay struct {
	Hearing bool   // it is heard now; Dums
	Drums   string // DrumsBoth, DrumsBass or DrumsLead; empty: both
	Slowly  bool   // at two thirds of its tempo
}

// controls are what can be set of it, at any time: which drums, which is heard at
// once, and how fast.
func (r Replay) controls(w say.Words) []view.Item {
	drums := r.Drums
	if drums == "" {
		drums = DrumsBoth
	}
	return []view.Item{
		{ID: "drums", Role: view.RoleChoice, Name: w.Say("drums"), Action: view.ActDrums, Value: drums, Options: []view.Option{
			{Value: DrumsBoth, Label: w.Say("drums-both")}, {Value: DrumsBass, Label: w.Say("drums-bass")}, {Value: DrumsLead, Label: w.Say("drums-lead")}}},
		{ID: "slowly", Role: view.RoleCheckBox, Name: w.Say("slowly"), Action: view.ActSlowly, Checked: r.Slowly},
	}
}

// again is a round to be heard once more: one button in two states, so that the
// focus stays on it, and what can be set.
func (d *Dums) again(w say.Words) view.Item {
	if d.Volume < 0 {
		return view.Item{}
	}
	it := view.Item{ID: "hear", Role: view.RoleButton, Name: w.Say("hear-once-more"), Action: view.ActHear}
	if d.Replay.Hearing {
		it.Name, it.Action = w.Say("stop"), view.ActStop
	}
	return view.Item{ID: "again", Role: view.RoleGroup, Look: view.LookRow, Children: append([]view.Item{it}, d.Replay.controls(w)...)}
}

// again is what can be set of how the sides are heard, and a third side to be heard.
func (q *Which) again(w say.Words) view.Item {
	if !q.form().Pool || q.Volume < 0 || len(q.Sides) == 0 {
		return view.Item{}
	}
	it := view.Item{ID: "again", Role: view.RoleGroup, Look: view.LookRow}
	if len(q.Sides) > 2 {
		it.Children = append(it.Children, q.hear(w, 2, q.Sides[2]))
	}
	it.Children = append(it.Children, q.Replay.controls(w)...)
	return it
}

// mostOpened is how many breaks and rolls are told one by one.
const mostOpened = 4

// sayOpened says where the drummer breaks off or rolls, and that nothing is asked
// there; nothing where that is nowhere.
func (r *Result) sayOpened(w say.Words, spans []picture.OpenSteps, at []OpenResult) string {
	var all []string
	for i, o := range spans {
		if i == mostOpened && len(spans) > mostOpened+1 {
			all = append(all, w.Say("opened-more", "n", len(spans)-i))
			break
		}
		if o.Roll {
			all = append(all, w.Say("opened-roll", "eight", at[i].Eight, "count", at[i].Count))
		} else {
			all = append(all, w.Say("opened-break", "eight", at[i].Eight, "count", at[i].Count))
		}
	}
	if len(all) == 0 {
		return ""
	}
	return r.says(w, foundOpen, "places", say.List(w, all))
}
