//go:build js

package store

import (
	"context"
	"strings"
	"syscall/js"
	"testing"

	browser "github.com/hack-pad/go-indexeddb/idb"
	"github.com/stretchr/testify/require"

	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// firstVersion makes a database of version 1, as it was, with some values.
func firstVersion(t testing.TB, name string, values map[string]any) {
	t.Helper()
	ctx := context.Background()
	request, err := browser.Global().Open(ctx, name, 1, func(db *browser.Database, _, _ uint) error {
		rounds, err := db.CreateObjectStore(roundsStore, browser.ObjectStoreOptions{})
		for key, value := range values {
			if err == nil {
				_, err = rounds.AddKey(js.ValueOf(key), js.ValueOf(value))
			}
		}
		return err
	})
	require.NoError(t, err)
	db, err := request.Await(ctx)
	require.NoError(t, err)
	require.NoError(t, db.Close())
}

// kept are the texts of a store, by key.
func (s *Store) kept(t testing.TB, store string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, s.database.read(func(tx idb.Transaction) error {
		return tx.Each(store, "", js.Undefined(), idb.Ascending, func(c *idb.Cursor, v js.Value) bool {
			all[js.Global().Call("String", c.Key()).String()] = idb.AsLine(v)
			return true
		})
	}))
	return all
}

const later = `{"v":7,"kind":"later"}`

// The rounds of version 1 belong to the first person, line for line as they were. What
// cannot be read is set aside as it was, a later version's line stays where it is, and
// all of it is handed out, in the order in which it was kept.
func TestUpgrade(t *testing.T) {
	all := practice(t, 0, 45, 20)
	values := map[string]any{
		"cut": `{"v":1,"kind":`, "later": later, "number": 5, "object": map[string]any{"v": 1},
		"another": format(t, practised(t, 99, 20)), // kept under an id that is not its own
	}
	for _, r := range all {
		values[r.ID] = format(t, r)
	}
	firstVersion(t, t.Name(), values)
	s := newStore(t, t.Name())
	days, told := s.daysNow(t)
	require.Greater(t, told, 1, "what is behind is told before it is counted")
	require.Equal(t, 45, rounds(days.Days))
	require.Equal(t, []int{20, 20, 5}, []int{days.Days[0].Rounds(), days.Days[1].Rounds(), days.Days[2].Rounds()})
	require.Equal(t, 4, days.Aside)
	require.Equal(t, 1, days.Newer)
	require.Equal(t, firstPerson.asked(), days.Person)

	rounds := s.kept(t, roundsStore)
	require.Len(t, rounds, 46)
	for _, r := range all {
		require.Equal(t, values[r.ID], rounds[r.ID])
	}
	require.Equal(t, later, rounds["later"])
	text := s.text(t, firstPerson.Id)
	require.True(t, strings.HasPrefix(text, jsonl(t, all...)+later+"\n"))
	require.Equal(t, []string{values["another"].(string), `{"v":1,"kind":`, "5", `{"v":1}`}, strings.Split(strings.TrimSpace(text), "\n")[46:])

	again := newStore(t, t.Name())
	<-again.database.swept
	require.Equal(t, rounds, again.kept(t, roundsStore))
	days, told = again.daysNow(t)
	require.Equal(t, 1, told, "it was counted once for all")
	require.Equal(t, 4, days.Aside)
	require.Len(t, again.kept(t, asideStore), 4)
	require.Equal(t, text, again.text(t, firstPerson.Id))
}

// Two windows that upgrade at once, and keep rounds meanwhile, do it once.
func TestUpgradeInTwoWindows(t *testing.T) {
	all := practice(t, 0, 200, 50)
	values := map[string]any{"cut": "{"}
	for _, r := range all[:198] {
		values[r.ID] = format(t, r)
	}
	firstVersion(t, t.Name(), values)
	one, other := newStore(t, t.Name()), newStore(t, t.Name())
	one.keepNow(t, all[198])
	other.keepNow(t, all[199])
	for _, s := range []*Store{one, other} {
		days, _ := s.daysNow(t)
		require.Equal(t, 200, rounds(days.Days))
		require.Equal(t, 1, days.Aside)
		require.Equal(t, jsonl(t, all...)+"{\n", s.text(t, firstPerson.Id))
	}
}

