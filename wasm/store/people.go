//go:build js

package store

import (
	"cmp"
	"slices"
	"strings"
	"syscall/js"
	"time"
	"unicode"
	"unicode/utf8"

	"groundbeat/game/host"
	"groundbeat/wasm/dom"
	"groundbeat/wasm/idb"
)

// A person is somebody who practises here, as she is kept.
type person struct {
	Id, name string
	made     float64 // ms since 1970; 0 for the first
	into     string  // into whom she was merged: so that another window finds out; else ""
}

// firstPerson is there before anybody has given a nickname.
var firstPerson = person{Id: "first"}

func newPerson(name string) person {
	return person{Id: dom.NewWall().ID(), name: name, made: float64(time.Now().UnixMilli())}
}

func (p person) value() map[string]any {
	return map[string]any{"id": p.Id, "name": p.name, "made": p.made, "into": p.into}
}

func readPerson(v js.Value) person {
	return person{Id: v.Get("id").String(), name: v.Get("name").String(), made: v.Get("made").Float(), into: v.Get("into").String()}
}

// asked is a person as the game sees her.
func (p person) asked() host.Person { return host.Person{ID: p.Id, Name: p.name} }

// crowd are all persons, those who were merged too.
type crowd []person

// present are those who are there, in the order in which they came.
func (all crowd) present() crowd {
	there := slices.DeleteFunc(slices.Clone(all), func(p person) bool { return p.into != "" })
	slices.SortStableFunc(there, func(a, b person) int { return cmp.Compare(a.made, b.made) })
	return there
}

// find returns the person of an id, or into whom she was merged; nil if she is not there.
func (all crowd) find(id string) *person {
	for range all {
		i := slices.IndexFunc(all, func(p person) bool { return p.Id == id })
		switch {
		case i < 0:
			return nil
		case all[i].into == "":
			return &all[i]
		}
		id = all[i].into
	}
	return nil
}

// named returns who is there under a nickname, upper and lower case alike.
func (all crowd) named(name string) *person {
	i := slices.IndexFunc(all, func(p person) bool { return p.into == "" && strings.EqualFold(p.name, name) })
	if i < 0 {
		return nil
	}
	return &all[i]
}

// nickname tidies a nickname up for a person, or says what is wrong with it.
func (all crowd) nickname(name, id string) (string, error) {
	name = tidy(name)
	if name == "" {
		return "", host.ErrNoName
	}
	if utf8.RuneCountInString(name) > host.MostName {
		return "", host.ErrLongName
	}
	if other := all.named(name); other != nil && other.Id != id {
		return "", host.ErrNameUsed
	}
	return name, nil
}

// tidy takes what cannot be seen out of a nickname, but for the two joiners that some
// scripts are written with.
func tidy(name string) string {
	seen := strings.Map(func(c rune) rune {
		switch {
		case unicode.IsSpace(c):
			return ' '
		case unicode.IsGraphic(c), c == '\u200c', c == '\u200d':
			return c
		}
		return -1
	}, strings.ToValidUTF8(name, ""))
	return strings.Join(strings.Fields(seen), " ")
}

// people reads all persons.
func allPeople(t idb.Transaction) (all crowd, err error) {
	err = t.Each(peopleStore, "", js.Undefined(), idb.Ascending, func(_ *idb.Cursor, v js.Value) bool {
		all = append(all, readPerson(v))
		return true
	})
	return all, err
}

// owner is whose a round of a person is: hers, or that of whom she was merged into. Who
// is not there, since she was erased in another window, comes back.
func ownerOf(t idb.Transaction, p person) (string, error) {
	all, err := allPeople(t)
	if err != nil {
		return "", err
	}
	if found := all.find(p.Id); found != nil {
		return found.Id, nil
	}
	p.into = ""
	return p.Id, t.Put(peopleStore, p.value())
}

func (d *database) people() (all crowd, err error) {
	err = d.read(func(t idb.Transaction) (err error) {
		all, err = allPeople(t)
		return err
	})
	return all, err
}

func (d *database) addPerson(name string) (p person, err error) {
	err = d.write(func(t idb.Transaction) error {
		all, err := allPeople(t)
		if err != nil {
			return err
		}
		if name, err = all.nickname(name, ""); err != nil {
			return err
		}
		p = newPerson(name)
		return t.Put(peopleStore, p.value())
	})
	return p, err
}

func (d *database) rename(id, name string) error {
	return d.write(func(t idb.Transaction) error {
		all, err := allPeople(t)
		if err != nil {
			return err
		}
		p := all.find(id)
		if p == nil {
			return host.ErrNobody
		}
		if p.name, err = all.nickname(name, p.Id); err != nil {
			return err
		}
		return t.Put(peopleStore, p.value())
	})
}

// merge gives all rounds of one person to another.
func (d *database) merge(from, into string) error {
	return d.write(func(t idb.Transaction) error {
		all, err := allPeople(t)
		if err != nil {
			return err
		}
		one, other := all.find(from), all.find(into)
		switch {
		case one == nil || other == nil:
			return host.ErrNobody
		case one.Id == other.Id:
			return nil
		}
		if err := handCards(t, one.Id, other.Id); err != nil {
			return err
		}
		if err := handAside(t, one.Id, other.Id); err != nil {
			return err
		}
		one.into = other.Id
		return t.Put(peopleStore, one.value())
	})
}

// handCards writes another person on all cards of one, and removes the summaries that
// are not right any more.
func handCards(t idb.Transaction, from, into string) error {
	cards, err := allCards(t, byPerson, from)
	if err != nil {
		return err
	}
	for i := range cards {
		cards[i].person = into
		if err := t.Put(cardsStore, cards[i].value()); err != nil {
			return err
		}
	}
	if err := t.Delete(daysStore, idb.StartingWith(from)); err != nil {
		return err
	}
	return forget(t, cards)
}

// forget removes the summaries of the days of some cards.
func forget(t idb.Transaction, cards []card) error {
	done := map[[2]string]bool{}
	for _, c := range cards {
		key := [2]string{c.person, c.day}
		if c.day == "" || done[key] {
			continue
		}
		done[key] = true
		if err := t.Delete(daysStore, []any{c.person, c.day}); err != nil {
			return err
		}
	}
	return nil
}
