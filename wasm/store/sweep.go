//go:build js

package store

import (
	"errors"
	"syscall/js"

	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// sweep gives each round that has none its card: those of version 1, which belong to
// the first person. What this program can read by now, and an earlier one could not, it
// reads, and sets aside what it cannot read. It can be broken off at any time, and
// several windows may sweep at once.
func (d *database) sweep() error {
	defer close(d.swept)
	if err := d.takeBack(); err != nil {
		return err
	}
	if err := d.learn(); err != nil {
		return err
	}
	keys, err := d.withoutCard()
	for err == nil && len(keys) > 0 {
		n := min(2*idb.Bunch, len(keys))
		some := keys[:n]
		err = d.write(func(t idb.Transaction) error { return giveCards(t, some) })
		keys = keys[n:]
	}
	return err
}

// learn reads lines that were too new for an earlier version of this program.
func (d *database) learn() error {
	known := js.Global().Get("IDBKeyRange").Call("upperBound", history.Version)
	n := 0
	err := d.read(func(t idb.Transaction) (err error) {
		n, err = t.Count(cardsStore, byNewer, known)
		return err
	})
	if err != nil || n == 0 {
		return err
	}
	return d.write(func(t idb.Transaction) error {
		cards, err := allCards(t, byNewer, known)
		if err != nil {
			return err
		}
		for _, c := range cards {
			if err := amend(t, c); err != nil {
				return err
			}
		}
		return nil
	})
}

// withoutCard lists the keys of rounds without a card.
func (d *database) withoutCard() (keys []any, err error) {
	var all, known js.Value
	err = d.read(func(t idb.Transaction) error {
		fresh, err := countFresh(t)
		if err != nil || fresh == 0 {
			return err
		}
		if all, err = t.Keys(roundsStore); err != nil {
			return err
		}
		known, err = t.Keys(cardsStore)
		return err
	})
	if err != nil || all.IsUndefined() {
		return nil, err
	}
	w := idb.NewWork()
	has := js.Global().Get("Set").New(known)
	for i := range all.Length() {
		w.Rest()
		if key := all.Index(i); !has.Call("has", key).Bool() {
			keys = append(keys, key)
		}
	}
	return keys, nil
}

// giveCards gives what is kept under some keys its cards, or sets it aside, unless
// another window was here before.
func giveCards(t idb.Transaction, keys []any) error {
	var fresh []any
	err := t.Values(cardsStore, keys, func(i int, card js.Value) error {
		if card.IsUndefined() {
			fresh = append(fresh, keys[i])
		}
		return nil
	})
	if err != nil {
		return err
	}
	type unread struct {
		key any
		why error
	}
	var broken []unread // in the order of their keys
	err = t.Values(roundsStore, fresh, func(i int, value js.Value) error {
		key := fresh[i].(js.Value)
		if value.IsUndefined() {
			return nil
		}
		if key.Type() != js.TypeString {
			broken = append(broken, unread{key, errors.New("its key is no id")})
			return nil
		}
		c, err := firstCard(key.String(), value)
		if err != nil {
			broken = append(broken, unread{key, err})
			return nil
		}
		return t.Put(cardsStore, c.value())
	})
	for _, b := range broken {
		if err == nil {
			err = setAside(t, b.key, firstPerson.Id, b.why)
		}
	}
	return err
}

// firstCard is the card of a round of version 1, or why it cannot be read.
func firstCard(id string, value js.Value) (card, error) {
	r, err := readRound(id, value)
	var newer *history.Newer
	switch {
	case err == nil:
		return cardOf(r, firstPerson.Id, ""), nil
	case errors.As(err, &newer):
		return card{Id: id, person: firstPerson.Id, newer: newer.Version}, nil
	}
	return card{}, err
}
