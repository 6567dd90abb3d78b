//go:build js

package store

import (
	"errors"
	"fmt"
	"syscall/js"

	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// What is set aside is a record that cannot be read: the value as it was, the key that
// it had, whose it is, and why. It is never changed, is handed out with the others, and
// is taken back by a program that can read it.

// setAside moves what is kept under a key out of the rounds.
func setAside(t idb.Transaction, key any, person string, why error) error {
	value, err := t.Get(roundsStore, key)
	if err != nil {
		return err
	}
	if !value.IsUndefined() {
		err = t.Put(asideStore, map[string]any{"key": key, "value": value, "person": person, "why": why.Error()})
		if err != nil {
			return err
		}
		fmt.Println("a round was set aside:", why) // for whoever looks into the console
	}
	if err := t.Delete(roundsStore, key); err != nil {
		return err
	}
	return t.Delete(cardsStore, key)
}

// amend makes a card that of its round. A round that cannot be read is set aside.
func amend(t idb.Transaction, c card) error {
	value, err := t.Get(roundsStore, c.Id)
	if err != nil {
		return err
	}
	r, err := readRound(c.Id, value)
	var newer *history.Newer
	switch {
	case err == nil:
		return t.Put(cardsStore, cardOf(r, c.person, c.batch).value())
	case errors.As(err, &newer):
		c.newer = newer.Version
		return t.Put(cardsStore, c.value())
	}
	return setAside(t, c.Id, c.person, err)
}

// eachAside calls f for each record of a person, or of everybody. f must not wait.
func eachAside(t idb.Transaction, person string, f func(key js.Value, aside js.Value)) error {
	return t.Each(asideStore, "", js.Undefined(), idb.Ascending, func(c *idb.Cursor, v js.Value) bool {
		if person == "" || v.Get("person").String() == person {
			f(c.Key(), v)
		}
		return true
	})
}

func countAside(t idb.Transaction, person string) (n int, err error) {
	err = eachAside(t, person, func(js.Value, js.Value) { n++ })
	return n, err
}

// takeBack takes those records back that can be read by now.
func (d *database) takeBack() error {
	none := false
	err := d.read(func(t idb.Transaction) error {
		n, err := t.Count(asideStore, "", js.Undefined())
		none = n == 0
		return err
	})
	if err != nil || none {
		return err
	}
	return d.write(func(t idb.Transaction) error {
		var keys, records []js.Value
		err := eachAside(t, "", func(key, record js.Value) { keys, records = append(keys, key), append(records, record) })
		if err != nil {
			return err
		}
		for i, record := range records {
			if err := takeBack(t, keys[i], record); err != nil {
				return err
			}
		}
		return nil
	})
}

// takeBack takes a record back if it can be read, and its place is free.
func takeBack(t idb.Transaction, key, record js.Value) error {
	if record.Get("key").Type() != js.TypeString {
		return nil
	}
	id := record.Get("key").String()
	r, err := readRound(id, record.Get("value"))
	if err != nil {
		return nil // still
	}
	there, err := t.Get(roundsStore, id)
	if err != nil || !there.IsUndefined() {
		return err
	}
	if err := t.Add(roundsStore, id, record.Get("value")); err != nil {
		return err
	}
	if err := t.Put(cardsStore, cardOf(r, record.Get("person").String(), "").value()); err != nil {
		return err
	}
	return t.Delete(asideStore, key)
}

// handAside gives what was set aside of one person to another.
func handAside(t idb.Transaction, from, into string) error {
	var keys, records []js.Value
	err := eachAside(t, from, func(key, record js.Value) { keys, records = append(keys, key), append(records, record) })
	if err != nil {
		return err
	}
	for i, record := range records {
		record.Set("person", into)
		if err := t.PutAt(asideStore, keys[i], record); err != nil {
			return err
		}
	}
	return nil
}

// removeAside removes what was set aside of a person.
func removeAside(t idb.Transaction, person string) error {
	var keys []js.Value
	if err := eachAside(t, person, func(key, _ js.Value) { keys = append(keys, key) }); err != nil {
		return err
	}
	for _, key := range keys {
		if err := t.Delete(asideStore, key); err != nil {
			return err
		}
	}
	return nil
}
