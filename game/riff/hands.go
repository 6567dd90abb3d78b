package riff

import (
	"time"

	"groundbeat/game/rhythm"
)

// What two hands can play. One hand needs HandGap from stroke to stroke: ten a
// second is what the fastest drummer measured did with one stick, where 5 to 7 is
// what others do (S. Fujii, K. Kudo, T. Ohtsuki and S. Oda, "Tapping performance
// and underlying wrist muscle activity of non-drummers, drummers, and the world's
// fastest drummer", Neuroscience Letters 459, 69–73, 2009). A drummer comes near it
// with two fingers in turn, which is half as fast again as one (T. Aoki and
// H. Kinoshita, "Temporal and force characteristics of fast double-finger,
// single-finger and hand tapping", Ergonomics 44, 1368–1383, 2001) and what
// professional darbuka players are faster in than amateurs (K. Honda and S. Fujii,
// "Tapping performance of professional and amateur darbuka players", Frontiers in
// Psychology 13, 861821, 2022). Both hands together need TwoHandsGap: 16 strokes a
// second, 8 of each hand in turn (chosen, between those figures).
const (
	HandGap     = 100 * time.Millisecond
	TwoHandsGap = 62500 * time.Microsecond
)

// A Hand is one of the drummer's two.
type Hand uint8

// The hands. The strong one strikes dums and slaps, and teks if it can; kas are
// the other's.
const (
	Strong Hand = iota
	Other
)

// String returns "strong" or "other".
func (h Hand) String() string { return [...]string{"strong", "other"}[h] }

// Hands returns which hand plays each stroke of a lead drum's part at bpm beats a
// minute: the one that its letter says, and where that would be too soon after
// its last stroke the hands take turns, so that some tek falls to the other hand
// or some ka to the strong one. A roll counts as its first stroke. ok is false if
// two hands cannot play it: strokes closer than TwoHandsGap, or a hand that would
// strike twice within HandGap whatever the turns; the hands are then as near as
// they come.
//
// Of all ways it takes the one with the fewest strokes against their letter, by
// dynamic programming over the two hands. Where strokes are TwoHandsGap apart, a
// hand that has let one stroke pass is free again.
func Hands(c *rhythm.Cycle, lead []Stroke, bpm int) (hands []Hand, ok bool) {
	hands, ok = make([]Hand, len(lead)), true
	if len(lead) == 0 {
		return hands, ok
	}
	ways := make([][2]way, len(lead))
	for i, s := range lead {
		gap := HandGap
		if i > 0 {
			gap = s.At(c, bpm) - lead[i-1].At(c, bpm)
			ok = ok && gap >= TwoHandsGap
			ways[i] = onward(ways[i-1], gap < HandGap)
		}
		for _, h := range []Hand{Strong, Other} {
			ways[i][h].cost += against(s.Sound, h)
		}
	}
	last := len(lead) - 1
	if ways[last][Other].cost < ways[last][Strong].cost {
		hands[last] = Other
	}
	ok = ok && ways[last][hands[last]].cost < beyond
	for i := last; i > 0; i-- {
		hands[i-1] = ways[i][hands[i]].before
	}
	return hands, ok
}

// A way is the cheapest way to have come to a stroke with one hand: what it cost,
// and which hand struck before.
type way struct {
	cost   int64
	before Hand
}

// beyond is what it costs to do what cannot be done: more than all else.
const beyond = 1 << 40

// onward is how to come to the next stroke with either hand, which costs no more
// than that one hand cannot strike twice so soon.
func onward(from [2]way, soon bool) (to [2]way) {
	again := int64(0)
	if soon {
		again = beyond
	}
	for _, h := range []Hand{Strong, Other} {
		to[h] = way{from[h].cost + again, h}
		if turn := from[1-h].cost; turn < to[h].cost {
			to[h] = way{turn, 1 - h}
		}
	}
	return to
}

// against is what it costs to strike with a hand, by the stroke's letter.
func against(s rhythm.Stroke, h Hand) int64 {
	switch {
	case h == Strong && s == rhythm.Ka:
		return 2
	case h == Strong:
		return 0
	case s == rhythm.Dum || s == rhythm.Sak:
		return beyond
	case s == rhythm.Tek:
		return 1
	case s == rhythm.LightTek:
		return 2
	}
	return 0
}
