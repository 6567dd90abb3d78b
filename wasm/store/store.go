//go:build js

package store

import (
	"syscall/js"
	"time"

	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// store keeps finished rounds in the browser. Where the browser does not let
// it, rounds of this visit are held in memory and the reason is told.
type Store struct {
	database *database     // once it is opened without err
	err      error         // why nothing is kept, or nil
	opened   chan struct{} // closed when database or err is set
	stands   standing      // how this page stands to the database
	memory   *memory
	waits    waits
	Changed  func()            // told when the screen may have something else to say of what is kept
	Told     func(what string) // told when another window has kept something
	things   things
	outputs  map[string]string // the outputs that were told last, as things
	Player   person            // who is chosen in this window
	read     arrivals          // of the file that was read last
	readings int               // how many files were read, or begun
	asked    bool              // the browser was asked not to throw away what is kept

	local, session js.Value // the browser's storages for small texts; null where it gives none
}

// makeStore makes a store that is yet to be opened, with the browser's storages for small
// texts.
func Make(local, session js.Value) *Store {
	s := &Store{opened: make(chan struct{}), memory: newMemory(), Changed: func() {}, Told: func(string) {}, local: local, session: session}
	s.Player = s.remembered()
	s.loadThings()
	return s
}

// begin begins to open the store. The page's parts say whether the browser lets it
// ask for storage at all; where it does not, even the question ends the program.
func (s *Store) Begin(parts js.Value) {
	s.watch()
	s.tune()
	if parts.Get("storage").Bool() {
		go s.open(databaseName)
		return
	}
	s.err = errNoDatabase
	s.takeSpool()
	close(s.opened)
}

// patience is how long the browser is waited for to open the database. It may come
// later all the same.
const patience = 15 * time.Second

// open opens the database, brings what an earlier version left up to date, and keeps
// what an earlier visit could not.
func (s *Store) open(name string) {
	came := make(chan struct{})
	go func() {
		d, err := openDatabase(name, s.stood)
		s.database, s.err = d, err
		if err == nil {
			go d.sweep()
		}
		s.takeSpool()
		s.try()
		s.join()
		if err != nil {
			s.Changed()
		}
		close(came)
	}()
	select {
	case <-came:
	case <-time.After(patience):
		s.err = errLate
		s.takeSpool()
		s.Changed()
	}
	close(s.opened)
}

// stood is told how this page stands to the database.
func (s *Store) stood(is standing) {
	if s.stands != is {
		s.stands = is
		s.Changed()
	}
}

// Keep implements [game.Store]. It never overwrites a record. Before it returns, the
// round is in the browser's local storage, if there is room: a page that is left at once
// has not lost it.
func (s *Store) Keep(r history.Round, done func(error)) {
	line, err := history.Format(r)
	if err != nil {
		done(err)
		return
	}
	h := held{person: s.Player.Id, who: s.Player, round: r, line: string(line)}
	h.aside = s.spool(h)
	s.memory.rounds = append(s.memory.rounds, h)
	go func() {
		<-s.opened
		s.try()
		done(s.whyWaits(r.ID))
	}()
}

// persistKey marks that the browser was asked: some ask the person.
const persistKey = "groundbeat.persist"

// persist asks the browser, once it has something to keep, not to throw it away when
// room runs short.
func (s *Store) persist() {
	if s.asked {
		return
	}
	s.asked = true
	var err error
	defer idb.Recovered(&err)
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
func (s *Store) eachLine(person string, f func(keptLine)) error {
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
		l := keptLine{Id: h.round.ID, line: h.line}
		if p := people.find(h.person); p != nil {
			l.Player = p.name
		}
		f(l)
	}
	return nil
}

// lines are the lines of everybody, as they are handed out.
func (s *Store) Lines() (all []string, err error) {
	err = s.eachLine("", func(l keptLine) {
		all = append(all, string(history.Handed([]byte(l.line), l.Player)))
	})
	return all, err
}
