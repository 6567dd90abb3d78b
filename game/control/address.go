package control

import (
	"strconv"

	"groundbeat/game/link"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

func (s *Shared) Allowed() link.Allowed {
	a := link.Allowed{Rhythms: s.Rhythms().IDs(), Set: func(text string) error {
		_, err := warmup.ParseLink(text, s.Rhythms())
		return err
	}}
	for _, c := range s.Rhythms().Answers(true) {
		a.Answers = append(a.Answers, c.ID)
	}
	for l := riff.Bare; l <= riff.Solo; l++ {
		if riff.Available(l) {
			a.Riffs = append(a.Riffs, l.String())
		}
	}
	return a
}

func (s *Shared) SetTempo(bpm int) {
	slow, fast := s.Tempi(s.Cycle())
	s.Address.BPM = min(max(bpm, slow), fast)
}

// Cycle is the address's rhythm; Any has none.
func (s *Shared) Cycle() *rhythm.Cycle {
	c, _ := s.Rhythms().Get(s.Address.Rhythm)
	return c
}

// Tempi are the ends of what is offered: the rhythm's own, widened downwards to
// practise slowly, and always with what the link asked for.
func (s *Shared) Tempi(c *rhythm.Cycle) (slow, fast int) {
	slow, fast = link.LeastBPM, link.MostBPM
	if c != nil {
		slow, fast = max(slow, c.Tempo.Slow*2/3), min(fast, c.Tempo.Fast)
	}
	if s.Address.BPM == 0 {
		return slow, fast
	}
	return min(slow, s.Address.BPM), max(fast, s.Address.BPM)
}

// Seed is the address's seed and, for each next question, the one after it; or
// a new one.
func (s *Shared) Seed() uint64 {
	if s.Address.Seed != 0 {
		return (s.Address.Seed-1+s.Nth)%link.MostSeed + 1
	}
	return s.Wall.Seed()
}

// Level is the address's riff level.
func (s *Shared) Level() riff.Level {
	level, err := riff.ParseLevel(s.Address.Riff)
	if err != nil {
		panic(err) // the address allows only what there is
	}
	return level
}

func (s *Shared) Levels() []string { return s.Allowed().Riffs }

// Options are the rhythms that can be chosen: the most used, and the rest.
func (s *Shared) Options() (core, more []view.Option) {
	for _, id := range s.Rhythms().IDs() {
		c, _ := s.Rhythms().Get(id)
		if option := view.RhythmOption(c, s.Words); c.Core {
			core = append(core, option)
		} else {
			more = append(more, option)
		}
	}
	return core, more
}

// Riff is what the drums play over a rhythm as the address says, with a seed.
func (s *Shared) Riff(c *rhythm.Cycle, seed uint64) riff.Riff {
	r, err := round.Riff(c, s.Level(), seed, 0, s.Address.Hide)
	if err != nil {
		panic(err) // the address allows only what there is
	}
	return r
}

// Cycles are all rhythms.
func (s *Shared) Cycles() (all []*rhythm.Cycle) {
	for _, id := range s.Rhythms().IDs() {
		all = append(all, s.Learner.Cycle(id))
	}
	return all
}

// Set puts into the address what a control of the settings says; the next question is
// another one.
func (s *Shared) Set(action, value string) {
	number, _ := strconv.Atoi(value)
	switch action {
	case view.ActNext:
		s.Nth++
	case view.ActRhythm:
		s.Address = s.Address.WithRhythm(value)
	case view.ActTempo:
		s.SetTempo(number)
	case view.ActEights:
		s.Address.Eights = number
	case view.ActLevel:
		s.Address = s.Address.WithLevel(value)
	case view.ActHide:
		s.Address.Hide = number
	case view.ActAsk:
		s.ask(value)
	case view.ActAnswers:
		s.Address.Answers = number
	case view.ActFrom:
		s.Address.From = value
	}
}

// ask puts into the address what is asked, and what there are answers to.
func (s *Shared) ask(what string) {
	a := &s.Address
	a.Ask = what
	if ids := a.Ids(); len(ids) == 1 {
		a.From = view.FromFive // one rhythm cannot be told from others
	} else if len(ids) > 1 {
		a.Answers = min(max(a.Answers, link.LeastAnswers), len(ids))
	}
}
