package classroom

import (
	"fmt"
	"slices"

	"groundbeat/game/classview"
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

func (x *Class) Screen() view.Screen {
	switch {
	case !x.inside:
		return x.readyModel().Screen(x.s.Words)
	case x.run.Stage() == warmup.After:
		return x.afterModel().Screen(x.s.Words)
	}
	m := x.model()
	x.head.Set(m.Head())
	x.line.Set(m.ShownWall(x.s.Words))
	return m.Screen(x.s.Words)
}

func (x *Class) readyModel() *classview.Class {
	r := &x.ready
	m := &classview.Class{
		Set: r.set, Lasts: r.length(r.set), Levels: x.s.Levels(), Class: r.class, Letters: r.letters, Pools: r.pools(),
		Problem: r.problem, NoCopies: r.unkept || x.unkept, Volume: x.s.ShownVolume(), Notes: x.s.Notes(),
		Hearing: len(x.s.Classes.KeptUnder(host.KeptDiary)) == 0,
		Saved:   slices.ContainsFunc(r.saved, func(s warmup.Set) bool { return s.Name != "" && s.Name == r.set.Name }),
	}
	add := func(id string, s warmup.Set) {
		m.Sets = append(m.Sets, classview.ClassSet{ID: id, Name: s.Name, Set: s, Lasts: r.length(s)})
	}
	if r.linked {
		add(classview.PutSet, r.set)
	}
	if r.last != nil {
		add(classview.LastSet, *r.last)
	}
	for _, id := range warmup.Presets() {
		s, _ := warmup.Preset(id)
		add(id, s)
	}
	for i, s := range r.saved {
		add(fmt.Sprint(savedSet, i), s)
	}
	if x.run != nil && x.run.Stage() != warmup.After {
		m.Unended = &classview.ClassSet{Set: x.run.Warmup.Set}
	}
	return m
}

func (x *Class) model() *classview.Room {
	t, i := x.run.Task()
	m := &classview.Room{
		Stage: x.run.Stage(), Nth: i + 1, Of: len(x.run.Warmup.Tasks), Sounds: x.one || x.loop.On, Heard: x.heard,
		Slower: x.slow, Help: x.s.Ear.Shown(), Blank: x.blank, Letters: x.ready.letters, Lined: x.lined,
		Narrow: x.s.Width < narrow,
	}
	if x.silent {
		m.Problem = x.s.Words.Say("void-silent")
	}
	if !x.s.Sound.Audible() {
		m.Problem = x.s.Words.Say("class-no-sound")
	}
	if ends := x.run.Ends(); !ends.IsZero() {
		m.Ends = ends.Format("15:04")
	}
	if t == nil {
		m.Length = classview.LengthOf(x.run.Warmup, x.s.Wall.Date())
		if p := x.shownRhythm(); p != nil && x.loop.On {
			m.Rhythm = p.Rhythm(0)
		}
		return m
	}
	m.Kind = t.Kind
	x.asked(m, t)
	return m
}

// asked tells the model of a task what may be known at its stage.
func (x *Class) asked(m *classview.Room, t *warmup.Task) {
	if t.Kind != warmup.HandsUp {
		m.Rhythm = t.Rhythm
	}
	switch m.Stage {
	case warmup.Counting:
		at := x.run.Answer()
		c := t.Choices[at]
		m.Answer, m.Hands = view.Option{Value: c.ID, Label: c.Name}, x.run.Hands()[at]
	case warmup.Telling, warmup.Hearing:
		m.Rhythm = t.Rhythm
		if t.Kind.Counted() {
			x.tell(m, t)
		}
	}
}

// tell tells the model what it was.
func (x *Class) tell(m *classview.Room, t *warmup.Task) {
	told := &classview.Told{Sides: [2]*rhythm.Cycle{t.Rhythm, t.Other}}
	if c, ok := t.Choice(t.Right); ok {
		told.Right = view.Option{Value: c.ID, Label: c.Name}
	}
	id, hands := x.run.TakenFor()
	if c, ok := t.Choice(id); ok {
		told.Taken, told.Hands = view.Option{Value: c.ID, Label: c.Name}, hands
		if c.Rhythm != nil {
			told.Sides[1] = c.Rhythm
		}
	}
	m.Told = told
	if other := told.Sides[1]; other != nil {
		told.Differences = quiz.DifferencesOf(t.Rhythm, other)
		told.Circled = unlike(t.Rhythm, other)
	}
	if t.Kind == warmup.FindTheOne {
		told.Circled = []int{t.Last}
	}
	if t.Kind == warmup.BaseOrRiff {
		m.Lead = x.lead(t)
		if x.one && len(x.turns) > 0 && x.run.Stage() == warmup.Telling {
			m.Turn = x.turns[0].ID
		}
	}
	if x.one && len(x.turns) > 0 && x.turns[0].Rhythm != nil {
		m.Rhythm = x.turns[0].Rhythm
	} else if x.one && t.Other != nil && x.now >= 0 {
		m.Rhythm = x.loop.Passage.Rhythm(x.now)
	}
}

// narrow is how wide a window is, in CSS pixels, in which half as many steps stand side
// by side: a telephone's, upright.
const narrow = 600

// lead is what the lead drum plays in the cycle that is heard, or in the first of what
// was asked.
func (x *Class) lead(t *warmup.Task) picture.RiffCycle {
	p := x.loop.Passage
	if !x.one {
		var err error
		if p, _, err = t.Passage(100); err != nil {
			panic(err) // the warm-up was made of it
		}
	}
	steps := p.Rhythm(0).Steps()
	part := p.Played(0)
	return picture.RiffOf(part, steps, x.cycle)
}

// unlike are the steps on which two rhythms of as many steps differ.
func unlike(a, b *rhythm.Cycle) (steps []int) {
	if a.Beats() != b.Beats() || a.Steps() != b.Steps() {
		return nil
	}
	for i := range a.Skeleton {
		if a.Skeleton[i] != b.Skeleton[i] {
			steps = append(steps, i)
		}
	}
	return steps
}

func (x *Class) afterModel() *classview.ClassAfter {
	const day = "2006-01-02"
	e := x.run.Entry()
	m := &classview.ClassAfter{
		Entry: e, Earlier: x.earlier(), Left: x.run.Left(), Names: map[string]string{}, Today: e.When.Local().Format(day),
		Seed: x.run.Warmup.Seed, Unkept: x.unkept,
	}
	for _, e := range m.Earlier {
		m.Dates = append(m.Dates, e.When.Local().Format(day))
	}
	for _, id := range x.s.Rhythms().IDs() {
		c, _ := x.s.Rhythms().Get(id)
		m.Names[id] = c.Name
	}
	for i := range x.run.Reached() {
		if c := x.run.Warmup.Tasks[i].Rhythm; !slices.Contains(m.Sheet, c) {
			m.Sheet = append(m.Sheet, c)
		}
	}
	return m
}

// handOver hands over the class's diary as a file.
func (x *Class) handOver(action string) {
	all := x.diary()
	this := x.run.Entry()
	all = slices.DeleteFunc(all, func(e warmup.Entry) bool { return e.Class != this.Class || e.Same(this) })
	all = append(all, this)
	name, kind, text := "groundbeat-class.csv", "text/csv", warmup.CSV(all)
	if action == view.ActClassJSON {
		name, kind, text = "groundbeat-class.jsonl", "application/jsonl", ""
		for _, e := range all {
			text += e.Line() + "\n"
		}
	}
	if x.s.Classes.Save(name, kind, text) != nil {
		x.unkept = true
	}
}
