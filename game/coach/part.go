package coach

import (
	"groundbeat/game/quiz"
	"slices"
)

// A Part of a practice is steps in a row that are practised for one reason. A lower rung
// between steps at the edge belongs to these.
type Part struct {
	Reason Reason
	Steps  []Step
}

// Parts returns the parts of a practice, in order.
func Parts(steps []Step) (all []Part) {
	for _, s := range steps {
		if n := len(all); n > 0 && all[n-1].takes(s) {
			all[n-1].Steps = append(all[n-1].Steps, s)
			continue
		}
		all = append(all, Part{s.Reason, []Step{s}})
	}
	return all
}

// takes reports whether a step that follows belongs to the part.
func (p *Part) takes(s Step) bool {
	switch {
	case s.Reason == p.Reason:
		return true
	case p.Reason == ReasonRung && s.Reason == ReasonEdge:
		p.Reason = ReasonEdge
		return true
	}
	return p.Reason == ReasonEdge && s.Reason == ReasonRung
}

// Seconds is how long the part lasts, as expected.
func (p Part) Seconds() (sum int) {
	for _, s := range p.Steps {
		sum += s.Seconds
	}
	return sum
}

// Rhythms are the ids of the part's rhythms, in the order in which they come.
func (p Part) Rhythms() (ids []string) {
	for _, s := range p.Steps {
		for _, id := range s.Rhythms {
			if !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	return ids
}

// New returns which rhythms of a step the player has never met and has to be shown
// before they are asked: those that she taps, or tells by name.
func (k Known) New(s Step) (ids []string) {
	if quiz.IsRung(s.Kind) {
		return nil
	}
	for _, id := range s.Rhythms {
		if !k.met(id) {
			ids = append(ids, id)
		}
	}
	return ids
}
