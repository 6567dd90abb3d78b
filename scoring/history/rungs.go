package history

import "strconv"

// The kinds of round that ask less than which rhythm it is.
const (
	Stroke  = "stroke"   // one stroke: dum or tek?
	HowMany = "how-many" // how many dums has a cycle?
	Same    = "same"     // two rhythms, the same or different?
)

var stroke = Kind{
	ID: Stroke, Play: Answered, Guess: amongChoices, unnamed: true,
	own: asAnswered, check: answering(oneOf("dum", "tek")), right: saidRight,
}

var howMany = Kind{
	ID: HowMany, Play: Answered, Guess: amongChoices,
	own: asAnswered, check: answering(wholeNumber), right: saidRight,
}

var same = Kind{
	ID: Same, Play: Answered, Guess: amongChoices,
	own: asAnswered, check: answering(oneOf("same", "different")), right: saidRight,
}

// wholeNumber is whether a choice is a whole number, as it is written.
func wholeNumber(choice string) bool {
	n, err := strconv.Atoi(choice)
	return err == nil && n >= 0 && strconv.Itoa(n) == choice
}
