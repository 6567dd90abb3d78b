package session

import (
	"strconv"

	"groundbeat/game/link"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

func (d *Shared) Allowed() link.Allowed {
	a := link.Allowed{Rhythms: d.Rhythms().IDs(), Set: func(text string) error {
		_, err := quiz.ParseLink(text, d.Rhythms())
		return err
	}}
	for _, c := range d.Rhythms().Answers(true) {
		a.Answers = append(a.Answers, c.ID)
	}
	for l := riff.Bare; l <= riff.Solo; l++ {
		if riff.Available(l) {
			a.Riffs = append(a.Riffs, l.String())
		}
	}
	return a
}

func (d *Shared) SetTempo(bpm int) {
	slow, fast := d.Tempi(d.Cycle())
	d.Address.BPM = min(max(bpm, slow), fast)
}

// Cycle is the address's rhythm; Any has none.
func (d *Shared) Cycle() *rhythm.Cycle {
	c, _ := d.Rhythms().Get(d.Address.Rhythm)
	return c
}

// Tempi are the ends of what is offered: the rhythm's own, widened downwards to
// practise slowly, and always with what the link asked for.
func (d *Shared) Tempi(c *rhythm.Cycle) (slow, fast int) {
	slow, fast = link.LeastBPM, link.MostBPM
	if c != nil {
		slow, fast = max(slow, c.Tempo.Slow*2/3), min(fast, c.Tempo.Fast)
	}
	if d.Address.BPM == 0 {
		return slow, fast
	}
	return min(slow, d.Address.BPM), max(fast, d.Address.BPM)
}

// Seed is the address's seed and, for each next question, the one after it; or
// a new one.
func (d *Shared) Seed() uint64 {
	if d.Address.Seed != 0 {
		return (d.Address.Seed-1+d.nth)%link.MostSeed + 1
	}
	return d.Wall.Seed()
}

// Level is the address's riff level.
func (d *Shared) Level() riff.Level {
	level, err := riff.ParseLevel(d.Address.Riff)
	if err != nil {
		panic(err) // the address allows only what there is
	}
	return level
}

func (d *Shared) Levels() []string { return d.Allowed().Riffs }

// Options are the rhythms that can be chosen: the most used, and the rest.
func (d *Shared) Options() (core, more []view.Option) {
	for _, id := range d.Rhythms().IDs() {
		c, _ := d.Rhythms().Get(id)
		if option := view.RhythmOption(c, d.Words); c.Core {
			core = append(core, option)
		} else {
			more = append(more, option)
		}
	}
	return core, more
}

// Riff is what the drums play over a rhythm as the address says, with a seed.
func (d *Shared) Riff(c *rhythm.Cycle, seed uint64) riff.Riff {
	r, err := round.Riff(c, d.Level(), seed, 0, d.Address.Hide)
	if err != nil {
		panic(err) // the address allows only what there is
	}
	return r
}

// Cycles are all rhythms.
func (d *Shared) Cycles() (all []*rhythm.Cycle) {
	for _, id := range d.Rhythms().IDs() {
		all = append(all, d.Learner.Cycle(id))
	}
	return all
}

// Set puts into the address what a control of the settings says; the next question is
// another one.
func (d *Shared) Set(action, value string) {
	number, _ := strconv.Atoi(value)
	switch action {
	case view.ActNext:
		d.nth++
	case view.ActRhythm:
		d.Address = d.Address.WithRhythm(value)
	case view.ActTempo:
		d.SetTempo(number)
	case view.ActEights:
		d.Address.Eights = number
	case view.ActLevel:
		d.Address = d.Address.WithLevel(value)
	case view.ActHide:
		d.Address.Hide = number
	case view.ActAsk:
		d.ask(value)
	case view.ActAnswers:
		d.Address.Answers = number
	case view.ActFrom:
		d.Address.From = value
	}
}

// ask puts into the address what is asked, and what there are answers to.
func (d *Shared) ask(what string) {
	a := &d.Address
	a.Ask = what
	if ids := a.Ids(); len(ids) == 1 {
		a.From = view.FromFive // one rhythm cannot be told from others
	} else if len(ids) > 1 {
		a.Answers = min(max(a.Answers, link.LeastAnswers), len(ids))
	}
}
