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
func (q Question) which(players group, answers int, l Lean, r *rand.Rand) (Question, error) {
	s := l.sorted(players)
	anchors := slices.DeleteFunc(slices.Clone(players), func(p player) bool { return !s.askable(p.at) })
	if len(anchors) == 0 {
		return Question{}, lonely(players)
	}
	chosen := nearby(r, s.groups(l.anchor(r, anchors).at, answers))
	r.Shuffle(len(chosen), func(i, j int) { chosen[i], chosen[j] = chosen[j], chosen[i] })
	all := chosen.commonPace()
	strokes := all.any(r)
	for _, p := range chosen {
		q.Choices = append(q.Choices, Choice{ID: p.ID, Name: p.Name, Rhythm: p.Cycle, BPM: all.tempo(p, strokes)})
	}
	right := pick(r, q.Choices)
	q.Rhythm, q.BPM, q.Right = right.Rhythm, right.BPM, right.ID
	q.Eights = whichEights
	return q, nil
}

func lonely(players group) error {
	var names []string
	for _, p := range players {
		names = append(names, p.Name)
	}
	switch len(names) {
	case 0:
		return tooFew("none of them may be asked for; a question needs two")
	case 1:
		return tooFew("%s alone; a question needs two", names[0])
	}
	return tooFew("no two of %s differ in more than speed and can be played with as many strokes a second",
		strings.Join(names, ", "))
}

// A group is a set of rhythms, or a run of candidates for one.
type group []player

// pair finds out which members may be choices of one question: those with a pace in
// common that can be told apart.
func (g group) pair(told func(a, b player) bool) {
	for i := range g {
		g[i].at, g[i].fits = i, make([]bool, len(g))
		for j := range i {
			fits := group{g[i], g[j]}.hasCommonPace() && told(g[i], g[j])
			g[i].fits[j], g[j].fits[i] = fits, fits
		}
	}
}

// apartAtAnySpeed reports whether two rhythms can be told apart by whoever does not know
// how fast they are played.
func apartAtAnySpeed(a, b player) bool { return !mistakable(a.Cycle, b.Cycle) }

// rivals returns the members that may be choices beside p, the most easily mixed
// up with it first: those that the player mixes up with it, its family, then the
// others, each by how near they are; or where it leans apart the least easily first.
func (g group) rivals(p player, l Lean) group {
	type rival struct {
		player
		mixed    int
		stranger bool
		apart    int
	}
	var some []rival
	for _, o := range g {
		if p.fits[o.at] {
			some = append(some, rival{o, l.mixed(p.ID, o.ID), p.Family == "" || o.Family != p.Family, apart(p.Cycle, o.Cycle)})
		}
	}
	slices.SortStableFunc(some, func(a, b rival) int { // they come by id
		near := cmp.Or(cmp.Compare(b.mixed, a.mixed), order(a.stranger, b.stranger), cmp.Compare(a.apart, b.apart))
		if l.Apart {
			return -near
		}
		return near
	})
	var sorted group
	for _, s := range some[:min(len(some), mostRivals)] {
		sorted = append(sorted, s.player)
	}
	return sorted
}

// takes reports whether p may be a choice beside all members.
func (g group) takes(p player) bool {
	return !slices.ContainsFunc(g, func(o player) bool { return !o.fits[p.at] }) &&
		append(slices.Clone(g), p).hasCommonPace()
}

func order(a, b bool) int {
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
func apart(a, b *rhythm.Cycle) int { return int(math.Round(rhythm.Apart(a, b) * (1 << 20))) }

// largest returns all groups of an anchor and rivals of the greatest size, up to
// most, that may be choices of one question. Those of the rivals that come first
// come first. There is at least one rival, which makes a group with the anchor.
func largest(anchor player, rivals group, most int) []group {
	sized := make([][]ranked, most+1)
	var extend func(g group, from, ranks int)
	extend = func(g group, from, ranks int) {
		sized[len(g)] = append(sized[len(g)], ranked{g, ranks})
		for i := from; i < len(rivals) && len(g) < most; i++ {
			if g.takes(rivals[i]) {
				extend(append(slices.Clone(g), rivals[i]), i+1, ranks+i)
			}
		}
	}
	extend(group{anchor}, 0, 0)
	for len(sized[len(sized)-1]) == 0 {
		sized = sized[:len(sized)-1]
	}
	best := sized[len(sized)-1]
	slices.SortStableFunc(best, func(a, b ranked) int { return cmp.Compare(a.ranks, b.ranks) })
	groups := make([]group, len(best))
	for i, b := range best {
		groups[i] = b.group
	}
	return groups
}

// ranked is a group with the sum of the places of its rivals.
type ranked struct {
	group
	ranks int
}

// nearby draws a group: the first with one chance in two, the second with one in
// four and so on, and the last with what is left.
func nearby(r *rand.Rand, groups []group) group {
	for _, g := range groups[:len(groups)-1] {
		if r.IntN(2) == 0 {
			return g
		}
	}
	return groups[len(groups)-1]
}
