package control

import (
	"slices"
	"time"

	"groundbeat/game/coach"
	"groundbeat/game/diary"
	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// Learner is the person who practises, and what is known of her: read in the
// background, and kept up with each round.
type Learner struct {
	Host    *host.Host
	Redraw  func() // something has come
	Recount func() // the days or the rounds are others

	People []host.Person
	Who    host.Person
	Days   host.Days
	Book   *diary.Book
	Rounds []history.Round // the latest, in order
	riffs  coach.Riffs     // what was found about riffs so far

	Times int // how often it was begun to read: what was asked for before is out of date
	has   arrived
	Err   error
}

// arrived is what has come of what was asked for last; all: and no day lacks rounds.
type arrived struct{ people, days, all, rounds bool }

// latestRounds is how many rounds the next step rests on: some weeks of practice.
const latestRounds = 400

// Read reads all of it anew.
func (l *Learner) Read() {
	l.Times++
	l.has, l.Err = arrived{}, nil
	times := l.Times
	came := func(err error) bool {
		if times != l.Times {
			return false // another person was chosen meanwhile
		}
		l.Redraw()
		if err != nil {
			l.Err = err
		}
		return true
	}
	l.Host.Diary.People(func(all []host.Person, chosen host.Person, err error) {
		if came(err) {
			l.People, l.Who, l.has.people = all, chosen, true
		}
	})
	l.Host.Diary.Days(func(days host.Days) {
		if !came(days.Err) {
			return
		}
		l.has.days, l.has.all = true, days.Behind == 0 || days.Err != nil // else they are told once more
		l.Days, l.Book = days, diary.New(l.Cycle)
		for _, day := range days.Days {
			l.Book.Put(day)
		}
		l.Recount()
	})
	l.Host.Diary.Latest("", latestRounds, func(rounds []history.Round, err error) {
		if came(err) {
			slices.Reverse(rounds)
			l.Rounds, l.has.rounds = rounds, true
			l.Recount()
		}
	})
}

// IsRead reports whether all of it has come.
func (l *Learner) IsRead() bool { return l.has.people && l.has.all && l.has.rounds }

// Countable reports whether days and rounds have come: the days may still be being counted.
func (l *Learner) Countable() bool { return l.has.days && l.has.rounds }

// Cycle is a rhythm, or nil for one that is not here: a file of the player's own, say.
func (l *Learner) Cycle(id string) *rhythm.Cycle {
	c, _ := l.Host.Rhythms().Get(id)
	return c
}

// Add adds a round that was kept.
func (l *Learner) Add(r history.Round) {
	l.Rounds = append(l.Rounds, r)
	if l.Book != nil {
		l.Book.Add(r)
		l.Recount()
	}
}

// Kept is how many rounds there are, on all outputs.
func (l *Learner) Kept() (n int) {
	if l.Book == nil {
		return 0
	}
	for _, date := range l.Book.Dates() {
		n += l.Book.Day(date).Rounds()
	}
	return n
}

func (l *Learner) Today() string { return l.Host.Wall.Date().Format(time.DateOnly) }

// Known is what is known of the person on the output that is in use; as long as there
// is nothing on that one, on the one that was used most: the ear is the same.
func (l *Learner) Known(output string) coach.Known {
	k := coach.Known{Today: l.Today(), Cycles: l.Cycle, Riffs: &l.riffs}
	if l.Book == nil {
		return k
	}
	if all := l.Book.Outputs(); len(all) > 0 && !slices.Contains(all, output) {
		output = all[0]
	}
	for _, r := range l.Rounds {
		if r.Output == output {
			k.Rounds = append(k.Rounds, r)
		}
	}
	k.Met, k.Mixed = l.Book.Met(output), l.Book.Mixed(output)
	return k
}

// Pool are the rhythms that are practised: those whose cycles go into eights, and of
// the odd ones those that she has asked for before.
func (l *Learner) Pool(k coach.Known) []*rhythm.Cycle {
	pool, _ := quiz.From(l.Host.Rhythms(), quiz.Even) // it is supplied
	for _, m := range k.Met {
		if c := l.Cycle(m.Rhythm); c != nil && c.Quiz && !slices.Contains(pool, c) {
			pool = append(pool, c)
		}
	}
	return pool
}
