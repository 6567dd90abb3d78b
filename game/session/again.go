package session

import (
	"time"

	"groundbeat/game/host"
	"groundbeat/game/view"
)

// again is how what was played is heard once more in a review.
type again struct {
	drums  string // view.DrumsBoth and so on; "": both
	slowly bool
}

// apply lets the drums be heard that were chosen.
func (a *again) apply(s host.Sound) {
	switch a.drums {
	case view.DrumsBass:
		s.Balance(levels(100))
	case view.DrumsLead:
		s.Balance(levels(-100))
	default:
		s.Balance(1, 1)
	}
}

// set answers the controls of a review, and reports whether what is heard must
// begin anew.
func (a *again) set(action, value string) (anew bool) {
	if action == view.ActDrums {
		a.drums = value
		return false
	}
	a.slowly = value != ""
	return true
}

// tempo is how fast it is heard.
func (a *again) tempo(bpm int) int {
	if a.slowly {
		return max(view.LeastBPM, bpm*2/3)
	}
	return bpm
}

// hearAgain plays the round in review once more, from its first step.
func (x *tapping) hearAgain() {
	q := x.round.Question
	q.BPM = x.again.tempo(q.BPM)
	p, err := x.replay(q)
	if err != nil {
		panic(err) // it was played
	}
	x.hears = true
	x.follow(p)
	x.again.apply(x.Sound)
	x.play(p, x.Wall.Now())
}

// silence ends what is heard in the review.
func (x *tapping) silence() {
	if !x.hears {
		return
	}
	x.hears, x.stale = false, true
	x.stop()
	x.ear.apply()
}

// followAgain follows what is heard in the review.
func (x *tapping) followAgain(now float64) {
	at, _, why := x.heard(now)
	if why != "" || at >= x.passage.End() {
		x.silence()
		return
	}
	x.at = x.seen(at)
}

// drawAgain shows on the head what is heard in the review, cycle by cycle, with the
// taps that came then.
func (x *tapping) drawAgain() {
	h := &x.head
	h.moves = x.hears || h.Turning
	if h.Turning = x.hears && x.at >= 0; !h.Turning {
		return
	}
	h.Review, h.Turn = nil, x.passage.TurnAt(x.at)
	if x.ring(&h.Head, x.at) {
		h.Taps = h.Taps[:0]
		for _, t := range x.round.Taps() {
			into := t.At - x.round.Result().Setup - x.round.Start()
			if cycle, turn := cycleAndTurn(into, x.round.Question.Rhythm.Length(x.round.BPM())); cycle == x.ringed {
				h.Taps = append(h.Taps, view.Tap{Turn: turn})
			}
		}
	}
	x.show(&h.Head, x.ear.hands, x.at)
}

// cycleAndTurn is in which cycle a time lies, and how far round it: one just ahead
// of the next cycle's first step, by up to a tap's reach, belongs there.
func cycleAndTurn(into, length time.Duration) (cycle int, turn float64) {
	turns := float64(into) / float64(length)
	cycle = int((into + view.Reach) / length)
	return cycle, turns - float64(cycle)
}
