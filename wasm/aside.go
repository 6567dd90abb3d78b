//go:build js

package main

import (
	"errors"
	"fmt"
	"syscall/js"

	"groundbeat/scoring/history"
)

// What is set aside is a record that cannot be read: the value as it was, the key that
// it had, whose it is, and why. It is never changed, is handed out with the others, and
// is taken back by a program that can read it.

// setAside moves what is kept under a key out of the rounds.
func setAside(t transaction, key any, person string, why error) error {
	value, err := t.get(roundsStore, key)
	if err != nil {
		return err
	}
	if !value.IsUndefined() {
		err = t.put(asideStore, map[string]any{"key": key, "value": value, "person": person, "why": why.Error()})
		if err != nil {
			return err
		}
		fmt.Println("a round was set aside:", why) // for whoever looks into the console
	}
	if err := t.delete(roundsStore, key); err != nil {
		return err
	}
	return t.delete(cardsStore, key)
}

// amend makes a card that of its round. A round that cannot be read is set aside.
func amend(t transaction, c card) error {
	value, err := t.get(roundsStore, c.id)
	if err != nil {
		return err
	}
	r, err := readRound(c.id, value)
	var newer *history.Newer
	switch {
	case err == nil:
		return t.put(cardsStore, cardOf(r, c.person, c.batch).value())
	case errors.As(err, &newer):
		c.newer = newer.Version
		return t.put(cardsStore, c.value())
	}
	return setAside(t, c.id, c.person, err)
}

// eachAside calls f for each record of a person, or of everybody. f must not wait.
func eachAside(t transaction, person string, f func(key js.Value, aside js.Value)) error {
	return t.each(asideStore, "", js.Undefined(), ascending, func(c *cursor, v js.Value) bool {
		if person == "" || v.Get("person").String() == person {
			f(c.key(), v)
		}
		return true
	})
}

func countAside(t transaction, person string) (n int, err error) {
	err = eachAside(t, person, func(js.Value, js.Value) { n++ })
	return n, err
}

// takeBack takes those records back that can be read by now.
func (d *database) takeBack() error {
	none := false
	err := d.read(func(t transaction) error {
		n, err := t.count(asideStore, "", js.Undefined())
		none = n == 0
		return err
	})
	if err != nil || none {
		return err
	}
	return d.write(func(t transaction) error {
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
func takeBack(t transaction, key, record js.Value) error {
	if record.Get("key").Type() != js.TypeString {
		return nil
	}
	id := record.Get("key").String()
	r, err := readRound(id, record.Get("value"))
	if err != nil {
		return nil // still
	}
	there, err := t.get(roundsStore, id)
	if err != nil || !there.IsUndefined() {
		return err
	}
	if err := t.add(roundsStore, id, record.Get("value")); err != nil {
		return err
	}
	if err := t.put(cardsStore, cardOf(r, record.Get("person").String(), "").value()); err != nil {
		return err
	}
	return t.delete(asideStore, key)
}

// handAside gives what was set aside of one person to another.
func handAside(t transaction, from, into string) error {
	var keys, records []js.Value
	err := eachAside(t, from, func(key, record js.Value) { keys, records = append(keys, key), append(records, record) })
	if err != nil {
		return err
	}
	for i, record := range records {
		record.Set("person", into)
		if err := t.putAt(asideStore, keys[i], record); err != nil {
			return err
		}
	}
	return nil
}

// removeAside removes what was set aside of a person.
func removeAside(t transaction, person string) error {
	var keys []js.Value
	if err := eachAside(t, person, func(key, _ js.Value) { keys = append(keys, key) }); err != nil {
		return err
	}
	for _, key := range keys {
		if err := t.delete(asideStore, key); err != nil {
			return err
		}
	}
	return nil
}
