//go:build js

package store

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"syscall/js"
	"testing"
	"time"

	browser "github.com/hack-pad/go-indexeddb/idb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/host"
	"groundbeat/scoring"
	"groundbeat/scoring/history"
)

// The store on the browser's own database, and without one.

// newStore is a store on a database of a name, as a window of its own has it.
func newStore(t testing.TB, name string) *Store {
	t.Helper()
	return openStore(t, name, js.Null())
}

// openStore is newStore with a local storage.
func openStore(t testing.TB, name string, local js.Value) *Store {
	t.Helper()
	s := Make(local, js.Null())
	s.asked = true
	s.open(name)
	require.NoError(t, s.err)
	t.Cleanup(func() {
		<-s.database.swept
		s.database.connection.Call("close")
		request, err := browser.Global().DeleteDatabase(name)
		require.NoError(t, err)
		require.NoError(t, request.Await(context.Background()))
	})
	return s
}

// withoutStorage is a store where the browser gives none.
func withoutStorage() *Store {
	s := Make(js.Null(), js.Null())
	s.Begin(js.ValueOf(map[string]any{"storage": false}))
	return s
}

// both runs a test on a database and without one.
func both(t *testing.T, test func(t *testing.T, s *Store)) {
	t.Run("kept", func(t *testing.T) { test(t, newStore(t, t.Name())) })
	t.Run("in memory", func(t *testing.T) { test(t, withoutStorage()) })
}

// told waits for what a method of the store tells.
func told[T any](t testing.TB, ask func(done func(T, error))) T {
	t.Helper()
	value, err := attempt(ask)
	require.NoError(t, err)
	return value
}

func attempt[T any](ask func(done func(T, error))) (T, error) {
	var value T
	var failed error
	come := make(chan struct{})
	ask(func(v T, err error) { value, failed = v, err; close(come) })
	<-come
	return value, failed
}

func done(ask func(done func(error))) error {
	come := make(chan error, 1)
	ask(func(err error) { come <- err })
	return <-come
}

// keep keeps a round; without a database it is held, and that is said.
func (s *Store) keepNow(t testing.TB, rounds ...history.Round) {
	t.Helper()
	for _, r := range rounds {
		err := done(func(done func(error)) { s.Keep(r, done) })
		require.Equal(t, s.err, err)
	}
}

// daysNow are the days when all is counted, and how often they were told.
func (s *Store) daysNow(t testing.TB) (days host.Days, told int) {
	t.Helper()
	come := make(chan host.Days, mostReadings+1)
	s.Days(func(d host.Days) { come <- d })
	for {
		days, told = <-come, told+1
		if require.NoError(t, days.Err); days.Behind == 0 {
			return days, told
		}
	}
}

// texts are the days as they are written.
func texts(days []*diary.Day) (all []string) {
	for _, d := range days {
		all = append(all, string(d.Format()))
	}
	return all
}

func rounds(days []*diary.Day) (n int) {
	for _, d := range days {
		n += d.Rounds()
	}
	return n
}

// text is a file of all lines of a person.
func (s *Store) text(t testing.TB, person string) string {
	t.Helper()
	parts, err := s.allLines(person)
	require.NoError(t, err)
	return parts.Call("join", "").String()
}

func (s *Store) importNow(t testing.TB, text string) host.Preview {
	t.Helper()
	return told(t, func(done func(host.Preview, error)) { s.Import("rounds.jsonl", strings.NewReader(text), done) })
}

func (s *Store) acceptNow(t testing.TB, own bool) host.Imported {
	t.Helper()
	return told(t, func(done func(host.Imported, error)) { s.Accept(own, done) })
}

func (s *Store) lastImportNow(t testing.TB) host.Imported {
	t.Helper()
	return told(t, s.LastImport)
}

// first is when the first of the test's rounds ended.
var first = time.Date(2026, 1, 5, 18, 0, 0, 0, time.FixedZone("", 2*3600))

// practised is round number n of invented practice: five rounds a minute apart, for
// perDay rounds a day. Every third is answered, the others are tapped with 16 dums.
func practised(t testing.TB, n, perDay int) history.Round {
	t.Helper()
	chance := rand.New(rand.NewPCG(uint64(n), 1))
	r := history.Round{
		Kind: history.Dums, Rhythm: []string{"maqsum", "baladi", "saidi"}[n%3], BPM: 96, Riff: "filled", Eights: 4, Seed: uint64(n),
		ID: fmt.Sprintf("round-%d", n), Output: "studio", Epoch: 1, Rate: 48000, Window: 100,
		When: first.AddDate(0, 0, n/perDay).Add(time.Duration(n%perDay) * time.Minute).Format(time.RFC3339),
	}
	if n%3 == 0 {
		r.Kind, r.Window, r.Choices, r.Took, r.Heard = history.Which, 0, []string{"baladi", "maqsum"}, new(3000.), 1.5
		r.Answer = r.Choices[chance.IntN(2)]
		r.Right = r.Answer == r.Rhythm
		r, err := history.NewAnswered(r)
		require.NoError(t, err)
		return r
	}
	var strokes, taps []time.Duration
	for i := range 16 {
		stroke := time.Duration(i+4) * 625 * time.Millisecond
		tap := stroke + time.Duration(chance.NormFloat64()*float64(25*time.Millisecond))
		strokes, taps = append(strokes, stroke), append(taps, tap)
		r.Strokes = append(r.Strokes, stroke.Seconds())
		r.Taps = append(r.Taps, history.Tap{At: 5000 + tap.Seconds()*1000, Frame: tap.Seconds() * 48000, By: "key",
			Reading: history.Reading{Context: 3.2 + tap.Seconds(), Performance: 5100 + tap.Seconds()*1000}})
	}
	r, err := history.New(r, scoring.Score(strokes, taps, 8*time.Millisecond, 50*time.Millisecond))
	require.NoError(t, err)
	return r
}

