package paper

import (
	"slices"
	"strings"
	"unicode/utf8"

	"groundbeat/game/host"
)

// person is somebody who practises here.
type person struct {
	host.Person
	batch string // of the import that brought her
}

func (s *Storage) person(id string) *person {
	i := slices.IndexFunc(s.people, func(p person) bool { return p.ID == id })
	if i < 0 {
		return nil
	}
	return &s.people[i]
}

func (s *Storage) named(name string) *person {
	i := slices.IndexFunc(s.people, func(p person) bool { return strings.EqualFold(p.Name, name) })
	if i < 0 {
		return nil
	}
	return &s.people[i]
}

// nickname tidies a nickname up for a person, or says what is wrong with it.
func (s *Storage) nickname(name, id string) (string, error) {
	name = strings.Join(strings.Fields(name), " ")
	switch other := s.named(name); {
	case name == "":
		return "", host.ErrNoName
	case utf8.RuneCountInString(name) > host.MostName:
		return "", host.ErrLongName
	case other != nil && other.ID != id:
		return "", host.ErrNameUsed
	}
	return name, nil
}

func (s *Storage) add(name, batch string) *person {
	s.people = append(s.people, person{host.Person{ID: s.wall.ID(), Name: name}, batch})
	return &s.people[len(s.people)-1]
}

// who is the person who is chosen; the first where she is not there.
func (s *Storage) who() host.Person {
	if p := s.person(s.chosen); p != nil {
		return p.Person
	}
	s.chosen = s.people[0].ID
	return s.people[0].Person
}

// People tells who practises here.
func (s *Storage) People(done func([]host.Person, host.Person, error)) {
	s.later(func() {
		var all []host.Person
		for _, p := range s.people {
			all = append(all, p.Person)
		}
		done(all, s.who(), nil)
	})
}

// Choose chooses a person.
func (s *Storage) Choose(person string) { s.chosen = person }

// AddPerson adds one, and chooses her.
func (s *Storage) AddPerson(name string, done func(host.Person, error)) {
	s.later(func() {
		name, err := s.nickname(name, "")
		if err != nil {
			done(host.Person{}, err)
			return
		}
		p := s.add(name, "")
		s.chosen = p.ID
		done(p.Person, nil)
	})
}

// Rename gives her another nickname.
func (s *Storage) Rename(id, name string, done func(error)) {
	s.later(func() {
		p, name, err := s.person(id), name, error(nil)
		if p == nil {
			err = host.ErrNobody
		} else if name, err = s.nickname(name, id); err == nil {
			p.Name = name
		}
		done(err)
	})
}

// Merge gives all rounds of one to another.
func (s *Storage) Merge(from, into string, done func(error)) {
	s.later(func() {
		if s.person(from) == nil || s.person(into) == nil {
			done(host.ErrNobody)
			return
		}
		for i := range s.rounds {
			if s.rounds[i].person == from {
				s.rounds[i].person = into
			}
		}
		s.remove(from)
		done(nil)
	})
}

// Erase removes all that is kept of a person, or of everybody.
func (s *Storage) Erase(id string, done func(error)) {
	s.later(func() {
		s.rounds = slices.DeleteFunc(s.rounds, func(k kept) bool { return id == host.Everybody || k.person == id })
		if id == host.Everybody {
			s.people = nil
		}
		s.remove(id)
		done(nil)
	})
}

// remove removes a person; if nobody is left, there is a first one again.
func (s *Storage) remove(id string) {
	s.people = slices.DeleteFunc(s.people, func(p person) bool { return p.ID == id })
	if len(s.people) == 0 {
		s.people = []person{{Person: host.Person{ID: "first"}}}
	}
}
