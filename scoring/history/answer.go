package history

import (
	"slices"
	"strconv"
	"unicode/utf8"
)

// The fewest and most choices of an answered round.
const (
	minChoices = 2
	maxChoices = 32
)

// checkAnswer checks what the choices, the answer and its time have to do with
// each other and with the kind of round.
func checkAnswer(r *Round) error {
	if err := checkChoices(r); err != nil {
		return err
	}
	switch {
	case r.Kind == Which && !slices.Contains(r.Choices, r.Rhythm):
		return wrong("choices", "%q, which was played, is not among them", r.Rhythm)
	case !slices.Contains(r.Choices, r.Answer):
		return wrong("answer", "%q is not among the choices", r.Answer)
	case r.Kind == Which && r.Right != (r.Answer == r.Rhythm):
		return wrong("right", "%t, but %q was played and %q answered", r.Right, r.Rhythm, r.Answer)
	case r.Took == nil && r.Heard > 0:
		return wrong("heard", "%v cycles before the first step", r.Heard)
	}
	return nil
}

// checkChoices checks the choices by themselves.
func checkChoices(r *Round) error {
	if n := len(r.Choices); n < minChoices || n > maxChoices {
		return wrong("choices", "%d choices, not %d to %d", n, minChoices, maxChoices)
	}
	for i, c := range r.Choices {
		bad := func(format string, a ...any) error { return wrong(index("choices", i), format, a...) }
		switch {
		case c == "":
			return bad("empty")
		case !utf8.ValidString(c):
			return bad("not UTF-8")
		case slices.Contains(r.Choices[:i], c):
			return bad("%q twice", c)
		case !r.mayChoose(c):
			return bad("%q is no answer in a round of kind %q", c, r.Kind)
		}
	}
	return nil
}

// mayChoose reports whether a choice is an answer in the round's kind.
func (r *Round) mayChoose(choice string) bool {
	switch r.Kind {
	case Stroke:
		return choice == "dum" || choice == "tek"
	case Same:
		return choice == "same" || choice == "different"
	case HowMany:
		n, err := strconv.Atoi(choice)
		return err == nil && n >= 0 && strconv.Itoa(n) == choice
	}
	return true
}
