package quiz

import (
	"math/rand/v2"
	"slices"

	"groundbeat/game/diary"
)

// Version is that of the questions which a seed stands for: 1 without [Lean.Fill], 2 with
// it.
const Version = 2

// A Lean says which wrong answers come first in questions of Which. The zero Lean is
// for a player of whom nothing is known: the family first, then what is most alike.
type Lean struct {
	// Apart puts the rhythms first that are the least alike, as long as the lower
	// rungs do not hold: who cannot tell a dum from a tek yet cannot tell maqsum from
	// sa'idi, and learns nothing from being asked.
	Apart bool
	// Fill asks for as many names as were asked for where questions of one density have
	// fewer; see the package comment. Without it the questions are those of the first
	// version of this package, which old seeds stand for.
	Fill  bool
	Often map[Pair]int // how often of 100 two are mixed up, of those that are
}

// pair is two ids in order.
type Pair struct{ a, b string }

func PairOf(a, b string) Pair { return Pair{min(a, b), max(a, b)} }

// leastOften is from how often of 100 on two rhythms count as mixed up, and doubt is
// how many right answers are added before that is reckoned, so that one slip does not
// make a mix-up: it takes one in six, or two in 16. Chosen.
const LeastOften, doubt = 10, 4

// LeanOf returns the lean of a player who mixes rhythms up so, and whose lower rungs
// hold or not. A pair counts both ways. What is broken in the table is passed over.
func LeanOf(m diary.Mixed, rungsHold bool) Lean {
	l := Lean{Apart: !rungsHold, Often: map[Pair]int{}}
	for i, a := range m.Rhythms {
		for j, b := range m.Rhythms[:i] {
			mixed := said(m, i, j) + said(m, j, i)
			asked := mixed + said(m, i, i) + said(m, j, j) + doubt
			if often := 100 * mixed / asked; often >= LeastOften && a != b {
				l.Often[PairOf(a, b)] = often
			}
		}
	}
	return l
}

// said is how often one was said for another, 0 where the table has no place for it.
func said(m diary.Mixed, played, answered int) int {
	if played >= len(m.Said) || answered >= len(m.Said[played]) {
		return 0
	}
	return max(0, m.Said[played][answered])
}

// mixed is how often of 100 two rhythms are mixed up; 0 while it leans apart.
func (l Lean) Mixed(a, b string) int {
	if l.Apart {
		return 0
	}
	return l.Often[PairOf(a, b)]
}

// anchor draws the rhythm that the choices are put together around: in every other
// question one that is mixed up with another of them, where there are such.
func (l Lean) Anchor(r *rand.Rand, anchors Group) Candidate {
	known := slices.DeleteFunc(slices.Clone(anchors), func(p Candidate) bool { return !l.mixes(p, anchors) })
	if len(known) > 0 && r.IntN(2) == 0 {
		return Pick(r, known)
	}
	return Pick(r, anchors)
}

// mixes reports whether a rhythm is mixed up with one that may stand beside it.
func (l Lean) mixes(p Candidate, others Group) bool {
	return slices.ContainsFunc(others, func(o Candidate) bool { return p.Fits[o.at] && l.Mixed(p.ID, o.ID) > 0 })
}
