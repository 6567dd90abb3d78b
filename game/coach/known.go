package coach

import (
	"cmp"
	"slices"

	"groundbeat/game/diary"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// Known is what is known of one player on one output. The zero Known, but for Cycles,
// is of somebody new.
type Known struct {
	Rounds []history.Round // finished ones, in order; the latest few hundred of each kind are enough
	Met    []diary.Met     // in any order
	Mixed  diary.Mixed
	Today  string // 2006-01-02, where the player is
	Cycles Cycles
	Riffs  *Riffs // found before, and added to; nil: all is found anew
}

// Edge returns the edge of the player's ear in rounds of a kind. It began near the
// edge of another kind, if that was found before: the ear is the same.
func (k Known) Edge(kind string) Edge {
	before := k.Rounds
	if i := slices.IndexFunc(k.Rounds, func(r history.Round) bool { return r.Kind == kind }); i >= 0 {
		before = k.Rounds[:i]
	}
	warm := 0
	for _, other := range history.Kinds {
		if quiz.IsRung(other.ID) {
			continue // it asks less of the ear
		}
		if e := EdgeOf(other.ID, before, k.Cycles, 0, ""); e.Found && warm == 0 {
			warm = e.Level
		}
	}
	return EdgeOf(kind, k.Rounds, k.Cycles, warm, k.Today)
}

// Lean returns which wrong answers come first in the player's questions of Which.
func (k Known) Lean() quiz.Lean { return quiz.LeanOf(k.Mixed, len(loose(k.Rounds)) == 0) }

// whole are the kinds of round in which a practice asks for whole rhythms: tapped, and
// told by name.
var whole = []string{history.Dums, history.Which}

// Well is something that goes well: a rhythm whose dums are tapped, or that is told by
// name. The zero Well is nothing.
type Well struct {
	Kind     string // one of whole
	Rhythm   string
	Right, N int // of the latest N rounds
}

// Of how many of the latest rounds of a rhythm how many must be right for it to go
// well: three of four, of six or more.
const (
	leastWell, mostWell = 6, 20
	wellOf, wellRight   = 4, 3
)

// well returns what goes best among rhythms, by (right + 1)/(n + 2), which trusts
// few rounds less (Laplace's rule of succession).
func (k Known) well(among map[string]*rhythm.Cycle) Well {
	var best Well
	for _, kind := range whole {
		for _, w := range k.sorts(kind) {
			if among[w.Rhythm] != nil && w.N >= leastWell && wellOf*w.Right >= wellRight*w.N && w.better(best) {
				best = w
			}
		}
	}
	return best
}

func (w Well) better(than Well) bool {
	return than.N == 0 || (w.Right+1)*(than.N+2) > (than.Right+1)*(w.N+2)
}

// sorts counts the latest rounds of a kind by rhythm, in the order of their ids.
func (k Known) sorts(kind string) []Well {
	counts := map[string]Well{}
	trials := trialsOf(kind, k.Rounds, k.Cycles)
	for i := len(trials) - 1; i >= 0; i-- {
		t := trials[i]
		w := counts[t.rhythm]
		if w.N == mostWell {
			continue
		}
		w.Kind, w.Rhythm, w.N = kind, t.rhythm, w.N+1
		if t.right {
			w.Right++
		}
		counts[t.rhythm] = w
	}
	var all []Well
	for _, w := range counts {
		all = append(all, w)
	}
	slices.SortFunc(all, func(a, b Well) int { return cmp.Compare(a.Rhythm, b.Rhythm) })
	return all
}

// met reports whether there was a round of a rhythm in which she did something.
func (k Known) met(rhythm string) bool {
	return slices.ContainsFunc(k.Rounds, func(r history.Round) bool { return r.Rhythm == rhythm && history.Tried(r) }) ||
		slices.ContainsFunc(k.Met, func(m diary.Met) bool { return m.Rhythm == rhythm })
}

// tried are the rounds of which something came: no others tell where the player is, nor
// that she was there.
func tried(rounds []history.Round) []history.Round {
	return slices.DeleteFunc(slices.Clone(rounds), func(r history.Round) bool { return !history.Tried(r) })
}
