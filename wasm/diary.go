//go:build js

package main

import (
	"errors"
	"io"
	"syscall/js"

	"groundbeat/game"
	"groundbeat/scoring/diary"
	"groundbeat/scoring/history"
)

// store implements [game.Diary]: each of its methods begins something that goes on
// beside the page's own work, in short tasks.
var _ game.Diary = (*store)(nil)

// playerKey is under what a window, and the browser, remember who was chosen last.
const playerKey = "groundbeat.player"

// remembered is who was chosen in this window before it was loaded anew, or else in the
// browser.
func (s *store) remembered() person {
	for _, storage := range []js.Value{s.session, s.local} {
		if id := item(storage, playerKey); id != "" {
			return person{id: id}
		}
	}
	return firstPerson
}

// item is a text of one of the browser's storages; "" where there is none.
func item(storage js.Value, key string) (text string) {
	var err error
	defer recovered(&err)
	if value := storage.Call("getItem", key); value.Type() == js.TypeString {
		text = value.String()
	}
	return text
}

func setItem(storage js.Value, key, text string) {
	var err error
	defer recovered(&err)
	storage.Call("setItem", key, text)
}

// choose chooses a person, also for the next visit.
func (s *store) choose(p person) {
	s.player = p
	setItem(s.session, playerKey, p.id)
	setItem(s.local, playerKey, p.id)
}

// Choose implements [game.Diary].
func (s *store) Choose(id string) {
	s.choose(person{id: id})
	go func() { _, _ = s.crowd() }() // what is wrong, whoever asks next is told
}

// crowd reads who is there, and finds who is chosen: the first, if nothing is known of
// her. Who was there, and was erased in another window, stays chosen: she comes back
// with her next round.
func (s *store) crowd() (all crowd, err error) {
	<-s.opened
	all = s.memory.people
	if s.err == nil {
		if all, err = s.database.people(); err != nil {
			return nil, err
		}
	}
	if p := all.find(s.player.id); p != nil {
		s.player = *p
	} else if there := all.present(); s.player.name == "" && len(there) > 0 {
		s.choose(there[0])
	}
	return all, nil
}

// People implements [game.Diary].
func (s *store) People(done func([]game.Person, game.Person, error)) {
	go func() {
		all, err := s.crowd()
		var people []game.Person
		for _, p := range all.present() {
			people = append(people, p.asked())
		}
		done(people, s.player.asked(), err)
	}()
}

// AddPerson implements [game.Diary].
func (s *store) AddPerson(name string, done func(game.Person, error)) {
	go func() {
		<-s.opened
		add := s.memory.addPerson
		if s.err == nil {
			add = s.database.addPerson
		}
		p, err := add(name)
		if err == nil {
			s.choose(p)
		}
		done(p.asked(), err)
	}()
}

// Rename implements [game.Diary].
func (s *store) Rename(id, name string, done func(error)) {
	go func() {
		<-s.opened
		if s.err != nil {
			done(s.memory.rename(id, name))
			return
		}
		done(s.database.rename(id, name))
	}()
}

// Merge implements [game.Diary].
func (s *store) Merge(from, into string, done func(error)) {
	go func() {
		<-s.opened
		if s.err != nil {
			done(s.memory.merge(from, into))
			return
		}
		err := s.database.merge(from, into)
		if err == nil {
			s.memory.hand(from, into)
		}
		done(err)
	}()
}

// mostReadings is how often a diary is read until nothing of it is behind: once, once
// more when old rounds have their cards, and once more when they are counted. Another
// window may come between.
const mostReadings = 5

var errUncounted = errors.New("some rounds could not be counted")

// Days implements [game.Diary].
func (s *store) Days(done func(game.Days)) {
	go func() {
		if _, err := s.crowd(); err != nil {
			done(game.Days{Person: s.player.asked(), Err: err})
			return
		}
		p := s.player
		for reading := 1; ; reading++ {
			told, doubtful := s.days(p)
			if told.Behind > 0 && reading == mostReadings {
				told.Err = errUncounted
			}
			done(told)
			if told.Err != nil || len(doubtful) == 0 && told.Behind == 0 {
				return
			}
			<-s.database.swept
			for _, date := range doubtful {
				if told.Err == nil {
					_, told.Err = s.database.recount(p.id, date)
				}
			}
			if told.Err != nil {
				done(told)
			}
			if told.Err != nil || told.Behind == 0 {
				return
			}
		}
	}()
}

