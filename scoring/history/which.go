package history

import "slices"

// Which is the kind of round in which a rhythm is heard, and told by its name.
const Which = "which"

var which = Kind{
	ID: Which, Play: Answered, Guess: amongChoices,
	Named: func(a Asked) string { return a.Rhythm },
	own:   asAnswered, check: checkWhich, right: saidRight,
}

// checkWhich checks, besides what all answered rounds have, what was played: it is one
// of the choices, and the right one.
func checkWhich(r *Round) error {
	if err := answering(word)(r); err != nil {
		return err
	}
	switch {
	case !slices.Contains(r.Choices, r.Rhythm):
		return wrong("choices", "%q, which was played, is not among them", r.Rhythm)
	case r.Right != (r.Answer == r.Rhythm):
		return wrong("right", "%t, but %q was played and %q answered", r.Right, r.Rhythm, r.Answer)
	}
	return nil
}
