package quiz

import (
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A Choice is one answer that may be given.
type Choice struct {
	ID   string // as a record keeps it: a rhythm's id, "dum", "tek", "1" to "4", "same", "different"
	Name string // as shown; for rhythms their name, else the ID

	// Of a choice among rhythms, else nil and 0: the rhythm, and the tempo at
	// which it would have been played had it been the right one.
	Rhythm *rhythm.Cycle
	BPM    int
}

// A Question is what is played and what may be answered.
type Question struct {
	Ask    Ask
	Rhythm *rhythm.Cycle // what is played; for Stroke a cycle of one stroke, without an ID
	Other  *rhythm.Cycle // for Same, what the second half plays: Rhythm, or it with one stroke changed; else nil
	BPM    int           // beats a minute, of the beat of Rhythm
	Eights int           // length, from 1; for Same that of each half; see Cycles
	Level  riff.Level
	Seed   uint64

	Choices []Choice      // in the order in which they are shown
	Right   string        // the ID of the right one
	Sound   rhythm.Stroke // for Stroke, Dum or Tek; else 0
}

// Cycles returns how many cycles of Rhythm are played: those that fill the
// eights, for Same in each half; for Stroke and HowMany, which are heard once, one, whatever Eights
// says, since in two cycles there are twice as many dums.
func (q Question) Cycles() int {
	if q.Form().Once {
		return 1
	}
	return q.Rhythm.CyclesIn(q.Eights)
}

// Choice returns the choice of an ID.
func (q Question) Choice(id string) (Choice, bool) {
	for _, c := range q.Choices {
		if c.ID == id {
			return c, true
		}
	}
	return Choice{}, false
}