func practice(t testing.TB, from, to, perDay int) (all []history.Round) {
	t.Helper()
	for n := from; n < to; n++ {
		all = append(all, practised(t, n, perDay))
	}
	return all
}

func format(t testing.TB, r history.Round) string {
	t.Helper()
	line, err := history.Format(r)
	require.NoError(t, err)
	return string(line)
}

// jsonl is a file of rounds.
func jsonl(t testing.TB, rounds ...history.Round) string {
	t.Helper()
	var b strings.Builder
	for _, r := range rounds {
		b.WriteString(format(t, r) + "\n")
	}
	return b.String()
}

func TestKeepAndTell(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		all := practice(t, 0, 7, 3)
		s.keepNow(t, all[2], all[0], all[1], all[3], all[6], all[5], all[4])
		days, told := s.daysNow(t)
		require.Equal(t, 1, told)
		var want []string
		for _, some := range [][]history.Round{all[:3], all[3:6], all[6:]} {
			day := new(diary.Day)
			for _, r := range some {
				day.Add(r)
			}
			want = append(want, string(day.Format()))
		}
		require.Equal(t, want, texts(days.Days))
		require.Equal(t, jsonl(t, all...), s.text(t, firstPerson.Id))
		lines, err := s.Lines()
		require.NoError(t, err)
		require.Equal(t, jsonl(t, all...), strings.Join(lines, "\n")+"\n")
	})
}

func TestLatest(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		all := practice(t, 0, 12, 5)
		s.keepNow(t, all...)
		latest := func(kind string, n int) (ids []string) {
			for _, r := range told(t, func(done func([]history.Round, error)) { s.Latest(kind, n, done) }) {
				ids = append(ids, strings.TrimPrefix(r.ID, "round-"))
			}
			return ids
		}
		require.Equal(t, []string{"11", "10", "9", "8"}, latest("", 4))
		require.Equal(t, []string{"9", "6", "3"}, latest(history.Which, 3))
		require.Equal(t, []string{"9", "6", "3", "0"}, latest(history.Which, 100))
		require.Equal(t, []string{"11", "10"}, latest(history.Dums, 2))
		require.Empty(t, latest(history.Change, 3))
		require.Empty(t, latest("", 0))
	})
}

// A round is never written twice.
func TestKeepRefusesAnIDThatIsThere(t *testing.T) {
	s := newStore(t, t.Name())
	r, other := practised(t, 0, 1), practised(t, 1, 1)
	s.keepNow(t, r)
	other.ID = r.ID
	require.Error(t, done(func(done func(error)) { s.Keep(other, done) }))
	require.Equal(t, map[string]string{r.ID: format(t, r)}, s.kept(t, roundsStore))
	days, _ := s.daysNow(t)
	require.Equal(t, 2, rounds(days.Days), "it is held for this visit")
	latest := told(t, func(done func([]history.Round, error)) { s.Latest(other.Kind, 5, done) })
	require.Equal(t, []history.Round{other}, latest)
	require.Equal(t, jsonl(t, r, other), s.text(t, firstPerson.Id))
}

// Two windows that keep rounds of one day at once count all of them.
func TestTwoWindows(t *testing.T) {
	one, other := newStore(t, t.Name()), newStore(t, t.Name())
	all := practice(t, 0, 40, 40)
	come := make(chan error)
	for i, r := range all {
		s := []*Store{one, other}[i%2]
		s.Keep(r, func(err error) { come <- err })
	}
	for range all {
		require.NoError(t, <-come)
	}
	for _, s := range []*Store{one, other} {
		days, told := s.daysNow(t)
		require.Equal(t, 1, told, "the summary was right")
		require.Equal(t, 40, rounds(days.Days))
		require.Equal(t, jsonl(t, all...), s.text(t, firstPerson.Id))
	}
}

// The browser is asked once, after the first round, to keep what there is.
func TestPersistIsAskedForOnce(t *testing.T) {
	storage := js.Global().Get("navigator").Get("storage")
	asked := 0
	persist := js.FuncOf(func(js.Value, []js.Value) any { asked++; return js.Undefined() })
	storage.Set("persist", persist)
	t.Cleanup(func() { storage.Delete("persist"); persist.Release() })
	local := small()
	for i, want := range []int{1, 1, 2} { // the second visit remembers the first
		s := newStore(t, t.Name())
		s.asked, s.local = false, local
		if i == 2 {
			s.local = js.Null() // nothing is remembered: once in each visit
		}
		s.keepNow(t, practised(t, 2*i, 9), practised(t, 2*i+1, 9))
		require.Equal(t, want, asked)
	}
}
