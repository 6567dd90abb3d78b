package coach

import (
	"math"
	"time"

	"groundbeat/game/diary"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
)

// Cycles finds the rhythm of an id; nil if it is not known (any more).
type Cycles func(id string) *rhythm.Cycle

// A trial is a finished round as an answer about hearing through a riff.
type trial struct {
	rhythm  string
	hide    int // hundredths
	choices int // one over the chance of being right without hearing
	right   bool
	day     day
}

// trialOf returns the trial of a round. There is none of a round in which the ear
// was helped: help is never counted, neither against nor for the player. Nor is
// there one of a round of which nobody can say how far the base was hidden, or how
// likely it is right by chance, see [diary.Choices]; nor of one in which no tap came.
func (m reaches) trialOf(r history.Round, cycles Cycles) (trial, bool) {
	c, on := cycles(r.Rhythm), dayOf(r.Time())
	if c == nil || on == 0 || r.BPM < 1 || helped(r.Helps) || !history.Tried(r) {
		return trial{}, false
	}
	hide, known := m.hideOf(r, c)
	choices := diary.Choices(r, c)
	return trial{rhythm: c.ID, hide: hide, choices: choices, right: history.Right(r), day: on}, known && choices >= quiz.MinAnswers
}

// helped reports whether the drums were heard otherwise than they were played, or seen.
func helped(h history.Helps) bool { return h.Bass != 0 || h.Hands || h.Balance != 0 }

// hideOf returns how far the base was hidden in a round, in hundredths. Records of
// levels without chance do not say: they hide what they hide.
func (m reaches) hideOf(r history.Round, c *rhythm.Cycle) (int, bool) {
	if r.Hide != nil && *r.Hide >= 0 && *r.Hide <= 1 {
		return int(math.Round(*r.Hide * 100)), true
	}
	level, err := riff.ParseLevel(r.Riff)
	if err != nil || level > riff.Filled {
		return 0, false
	}
	return m.of(c, level), true
}

// trialsOf returns the latest trials among rounds of a kind, in order.
func trialsOf(kind string, rounds []history.Round, cycles Cycles) []trial {
	var all []trial
	m := reaches{}
	for _, r := range rounds {
		if r.Kind != kind {
			continue
		}
		if t, ok := m.trialOf(r, cycles); ok {
			all = append(all, t)
		}
	}
	return all[max(0, len(all)-mostTrials):]
}

// mostTrials is over how many of the latest trials a staircase is replayed: where it
// began is long forgotten by then.
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
