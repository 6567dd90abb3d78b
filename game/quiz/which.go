package quiz

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"groundbeat/game/rhythm"
)

// mostRivals bounds how many rhythms are considered as choices beside another.
const mostRivals = 12

// which asks for the name of the rhythm.
func (q Question) which(players Group, answers int, l Lean, r *rand.Rand) (Question, error) {
	s := l.sorted(players)
	anchors := slices.DeleteFunc(slices.Clone(players), func(p Candidate) bool { return !s.askable(p.at) })
	if len(anchors) == 0 {
		return Question{}, lonely(players)
	}
	chosen := Nearby(r, s.groups(l.Anchor(r, anchors).at, answers))
	r.Shuffle(len(chosen), func(i, j int) { chosen[i], chosen[j] = chosen[j], chosen[i] })
	all := chosen.commonPace()
	strokes := all.any(r)
	for _, p := range chosen {
		q.Choices = append(q.Choices, Choice{ID: p.ID, Name: p.Name, Rhythm: p.Cycle, BPM: all.tempo(p, strokes)})
	}
	right := Pick(r, q.Choices)
	q.Rhythm, q.BPM, q.Right = right.Rhythm, right.BPM, right.ID
	q.Eights = whichEights
	return q, nil
}

func lonely(players Group) error {
	var names []string
	for _, p := range players {
		names = append(names, p.Name)
	}
	switch len(names) {
	case 0:
		return TooFew("none of them may be asked for; a question needs two")
	case 1:
		return TooFew("%s alone; a question needs two", names[0])
	}
	return TooFew("no two of %s differ in more than speed and can be played with as many strokes a second",
		strings.Join(names, ", "))
}

// A group is a set of rhythms, or a run of candidates for one.
type Group []Candidate

// pair finds out which members may be choices of one question: those with a pace in
// common that can be told apart.
func (g Group) Pair(told func(a, b Candidate) bool) {
	for i := range g {
		g[i].at, g[i].Fits = i, make([]bool, len(g))
		for j := range i {
			fits := Group{g[i], g[j]}.hasCommonPace() && told(g[i], g[j])
			g[i].Fits[j], g[j].Fits[i] = fits, fits
		}
	}
}

// apartAtAnySpeed reports whether two rhythms can be told apart by whoever does not know
// how fast they are played.
func ApartAtAnySpeed(a, b Candidate) bool { return !Mistakable(a.Cycle, b.Cycle) }

// rivals returns the members that may be choices beside p, the most easily mixed
// up with it first: those that the player mixes up with it, its family, then the
// others, each by how near they are; or where it leans apart the least easily first.
func (g Group) Rivals(p Candidate, l Lean) Group {
	type rival struct {
		Candidate
		mixed    int
		stranger bool
		apart    int
	}
	var some []rival
	for _, o := range g {
		if p.Fits[o.at] {
			some = append(some, rival{o, l.Mixed(p.ID, o.ID), p.Family == "" || o.Family != p.Family, Apart(p.Cycle, o.Cycle)})
		}
	}
	slices.SortStableFunc(some, func(a, b rival) int { // they come by id
		near := cmp.Or(cmp.Compare(b.mixed, a.mixed), Order(a.stranger, b.stranger), cmp.Compare(a.apart, b.apart))
		if l.Apart {
			return -near
		}
		return near
	})
	var sorted Group
	for _, s := range some[:min(len(some), mostRivals)] {
		sorted = append(sorted, s.Candidate)
	}
	return sorted
}

// takes reports whether p may be a choice beside all members.
func (g Group) takes(p Candidate) bool {
	return !slices.ContainsFunc(g, func(o Candidate) bool { return !o.Fits[p.at] }) &&
		append(slices.Clone(g), p).hasCommonPace()
}

func Order(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// apart is [rhythm.Apart] in units of 2⁻²⁰. Its last bits differ between
// machines that fuse multiplication with addition and those that do not, and the
// order of rivals must not.
func Apart(a, b *rhythm.Cycle) int { return int(math.Round(rhythm.Apart(a, b) * (1 << 20))) }

// largest returns all groups of an anchor and rivals of the greatest size, up to
// most, that may be choices of one question. Those of the rivals that come first
// come first. There is at least one rival, which makes a group with the anchor.
func Largest(anchor Candidate, rivals Group, most int) []Group {
	sized := make([][]ranked, most+1)
	var extend func(g Group, from, ranks int)
	extend = func(g Group, from, ranks int) {
		sized[len(g)] = append(sized[len(g)], ranked{g, ranks})
		for i := from; i < len(rivals) && len(g) < most; i++ {
			if g.takes(rivals[i]) {
				extend(append(slices.Clone(g), rivals[i]), i+1, ranks+i)
			}
		}
	}
	extend(Group{anchor}, 0, 0)
	for len(sized[len(sized)-1]) == 0 {
		sized = sized[:len(sized)-1]
	}
	best := sized[len(sized)-1]
	slices.SortStableFunc(best, func(a, b ranked) int { return cmp.Compare(a.ranks, b.ranks) })
	groups := make([]Group, len(best))
	for i, b := range best {
		groups[i] = b.Group
	}
	return groups
}

// ranked is a group with the sum of the places of its rivals.
type ranked struct {
	Group
	ranks int
}

// nearby draws a group: the first with one chance in two, the second with one in
// four and so on, and the last with what is left.
func Nearby(r *rand.Rand, groups []Group) Group {
	for _, g := range groups[:len(groups)-1] {
		if r.IntN(2) == 0 {
			return g
		}
	}
	return groups[len(groups)-1]
}
