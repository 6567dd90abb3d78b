//go:build js

package main

import (
	"syscall/js"
	"time"

	"groundbeat/scoring/history"
)

// store keeps finished rounds in the browser. Where the browser does not let
// it, rounds of this visit are held in memory and the reason is told.
type store struct {
	database *database     // once it is opened without err
	err      error         // why nothing is kept, or nil
	opened   chan struct{} // closed when database or err is set
	memory   *memory
	player   person   // who is chosen in this window
	read     arrivals // of the file that was read last
	readings int      // how many files were read, or begun
	asked    bool     // the browser was asked not to throw away what is kept

	local, session js.Value // the browser's storages for small texts; null where it gives none
}

// makeStore makes a store that is yet to be opened.
func makeStore(parts js.Value) *store {
	s := &store{opened: make(chan struct{}), memory: newMemory(), local: parts.Get("local"), session: parts.Get("session")}
	s.player = s.remembered()
	return s
}

// begin begins to open the store. The page's parts say whether the browser lets it
// ask for storage at all; where it does not, even the question ends the program.
func (s *store) begin(parts js.Value) {
	if !parts.Get("storage").Bool() {
		s.err = errNoDatabase
		close(s.opened)
		return
	}
	go s.open(databaseName)
}

// patience is how long the browser is waited for to open the database.
const patience = 15 * time.Second

// open opens the database, and brings what an earlier version left up to date.
func (s *store) open(name string) {
	var d *database
	var err error
	came := make(chan struct{})
	go func() {
		d, err = openDatabase(name)
		close(came)
	}()
	select {
	case <-came:
		s.database, s.err = d, err
	case <-time.After(patience):
		s.err = errLate
	}
	close(s.opened)
	if s.err == nil {
		go s.database.sweep()
	}
}

// Keep implements [game.Store]. It never overwrites a record.
func (s *store) Keep(r history.Round, done func(error)) {
	line, err := history.Format(r)
	if err != nil {
		done(err)
		return
	}
	player := s.player
	s.memory.rounds = append(s.memory.rounds, held{person: player.id, round: r, line: string(line)})
	go func() {
		<-s.opened
		if s.err != nil {
			done(s.err)
			return
		}
		err := s.database.keep(player, r, string(line))
		if err == nil {
			s.memory.remove(func(h held) bool { return h.round.ID == r.ID })
			s.persist()
		}
		done(err)
	}()
}

// persistKey marks that the browser was asked: some ask the person.
const persistKey = "groundbeat.persist"

// persist asks the browser, once it has something to keep, not to throw it away when
// room runs short.
func (s *store) persist() {
	if s.asked {
		return
	}
	s.asked = true
	var err error
	defer recovered(&err)
	if s.local.Truthy() {
		if s.local.Call("getItem", persistKey).Truthy() {
			return
		}
		s.local.Call("setItem", persistKey, "asked")
	}
	if storage := js.Global().Get("navigator").Get("storage"); storage.Truthy() { // on a secure page
		storage.Call("persist")
	}
}

// eachLine hands over the lines of a person, or of everybody, those that are kept
// first, and those of this visit that could not be kept. f may not wait.
func (s *store) eachLine(person string, f func(keptLine)) error {
	<-s.opened
	people := s.memory.people
	if s.err == nil {
		<-s.database.swept
		if err := s.database.export(person, f); err != nil {
			return err
		}
		var err error
		if people, err = s.database.people(); err != nil {
			return err
		}
	}
	for _, h := range s.memory.of(person) {
		l := keptLine{id: h.round.ID, line: h.line}
		if p := people.find(h.person); p != nil {
			l.player = p.name
		}
		f(l)
	}
	return nil
}

// lines are the lines of everybody, as they are handed out.
func (s *store) lines() (all []string, err error) {
	err = s.eachLine("", func(l keptLine) {
		all = append(all, string(history.Handed([]byte(l.line), l.player)))
	})
	return all, err
}
