package history

import (
	"slices"
	"unicode/utf8"
)

// The fewest and most choices of an answered round.
const (
	minChoices = 2
	maxChoices = 32
)

// choice are the fields of answered rounds: what could be chosen and what was.
func (r *Round) choice() []field {
	return []field{
		plain("choices", eachOf(&r.Choices)),
		plain("answer", &r.Answer),
		plain("right", &r.Right),
		numeric("took", &r.Took, 3, 0, maxMS),
		numeric("heard", &r.Heard, 3, 0, maxCycles),
	}
}

// asAnswered are the fields of answered rounds, none of which stand at the end.
func asAnswered(r *Round) (what, figures []field) { return r.choice(), nil }

// saidRight is whether a round that says itself whether it came out right did.
func saidRight(r *Round) bool { return r.Right }

// answering returns the check of a kind of answered rounds of which each choice must
// be an answer.
func answering(answer func(choice string) bool) func(*Round) error {
	return func(r *Round) error {
		if err := checkChoices(r, answer); err != nil {
			return err
		}
		return checkAnswer(r)
	}
}

// word is whether a choice is any text at all.
func word(string) bool { return true }

// oneOf returns whether a choice is one of these.
func oneOf(answers ...string) func(choice string) bool {
	return func(choice string) bool { return slices.Contains(answers, choice) }
}

// checkAnswer checks what the choices, the answer and its time have to do with
// each other.
func checkAnswer(r *Round) error {
	switch {
	case !slices.Contains(r.Choices, r.Answer):
		return wrong("answer", "%q is not among the choices", r.Answer)
	case r.Took == nil && r.Heard > 0:
		return wrong("heard", "%v cycles before the first step", r.Heard)
	}
	return nil
}

// checkChoices checks the choices by themselves: each must be an answer of the kind.
func checkChoices(r *Round, answer func(choice string) bool) error {
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
		case !answer(c):
			return bad("%q is no answer in a round of kind %q", c, r.Kind)
		}
	}
	return nil
}
