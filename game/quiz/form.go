package quiz

import (
	"slices"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// An Ask is what a question asks for: the id of its kind of round, as in package history.
type Ask string

// What may be asked, the ladder's lowest rung first.
const (
	Stroke  Ask = history.Stroke  // one stroke is heard: dum or tek?
	HowMany Ask = history.HowMany // one cycle is heard: how many dums?
	Same    Ask = history.Same    // a rhythm is heard, then perhaps another: same or different?
	Which   Ask = history.Which   // some eights of a rhythm are heard: which?
)

// A Form is how the questions of an Ask are made and heard. All are in [Forms]; whoever
// treats some asks otherwise than others goes by what their forms say.
type Form struct {
	Ask     Ask
	Rung    bool // a lower rung: easier than which rhythm it is, and held by who tells names
	Pool    bool // rhythms are drawn for it; else it is the same whatever the pool
	Named   bool // a rhythm is told by its name, whose tempo and length must not tell it
	Once    bool // it is over after one cycle, however many eights are asked for
	Halves  bool // what is heard is heard twice, and the second time perhaps with a stroke changed
	Counted bool // it begins with a count-in

	next  func(q Question, d draws) (Question, error)
	Heard func(c *rhythm.Cycle, eights, bpm int) time.Duration // before it is answered, as expected
}

// draws is out of what a question is drawn.
type draws struct {
	players []Candidate
	answers int
	bpm     int
	lean    Lean
}

// Forms are those of all asks, the ladder's lowest rung first. The number that a question
// is drawn with is its own, so that one seed does not give related questions.
var Forms = []Form{
	{Ask: Stroke, Rung: true, Once: true, Heard: halfOf,
		next: func(q Question, d draws) (Question, error) { return q.stroke(d.bpm, Draw(q.Seed, 1)), nil }},
	{Ask: HowMany, Rung: true, Pool: true, Once: true, Counted: true, Heard: oneCycle,
		next: func(q Question, d draws) (Question, error) { return q.howMany(d.players, Draw(q.Seed, 2)) }},
	{Ask: Same, Rung: true, Pool: true, Halves: true, Counted: true, Heard: bothHalves,
		next: func(q Question, d draws) (Question, error) { return q.same(d.players, Draw(q.Seed, 3)) }},
	{Ask: Which, Pool: true, Named: true, Heard: halfOf,
		next: func(q Question, d draws) (Question, error) {
			return q.which(d.players, d.answers, d.lean, Draw(q.Seed, 4))
		}},
}

// FormOf finds the form of an Ask, and reports whether it is known.
func FormOf(ask Ask) (Form, bool) {
	i := slices.IndexFunc(Forms, func(f Form) bool { return f.Ask == ask })
	if i < 0 {
		return Form{}, false
	}
	return Forms[i], true
}

// Form is that of the question; the zero Form, which is nothing, where its Ask is not
// known.
func (q Question) Form() Form {
	f, _ := FormOf(q.Ask)
	return f
}

// isRung reports whether rounds of a kind are of a lower rung.
func IsRung(kind string) bool {
	f, _ := FormOf(Ask(kind))
	return f.Rung
}

// eightsLast is how long so many eights of a rhythm are.
func eightsLast(c *rhythm.Cycle, eights, bpm int) time.Duration {
	return c.At(c.CyclesIn(eights)*c.Steps(), bpm)
}

// halfOf is of what is answered in its course.
func halfOf(c *rhythm.Cycle, eights, bpm int) time.Duration { return eightsLast(c, eights, bpm) / 2 }

func bothHalves(c *rhythm.Cycle, eights, bpm int) time.Duration {
	return 2 * eightsLast(c, eights, bpm)
}

func oneCycle(c *rhythm.Cycle, _, bpm int) time.Duration { return c.Length(bpm) }
