package quiz

import (
	"math/rand/v2"
	"slices"

	"groundbeat/scoring/diary"
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
	often map[pair]int // how often of 100 two are mixed up, of those that are
}

// pair is two ids in order.
type pair struct{ a, b string }

func pairOf(a, b string) pair { return pair{min(a, b), max(a, b)} }

// leastOften is from how often of 100 on two rhythms count as mixed up, and doubt is
// how many right answers are added before that is reckoned, so that one slip does not
// make a mix-up: it takes one in six, or two in 16. Chosen.
const leastOften, doubt = 10, 4

// LeanOf returns the lean of a player who mixes rhythms up so, and whose lower rungs
// hold or not. A pair counts both ways. What is broken in the table is passed over.
func LeanOf(m diary.Mixed, rungsHold bool) Lean {
	l := Lean{Apart: !rungsHold, often: map[pair]int{}}
	for i, a := range m.Rhythms {
		for j, b := range m.Rhythms[:i] {
			mixed := said(m, i, j) + said(m, j, i)
			asked := mixed + said(m, i, i) + said(m, j, j) + doubt
			if often := 100 * mixed / asked; often >= leastOften && a != b {
				l.often[pairOf(a, b)] = often
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
func (l Lean) mixed(a, b string) int {
	if l.Apart {
		return 0
	}
	return l.often[pairOf(a, b)]
}

// anchor draws the rhythm that the choices are put together around: in every other
// question one that is mixed up with another of them, where there are such.
func (l Lean) anchor(r *rand.Rand, anchors group) player {
	known := slices.DeleteFunc(slices.Clone(anchors), func(p player) bool { return !l.mixes(p, anchors) })
	if len(known) > 0 && r.IntN(2) == 0 {
		return pick(r, known)
	}
	return pick(r, anchors)
}

// mixes reports whether a rhythm is mixed up with one that may stand beside it.
func (l Lean) mixes(p player, others group) bool {
	return slices.ContainsFunc(others, func(o player) bool { return p.fits[o.at] && l.mixed(p.ID, o.ID) > 0 })
}
