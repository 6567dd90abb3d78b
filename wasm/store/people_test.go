//go:build js

package store

import (
	"strings"
	"syscall/js"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
)

const (
	waiting = 5 * time.Second
	tick    = 10 * time.Millisecond
)

func (s *Store) addNow(t testing.TB, name string) host.Person {
	t.Helper()
	return told(t, func(done func(host.Person, error)) { s.AddPerson(name, done) })
}

func (s *Store) renameNow(id, name string) error {
	return done(func(done func(error)) { s.Rename(id, name, done) })
}

func (s *Store) mergeNow(from, into string) error {
	return done(func(done func(error)) { s.Merge(from, into, done) })
}

func (s *Store) eraseNow(id string) error {
	return done(func(done func(error)) { s.Erase(id, done) })
}

// chosen is who is chosen, by nickname.
func (s *Store) chosen(t testing.TB) string {
	t.Helper()
	come := make(chan string, 1)
	s.People(func(_ []host.Person, p host.Person, err error) {
		require.NoError(t, err)
		come <- p.Name
	})
	return <-come
}

func TestPeople(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		require.Equal(t, []string{""}, s.names(t))
		all := practice(t, 0, 3, 3)
		s.keepNow(t, all[0])
		amira := s.addNow(t, " Amira\t  of\u202e Cairo ")
		require.Equal(t, "Amira of Cairo", amira.Name)
		require.Equal(t, amira.Name, s.chosen(t), "who is added is chosen")
		s.keepNow(t, all[1])
		s.Choose(firstPerson.Id)
		require.Equal(t, "", s.chosen(t))
		s.keepNow(t, all[2])
		require.Equal(t, jsonl(t, all[0], all[2]), s.text(t, firstPerson.Id))
		require.Equal(t, of(t, amira.Name, all[1]), s.text(t, amira.ID))
		days, _ := s.daysNow(t)
		require.Equal(t, 2, rounds(days.Days))
		s.Choose(amira.ID)
		days, _ = s.daysNow(t)
		require.Equal(t, 1, rounds(days.Days))
		require.Equal(t, amira, days.Person)

		require.NoError(t, s.renameNow(firstPerson.Id, "ليلى"))
		require.NoError(t, s.renameNow(amira.ID, "AMIRA of Cairo"), "of one person only the case changes")
		require.Equal(t, []string{"ليلى", "AMIRA of Cairo"}, s.names(t))
		for name, want := range map[string]error{
			"": host.ErrNoName, " \n\x00": host.ErrNoName, "amira OF cairo": host.ErrNameUsed,
			strings.Repeat("ä", host.MostName+1): host.ErrLongName,
		} {
			require.ErrorIs(t, s.renameNow(firstPerson.Id, name), want)
			_, err := attempt(func(done func(host.Person, error)) { s.AddPerson(name, done) })
			require.ErrorIs(t, err, want)
		}
		require.NoError(t, s.renameNow(firstPerson.Id, strings.Repeat("ä", host.MostName)))
		require.ErrorIs(t, s.renameNow("nobody", "x"), host.ErrNobody)
		require.Len(t, s.names(t), 2)
	})
}

func TestMerge(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		all := practice(t, 0, 9, 4)
		s.keepNow(t, all[0], all[1])
		amira := s.addNow(t, "Amira")
		s.keepNow(t, all[2:7]...)
		before, _ := s.daysNow(t)
		require.Equal(t, 5, rounds(before.Days))
		require.NoError(t, s.mergeNow(amira.ID, firstPerson.Id))
		require.Equal(t, []string{""}, s.names(t))
		s.keepNow(t, all[7]) // she is still chosen in this window
		days, _ := s.daysNow(t)
		require.Equal(t, firstPerson.asked(), days.Person)
		require.Equal(t, []int{4, 4}, []int{days.Days[0].Rounds(), days.Days[1].Rounds()})
		require.Equal(t, jsonl(t, all[:8]...), s.text(t, firstPerson.Id))

		require.NoError(t, s.mergeNow(firstPerson.Id, firstPerson.Id))
		require.ErrorIs(t, s.mergeNow(firstPerson.Id, "nobody"), host.ErrNobody)
		require.ErrorIs(t, s.mergeNow("nobody", firstPerson.Id), host.ErrNobody)
		require.Equal(t, 8, strings.Count(s.text(t, ""), "\n"))
		s.addNow(t, "Amira")
		require.Equal(t, []string{"", "Amira"}, s.names(t), "the nickname is free again")
	})
}

