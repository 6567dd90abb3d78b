package coach

import (
	"fmt"
	"groundbeat/game/quiz"
)

// Five minutes for somebody new.
func ExampleKnown_Practice() {
	catalogue, err := loaded()
	if err != nil {
		fmt.Println(err)
		return
	}
	five, err := quiz.From(catalogue, quiz.Five)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range (Known{Cycles: supplies}).Practice(5, five, 1) {
		fmt.Println(s.Reason, s.Kind, s.Rhythms, s.Level, s.BPM, s.Seconds)
	}
	// Output:
	// first dums [maqsum] bare 90 32
	// first stroke [] bare 0 10
	// first dums [baladi] bare 70 39
	// first how-many [baladi ciftetelli maqsum] bare 0 12
	// first dums [ciftetelli] bare 60 28
	// first same [baladi ciftetelli maqsum] bare 0 19
	// first dums [maqsum] bare 95 31
	// first which [baladi ciftetelli] bare 0 20
	// first stroke [] bare 0 10
	// first dums [baladi] bare 76 36
	// tempo dums [baladi] bare 72 38
	// slow dums [ciftetelli] bare 60 28
}
