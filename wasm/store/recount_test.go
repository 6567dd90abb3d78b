//go:build js

package store

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/host"
	"groundbeat/wasm/idb"
)

// change does something to the database that no part of the program does.
func (s *Store) change(t testing.TB, what func(tx idb.Transaction) error) {
	t.Helper()
	require.NoError(t, s.database.write(what))
}

// A summary that is not that of its rounds is made anew from them, and is the same.
func TestRecount(t *testing.T) {
	s := newStore(t, t.Name())
	s.keepNow(t, practice(t, 0, 20, 5)...)
	want, _ := s.daysNow(t)
	require.Len(t, want.Days, 4)
	day := func(i int) []any { return []any{firstPerson.Id, want.Days[i].Date()} }
	other := new(diary.Day)
	other.Add(practised(t, 5, 5))
	for name, spoil := range map[string]func(tx idb.Transaction) error{
		"missing":        func(tx idb.Transaction) error { return tx.Delete(daysStore, day(1)) },
		"of too few":     func(tx idb.Transaction) error { return tx.PutAt(daysStore, day(1), string(other.Format())) },
		"broken":         func(tx idb.Transaction) error { return tx.PutAt(daysStore, day(2), "{") },
		"no text":        func(tx idb.Transaction) error { return tx.PutAt(daysStore, day(2), 5) },
		"of another day": func(tx idb.Transaction) error { return tx.PutAt(daysStore, day(0), string(want.Days[1].Format())) },
		"all missing":    func(tx idb.Transaction) error { return tx.Clear(daysStore) },
		"left over": func(tx idb.Transaction) error {
			return tx.PutAt(daysStore, []any{firstPerson.Id, "2001-01-01"}, string(other.Format()))
		},
	} {
		t.Run(name, func(t *testing.T) {
			s.change(t, spoil)
			got, _ := s.daysNow(t)
			require.Equal(t, texts(want.Days), texts(got.Days))
			require.Eventually(t, func() bool { return len(s.kept(t, daysStore)) == 4 }, waiting, tick)
		})
	}
}

// A round is kept even where the summary of its day is broken.
func TestKeepOnABrokenDay(t *testing.T) {
	s := newStore(t, t.Name())
	all := practice(t, 0, 3, 3)
	s.keepNow(t, all[:2]...)
	s.change(t, func(tx idb.Transaction) error {
		return tx.PutAt(daysStore, []any{firstPerson.Id, diary.Date(all[0])}, "{")
	})
	s.keepNow(t, all[2])
	days, _ := s.daysNow(t)
	require.Equal(t, 3, rounds(days.Days))
}

// A round that was spoilt later is set aside as it is, and not counted; the others of
// its day are.
func TestSpoiltRound(t *testing.T) {
	s := newStore(t, t.Name())
	all := practice(t, 0, 4, 4)
	s.keepNow(t, all...)
	spoilt := format(t, all[1])[:100]
	s.change(t, func(tx idb.Transaction) error {
		if err := tx.PutAt(roundsStore, all[1].ID, spoilt); err != nil {
			return err
		}
		return tx.Clear(daysStore)
	})
	days, _ := s.daysNow(t)
	require.Equal(t, 3, rounds(days.Days))
	days, _ = s.daysNow(t)
	require.Equal(t, 1, days.Aside)
	require.NotContains(t, s.kept(t, roundsStore), all[1].ID)
	require.Equal(t, jsonl(t, all[0], all[2], all[3])+spoilt+"\n", s.text(t, firstPerson.Id))
	whole := s.importNow(t, jsonl(t, all...))
	require.Equal(t, []int{1, 3}, []int{whole.New, whole.There}, "from a file it can come back")
}

// While what is behind is counted, its number is told, not a wrong picture of it.
func TestBehind(t *testing.T) {
	s := newStore(t, t.Name())
	s.keepNow(t, practice(t, 0, 20, 5)...)
	s.change(t, func(tx idb.Transaction) error { return tx.Delete(daysStore, []any{firstPerson.Id, "2026-01-06"}) })
	come := make(chan host.Days, mostReadings)
	s.Days(func(d host.Days) { come <- d })
	d := <-come
	require.Equal(t, []int{5, 15}, []int{d.Behind, rounds(d.Days)})
	require.NotContains(t, strings.Join(texts(d.Days), ""), "2026-01-06")
	d = <-come
	require.Equal(t, []int{0, 20}, []int{d.Behind, rounds(d.Days)})
}

// What was set aside is hers whose round it was, goes with her when she is merged, and
// is erased with her.
func TestAsideBelongsToAPerson(t *testing.T) {
	s := newStore(t, t.Name())
	amira := s.addNow(t, "Amira")
	r := practised(t, 0, 1)
	s.keepNow(t, r)
	s.change(t, func(tx idb.Transaction) error {
		if err := tx.PutAt(roundsStore, r.ID, "spoilt"); err != nil {
			return err
		}
		return tx.Clear(daysStore)
	})
	s.daysNow(t)
	require.Empty(t, s.text(t, firstPerson.Id))
	require.Equal(t, "spoilt\n", s.text(t, amira.ID))
	require.NoError(t, s.mergeNow(amira.ID, firstPerson.Id))
	require.Equal(t, "spoilt\n", s.text(t, firstPerson.Id))
	s.addNow(t, "Leyla")
	require.NoError(t, s.eraseNow(firstPerson.Id))
	require.Empty(t, s.text(t, ""))
	require.Empty(t, s.kept(t, asideStore))
}
