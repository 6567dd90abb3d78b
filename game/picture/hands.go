package picture

import (
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// Where the drummer's hands strike, seen as the drummer sees them: right the
// strong hand, left the other. The strong one strikes the dum near the middle and
// the tek at the rim, the other one the ka at the rim: common practice, as drum
// teachers describe it. The drummer who is left-handed mirrors it.
var (
	strongRim = spot{0.7744, 0.6741}
	strongDum = spot{0.5350, 0.5550}
	strongSak = spot{0.6100, 0.6000} // the cupped hand, further in than the fingers at the rim
	otherRim  = spot{0.2256, 0.6741}
	otherIn   = spot{0.3900, 0.6000}
)

const (
	handLength = 0.28
	handLean   = 0.065                  // turns that the fingers lean towards the middle
	handLift   = 0.040                  // how far a lifted hand draws back
	reach      = 260 * time.Millisecond // how long before its stroke a hand sets out
	rebound    = 420 * time.Millisecond // between two strokes of one hand that let it rise fully
)

// spot is a place on the drumhead.
type spot struct{ x, y float64 }

// A Hand is where one of the drummer's hands is.
type Hand struct {
	X, Y float64 // the tip of its middle finger
	Lift float64 // 0 on the skin, to 1 lifted
}

// HandsAt returns both hands at a time: each on its place when it strikes, risen
// between two strokes, the less the sooner they follow, and on its way to the next
// place before it. strikes are in the order of time. The strong hand comes first.
func HandsAt(strikes []round.Strike, t time.Duration) [2]Hand {
	return [2]Hand{handAt(strikes, riff.Strong, t), handAt(strikes, riff.Other, t)}
}

func handAt(strikes []round.Strike, hand riff.Hand, t time.Duration) Hand {
	last, next := -1, -1
	for i := range strikes {
		if strikes[i].Hand != hand {
			continue
		}
		if strikes[i].At > t {
			next = i
			break
		}
		last = i
	}
	rest := spotOf(hand, rhythm.Tek)
	switch {
	case last < 0 && next < 0:
		return Hand{rest.x, rest.y, 1}
	case last < 0:
		return between(rest, spotOf(hand, strikes[next].Sound), 2*rebound, max(rebound, 2*rebound-(strikes[next].At-t)))
	case next < 0:
		at := spotOf(hand, strikes[last].Sound)
		return between(at, at, 2*rebound, min(t-strikes[last].At, rebound))
	}
	return between(spotOf(hand, strikes[last].Sound), spotOf(hand, strikes[next].Sound),
		strikes[next].At-strikes[last].At, t-strikes[last].At)
}

// between is where a hand is so long after a stroke at one place, the next being
// due at another after a gap.
func between(from, to spot, gap, since time.Duration) Hand {
	way := smooth(float64(since-max(0, gap-reach)) / float64(min(gap, reach)))
	up := min(1, float64(gap)/float64(rebound))
	rise := smooth(2 * float64(min(since, gap-since)) / float64(min(gap, rebound)))
	return Hand{from.x + way*(to.x-from.x), from.y + way*(to.y-from.y), up * rise}
}

// smooth eases a part of a way, from 0 to 1.
func smooth(part float64) float64 {
	part = max(0, min(1, part))
	return part * part * (3 - 2*part)
}

func spotOf(hand riff.Hand, sound rhythm.Stroke) spot {
	switch inside := sound.Low() || sound == rhythm.Sak; {
	case hand == riff.Other && inside:
		return otherIn
	case hand == riff.Other:
		return otherRim
	case sound.Low():
		return strongDum
	case inside:
		return strongSak
	}
	return strongRim
}

// hands draws the drummer's hands over everything else, as quiet lines.
func (h *Head) hands(p *Picture) {
	if !h.ShowHands {
		return
	}
	for i, hand := range h.Hands {
		left, lean := i == 1, -handLean
		if left {
			lean = handLean
		}
		x, y := Around(hand.X, hand.Y, handLift*hand.Lift, lean+0.5)
		length := handLength * (1 + 0.05*hand.Lift)
		p.Hand(InkSkin, x, y, length, lean, left, 0).Fade(0.3)
		p.Hand(InkBone, x, y, length, lean, left, 0.0042).Fade(0.85)
	}
}
