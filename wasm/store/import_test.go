//go:build js

package store

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/host"
	"groundbeat/scoring/history"
)

// of is a line of a round as a person of a nickname handed it out.
func of(t testing.TB, player string, r history.Round) string {
	t.Helper()
	return string(history.Handed([]byte(format(t, r)), player)) + "\n"
}

func (s *Store) names(t testing.TB) (names []string) {
	t.Helper()
	come := make(chan []host.Person, 1)
	s.People(func(all []host.Person, _ host.Person, err error) {
		require.NoError(t, err)
		come <- all
	})
	for _, p := range <-come {
		names = append(names, p.Name)
	}
	return names
}

// A file is told of before it is kept, merged by id, and undone as a whole.
func TestImport(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		all := practice(t, 0, 10, 4)
		s.keepNow(t, all[:3]...)
		file := "\uFEFF" + jsonl(t, all[1:7]...) + "{\"v\":1}\n\n" + later + "\nno line\n" + jsonl(t, all[5])
		p := s.importNow(t, file)
		require.Equal(t, []int{4, 3}, []int{p.New, p.There}, "two are kept, one is in the file twice")
		require.Equal(t, "rounds.jsonl", p.File)
		require.Len(t, p.Broken, 2)
		require.EqualError(t, p.Broken[0], "rounds.jsonl:7:1: kind: missing")
		require.ErrorContains(t, p.Broken[1], "rounds.jsonl:10:")
		require.Len(t, p.Newer, 1)
		require.ErrorContains(t, p.Newer[0], "rounds.jsonl:9: version 7")
		require.Empty(t, p.People)
		require.Equal(t, jsonl(t, all[:3]...), s.text(t, ""), "nothing is kept yet")
		require.Zero(t, s.lastImportNow(t).Rounds)

		got := s.acceptNow(t, false)
		require.Equal(t, []any{4, "rounds.jsonl"}, []any{got.Rounds, got.File})
		require.Equal(t, jsonl(t, all[:7]...), s.text(t, ""))
		days, _ := s.daysNow(t)
		require.Equal(t, 7, rounds(days.Days))
		require.Zero(t, s.acceptNow(t, false).Rounds, "a preview is accepted once")
		require.Equal(t, 4, s.importNow(t, jsonl(t, all[3:7]...)).There)
		require.Zero(t, s.acceptNow(t, false).Rounds)
		require.Equal(t, 4, s.lastImportNow(t).Rounds, "what brought nothing is no import")
	})
}

func TestUndo(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		all := practice(t, 0, 10, 4)
		s.keepNow(t, all[:3]...)
		before, _ := s.daysNow(t)
		s.importNow(t, jsonl(t, all[2:8]...))
		s.acceptNow(t, false)
		s.keepNow(t, all[8])
		if s.err == nil { // the window is loaded anew
			s = newStore(t, t.Name())
		}
		last := s.lastImportNow(t)
		require.Equal(t, []any{"rounds.jsonl", 5}, []any{last.File, last.Rounds})
		require.NoError(t, done(s.Undo))
		require.Equal(t, jsonl(t, append(all[:3:3], all[8])...), s.text(t, ""), "what was played since stays")
		days, _ := s.daysNow(t)
		require.Equal(t, texts(before.Days), texts(days.Days)[:1])
		require.Equal(t, 4, rounds(days.Days))
		require.Zero(t, s.lastImportNow(t).Rounds)
		require.NoError(t, done(s.Undo), "nothing is left to undo")
		require.Equal(t, 4, strings.Count(s.text(t, ""), "\n"))
	})
}

