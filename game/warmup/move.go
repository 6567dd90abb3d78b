package warmup

import (
	"groundbeat/game/quiz"
	"slices"
	"time"
)

// Next goes on by one stage; now is wall time. Where a task is over and the next one
// would last past the end by more than half of it, it goes to the page after.
func (r *Run) Next(now time.Time) {
	k := &r.kept
	switch {
	case r.Stage() == After:
	case k.Step < r.lastStep():
		k.Step++
	default:
		r.Skip(now)
	}
}

// Skip goes on to the next task, or to the page after the last.
func (r *Run) Skip(now time.Time) {
	k, n := &r.kept, len(r.Warmup.Tasks)
	if k.Task == n {
		return
	}
	if k.Begun.IsZero() {
		k.Begun = now.Round(0)
	}
	k.Task, k.Step = k.Task+1, 0
	if k.Task == n {
		return
	}
	if k.Task == k.Reached {
		if r.late(now) {
			k.Task = n
			return
		}
		k.Reached++
		k.Hands = append(k.Hands, make([]Hands, len(r.Warmup.Tasks[k.Task].Choices)))
	}
}

// late reports whether too little time is left for the task that is next.
func (r *Run) late(now time.Time) bool {
	lasts := r.Warmup.lasts[r.kept.Task]
	return r.kept.Task > 0 && !r.kept.Longer && now.Add(lasts/2).After(r.latest())
}

// Back goes back by one stage, as far as the walk-in. What was counted stays.
func (r *Run) Back() {
	k := &r.kept
	switch {
	case r.Stage() == After:
		k.Task, k.Step = k.Reached-1, 0
		k.Step = r.lastStep()
	case k.Step > 0:
		k.Step--
	case k.Task >= 0:
		k.Task--
		k.Step = r.lastStep()
	}
}

// GoOn goes on after the end with what was left out; it reports whether there was
// any.
func (r *Run) GoOn(now time.Time) bool {
	k := &r.kept
	if r.Stage() != After || r.Left() == 0 {
		return false
	}
	k.Longer, k.Task = true, k.Reached-1
	r.Skip(now)
	return true
}

// Left is how many tasks were not reached.
func (r *Run) Left() int { return len(r.Warmup.Tasks) - r.kept.Reached }

// Reached is how many tasks were begun.
func (r *Run) Reached() int { return r.kept.Reached }

// Hands are what was counted for the answers of the task that the run stands at.
func (r *Run) Hands() []Hands {
	if t, i := r.Task(); t != nil {
		return slices.Clone(r.kept.Hands[i])
	}
	return nil
}

// Press counts hands with one more key, for the answer that is asked for; see
// [Hands.Press]. It reports whether hands are counted now.
func (r *Run) Press(key string) bool {
	at := r.Answer()
	if at < 0 {
		return false
	}
	h := &r.kept.Hands[r.kept.Task][at]
	*h = h.Press(key)
	return true
}

// TakenFor is the wrong answer that most hands of the task went up for, and which hands
// were counted for it; where hands tell none, the likeliest and no hands; "" where
// nothing is counted.
func (r *Run) TakenFor() (id string, hands Hands) {
	t, i := r.Task()
	if t == nil || !t.Kind.Counted() {
		return "", ""
	}
	id = taken(t.Choices, t.Right, r.kept.Hands[i])
	for at, c := range t.Choices {
		if c.ID == id {
			return id, r.kept.Hands[i][at]
		}
	}
	return t.rival(), ""
}

// taken is the wrong answer that most hands went up for; "" if none did.
func taken(choices []quiz.Choice, right string, hands []Hands) string {
	best, most := "", Hands("")
	for i, c := range choices {
		if c.ID == right || !hands[i].up() {
			continue
		}
		if more, ok := hands[i].compare(most); best == "" || ok && more > 0 {
			best, most = c.ID, hands[i]
		}
	}
	return best
}
