package quiz

import (
	"math/rand/v2"
	"slices"
	"strconv"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// The answers of the lower rungs.
const (
	dum, tek        = "dum", "tek"
	same, different = "same", "different"
	mostDums        = 4
)

// strokeBPM is the tempo of a question whose tempo is not heard.
const StrokeBPM = 100

// stroke asks whether one stroke, of both drums, is a dum or a tek.
func (q Question) stroke(bpm int, r *rand.Rand) Question {
	q.Level = min(q.Level, riff.Filled) // over one stroke there is nothing to play
	q.Choices = Plain(dum, tek)
	q.Sound, q.Right = rhythm.Dum, dum
	if r.IntN(2) == 1 {
		q.Sound, q.Right = rhythm.Tek, tek
	}
	q.BPM = bpm
	if bpm == 0 {
		q.BPM = StrokeBPM
	}
	q.Rhythm = &rhythm.Cycle{
		Name:     "one stroke",
		Metre:    rhythm.Metre{Beats: 4, Unit: 4},
		Skeleton: rhythm.Pattern{q.Sound, rhythm.Rest, rhythm.Rest, rhythm.Rest},
		Tempo:    rhythm.Tempo{Slow: q.BPM, Usual: q.BPM, Fast: q.BPM, Beat: "quarter"},
	}
	return q
}

// howMany asks how many dums a cycle has: first the number is drawn, then the
// rhythm.
func (q Question) howMany(players []Candidate, r *rand.Rand) (Question, error) {
	byDums := make([][]Candidate, mostDums+1)
	for _, p := range players {
		if n := len(p.Dums()); n <= mostDums {
			byDums[n] = append(byDums[n], p)
		}
	}
	byDums = slices.DeleteFunc(byDums, func(some []Candidate) bool { return len(some) == 0 })
	if len(byDums) == 0 {
		return Question{}, TooFew("none of them has 1 to %d dums", mostDums)
	}
	p := Pick(r, Pick(r, byDums))
	q.Rhythm, q.BPM = p.Cycle, p.AnyTempo(r)
	q.Right = strconv.Itoa(len(p.Dums()))
	q.Choices = Plain("1", "2", "3", "4")
	return q, nil
}

// same asks whether the second half is the same as the first.
func (q Question) same(players []Candidate, r *rand.Rand) (Question, error) {
	players = slices.DeleteFunc(players, func(p Candidate) bool { return len(exchangeable(p.Cycle)) == 0 })
	if len(players) == 0 {
		return Question{}, TooFew("none of them has a stroke that could be another")
	}
	p := Pick(r, players)
	q.Rhythm, q.BPM = p.Cycle, p.AnyTempo(r)
	q.Other, q.Right = p.Cycle, same
	if r.IntN(2) == 1 {
		q.Other, q.Right = exchanged(p.Cycle, Pick(r, exchangeable(p.Cycle))), different
	}
	q.Choices = Plain(same, different)
	return q, nil
}

// exchangeable returns the steps whose stroke may become another: all that sound
// but a dum that is the only one.
func exchangeable(c *rhythm.Cycle) []int {
	steps := c.Skeleton.Pulses(rhythm.Stroke.Sounds).Onsets()
	if dums := c.Dums(); len(dums) == 1 {
		steps = slices.DeleteFunc(steps, func(step int) bool { return step == dums[0] })
	}
	return steps
}

// exchanged returns the rhythm with a tek where it had a dum or a dum where it
// had a high stroke, in the skeleton and in the filled form.
func exchanged(c *rhythm.Cycle, step int) *rhythm.Cycle {
	other := *c
	becomes := rhythm.Dum
	if c.Skeleton[step].Low() {
		becomes = rhythm.Tek
	}
	other.Skeleton = slices.Clone(c.Skeleton)
	other.Skeleton[step] = becomes
	if c.Filled != nil {
		other.Filled = slices.Clone(c.Filled)
		other.Filled[step*len(c.Filled)/len(c.Skeleton)] = becomes
	}
	other.Variants = nil
	return &other
}

// plain makes choices whose ids are their names.
func Plain(ids ...string) []Choice {
	choices := make([]Choice, len(ids))
	for i, id := range ids {
		choices[i] = Choice{ID: id, Name: id}
	}
	return choices
}

func Pick[E any](r *rand.Rand, some []E) E { return some[r.IntN(len(some))] }
