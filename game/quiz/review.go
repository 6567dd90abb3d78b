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
	if q.Form().Halves {
		return rhythm.Differ(q.Rhythm, q.Other)
	}
	c, found := q.Choice(answer)
	if !found || c.Rhythm == nil || c.ID == q.Right {
		return nil
	}
	return DifferencesOf(q.Rhythm, c.Rhythm)
}

// DifferencesOf returns where two rhythms differ by count; none where neither cycle
// goes into the other.
func DifferencesOf(a, b *rhythm.Cycle) []rhythm.Difference {
	if a.Beats()%b.Beats() != 0 && b.Beats()%a.Beats() != 0 {
		return nil
	}
	return rhythm.Differ(a, b)
}