// Rounds go to whom the file names, or all to who is chosen.
func TestImportOfSeveralPeople(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		all := practice(t, 0, 6, 6)
		amira := told(t, func(done func(host.Person, error)) { s.AddPerson("Amira", done) })
		file := of(t, "amira", all[0]) + of(t, " Leyla ", all[1]) + jsonl(t, all[2]) + of(t, strings.Repeat("n", host.MostName+1), all[3])
		p := s.importNow(t, file)
		require.Equal(t, []string{"amira", "Leyla", strings.Repeat("n", host.MostName+1)}, p.People)
		s.Choose(firstPerson.Id)
		s.acceptNow(t, false)
		require.Equal(t, []string{"", "Amira", "Leyla"}, s.names(t))
		require.Equal(t, jsonl(t, all[2:4]...), s.text(t, firstPerson.Id))
		require.Equal(t, of(t, "Amira", all[0]), s.text(t, amira.ID))
		require.Equal(t, of(t, "Amira", all[0])+of(t, "Leyla", all[1])+jsonl(t, all[2:4]...), s.text(t, host.Everybody))

		require.NoError(t, done(s.Undo))
		require.Equal(t, []string{"", "Amira"}, s.names(t), "who came with the file goes with it")
		s.importNow(t, file)
		s.acceptNow(t, true)
		require.Equal(t, jsonl(t, all[:4]...), s.text(t, firstPerson.Id))
		require.Equal(t, []string{"", "Amira"}, s.names(t))
	})
}

// A file that cannot be read to its end is told of; what there is of it can be kept.
func TestImportOfAFileThatBreaksOff(t *testing.T) {
	s := withoutStorage()
	r, fault := practised(t, 0, 1), errors.New("disk gone")
	file := faulty{strings.NewReader(jsonl(t, r)), fault}
	p := told(t, func(done func(host.Preview, error)) { s.Import("rounds.jsonl", file, done) })
	require.Equal(t, 1, p.New)
	require.Len(t, p.Broken, 1)
	require.ErrorIs(t, p.Broken[0], fault)
}

type faulty struct {
	text  *strings.Reader
	fault error
}

func (f faulty) Read(into []byte) (int, error) {
	if f.text.Len() == 0 {
		return 0, f.fault
	}
	return f.text.Read(into)
}

// A summary is not trusted because it has as many rounds as there are: whatever removes
// or adds rounds otherwise than one by one removes it.
func TestAsManyRoundsAreNotTheSame(t *testing.T) {
	s := newStore(t, t.Name())
	all := practice(t, 0, 4, 4)
	s.keepNow(t, all[0])
	s.importNow(t, jsonl(t, all[1]))
	s.acceptNow(t, true)
	s.daysNow(t)
	require.NoError(t, done(s.Undo))
	s.importNow(t, jsonl(t, all[2]))
	s.acceptNow(t, true)
	want := new(diary.Day)
	want.Add(all[0])
	want.Add(all[2])
	days, _ := s.daysNow(t)
	require.Equal(t, []string{string(want.Format())}, texts(days.Days))
}

// What comes between a preview and its acceptance is not kept twice.
func TestImportOfWhatHasComeMeanwhile(t *testing.T) {
	here, there := newStore(t, t.Name()), newStore(t, t.Name())
	all := practice(t, 0, 3, 3)
	require.Equal(t, 3, here.importNow(t, jsonl(t, all...)).New)
	there.keepNow(t, all[1])
	require.Equal(t, 2, here.acceptNow(t, true).Rounds)
	require.NoError(t, done(here.Undo))
	require.Equal(t, jsonl(t, all[1]), here.text(t, ""))
	here.memory.rounds = []held{{person: firstPerson.Id, round: all[2], line: format(t, all[2])}}
	require.Equal(t, 2, here.importNow(t, jsonl(t, all...)).There, "kept, and held since it could not be kept")
}

// Of two files that are read at once the later counts, whichever comes to its end first.
func TestLaterFileCounts(t *testing.T) {
	s := newStore(t, t.Name())
	long, short := practice(t, 0, 40, 40), practised(t, 50, 9)
	come := make(chan int, 2)
	s.Import("long", strings.NewReader(jsonl(t, long...)), func(p host.Preview, _ error) { come <- p.New })
	s.Import("short", strings.NewReader(jsonl(t, short)), func(p host.Preview, _ error) { come <- p.New })
	require.ElementsMatch(t, []int{40, 1}, []int{<-come, <-come})
	require.Equal(t, 1, s.acceptNow(t, true).Rounds)
}
