package session

import (
	"slices"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/scoring/diary"
	"groundbeat/scoring/history"
)

// learner is the person who practises, and what is known of her: read in the
// background, and kept up with each round.
type learner struct {
	d      *desk
	people []host.Person
	who    host.Person
	days   host.Days
	book   *diary.Book
	rounds []history.Round // the latest, in order
	riffs  quiz.Riffs      // what was found about riffs so far

	times int // how often it was begun to read: what was asked for before is out of date
	has   arrived
	err   error
}

// arrived is what has come of what was asked for last; all: and no day lacks rounds.
type arrived struct{ people, days, all, rounds bool }

// latestRounds is how many rounds the next step rests on: some weeks of practice.
const latestRounds = 400

// read reads all of it anew.
func (l *learner) read() {
	l.times++
	l.has, l.err = arrived{}, nil
	times := l.times
	came := func(err error) bool {
		if times != l.times {
			return false // another person was chosen meanwhile
		}
		if l.d.exercise == l.d.exercises.journal || l.d.exercise == l.d.exercises.welcome || l.d.exercise == l.d.exercises.planning {
			l.d.stale = true
		}
		if err != nil {
			l.err = err
		}
		return true
	}
	l.d.Diary.People(func(all []host.Person, chosen host.Person, err error) {
		if came(err) {
			l.people, l.who, l.has.people = all, chosen, true
		}
	})
	l.d.Diary.Days(func(days host.Days) {
		if !came(days.Err) {
			return
		}
		l.has.days, l.has.all = true, days.Behind == 0 || days.Err != nil // else they are told once more
		l.days, l.book = days, diary.New(l.cycle)
		for _, day := range days.Days {
			l.book.Put(day)
		}
		l.d.exercises.journal.count()
	})
	l.d.Diary.Latest("", latestRounds, func(rounds []history.Round, err error) {
		if came(err) {
			slices.Reverse(rounds)
			l.rounds, l.has.rounds = rounds, true
			l.d.exercises.journal.count()
		}
	})
}

// isRead reports whether all of it has come.
func (l *learner) isRead() bool { return l.has.people && l.has.all && l.has.rounds }

// cycle is a rhythm, or nil for one that is not here: a file of the player's own, say.
func (l *learner) cycle(id string) *rhythm.Cycle {
	c, _ := l.d.Rhythms().Get(id)
	return c
}

// add adds a round that was kept.
func (l *learner) add(r history.Round) {
	l.rounds = append(l.rounds, r)
	if l.book != nil {
		l.book.Add(r)
		l.d.exercises.journal.count()
	}
}

// kept is how many rounds there are, on all outputs.
func (l *learner) kept() (n int) {
	if l.book == nil {
		return 0
	}
	for _, date := range l.book.Dates() {
		n += l.book.Day(date).Rounds()
	}
	return n
}

func (l *learner) today() string { return l.d.Wall.Date().Format(time.DateOnly) }

// known is what is known of the person on the output that is in use; as long as there
// is nothing on that one, on the one that was used most: the ear is the same.
func (l *learner) known() quiz.Known {
	k := quiz.Known{Today: l.today(), Cycles: l.cycle, Riffs: &l.riffs}
	if l.book == nil {
		return k
	}
	output, all := l.d.outputName(), l.book.Outputs()
	if len(all) > 0 && !slices.Contains(all, output) {
		output = all[0]
	}
	for _, r := range l.rounds {
		if r.Output == output {
			k.Rounds = append(k.Rounds, r)
		}
	}
	k.Met, k.Mixed = l.book.Met(output), l.book.Mixed(output)
	return k
}

// pool are the rhythms that are practised: those whose cycles go into eights, and of
// the odd ones those that she has asked for before.
func (l *learner) pool(k quiz.Known) []*rhythm.Cycle {
	pool, _ := quiz.From(l.d.Rhythms(), quiz.Even) // it is supplied
	for _, m := range k.Met {
		if c := l.cycle(m.Rhythm); c != nil && c.Quiz && !slices.Contains(pool, c) {
			pool = append(pool, c)
		}
	}
	return pool
}

// lean is which wrong answers come first in her questions. Where a link names the
// question it names its answers too, whoever opens it.
func (l *learner) lean() quiz.Lean {
	if l.d.address.Seed != 0 || !l.isRead() {
		return quiz.Lean{}
	}
	return l.known().Lean()
}
