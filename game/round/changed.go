package round

import (
	"time"

	"groundbeat/scoring"
)

// A Changed round is one in which the rhythm may change. The player presses when
// she hears it; a press before it could be heard is noted, and the round goes on.
// After the right press it sounds to the end of the eight, and then she says what
// it has become.
//
//	Ready ── Begin ──▶ CountIn ──▶ Playing ── Hear, once pressed ──▶ Waiting
//	                      │         │    ╲                             │ Answer
//	                      └── Cut ──┴─▶ Void ╲── Hear, to its end ─────┴──▶ Review
type Changed struct {
	course
	Change Change

	differs time.Duration // when the change can be heard; only if there is one
	presses []Tap
	heard   int           // the press that heard it; below 0: none yet
	ends    time.Duration // when it has sounded
	setup   time.Duration
	answer  string
}

// NewChanged returns a round that is ready to begin, or what is wrong with the
// change: also that it cannot be heard.
func NewChanged(c Change) (*Changed, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	p, err := c.passage()
	if err != nil {
		return nil, err
	}
	r := &Changed{course: courseOf(p), Change: c, heard: -1, ends: p.End()}
	if c.To != nil {
		since, err := c.differs(p)
		if err != nil {
			return nil, err
		}
		r.differs = sounded(p.parts[1].from + since)
	}
	return r, nil
}

// Changes is when the eight begins in which the rhythm is another, and Differs
// when it first differs from the old one going on: the first moment at which the
// change can be heard. Both are times of the frames of [audio.Rate] that sound
// there, or would. Without a change ok is false.
func (r *Changed) Changes() (at time.Duration, ok bool) {
	if r.Change.To == nil {
		return 0, false
	}
	return sounded(r.parts[1].from), true
}

// Differs is explained at Changes.
func (r *Changed) Differs() (at time.Duration, ok bool) { return r.differs, r.Change.To != nil }

// End is when it has sounded: the end of the eight in which the change was heard,
// else of the round.
func (r *Changed) End() time.Duration { return r.ends }

// Presses are all that were taken, in the order of their times.
func (r *Changed) Presses() []Tap { return r.presses }

// Hear tells the round what is being heard now. Without a press it listens on for
// the grace; setup is the player's own mean offset.
func (r *Changed) Hear(now, setup time.Duration) {
	if !r.UnderWay() {
		return
	}
	r.hear(now)
	if !r.Over(now, setup) {
		return
	}
	r.setup, r.phase = setup, Review
	if r.heard >= 0 {
		r.phase = Waiting
	}
}

// Over reports whether the round, and if the change was not heard the grace after
// it, has passed at a time.
func (r *Changed) Over(now, setup time.Duration) bool {
	if r.heard >= 0 {
		return now >= r.ends
	}
	return now >= r.ends+Grace+max(0, setup)
}

// Press takes one press and reports whether it belongs to the round: not before
// the first step is heard, and not once the change has been heard.
func (r *Changed) Press(t Tap, setup time.Duration) bool {
	if !r.UnderWay() || r.heard >= 0 || t.At-setup < r.Start() || r.Over(t.At, setup) {
		return false
	}
	presses, at := insert(r.presses, t)
	r.presses = presses
	if r.Change.To != nil && t.At-setup >= r.differs {
		r.heard, r.ends = at, r.eightEnds(t.At)
	}
	return true
}

// eightEnds is when the eight of the new rhythm ends in which a time lies.
func (r *Changed) eightEnds(at time.Duration) time.Duration {
	c := r.Change.To
	eight := c.CyclesIn(1) * c.Steps()
	step := r.step(1, at)
	return min(r.Passage.End(), r.at(1, floor(step, eight)+eight))
}

// SetUp is the player's own mean offset that is taken off; 0 before it is known.
func (r *Changed) SetUp() time.Duration { return r.setup }

// Retime places the presses anew: a clock that has heard more may know better when
// they fell. Which of them heard the change is not decided again, nor is the order
// of the presses. It does nothing in review.
func (r *Changed) Retime(at func(Tap) time.Duration) {
	if r.phase == Review {
		return
	}
	last := r.Start() - Grace
	for i := range r.presses {
		r.presses[i].At = max(last, at(r.presses[i]))
		last = r.presses[i].At
	}
}

// Answer takes what the player says it has become, and reports whether that was
// still to come.
func (r *Changed) Answer(id string) bool {
	if r.phase != Waiting || id == "" {
		return false
	}
	r.answer, r.phase = id, Review
	return true
}

// Notice is how a change was noticed. Zero but for Early where it was not.
type Notice struct {
	Heard   bool          // it was, by a press
	Press   int           // which of the presses; 0 if none
	Late    time.Duration // from the first stroke that differs to the press, the set-up's mean taken off; 0 or more
	Counts  float64       // Late in counts
	InEight time.Duration // likewise from the start of the eight
	Early   int           // presses before it could be heard, or with nothing to hear
	Chance  bool          // the press that heard it may as well have come by chance; see [scoring.Noticed]
	Answer  string        // what was said; "" where nothing was asked
	Right   bool          // heard and said rightly; or no change, and no press
}

// sinceDiffers are the presses up to the one that heard the change, from the first
// moment at which it could be heard. That one is taken not to lie before it, wherever
// a clock that knew better has put it.
func (r *Changed) sinceDiffers() []time.Duration {
	var all []time.Duration
	for _, p := range r.presses[:r.heard+1] {
		all = append(all, p.At-r.setup-r.differs)
	}
	all[r.heard] = max(0, all[r.heard])
	return all
}

// Notice is what came of a round in review; otherwise it is zero.
func (r *Changed) Notice() Notice {
	if r.phase != Review {
		return Notice{}
	}
	n := Notice{Early: len(r.presses), Answer: r.answer}
	if r.Change.To == nil {
		n.Right = n.Early == 0
		return n
	}
	if r.heard < 0 {
		return n
	}
	n.Heard, n.Press, n.Early, n.Chance = true, r.heard, r.heard, !scoring.Noticed(r.sinceDiffers())
	n.Right = r.answer == r.Change.To.ID
	changes, _ := r.Changes()
	n.Late = max(0, r.presses[r.heard].At-r.setup-r.differs)
	n.InEight = n.Late + r.differs - changes
	n.Counts = float64(n.Late) / float64(r.Change.To.At(r.Change.To.StepsPerBeat(), r.Change.BPM))
	return n
}