// Another window that had chosen who was merged or erased goes on.
func TestMergedAndErasedElsewhere(t *testing.T) {
	here, there := newStore(t, t.Name()), newStore(t, t.Name())
	all := practice(t, 0, 4, 4)
	amira := here.addNow(t, "Amira")
	leyla := here.addNow(t, "Leyla")
	there.Choose(amira.ID)
	require.Equal(t, "Amira", there.chosen(t))
	require.NoError(t, here.mergeNow(amira.ID, leyla.ID))
	there.keepNow(t, all[0])
	require.Equal(t, "Leyla", there.chosen(t))
	require.Equal(t, of(t, "Leyla", all[0]), here.text(t, leyla.ID))
	require.NoError(t, here.eraseNow(leyla.ID))
	require.Equal(t, []string{""}, there.names(t))
	there.keepNow(t, all[1])
	require.Equal(t, []string{"", "Leyla"}, here.names(t), "she comes back")
	require.Equal(t, of(t, "Leyla", all[1]), here.text(t, ""))
}

func TestErase(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		all := practice(t, 0, 6, 2)
		s.keepNow(t, all[:3]...)
		amira := s.addNow(t, "Amira")
		s.importNow(t, jsonl(t, all[3:]...))
		s.acceptNow(t, true)
		require.NoError(t, s.eraseNow(amira.ID))
		require.Equal(t, []string{""}, s.names(t))
		require.Equal(t, "", s.chosen(t))
		require.Equal(t, jsonl(t, all[:3]...), s.text(t, ""))
		require.Zero(t, s.lastImportNow(t).Rounds)
		require.ErrorIs(t, s.eraseNow(amira.ID), host.ErrNobody)

		require.NoError(t, s.renameNow(firstPerson.Id, "Leyla"))
		require.NoError(t, s.eraseNow(firstPerson.Id))
		require.Equal(t, []string{""}, s.names(t), "nobody is left but a first person")
		require.Empty(t, s.text(t, ""))
		days, _ := s.daysNow(t)
		require.Empty(t, days.Days)

		s.keepNow(t, all[0])
		s.addNow(t, "Amira")
		s.keepNow(t, all[1])
		require.NoError(t, s.eraseNow(host.Everybody))
		require.Equal(t, []string{""}, s.names(t))
		require.Empty(t, s.text(t, ""))
		s.keepNow(t, all[2])
		require.Equal(t, jsonl(t, all[2]), s.text(t, firstPerson.Id))
	})
}

// small is a storage for small texts as a browser has it.
func small() js.Value {
	return js.Global().Call("eval", `(() => { const all = new Map(); return {
		getItem: (k) => all.has(k) ? all.get(k) : null, setItem: (k, v) => all.set(k, v),
		removeItem: (k) => all.delete(k), key: (i) => [...all.keys()][i], get length() { return all.size } } })()`)
}

// A window remembers who is chosen in it, and a new one who was chosen last.
func TestChosenIsRemembered(t *testing.T) {
	s := newStore(t, t.Name())
	s.local, s.session = small(), small()
	s.addNow(t, "Amira")
	other := newStore(t, t.Name())
	other.local, other.session = s.local, small()
	other.Player = other.remembered()
	require.Equal(t, "Amira", other.chosen(t))
	other.addNow(t, "Leyla")
	for name, session := range map[string]js.Value{"Amira": s.session, "Leyla": small()} {
		again := newStore(t, t.Name())
		again.local, again.session = s.local, session
		again.Player = again.remembered()
		require.Equal(t, name, again.chosen(t))
	}
}
