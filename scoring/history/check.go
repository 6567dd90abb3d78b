package history

import (
	"strings"
	"time"
	"unicode/utf8"
)

// check says what is wrong with a round, as an *Error with its field, or nil.
func check(r *Round) error {
	if err := ranges(r); err != nil {
		return err
	}
	if err := checkWords(r); err != nil {
		return err
	}
	if err := checkForeign(r); err != nil {
		return err
	}
	return r.kind().check(r)
}

func checkWords(r *Round) error {
	k, known := KindOf(r.Kind)
	if !known {
		return wrong("kind", "unknown kind %q", r.Kind)
	}
	for _, w := range []struct{ field, text string }{
		{"rhythm", r.Rhythm}, {"riff", r.Riff}, {"id", r.ID},
	} {
		if w.text == "" && (w.field != "rhythm" || !k.unnamed) {
			return wrong(w.field, "empty")
		}
	}
	for _, w := range []struct{ field, text string }{
		{"rhythm", r.Rhythm}, {"riff", r.Riff}, {"output", r.Output}, {"player", r.Player},
	} {
		if !utf8.ValidString(w.text) {
			return wrong(w.field, "not UTF-8")
		}
	}
	if len(r.ID) > 64 || strings.ContainsFunc(r.ID, notInID) {
		return wrong("id", "%q is not 1 to 64 letters, digits, - and _", r.ID)
	}
	var when time.Time
	if when.UnmarshalText([]byte(r.When)) != nil {
		return wrong("when", "%q is not a time as in 2026-01-31T18:30:00Z", r.When)
	}
	return nil
}

// checkForeign refuses values that a round of the kind does not have, and that
// would be lost in the text.
func checkForeign(r *Round) error {
	for _, f := range r.foreign() {
		if !f.empty() {
			return wrong(f.name, "a round of kind %q has none", r.Kind)
		}
	}
	return nil
}

func notInID(c rune) bool {
	return !('a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9' || c == '-' || c == '_')
}
