package history

import (
	"math"
	"slices"
	"time"

	"groundbeat/scoring"
)

// Change is the kind of round in which the rhythm changes, or not: it is pressed when it
// does, and then said to what.
const Change = "change"

var change = Kind{
	ID: Change, Play: Pressed, Named: becomes, Guess: pressedOrNot,
	own:    func(r *Round) (what, figures []field) { return r.changing(), nil },
	extras: (*Round).early,
	check:  checkChange,
	right:  func(r *Round) bool { return r.Right && !byChance(r) },
	said:   notByChance,
}

// becomes is the rhythm that is told by its name: what the other became.
func becomes(a Asked) string { return a.To }

// pressedOrNot is the chance of one who is unsure: she presses or does not, and then
// chooses. Where the rhythm did not change, she is right who never presses.
func pressedOrNot(a Asked) int {
	if a.To == "" {
		return 0
	}
	return 2 * a.Choices
}

// changing are the fields of a round in which the rhythm may change.
func (r *Round) changing() []field {
	tapped, _ := r.tapped()
	choice := r.choice()
	return slices.Concat([]field{
		plain("to", &r.To),
		numeric("after", &r.After, 0, 0, 512),
		numeric("changes", &r.Changes, 9, 0, maxSeconds),
	}, named(tapped, "strokes", "taps", "setup"), named(choice, "choices", "answer", "right"))
}

// early are the fields that it has where they tell something.
func (r *Round) early() []field { return extra(numeric("early", &r.Early, 0, 1, maxCount)) }

// named are those fields of some that have one of the names.
func named(some []field, names ...string) (of []field) {
	for _, f := range some {
		if slices.Contains(names, f.name) {
			of = append(of, f)
		}
	}
	return of
}

// NewChange returns the record of a round in which the rhythm may change, of which
// played holds all: the press that heard the change has its offset and stroke, the
// others none; it counts those. It rounds the numbers as [Format] does, and returns an *[Error] that
// names the field where the record would not be valid.
func NewChange(played Round) (Round, error) {
	if played.kind().Play != Pressed {
		return Round{}, wrong("kind", "%q is not %q", played.Kind, Change)
	}
	r := played.clone()
	r.Early = 0
	for _, t := range r.Taps {
		if t.Stroke == nil {
			r.Early++
		}
	}
	roundAll(&r)
	if err := check(&r); err != nil {
		return Round{}, err
	}
	return r, nil
}

// checkChange checks what the change, the presses and the answer have to do with
// each other.
func checkChange(r *Round) error {
	changed := 0
	if r.To != "" {
		changed = 1
	}
	switch {
	case r.To == r.Rhythm:
		return wrong("to", "%q is no change", r.To)
	case (r.Changes != nil) != (changed == 1):
		return wrong("changes", "a time and what it changes to are not there together")
	case (r.After > 0) != (changed == 1) || r.After >= r.Eights:
		return wrong("after", "%d eights of %d before the change", r.After, r.Eights)
	case len(r.Strokes) != changed:
		return wrong("strokes", "%d strokes that differ first, not %d", len(r.Strokes), changed)
	case changed == 1 && r.Strokes[0] < *r.Changes:
		return wrong("strokes[0]", "%v, before the change at %v", r.Strokes[0], *r.Changes)
	}
	heard, err := checkTaps(r)
	if err != nil {
		return err
	}
	for i, t := range r.Taps {
		if t.Stroke != nil && i != len(r.Taps)-1 {
			return wrong(index("taps", i)+".stroke", "a press came after the one that heard the change")
		}
	}
	if err := checkEarly(r, heard); err != nil {
		return err
	}
	return checkNamed(r, heard == 1)
}

// checkEarly checks the number of presses that heard nothing, where it is there.
func checkEarly(r *Round, heard int) error {
	if early := len(r.Taps) - heard; r.Early != 0 && r.Early != early {
		return wrong("early", "%d, but the presses make it %d", r.Early, early)
	}
	return nil
}

// checkNamed checks what was said of a change that was heard, or was not.
func checkNamed(r *Round, heard bool) error {
	if err := checkChoices(r, word); err != nil {
		return err
	}
	right := heard && r.Answer == r.To
	if r.To == "" {
		right = len(r.Taps) == 0
	}
	switch {
	case slices.Contains(r.Choices, r.Rhythm):
		return wrong("choices", "%q was played before", r.Rhythm)
	case r.To != "" && !slices.Contains(r.Choices, r.To):
		return wrong("choices", "%q, which was played, is not among them", r.To)
	case heard && !slices.Contains(r.Choices, r.Answer):
		return wrong("answer", "%q is not among the choices", r.Answer)
	case !heard && r.Answer != "":
		return wrong("answer", "%q, but no change was heard", r.Answer)
	case r.Right != right:
		return wrong("right", "%t, but the presses and the answer make it %t", r.Right, right)
	}
	return nil
}

// byChance reports whether a change was heard by a press that may as well have come by
// chance, see [scoring.Noticed]. A record without its presses, or without their frames,
// is believed.
func byChance(r *Round) bool {
	last := len(r.Taps) - 1
	if last < 0 || r.Taps[last].Offset == nil || len(r.Strokes) == 0 || r.Rate < 1 {
		return false
	}
	presses := make([]time.Duration, len(r.Taps))
	for i, t := range r.Taps {
		presses[i] = milliseconds(1000*(t.Frame/float64(r.Rate)-r.Strokes[0]) - r.Setup)
	}
	presses[last] = max(0, milliseconds(*r.Taps[last].Offset-r.Setup))
	return !scoring.Noticed(presses)
}

// notByChance is the answer: none, whatever was said, where the change may as well have
// been hit by chance; as where it was not heard, and nothing asked.
func notByChance(r *Round) string {
	if byChance(r) {
		return ""
	}
	return r.Answer
}

func milliseconds(ms float64) time.Duration {
	return time.Duration(math.Round(ms * float64(time.Millisecond)))
}