// days reads a person's days once, and the dates that must be counted anew.
func (s *store) days(p person) (told game.Days, doubtful []string) {
	told.Person = p.asked()
	var days []*diary.Day
	if s.err == nil {
		var b daybook
		if b, told.Err = s.database.days(p.id); told.Err != nil {
			return told, nil
		}
		days, doubtful = b.read(newWork())
		told.Aside, told.Behind = b.aside, b.fresh
		for _, date := range doubtful {
			told.Behind += b.rounds[date]
		}
	}
	told.Days = s.memory.addTo(days, p.id)
	return told, doubtful
}

// Latest implements [game.Diary].
func (s *store) Latest(kind string, n int, done func([]history.Round, error)) {
	go func() {
		_, err := s.crowd()
		p := s.player
		var rounds []history.Round
		if err == nil && s.err == nil {
			<-s.database.swept
			rounds, err = s.database.latest(p.id, kind, n)
		}
		done(s.memory.latest(rounds, p.id, kind, n), err)
	}()
}

// Import implements [game.Diary].
func (s *store) Import(file string, text io.Reader, done func(game.Preview, error)) {
	s.readings++
	reading := s.readings
	s.read = arrivals{}
	go func() {
		<-s.opened
		there := s.memory.has
		if s.err == nil {
			kept, err := s.database.there()
			if err != nil {
				done(game.Preview{File: file}, err)
				return
			}
			there = func(id string) bool { return kept(id) || s.memory.has(id) }
		}
		preview, read := sift(file, text, there)
		if reading == s.readings {
			s.read = read
		}
		done(preview, nil)
	}()
}

// Accept implements [game.Diary].
func (s *store) Accept(own bool, done func(game.Imported, error)) {
	go func() {
		<-s.opened
		read := s.read
		s.read = arrivals{}
		if s.err != nil {
			b, n := s.memory.accept(read, s.player, !own)
			done(b.imported(n), nil)
			return
		}
		b, n, err := s.database.accept(read, s.player, !own)
		done(b.imported(n), err)
	}()
}

// LastImport implements [game.Diary].
func (s *store) LastImport(done func(game.Imported, error)) {
	go func() {
		<-s.opened
		var err error
		b, n := s.memory.lastImport()
		if s.err == nil {
			b, n, err = s.database.lastImport()
		}
		done(b.imported(n), err)
	}()
}

// Undo implements [game.Diary].
func (s *store) Undo(done func(error)) {
	go func() {
		<-s.opened
		if s.err != nil {
			s.memory.undo()
			done(nil)
			return
		}
		done(s.database.undo())
	}()
}

// Erase implements [game.Diary].
func (s *store) Erase(id string, done func(error)) {
	go func() {
		<-s.opened
		err := s.erase(id)
		if err == nil {
			_, err = s.crowd() // who is chosen may be gone
		}
		done(err)
	}()
}

func (s *store) erase(id string) error {
	if id == game.Everybody {
		if s.err == nil {
			if err := s.database.eraseAll(); err != nil {
				return err
			}
		}
		s.memory = newMemory()
		s.choose(firstPerson)
		return nil
	}
	erase := s.memory.erase
	if s.err == nil {
		erase = s.database.erase
	}
	err := erase(id)
	if err == nil {
		s.memory.remove(func(h held) bool { return h.person == id })
		s.player.name = "" // if it is hers, nothing is known of her any more
	}
	return err
}

// ExportLines implements [game.Diary].
func (s *store) ExportLines(person string, done func(error)) {
	go func() { done(s.export(person, ".jsonl", "application/jsonl", s.allLines)) }()
}

// ExportSheet implements [game.Diary].
func (s *store) ExportSheet(person string, done func(error)) {
	go func() { done(s.export(person, ".csv", "text/csv", s.sheet)) }()
}

// export hands the player a file of rounds.
func (s *store) export(person, ending, kind string, make func(string) (js.Value, error)) error {
	all, err := s.crowd()
	if err != nil {
		return err
	}
	name := ""
	if p := all.find(person); p != nil {
		person, name = p.id, p.name
	}
	parts, err := make(person)
	if err != nil {
		return err
	}
	return handOver(js.Global().Get("document"), fileName(name, ending), kind, parts)
}
