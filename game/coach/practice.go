package coach

import (
	"slices"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
)

// MinPractice is the shortest practice that there is, in minutes.
const MinPractice = 3

// Practice returns a practice of some minutes (at least MinPractice, else it panics)
// with rhythms of the pool, round by round: it begins with something that goes well,
// goes on with what is due, the worst mix-up, a rhythm that is new, the edge of
// hearing and the ladder of tempo, and ends with a slow rhythm. Of somebody new it is
// a first practice: dum or tek, how many dums, some rhythms slowly and bare. No two
// steps in a row are the same. The same arguments give the same practice for ever; the
// order of the pool does not matter. It is nil where nothing of the pool can be asked.
func (k Known) Practice(minutes int, pool []*rhythm.Cycle, seed uint64) []Step {
	if minutes < MinPractice {
		panic("quiz: a practice of less than three minutes")
	}
	p := newPlanner(k, pool, seed)
	if len(p.pool) == 0 {
		return nil
	}
	return p.practice(60 * minutes)
}

// A phase is a part of a practice: its share of the time, and its steps one by one,
// until there are no more.
type phase struct {
	weight int
	next   func(i int) (Step, bool)
}

// phases are those between the first step and the last, of which the last never
// ends. The weights are chosen.
func (p *planner) phases() []phase {
	if p.fresh() {
		return []phase{{3, p.begin}, {2, p.edge}, {1, p.faster}}
	}
	return []phase{{3, p.due}, {2, p.mixUp}, {1, p.unmet}, {3, p.edge}, {2, p.faster}}
}

// practice fills so many seconds. A phase that ends before its time leaves it to those
// that follow.
func (p *planner) practice(seconds int) []Step {
	steps := []Step{p.opening()}
	last := p.Slow()
	left := seconds - steps[0].Seconds - last.Seconds
	phases, weights := p.phases(), 0
	for _, f := range phases {
		weights += f.weight
	}
	for _, f := range phases {
		budget := left * f.weight / weights
		weights -= f.weight
		for i := 0; ; i++ {
			s, ok := f.next(i)
			if !ok || 2*budget < s.Seconds {
				break
			}
			s = p.varied(s, steps[len(steps)-1])
			steps = append(steps, s)
			budget, left = budget-s.Seconds, left-s.Seconds
		}
	}
	if last.Same(steps[len(steps)-1]) {
		last = p.varied(last, steps[len(steps)-1])
	}
	return append(steps, last)
}

// varied returns a step, or one of another length or tempo where the one before was
// the same.
func (p *planner) varied(s, before Step) Step {
	if !s.Same(before) {
		return s
	}
	if f, _ := quiz.FormOf(quiz.Ask(s.Kind)); f.Once {
		return p.tap(p.own[0], bare, p.tempo, ReasonRung)
	}
	if s.Eights > shortEights {
		s.Eights = shortEights
	} else {
		s.Eights++
	}
	s.Seconds = s.lasts(p.cycles(s.Rhythms))
	return s
}

// cycles are the rhythms of ids, all of the pool.
func (p *planner) cycles(ids []string) []*rhythm.Cycle {
	var all []*rhythm.Cycle
	for _, c := range p.pool {
		if slices.Contains(ids, c.ID) {
			all = append(all, c)
		}
	}
	return all
}
