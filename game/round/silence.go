package round

import (
	"math/rand/v2"
	"slices"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A Silence is an eight in which both drums are silent, and the player carries on.
// Both places are steps from the round's first.
type Silence struct {
	From int // its 1
	To   int // the 1 on which the drums come back
}

// eightsASilence is how many eights a round has for each of its silences at least.
// Own choice: a silence in each third eight leaves one with the drums on either side
// of each, to get back into the rhythm, and one that comes where it likes.
const eightsASilence = 3

// SilencesOf returns where the drums fall silent in a round of some eights, in order:
// one eight in three, and one at least. An eight at least is played before the first,
// between two of them, and after the last; every such choice is as likely. The same
// rhythm, length and seed give the same silences for ever.
func SilencesOf(c *rhythm.Cycle, eights int, seed uint64) []Silence {
	r := rand.New(rand.NewPCG(seed, 7)) // a stream of its own
	n := max(1, eights/eightsASilence)
	// Of the eights between the first and the last n, apart from one another: n of so
	// many fewer, each moved on by those before it.
	chosen := r.Perm(eights - 2 - (n - 1))[:n]
	slices.Sort(chosen)
	eight := c.CyclesIn(1) * c.Steps()
	var all []Silence
	for i, at := range chosen {
		from := (1 + at + i) * eight
		all = append(all, Silence{From: from, To: from + eight})
	}
	return all
}

// hush lets both drums be silent in the passage's silences. A break that the riff has
// of its own would be taken for one of these: the cycles with one are played filled.
func (p *Passage) hush(silences []Silence) error {
	part := &p.parts[0]
	if err := part.calm(p.bpm); err != nil {
		return err
	}
	for _, s := range silences {
		span := riff.Span{From: s.From, To: s.To}
		part.put(span, nil)
		part.Open = without(part.Open, span)
	}
	return nil
}

// carried are the steps to be tapped: the dums that are played, and those of the
// rhythm in the silences.
func (p *Passage) carried(silences []Silence) []int {
	asks := Asks(Carries)
	steps, c := p.steps(0, asks), p.parts[0].Rhythm
	for _, s := range silences {
		for step := s.From; step < s.To; step++ {
			if asks(c.Skeleton[step%c.Steps()]) {
				steps = append(steps, step)
			}
		}
	}
	slices.Sort(steps)
	return steps
}

// carriedWindow is how far from a stroke a tap may lie and still belong to it where
// the drums drop out: two fifths of a beat, so that a player who is 5 % fast or slow
// through the eight counts of a silence keeps her taps; no more, since half a beat
// further may lie a stroke that is no dum. Own choice. It is 109 ms at least.
func carriedWindow(c *rhythm.Cycle, bpm int) time.Duration {
	return c.At(c.StepsPerBeat(), bpm) * 2 / 5
}

// soonest is how late a tap on the 1 on which the drums come back may be and still
// have been under way before they could be heard: nobody answers a sound faster. So
// in athletics, where whoever starts within 100 ms of the gun has not waited for it
// (from memory).
const soonest = 100 * time.Millisecond
