//go:build js

package store

import (
	"syscall/js"
	"time"

	"groundbeat/game/host"
	"groundbeat/wasm/dom"
	"groundbeat/wasm/idb"
)

// batch is an import that was accepted, as it is kept.
type batch struct {
	Id, file string
	when     float64  // ms since 1970
	people   []string // ids of those whom it added
}

// lastBatch is the key of the last import.
const lastBatch = "last"

func newBatch(file string) batch {
	return batch{Id: dom.NewWall().ID(), file: file, when: float64(time.Now().UnixMilli())}
}

func (b batch) value() map[string]any {
	people := []any{}
	for _, id := range b.people {
		people = append(people, id)
	}
	return map[string]any{"id": b.Id, "file": b.file, "when": b.when, "people": people}
}

func readBatch(v js.Value) batch {
	b := batch{Id: v.Get("id").String(), file: v.Get("file").String(), when: v.Get("when").Float()}
	for i := range v.Get("people").Length() {
		b.people = append(b.people, v.Get("people").Index(i).String())
	}
	return b
}

// imported is the import as the game sees it, of which so many rounds are here.
func (b batch) imported(rounds int) host.Imported {
	return host.Imported{File: b.file, When: time.UnixMilli(int64(b.when)), Rounds: rounds}
}

// there makes a look-up of all ids that are kept.
func (d *database) there() (there func(id string) bool, err error) {
	err = d.read(func(t idb.Transaction) (err error) {
		there, err = known(t)
		return err
	})
	return there, err
}

func known(t idb.Transaction) (func(id string) bool, error) {
	ids, err := t.Keys(roundsStore)
	if err != nil {
		return nil, err
	}
	set := js.Global().Get("Set").New(ids)
	return func(id string) bool { return set.Call("has", id).Bool() }, nil
}

// accept keeps rounds of a file: those of players under their nicknames, if named, and
// the others as those of p.
func (d *database) accept(a arrivals, p person, named bool) (b batch, n int, err error) {
	err = d.write(func(t idb.Transaction) error {
		b, n = newBatch(a.file), 0
		owner, err := ownerOf(t, p)
		if err != nil {
			return err
		}
		owners := map[string]string{"": owner}
		if named {
			if b.people, err = ownersOf(t, a, owners); err != nil {
				return err
			}
		}
		there, err := known(t)
		if err != nil {
			return err
		}
		var cards []card
		for _, r := range a.rounds {
			if there(r.round.ID) {
				continue // it has come meanwhile
			}
			who, ok := owners[r.Player]
			if !ok {
				who = owner
			}
			c := cardOf(r.round, who, b.Id)
			if err := t.Add(roundsStore, c.Id, r.line); err != nil {
				return err
			}
			if err := t.Put(cardsStore, c.value()); err != nil {
				return err
			}
			cards = append(cards, c)
		}
		if n = len(cards); n == 0 {
			return nil // the last import can still be undone
		}
		if err := forget(t, cards); err != nil {
			return err
		}
		return t.PutAt(importsStore, lastBatch, b.value())
	})
	return b, n, err
}

// ownersOf finds the persons whom a file names, adds those who are not here, and tells
// whom it added. A nickname that cannot be one has no owner.
func ownersOf(t idb.Transaction, a arrivals, owners map[string]string) (added []string, err error) {
	all, err := allPeople(t)
	if err != nil {
		return nil, err
	}
	for _, r := range a.rounds {
		if _, known := owners[r.Player]; known {
			continue
		}
		if p := all.named(r.Player); p != nil {
			owners[r.Player] = p.Id
			continue
		}
		name, err := all.nickname(r.Player, "")
		if err != nil {
			continue
		}
		p := newPerson(name)
		if err := t.Put(peopleStore, p.value()); err != nil {
			return nil, err
		}
		all, added = append(all, p), append(added, p.Id)
		owners[r.Player] = p.Id
	}
	return added, nil
}

// last returns the last import, and the cards of those of its rounds that are here.
func lastOne(t idb.Transaction) (b batch, cards []card, err error) {
	value, err := t.Get(importsStore, lastBatch)
	if err != nil || value.IsUndefined() {
		return b, nil, err
	}
	b = readBatch(value)
	cards, err = allCards(t, byBatch, b.Id)
	return b, cards, err
}

func (d *database) lastImport() (b batch, n int, err error) {
	err = d.read(func(t idb.Transaction) error {
		var cards []card
		b, cards, err = lastOne(t)
		n = len(cards)
		return err
	})
	return b, n, err
}

// undo removes what is here of the last import.
func (d *database) undo() error {
	return d.write(func(t idb.Transaction) error {
		b, cards, err := lastOne(t)
		if err != nil || b.Id == "" {
			return err
		}
		if err := removeRounds(t, cards); err != nil {
			return err
		}
		if err := forget(t, cards); err != nil {
			return err
		}
		for _, id := range b.people {
			if err := removeIdle(t, id); err != nil {
				return err
			}
		}
		return t.Delete(importsStore, lastBatch)
	})
}

// removeIdle removes a person who has no rounds, unless she is the only one.
func removeIdle(t idb.Transaction, id string) error {
	n, err := t.Count(cardsStore, byPerson, id)
	if err != nil || n > 0 {
		return err
	}
	all, err := allPeople(t)
	if err != nil || len(all.present()) < 2 {
		return err
	}
	return t.Delete(peopleStore, id)
}
