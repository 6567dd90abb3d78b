package picture

import (
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// Where less motion was asked for (prefers-reduced-motion of Media Queries Level 5, for
// those whom motion makes ill), nothing glides: sweep, line and hands stand from one
// stroke to the next, and are as exact in time there as where they move.

// SetCalm says whether less motion was asked for.
func (h *Head) SetCalm(calm bool) { h.Calm = calm }

// SetCalm says whether less motion was asked for.
func (l *Line) SetCalm(calm bool) { l.Calm = calm }

// SetCalm says whether less motion was asked for.
func (b *Wall) SetCalm(calm bool) { b.Calm = calm }

// Stands returns where the sweep is drawn, in turns from 0 to 1: where it is, or if it
// is calm on the stroke of the base that was heard last. Where the strokes are being
// asked it stands on the last count instead, which tells nothing of them.
func (h *Head) Stands() float64 {
	if !h.Calm {
		return h.Turn
	}
	n := len(h.Base)
	if h.Hidden {
		n = len(h.Counts)
	}
	if n == 0 {
		return 0
	}
	last := lastStep(n, stepAt(h.Turn, n), func(i int) bool {
		if h.Hidden {
			return IsBeat(h.Counts[i])
		}
		return h.Base[i].Sounds()
	})
	return float64(last) / float64(n)
}

// stepAt is the step of so many that lies at a turn. A stroke's own turn is worked out
// from its time and may come out a little short of its step, by less than the millionth
// of one.
func stepAt(turn float64, steps int) int {
	return int(Wrap(turn)*float64(steps)+1e-6) % steps
}

// lastStep returns the last step that is marked, up to one of so many and going round;
// 0 if none is.
func lastStep(steps, from int, marked func(int) bool) int {
	for back := range steps {
		if i := (from - back + steps) % steps; marked(i) {
			return i
		}
	}
	return 0
}

// stands is the step of the base that the line marks as heard.
func (l *Line) stands() int {
	if !l.Calm || len(l.Base) == 0 {
		return l.Step
	}
	return lastStep(len(l.Base), l.Step%len(l.Base), func(i int) bool { return l.Base[i].Sounds() })
}

// HandsStanding returns both hands where less motion was asked for: the one that struck
// last lies where it struck, the other is lifted where it did so. The strong one comes
// first; strikes are in the order of time.
func HandsStanding(strikes []round.Strike, t time.Duration) [2]Hand {
	hands, last := [2]Hand{}, [2]time.Duration{-1, -1}
	for i, hand := range [...]riff.Hand{riff.Strong, riff.Other} {
		at := spotOf(hand, rhythm.Tek)
		for _, s := range strikes {
			if s.At > t {
				break
			}
			if s.Hand == hand {
				at, last[i] = spotOf(hand, s.Sound), s.At
			}
		}
		hands[i] = Hand{at.x, at.y, 1}
	}
	for i := range hands {
		if last[i] >= 0 && last[i] >= last[1-i] {
			hands[i].Lift = 0
		}
	}
	return hands
}
