package screens

import (
	"time"

	"groundbeat/game/picture"
)

// hearReplay plays the round in review once more, from its first step.
func (x *tapped) hearReplay() {
	q := x.round.Setting
	q.BPM = x.replay.Tempo(q.BPM)
	p, err := x.deals.replay(q)
	if err != nil {
		panic(err) // it was played
	}
	x.hears = true
	x.follower.Follow(p)
	x.replay.Apply(x.s.Sound)
	x.track.Play(p, x.s.Wall.Now())
}

// silence ends what is heard in the review.
func (x *tapped) silence() {
	if !x.hears {
		return
	}
	x.hears, x.s.Stale = false, true
	x.track.Stop()
	x.s.Ear.Apply()
}

// followReplay follows what is heard in the review.
func (x *tapped) followReplay(now float64) {
	at, _, why := x.track.Heard(now)
	if why != "" || at >= x.track.Passage.End() {
		x.silence()
		return
	}
	x.at = x.track.Seen(at)
}

// drawReplay shows on the head what is heard in the review, cycle by cycle, with the
// taps that came then.
func (x *tapped) drawReplay() {
	h := &x.head
	h.Moves = x.hears || h.Shown.Turning
	if h.Shown.Turning = x.hears && x.at >= 0; !h.Shown.Turning {
		return
	}
	h.Shown.Review, h.Shown.Turn = nil, x.track.Passage.TurnAt(x.at)
	if x.follower.Ring(&h.Shown, x.at) {
		h.Shown.Taps = h.Shown.Taps[:0]
		for _, t := range x.round.Taps() {
			into := t.At - x.round.Result().Setup - x.round.Start()
			if cycle, turn := cycleAndTurn(into, x.round.Setting.Rhythm.Length(x.round.BPM())); cycle == x.follower.Ringed {
				h.Shown.Taps = append(h.Shown.Taps, picture.Tap{Turn: turn})
			}
		}
	}
	x.follower.ShowHands(&h.Shown, x.s.Ear.Hands, x.at)
}

// cycleAndTurn is in which cycle a time lies, and how far round it: one just ahead
// of the next cycle's first step, by up to a tap's reach, belongs there.
func cycleAndTurn(into, length time.Duration) (cycle int, turn float64) {
	turns := float64(into) / float64(length)
	cycle = int((into + picture.Reach) / length)
	return cycle, turns - float64(cycle)
}