// A database of a later version is left as it is.
func TestLaterDatabaseIsLeftAlone(t *testing.T) {
	ctx := context.Background()
	request, err := browser.Global().Open(ctx, t.Name(), databaseVersion+1, func(db *browser.Database, _, _ uint) error {
		_, err := db.CreateObjectStore("other", browser.ObjectStoreOptions{})
		return err
	})
	require.NoError(t, err)
	db, err := request.Await(ctx)
	require.NoError(t, err)
	d, err := openDatabase(t.Name(), nil)
	require.ErrorIs(t, err, errOlder)
	require.True(t, d.connection.IsUndefined())
	names, err := db.ObjectStoreNames()
	require.NoError(t, err)
	require.Equal(t, []string{"other"}, names)
	require.NoError(t, db.Close())
	removed, err := browser.Global().DeleteDatabase(t.Name())
	require.NoError(t, err)
	require.NoError(t, removed.Await(ctx))
}

// A round that has got no card is handed out all the same.
func TestRoundWithoutCard(t *testing.T) {
	s := newStore(t, t.Name())
	<-s.database.swept
	all := practice(t, 0, 3, 3)
	s.keepNow(t, all[:2]...)
	s.change(t, func(tx idb.Transaction) error { return tx.Add(roundsStore, all[2].ID, format(t, all[2])) })
	require.Equal(t, jsonl(t, all...), s.text(t, firstPerson.Id))
	amira := s.addNow(t, "Amira")
	require.Empty(t, s.text(t, amira.ID))
	hers := practised(t, 3, 3)
	s.keepNow(t, hers)
	require.Equal(t, jsonl(t, all...), s.text(t, firstPerson.Id))
	require.Equal(t, 4, strings.Count(s.text(t, ""), "\n"))
}

// What was too new, or could not be read, is read once a program can, and belongs to
// whom it did.
func TestLearnt(t *testing.T) {
	s := newStore(t, t.Name())
	<-s.database.swept
	all := practice(t, 0, 3, 3)
	s.keepNow(t, all[0])
	require.NoError(t, s.database.write(func(tx idb.Transaction) error {
		for _, r := range all[1:] {
			require.NoError(t, tx.Add(roundsStore, r.ID, format(t, r)))
		}
		newer := card{Id: all[1].ID, person: "her", newer: history.Version}
		require.NoError(t, tx.Put(cardsStore, newer.value()))
		return setAside(tx, all[2].ID, "her", js.Error{Value: js.Global().Get("Error").New("an earlier program could not")})
	}))
	again := newStore(t, t.Name())
	<-again.database.swept
	again.Player = person{Id: "her", name: "Amira"}
	days, _ := again.daysNow(t)
	require.Equal(t, 2, rounds(days.Days))
	require.Zero(t, days.Aside)
	require.Equal(t, jsonl(t, all...), again.text(t, ""))
	require.Equal(t, jsonl(t, all[1:]...), again.text(t, "her"))
}

// A round that another window has given its card, and that is somebody else's by now,
// stays hers.
func TestCardIsGivenOnce(t *testing.T) {
	s := newStore(t, t.Name())
	amira := s.addNow(t, "Amira")
	r := practised(t, 0, 1)
	s.keepNow(t, r)
	s.change(t, func(tx idb.Transaction) error { return giveCards(tx, []any{js.ValueOf(r.ID), js.ValueOf("gone")}) })
	require.Equal(t, of(t, "Amira", r), s.text(t, amira.ID))
	require.Empty(t, s.text(t, firstPerson.Id))
}
