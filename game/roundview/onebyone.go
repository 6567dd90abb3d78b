package roundview

import (
	"groundbeat/game/picture"
	"math"
	"slices"
)

// OneByOne lists each dum and each added tap in the order of time. count says
// the dancer's count of an absolute step; perEight is how many steps an eight
// has.
func OneByOne(r *picture.Review, count func(step int) string, perEight int) []TapResult {
	type entry struct {
		at float64 // in steps
		TapResult
	}
	var all []entry
	add := func(at float64, s TapState, t TapResult) {
		step := int(math.Round(at))
		t.Eight, t.Count, t.State = max(0, step)/perEight+1, beatAnd(count, step), s
		all = append(all, entry{at, t})
	}
	for _, l := range r.Landed {
		add(float64(l.Step), stateOf(r, l), TapResult{Offset: l.Offset})
	}
	for _, step := range r.LeftOut {
		add(float64(step), TapLeftOut, TapResult{})
	}
	for _, at := range r.Added {
		add(at, TapAdded, TapResult{})
	}
	slices.SortStableFunc(all, func(a, b entry) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return 0
	})
	results := make([]TapResult, len(all))
	for i, e := range all {
		results[i] = e.TapResult
	}
	return results
}

// Opened tells where the breaks and rolls begin, in order; count and perEight as in
// OneByOne.
func Opened(r *picture.Review, count func(step int) string, perEight int) []OpenResult {
	var all []OpenResult
	for _, o := range r.Open {
		all = append(all, OpenResult{Eight: o.From/perEight + 1, Count: beatAnd(count, o.From)})
	}
	return all
}

func stateOf(r *picture.Review, l picture.Landed) TapState {
	switch {
	case l.Offset > r.On:
		return TapBehind
	case l.Offset < -r.On:
		return TapAhead
	}
	return TapOn
}

// beatAnd says a count with its beat before it: "2 &", and a beat by itself.
func beatAnd(count func(step int) string, step int) string {
	name := count(step)
	for s := step - 1; !picture.IsBeat(name) && s >= step-4; s-- {
		if c := count(s); picture.IsBeat(c) {
			return c + " " + name
		}
	}
	return name
}
