package quiz

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// A Change is a question of Hear the change: what is played, and what it may have
// become.
//
// The choices are drawn as those of Which are, near the rhythm that it begins
// with: its family first, then the most alike. Any of them, each with the same
// chance, is what it becomes; in one round of four it never changes. No two of
// them and of the first can be taken for one another, and all can be played at the
// one tempo within their own ranges, so that neither the tempo nor a change of it
// tells anything. (How many strokes it has is then heard: that belongs to the
// rhythm.) Where it changes is drawn last and has to do with nothing else.
type Change struct {
	round.Change
	Choices []Choice // at least two, in the order in which they are shown; never the first rhythm
}

// neverOdds is in how many rounds there is one without a change.
const neverOdds = 4

// Choice returns the choice of an ID.
func (c Change) Choice(id string) (Choice, bool) { return Question{Choices: c.Choices}.Choice(id) }

// NextChange returns the question of a seed: a change from start, or where that is
// nil from any rhythm of the pool, to others of the pool, filled or not. In what else it
// leans there is no difference. eights is the length, from round.MinLongEights to
// round.MaxLongEights; the rest is as with [Next]. Where fewer than two rhythms can
// follow, the error wraps [ErrTooFew].
func (l Lean) NextChange(start *rhythm.Cycle, pool []*rhythm.Cycle, answers, eights, bpm int, level riff.Level, seed uint64) (Change, error) {
	if err := check(answers, bpm, level); err != nil {
		return Change{}, err
	}
	if eights < round.MinLongEights || eights > round.MaxLongEights {
		return Change{}, fmt.Errorf("quiz: %d eights; a change is asked in %d to %d", eights, round.MinLongEights, round.MaxLongEights)
	}
	q := Change{Change: round.Change{Eights: eights, Level: level, Seed: seed}}
	return q.draw(start, l.steady(start, pool, bpm), answers, Draw(seed, 5))
}

// ChangeNames tells how many names there are to choose from after a change. The first
// rhythm is none of them.
func (l Lean) ChangeNames(start *rhythm.Cycle, pool []*rhythm.Cycle, answers, bpm int) Names {
	g := l.steady(start, pool, bpm)
	n := names(g, answers+1, func(at int) int {
		if start != nil && g[at].ID != start.ID || !slices.Contains(g[at].Fits, true) {
			return 0
		}
		if all := Largest(g[at], g.Rivals(g[at], Lean{}), answers+1); len(all[0]) > MinAnswers {
			return len(all[0])
		}
		return 0
	})
	n.Least, n.Most = max(0, n.Least-1), max(0, n.Most-1)
	return n
}

// steady are the players of a pool, and of start, for whom a common pace is a common
// tempo: as many strokes as beats. Those that may follow one another fit.
func (l Lean) steady(start *rhythm.Cycle, pool []*rhythm.Cycle, bpm int) Group {
	if start != nil {
		pool = append([]*rhythm.Cycle{start}, pool...)
	}
	g := Group(CandidatesOf(pool, bpm, riff.Bare, func(c *rhythm.Cycle, _ riff.Level) int { return c.Beats() }))
	told := ApartAtAnySpeed
	if l.Fill {
		told = apartAtItsTempo
	}
	g.Pair(func(a, b Candidate) bool {
		// 4/4 counts quarters and 9/8 eighths: they have no beat in common.
		return a.Metre.Unit == b.Metre.Unit && told(a, b)
	})
	return g
}

// apartAtItsTempo reports whether two rhythms can be told apart by whoever has heard the
// beat before: those that are the same strokes at two speeds can, as long as both are
// played within their own ranges of tempo. Baladi and masmudi kabir at 100 quarters a
// minute have the same strokes, but the dums of one come twice as fast.
func apartAtItsTempo(a, b Candidate) bool {
	own := func(p Candidate) bool { return p.Tempo.Slow <= p.Slow && p.Fast <= p.Tempo.Fast }
	return ApartAtAnySpeed(a, b) || own(a) && own(b) && len(rhythm.Differ(a.Cycle, b.Cycle)) > 0
}

func (q Change) draw(start *rhythm.Cycle, players Group, answers int, r *rand.Rand) (Change, error) {
	first, groups := players.beginnings(start, answers)
	if len(first) == 0 {
		return Change{}, TooFew("none that two others could follow at the same tempo")
	}
	i := r.IntN(len(first))
	chosen := Nearby(r, groups[i])
	slowest, fastest := chosen.commonPace().tempi(first[i])
	if first[i].fixed {
		fastest = slowest
	}
	q.From, q.BPM = first[i].Cycle, slowest+r.IntN(fastest-slowest+1)
	for _, p := range chosen[1:] {
		q.Choices = append(q.Choices, Choice{ID: p.ID, Name: p.Name, Rhythm: p.Cycle, BPM: q.BPM})
	}
	r.Shuffle(len(q.Choices), func(i, j int) { q.Choices[i], q.Choices[j] = q.Choices[j], q.Choices[i] })
	to := Pick(r, q.Choices).Rhythm
	if r.IntN(neverOdds) > 0 {
		from := round.FirstChange(q.Eights)
		q.To, q.At = to, from+r.IntN(round.LastChange(q.Eights)-from+1)
	}
	return q, nil
}

// beginnings are the members, or start alone, that two others or more may follow,
// each with the groups of it and them.
func (g Group) beginnings(start *rhythm.Cycle, answers int) (first Group, groups [][]Group) {
	for _, p := range g {
		if start != nil && p.ID != start.ID || !slices.Contains(p.Fits, true) {
			continue
		}
		if all := Largest(p, g.Rivals(p, Lean{}), answers+1); len(all[0]) > MinAnswers {
			first, groups = append(first, p), append(groups, all)
		}
	}
	return first, groups
}
