//go:build js

package store

import (
	"syscall/js"

	"groundbeat/game/host"
	"groundbeat/wasm/idb"
)

// playerKey is under what a window, and the browser, remember who was chosen last.
const playerKey = "groundbeat.player"

// remembered is who was chosen in this window before it was loaded anew, or else in the
// browser.
func (s *Store) remembered() person {
	for _, storage := range []js.Value{s.session, s.local} {
		if id := idb.Item(storage, playerKey); id != "" {
			return person{Id: id}
		}
	}
	return firstPerson
}

// choose chooses a person, also for the next visit.
func (s *Store) choose(p person) {
	s.Player = p
	_ = idb.SetItem(s.session, playerKey, p.Id) // or it holds for this visit
	_ = idb.SetItem(s.local, playerKey, p.Id)
}

// Choose implements [host.Diary].
func (s *Store) Choose(id string) {
	s.choose(person{Id: id})
	go func() { _, _ = s.crowd() }() // what is wrong, whoever asks next is told
}

// crowd reads who is there, and finds who is chosen: the first, if nothing is known of
// her. Who was there, and was erased in another window, stays chosen: she comes back
// with her next round.
func (s *Store) crowd() (all crowd, err error) {
	<-s.opened
	all = s.memory.people
	if s.err == nil {
		if all, err = s.database.people(); err != nil {
			return nil, err
		}
	}
	if p := all.find(s.Player.Id); p != nil {
		s.Player = *p
	} else if there := all.present(); s.Player.name == "" && len(there) > 0 {
		s.choose(there[0])
	}
	return all, nil
}

// People implements [host.Diary].
func (s *Store) People(done func([]host.Person, host.Person, error)) {
	go func() {
		all, err := s.crowd()
		var people []host.Person
		for _, p := range all.present() {
			people = append(people, p.asked())
		}
		done(people, s.Player.asked(), err)
	}()
}

// AddPerson implements [host.Diary].
func (s *Store) AddPerson(name string, done func(host.Person, error)) {
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

// Rename implements [host.Diary].
func (s *Store) Rename(id, name string, done func(error)) {
	go func() {
		<-s.opened
		if s.err != nil {
			done(s.memory.rename(id, name))
			return
		}
		done(s.database.rename(id, name))
	}()
}

// Merge implements [host.Diary].
func (s *Store) Merge(from, into string, done func(error)) {
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

// Erase implements [host.Diary].
func (s *Store) Erase(id string, done func(error)) {
	go func() {
		<-s.opened
		err := s.erase(id)
		if err == nil {
			_, err = s.crowd() // who is chosen may be gone
		}
		done(err)
	}()
}

func (s *Store) erase(id string) error {
	if id == host.Everybody {
		if s.err == nil {
			if err := s.database.eraseAll(); err != nil {
				return err
			}
		}
		s.memory = newMemory()
		for _, key := range idb.ItemKeys(s.local, spoolKey) {
			idb.RemoveItem(s.local, key)
		}
		s.choose(firstPerson)
		return nil
	}
	erase := s.memory.erase
	if s.err == nil {
		erase = s.database.erase
	}
	err := erase(id)
	if err == nil {
		for _, h := range s.memory.of(id) {
			s.unspool(h.round.ID)
		}
		s.memory.remove(func(h held) bool { return h.person == id })
		s.Player.name = "" // if it is hers, nothing is known of her any more
	}
	return err
}
