package coach

import (
	"groundbeat/game/quiz"
	"groundbeat/scoring/history"
)

// A rung holds when of its latest answers most were right. Who guesses between two
// passes in 4 of 100 cases at each answer.
const (
	rungAnswers = 8
	rungRight   = 7
)

// The rung of names holds the lower ones too: of eight answers among three six are
// right by chance in 2 of 100 cases.
const namesRight = 6

// LowerRungs are the asks below Which, the lowest first.
func LowerRungs() (rungs []quiz.Ask) {
	for _, f := range quiz.Forms {
		if f.Rung {
			rungs = append(rungs, f.Ask)
		}
	}
	return rungs
}

// Holds reports whether a player's lower rung holds: whether of the latest 8 answers
// without help 7 were right; or of the latest 8 names told 6, since who tells rhythms
// by name is past it. rounds are in order.
func Holds(rung quiz.Ask, rounds []history.Round) bool {
	return latest(string(rung), rounds) >= rungRight || latest(history.Which, rounds) >= namesRight
}

// latest counts the right ones among the latest answers of a kind; 0 where there were
// too few.
func latest(kind string, rounds []history.Round) int {
	n, right := 0, 0
	for i := len(rounds) - 1; i >= 0 && n < rungAnswers; i-- {
		r := rounds[i]
		if r.Kind != kind || helped(r.Helps) {
			continue
		}
		n++
		if r.Right {
			right++
		}
	}
	if n < rungAnswers {
		return 0
	}
	return right
}

// loose are the lower rungs that do not hold.
func loose(rounds []history.Round) []quiz.Ask {
	var some []quiz.Ask
	for _, rung := range LowerRungs() {
		if !Holds(rung, rounds) {
			some = append(some, rung)
		}
	}
	return some
}
