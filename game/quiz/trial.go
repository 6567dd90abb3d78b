package quiz

import (
	"math"
	"time"

	"groundbeat/game/riff"
	"groundbeat/scoring/history"
)

// Rightly says whether a tapped round was right; see package diary.
type Rightly func(history.Round) bool

// sure is how many choices a tapped round counts as: so many that it is never right
// by chance. To be right without hearing the dums one would have to leave out all
// that is no dum.
const sure = 1 << 20

// What the levels without chance hide, in hundredths: the median of the supplied
// rhythms (TestWrittenLevelsHide). Their records do not say.
const bareHides, filledHides = 0, 8

// A trial is a finished round as an answer about hearing through a riff.
type trial struct {
	rhythm  string
	hide    int // hundredths
	choices int
	right   bool
	day     day
}

// trialOf returns the trial of a round. There is none of a round in which the ear
// was helped: help is never counted, neither against nor for the player. Nor is
// there one of a round of which nobody can say how far the base was hidden.
func trialOf(r history.Round, right Rightly) (trial, bool) {
	t := trial{rhythm: r.Rhythm, right: r.Right, choices: len(r.Choices), day: dayOf(r.Time())}
	switch r.Kind {
	case history.Dums, history.Stop:
		t.choices, t.right = sure, right(r)
	case history.Change:
		t.choices = neverOdds // who never presses is right where it never changes
	}
	var known bool
	t.hide, known = hideOf(r)
	return t, known && t.choices >= MinAnswers && !helped(r.Helps)
}

// helped reports whether the bass drum could be heard better than it was played, or
// seen.
func helped(h history.Helps) bool { return h.Bass > 0 || h.Hands || h.Balance > 0 }

// hideOf returns how far the base was hidden in a round, in hundredths.
func hideOf(r history.Round) (int, bool) {
	if r.Hide != nil && *r.Hide >= 0 && *r.Hide <= 1 {
		return int(math.Round(*r.Hide * 100)), true
	}
	switch level, err := riff.ParseLevel(r.Riff); {
	case err != nil:
		return 0, false
	case level == riff.Bare:
		return bareHides, true
	case level == riff.Filled:
		return filledHides, true
	}
	return r.HideAsked, r.HideAsked > 0
}

// trialsOf returns the latest trials among rounds of a kind, in order.
func trialsOf(kind string, rounds []history.Round, right Rightly) []trial {
	var all []trial
	for _, r := range rounds {
		if r.Kind != kind {
			continue
		}
		if t, ok := trialOf(r, right); ok {
			all = append(all, t)
		}
	}
	return all[max(0, len(all)-mostTrials):]
}

// mostTrials is how many of the latest trials count: ears change.
const mostTrials = 300

// A day is a date as days since 1970-01-01; 0 is none.
type day int

const dayLayout = "2006-01-02"

func dayOf(t time.Time) day {
	if t.IsZero() {
		return 0
	}
	y, m, d := t.Date()
	return day(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60))
}

// parseDay returns the day of a date like 2006-01-02, 0 if it is none.
func parseDay(date string) day {
	t, err := time.Parse(dayLayout, date)
	if err != nil {
		return 0
	}
	return dayOf(t)
}

// since is how many days have gone by since an earlier day; 0 where either is not
// known, and where the clock was set back.
func (d day) since(before day) int {
	if d == 0 || before == 0 {
		return 0
	}
	return max(0, int(d-before))
}
