//go:build js

package store

import (
	"groundbeat/game/host"
	"groundbeat/wasm/idb"
)

// erase removes all that is kept of a person. If nobody is left, the first person is
// there again.
func (d *database) erase(id string) error {
	return d.write(func(t idb.Transaction) error {
		all, err := allPeople(t)
		if err != nil {
			return err
		}
		p := all.find(id)
		if p == nil {
			return host.ErrNobody
		}
		cards, err := allCards(t, byPerson, p.Id)
		if err != nil {
			return err
		}
		if err := removeRounds(t, cards); err != nil {
			return err
		}
		if err := t.Delete(daysStore, idb.StartingWith(p.Id)); err != nil {
			return err
		}
		if err := removeAside(t, p.Id); err != nil {
			return err
		}
		if err := t.Delete(peopleStore, p.Id); err != nil {
			return err
		}
		if len(all.present()) > 1 {
			return nil
		}
		return t.Put(peopleStore, firstPerson.value())
	})
}

// eraseAll removes everything.
func (d *database) eraseAll() error {
	return d.write(func(t idb.Transaction) error {
		for _, store := range ofPeople {
			if err := t.Clear(store); err != nil {
				return err
			}
		}
		return t.Put(peopleStore, firstPerson.value())
	})
}

// removeRounds removes rounds with their cards. The summaries of their days are left to
// whoever calls.
func removeRounds(t idb.Transaction, cards []card) error {
	for _, c := range cards {
		if err := t.Delete(roundsStore, c.Id); err != nil {
			return err
		}
		if err := t.Delete(cardsStore, c.Id); err != nil {
			return err
		}
	}
	return nil
}
