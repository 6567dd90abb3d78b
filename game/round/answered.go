package round

import "time"

// An Answered round is one question that is answered by a word: it sounds, and
// from its first step on an answer is taken, also after it has ended.
//
//	Ready ── Begin ──▶ CountIn ──▶ Playing ── Hear ──▶ Waiting
//	                      │         │     ╲               │ Answer
//	                      └─ Cut ───┴─▶ Void ╲── Answer ──┴──▶ Review
type Answered struct {
	course
	limit  time.Duration
	answer string
	took   time.Duration
}

// NewAnswered returns an answered round of the passage, ready to begin. It is
// heard to its end, or for limit from its first step if that is above 0 and
// sooner.
func NewAnswered(p *Passage, limit time.Duration) *Answered {
	return &Answered{course: courseOf(p), limit: limit}
}

// End is when the question has been heard.
func (a *Answered) End() time.Duration {
	if a.limit > 0 {
		return min(a.Passage.End(), a.Start()+a.limit)
	}
	return a.Passage.End()
}

// Hear tells the round what is being heard now.
func (a *Answered) Hear(now time.Duration) {
	if !a.UnderWay() {
		return
	}
	a.hear(now)
	if now >= a.End() {
		a.phase = Waiting
	}
}

// Answer takes the answer, given at a time of the round, and reports whether it
// was still to come. There is none before the first step: nothing has been heard.
func (a *Answered) Answer(answer string, at time.Duration) bool {
	if a.phase != Playing && a.phase != Waiting {
		return false
	}
	a.answer, a.took, a.phase = answer, max(0, at-a.Start()), Review
	return true
}

// Given is the answer, and how long after the first step it came. It is empty
// while there is none.
func (a *Answered) Given() (answer string, took time.Duration) { return a.answer, a.took }
