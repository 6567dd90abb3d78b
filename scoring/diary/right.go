package diary

import (
	"slices"

	"groundbeat/scoring/history"
)

// tappedKinds are the kinds of rounds in which dums are tapped.
var tappedKinds = []string{history.Dums, history.Stop, history.Carry}

// Right reports whether a round came out right.
//
// One that is answered says so itself. So does one in which a change is to be heard,
// unless the press that heard it may as well have come by chance, see [scoring.Noticed]:
// then it counts as not heard, whatever was said of it. One in
// which dums are tapped is right when at least three of four were tapped within its
// window, and the taps that belong to none are at most a quarter as many as the dums.
//
// The bounds are chosen, without a source. Three of four lets one slip pass in two bars
// of a rhythm with two dums, and is missed where one of the dums of a rhythm with three
// (baladi, sa'idi) is never heard, or is heard in the wrong place. The other bound keeps
// who taps every beat from being right: in maqsum that is as many taps again as there
// are dums. What is still right by chance is counted as such, see [Reach].
func Right(r history.Round) bool {
	if !slices.Contains(tappedKinds, r.Kind) {
		return r.Right && !byChance(r)
	}
	dums := r.Matched + r.Out
	return dums > 0 && 4*r.Matched >= 3*dums && 4*r.Added <= dums
}

// Tried reports whether anything came of the player in a round. One in which dums are
// to be tapped and no tap came tells neither what she can do nor what she cannot: the
// telephone rang, or nothing was heard. To keep still while a rhythm may change is an
// answer, and so is every answer.
func Tried(r history.Round) bool {
	return !slices.Contains(tappedKinds, r.Kind) || r.Matched+r.Added+len(r.Aside) > 0
}
