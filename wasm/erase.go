//go:build js

package main

import (
	"groundbeat/game/host"
)

// erase removes all that is kept of a person. If nobody is left, the first person is
// there again.
func (d *database) erase(id string) error {
	return d.write(func(t transaction) error {
		all, err := allPeople(t)
		if err != nil {
			return err
		}
		p := all.find(id)
		if p == nil {
			return host.ErrNobody
		}
		cards, err := allCards(t, byPerson, p.id)
		if err != nil {
			return err
		}
		if err := removeRounds(t, cards); err != nil {
			return err
		}
		if err := t.delete(daysStore, startingWith(p.id)); err != nil {
			return err
		}
		if err := removeAside(t, p.id); err != nil {
			return err
		}
		if err := t.delete(peopleStore, p.id); err != nil {
			return err
		}
		if len(all.present()) > 1 {
			return nil
		}
		return t.put(peopleStore, firstPerson.value())
	})
}

// eraseAll removes everything.
func (d *database) eraseAll() error {
	return d.write(func(t transaction) error {
		for _, store := range ofPeople {
			if err := t.clear(store); err != nil {
				return err
			}
		}
		return t.put(peopleStore, firstPerson.value())
	})
}

// removeRounds removes rounds with their cards. The summaries of their days are left to
// whoever calls.
func removeRounds(t transaction, cards []card) error {
	for _, c := range cards {
		if err := t.delete(roundsStore, c.id); err != nil {
			return err
		}
		if err := t.delete(cardsStore, c.id); err != nil {
			return err
		}
	}
	return nil
}
