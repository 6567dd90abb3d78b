package quiz

import (
	"slices"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// sorted is a pool whose members are paired: as dense as one another, and where it is
// filled besides, as fast.
type sorted struct {
	Lean
	dense, timed Group // the same players in the same order; timed is empty unless it is filled
}

func (l Lean) sorted(players Group) sorted {
	s := sorted{Lean: l, dense: players}
	s.dense.Pair(ApartAtAnySpeed)
	if l.Fill {
		s.timed = players.timed()
		s.timed.Pair(ApartAtAnySpeed)
	}
	return s
}

// timed returns the players as if they had a stroke on every sixteenth, so that a common
// pace is a common tempo, whatever note their beat is.
func (g Group) timed() Group {
	all := slices.Clone(g)
	for i := range all {
		all[i].strokes = all[i].Beats() * 16 / all[i].Metre.Unit
	}
	return all
}

// askable reports whether another may be a choice beside a member.
func (s sorted) askable(at int) bool {
	return slices.Contains(s.dense[at].Fits, true) || len(s.timed) > 0 && slices.Contains(s.timed[at].Fits, true)
}

// groups returns all groups around a member that have the most choices: of one density,
// or if those have fewer than were asked for, of one tempo.
func (s sorted) groups(at, answers int) []Group {
	anchor := s.dense[at]
	groups := Largest(anchor, s.dense.Rivals(anchor, s.Lean), answers)
	if len(groups[0]) == answers || len(s.timed) == 0 {
		return groups
	}
	anchor = s.timed[at]
	if other := Largest(anchor, s.timed.Rivals(anchor, s.Lean), answers); len(other[0]) > len(groups[0]) {
		return other
	}
	return groups
}

// Names is how many names the questions of a pool have, and what keeps them from having
// as many as were asked for.
type Names struct {
	Least, Most int
	Few         *rhythm.Cycle    // one around which there are Least; nil where Least is as many as asked for
	Apart       [2]*rhythm.Cycle // two that are never asked together, if Few is there; else nil
	Speed       bool             // since they are the same strokes at two speeds; else since they have no tempo in common
}

// Names tells it of the questions that Next makes of names.
func (l Lean) Names(pool []*rhythm.Cycle, answers, bpm int, level riff.Level) Names {
	players := Group(CandidatesOf(pool, bpm, level, lasting))
	timed := l.sorted(players)
	n := names(players, answers, func(at int) int { return len(timed.groups(at, answers)[0]) })
	if l.Fill && n.Few == nil {
		return n // density could only add to them
	}
	s := l.sorted(CandidatesOf(pool, bpm, level, Strokes))
	return names(s.dense, answers, func(at int) int { return len(s.groups(at, answers)[0]) })
}

// lasting is how many sixteenths a cycle lasts: as many strokes as [group.timed] gives it.
func lasting(c *rhythm.Cycle, _ riff.Level) int { return c.Beats() * 16 / c.Metre.Unit }

// names puts it together from the choices that there are around each member. Members
// around which there is no question are not asked, and do not count.
func names(g Group, answers int, around func(at int) int) (n Names) {
	for at, p := range g {
		choices := around(at)
		if choices < MinAnswers {
			continue
		}
		if n.Least == 0 || choices < n.Least {
			n.Least, n.Few = choices, p.Cycle
		}
		n.Most = max(n.Most, choices)
	}
	if n.Least >= answers {
		n.Few = nil
		return n
	}
	n.Apart, n.Speed = g.clash()
	return n
}

// clash returns two members that are never choices of one question: the same strokes at
// two speeds, if there are such.
func (g Group) clash() (two [2]*rhythm.Cycle, speed bool) {
	for i, p := range g {
		for _, o := range g[:i] {
			switch {
			case p.Fits[o.at] || speed:
			case Mistakable(p.Cycle, o.Cycle):
				return [2]*rhythm.Cycle{o.Cycle, p.Cycle}, true
			case two[0] == nil:
				two = [2]*rhythm.Cycle{o.Cycle, p.Cycle}
			}
		}
	}
	return two, false
}
