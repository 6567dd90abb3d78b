package diaryview

import (
	"fmt"
	"slices"
	"strconv"

	"groundbeat/game/coach"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Next is something to practise next, and why. Kind and Reason are always there, the
// rest where the reason needs it.
type Next struct {
	Reason  Reason
	Kind    string   // of round, as in package history
	Rhythms []string // IDs of what it is about; none where one stroke is asked
	Level   string   // riff level; ReasonEdge
	Tempi   []int    // counts a minute; ReasonTempo, from slow to faster, and ReasonSlow
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
	ReasonTempo               // from slow to faster
	ReasonRung                // before whole rhythms
)

var reasons = map[coach.Reason]Reason{
	coach.ReasonFirst: ReasonFirst, coach.ReasonWell: ReasonWell, coach.ReasonEasy: ReasonSlow,
	coach.ReasonDue: ReasonDue, coach.ReasonMixUp: ReasonMixUp, coach.ReasonRung: ReasonRung,
	coach.ReasonEdge: ReasonEdge, coach.ReasonTempo: ReasonTempo, coach.ReasonSlow: ReasonSlow,
}

// NextOf returns steps that belong together, of which there is one at least, as they are
// offered.
func NextOf(steps []coach.Step) Next {
	s := steps[0]
	n := Next{Reason: reasons[s.Reason], Kind: s.Kind, Rhythms: s.Rhythms, Level: s.Level.String()}
	if f, _ := quiz.FormOf(quiz.Ask(s.Kind)); f.Rung {
		n.Reason, n.Rhythms = ReasonRung, nil
	}
	for _, one := range steps {
		if one.BPM > 0 {
			n.Tempi = append(n.Tempi, one.BPM)
		}
	}
	return n
}

// next is what to practise: a practice of some minutes at one press, and single
// rounds with their reasons. Nothing without sound or anything to offer.
func (d *Diary) next(w say.Words, told []claim) []view.Item {
	if len(d.Next) == 0 || d.Silent {
		return nil
	}
	list := view.Item{ID: "next-list", Role: view.RoleList, Look: view.LookDoors}
	for i, n := range d.Next {
		is := d.offer(w, n, told)
		if is.text == "" {
			continue
		}
		id := fmt.Sprintf("next-%d", i+1)
		list.Children = append(list.Children, view.Item{ID: id, Role: view.RoleListItem, Children: []view.Item{
			{ID: id + "-begin", Role: view.RoleButton, Name: sayDo(w, n, d.Rhythms), Text: is.text, Action: view.ActDiaryNext, Value: strconv.Itoa(i)},
		}})
	}
	items := []view.Item{
		view.Subheading("next", w.Say("diary-next")),
		{ID: "practice", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
			minutes(w, d.Minutes),
			{ID: "practise", Role: view.RoleButton, Name: SayPractise(w, d.Minutes), Action: view.ActDiaryPractise,
				Value: strconv.Itoa(d.Minutes), Look: view.LookPrimary}}}}
	if len(list.Children) > 0 {
		items = append(items, list)
	}
	return items
}

// minutes is how long a practice is to be.
func minutes(w say.Words, chosenOf int) view.Item {
	it := view.Item{ID: "minutes", Role: view.RoleChoice, Name: w.Say("practice-length"), Action: view.ActDiaryMinutes}
	for _, n := range PracticeMinutes() {
		it.Options = append(it.Options, view.Option{Value: strconv.Itoa(n), Label: w.Say("minutes", "n", n)})
	}
	it.Value = view.Chosen(it.Options, strconv.Itoa(chosenOf))
	return it
}

func SayPractise(w say.Words, minutes int) string {
	switch minutes {
	case 5:
		return w.Say("practise-five")
	case 20:
		return w.Say("practise-twenty")
	}
	return w.Say("practise-ten")
}

// sayDo says what is done: "Tap maqsum", "Tell maqsum from baladi", "Dum or tek?".
func sayDo(w say.Words, n Next, rhythms []*rhythm.Cycle) string {
	names := calledAs(rhythms, n.Rhythms)
	switch form, asked := quiz.FormOf(quiz.Ask(n.Kind)); {
	case !asked && len(names) > 0:
		return w.Say("next-tap", "rhythm", names[0])
	case form.Named && len(names) == 2:
		return w.Say("next-tell-two", "first", names[0], "second", names[1])
	case form.Named && len(names) > 2:
		return w.Say("next-tell", "list", say.List(w, names))
	}
	return sayKind(w, n.Kind)
}

// calledAs are how rhythms are called in the diary: without what stands in brackets; one
// that is not here by its ID.
func calledAs(rhythms []*rhythm.Cycle, ids []string) []string {
	names := slices.Clone(ids)
	for i, id := range ids {
		for _, c := range rhythms {
			if c.ID == id {
				names[i] = view.Plain(c.Name)
			}
		}
	}
	return names
}

// offer says why something is offered, and what that claims beside what is told; nothing
// where it would be said to go well, and something else says that it does not.
func (d *Diary) offer(w say.Words, n Next, told []claim) finding {
	f := finding{text: d.sayNext(w, n, told)}
	switch n.Reason {
	case ReasonWell:
		if slices.ContainsFunc(n.Rhythms, func(id string) bool { return weak(told, id) }) {
			return finding{}
		}
		f.claims = n.claims(saysWell)
	case ReasonFirst:
		f.claims = n.claims(saysNew)
	case ReasonEdge:
		f.claims = n.claims(saysWork)
	case ReasonMixUp:
		if c, is := mixUpTold(told, n.Rhythms); is {
			f.claims = []claim{c}
		}
	}
	return f
}

// claims are the same of each of the rhythms.
func (n Next) claims(is says) (all []claim) {
	for _, id := range n.Rhythms {
		all = append(all, claim{says: is, rhythm: id, kind: n.Kind, level: n.Level})
	}
	return all
}

// mixUpTold returns what is told of two rhythms of which one is taken for the other, and
// reports whether that is told.
func mixUpTold(told []claim, rhythms []string) (claim, bool) {
	for _, c := range told {
		if c.says == saysTaken && slices.Contains(rhythms, c.rhythm) && slices.Contains(rhythms, c.other) {
			return c, true
		}
	}
	return claim{}, false
}

// sayNext says why.
func (d *Diary) sayNext(w say.Words, n Next, told []claim) string {
	switch n.Reason {
	case ReasonEdge:
		return w.Say("next-edge", "level", levelName(w, n.Level))
	case ReasonWell:
		return w.Say("next-well")
	case ReasonFirst:
		return w.Say("next-first")
	case ReasonSlow:
		return w.Say("next-slow", "tempo", sayTempi(w, n.Tempi))
	case ReasonTempo:
		return w.Say("next-tempo", "tempo", sayTempi(w, n.Tempi))
	case ReasonRung:
		return w.Say("next-rung")
	case ReasonMixUp:
		if c, is := mixUpTold(told, n.Rhythms); is {
			return w.Say("next-mix-up-often", "rhythm", d.name(c.rhythm), "other", d.name(c.other))
		}
		return w.Say("next-mix-up")
	}
	return w.Say("next-due")
}

// sayTempi says some tempi: "70, 74 and 76 counts a minute".
func sayTempi(w say.Words, all []int) string {
	var each []string
	for _, bpm := range all {
		each = append(each, strconv.Itoa(bpm))
	}
	return w.Say("tempo", "bpm", say.List(w, each))
}
