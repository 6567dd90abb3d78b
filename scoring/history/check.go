package history

import (
	"slices"
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
	if r.Early != 0 && r.Kind != Change {
		return wrong("early", "a round of kind %q has none", r.Kind)
	}
	switch {
	case r.answered():
		return checkAnswer(r)
	case r.Kind == Change:
		return checkChange(r)
	}
	if err := checkTapped(r); err != nil {
		return err
	}
	if err := checkStop(r); err != nil {
		return err
	}
	return checkCarry(r)
}

func checkTapped(r *Round) error {
	for i := 1; i < len(r.Strokes); i++ {
		if r.Strokes[i] <= r.Strokes[i-1] {
			return wrong(index("strokes", i), "strokes do not ascend: %v after %v", r.Strokes[i], r.Strokes[i-1])
		}
	}
	matched, err := checkTaps(r)
	if err != nil {
		return err
	}
	return checkCounts(r, matched)
}

func checkWords(r *Round) error {
	if !r.known() {
		return wrong("kind", "unknown kind %q", r.Kind)
	}
	for _, w := range []struct{ field, text string }{
		{"rhythm", r.Rhythm}, {"riff", r.Riff}, {"id", r.ID},
	} {
		if w.text == "" && (w.field != "rhythm" || r.Kind != Stroke) {
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

// checkTaps checks what taps have to do with each other and with the strokes,
// and counts those that belong to a stroke.
func checkTaps(r *Round) (matched int, err error) {
	next := 0 // the first stroke that may still have a tap
	for i, t := range r.Taps {
		bad := func(field, format string, a ...any) (int, error) {
			return 0, wrong(index("taps", i)+"."+field, format, a...)
		}
		switch {
		case !slices.Contains([]string{"key", "touch", "mouse", "pen", "click"}, t.By):
			return bad("by", "%q is not key, touch, mouse, pen or click", t.By)
		case i > 0 && t.Frame < r.Taps[i-1].Frame:
			return bad("frame", "taps do not ascend: %v after %v", t.Frame, r.Taps[i-1].Frame)
		case (t.Offset == nil) != (t.Stroke == nil):
			return bad("offset", "offset and stroke are not null together")
		case t.Stroke == nil:
			continue
		case *t.Stroke >= len(r.Strokes):
			return bad("stroke", "%d of %d strokes (counted from 0)", *t.Stroke, len(r.Strokes))
		case *t.Stroke < next:
			return bad("stroke", "%d again, or after a later one", *t.Stroke)
		}
		next = *t.Stroke + 1
		matched++
	}
	return matched, nil
}

func checkCounts(r *Round, matched int) error {
	for _, c := range []struct {
		field     string
		got, want int
	}{
		{"matched", r.Matched, matched},
		{"out", r.Out, len(r.Strokes) - matched},
		{"added", r.Added, len(r.Taps) - matched},
	} {
		if c.got != c.want {
			return wrong(c.field, "%d, but the taps make it %d", c.got, c.want)
		}
	}
	for _, f := range []struct {
		field string
		value *float64
	}{{"bias", r.Bias}, {"spread", r.Spread}, {"median", r.Median}, {"drift", r.Drift}} {
		if f.value != nil && matched < 2 {
			return wrong(f.field, "%v of %d taps", *f.value, matched)
		}
	}
	return nil
}
