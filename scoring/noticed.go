package scoring

import "time"

// Noticed reports whether something was noticed by a press, or whether the press may as
// well have come by chance. The presses are times from the first moment at which there
// was something to notice, ascending: those before it are below 0, and the last is 0 or
// more. It was noticed if no press came before, or one that lay at least as far from
// that moment as the last.
//
// The bound is chosen, and this is why. Where early presses cost nothing, whoever presses
// all the time always hits. With this rule whoever presses without listening, evenly or
// at random, slowly or fast, is taken to have noticed a change in half of the rounds of 6
// or 8 eights at the most, and in 6 of 10 of the shortest, of 4: as often as by one press
// at some moment of the round, which no rule can tell from an ear. Half is the chance that
// diaries reckon with. One early press with no bound on its place would make it 8 to 10 of
// 10. A false alarm long before, and then the change heard, counts; so does a change
// heard late by whoever kept still till then.
func Noticed(presses []time.Duration) bool {
	switch early := presses[:max(0, len(presses)-1)]; len(early) {
	case 0:
		return len(presses) == 1
	case 1:
		return presses[1] <= -early[0]
	}
	return false
}
