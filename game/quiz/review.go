package quiz

import "groundbeat/game/rhythm"

// Differences returns what a review tells: where what was right, A, and what was
// answered, B, differ by count. For Which these are the two rhythms, none if the
// answer is right; for Same the two halves, whatever the answer. The lower rungs
// have none, nor has an answer that is no choice.
//
// Where neither cycle goes into the other, as 9/8 and 4/4, there are none
// either: there it is the metres that differ.
func Differences(q Question, answer string) []rhythm.Difference {
	switch q.Ask {
	case Same:
		return rhythm.Differ(q.Rhythm, q.Other)
	case Which:
		c, found := q.Choice(answer)
		if !found || c.ID == q.Right {
			return nil
		}
		if a, b := q.Rhythm.Beats(), c.Rhythm.Beats(); a%b == 0 || b%a == 0 {
			return rhythm.Differ(q.Rhythm, c.Rhythm)
		}
	}
	return nil
}
