//go:build js

package store

import (
	"context"
	"encoding/json"
	"strings"
	"syscall/js"
	"testing"
	"time"

	browser "github.com/hack-pad/go-indexeddb/idb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
	"groundbeat/scoring/history"
	"groundbeat/wasm/dom"
	"groundbeat/wasm/idb"
)

// refusing lets the browser refuse every round, as where there is no room, until the
// test is over or over is called.
func refusing(t *testing.T) (over func()) {
	t.Helper()
	stores := js.Global().Get("IDBObjectStore").Get("prototype")
	add := stores.Get("add")
	stores.Set("add", js.Global().Call("eval", `(function () {
		this.transaction.abort();
		throw new DOMException("full", "QuotaExceededError");
	})`))
	over = func() { stores.Set("add", add) }
	t.Cleanup(over)
	return over
}

func (s *Store) tries(t *testing.T, rounds ...history.Round) (refused int) {
	t.Helper()
	for _, r := range rounds {
		if done(func(done func(error)) { s.Keep(r, done) }) != nil {
			refused++
		}
	}
	return refused
}

// What the browser refuses waits, and is said to, until all of it is kept; with the next
// round it is tried again.
func TestRefusedIsTriedAgain(t *testing.T) {
	local := small()
	s := openStore(t, t.Name(), local)
	told := 0
	s.Changed = func() { told++ }
	all := practice(t, 0, 4, 4)
	over := refusing(t)
	require.Equal(t, 2, s.tries(t, all[:2]...))
	require.Equal(t, view.Storage{Waiting: 2, Aside: true}, s.Storage())
	require.Positive(t, told)
	require.Len(t, idb.ItemKeys(local, spoolKey), 2)
	days, _ := s.daysNow(t)
	require.Equal(t, 2, rounds(days.Days), "they are told all the same")

	over()
	s.keepNow(t, all[2])
	require.Equal(t, view.Storage{Aside: true}, s.Storage())
	require.Empty(t, idb.ItemKeys(local, spoolKey))
	require.Equal(t, jsonl(t, all[:3]...), s.text(t, firstPerson.Id))
	require.Len(t, s.kept(t, roundsStore), 3)
}

// It is tried again by itself, after longer and longer while nothing helps.
func TestRefusedIsTriedLater(t *testing.T) {
	s := openStore(t, t.Name(), small())
	over := refusing(t)
	s.tries(t, practised(t, 0, 1))
	require.Equal(t, soonest, s.waits.after)
	s.try()
	require.Equal(t, 2*soonest, s.waits.after)
	for range 20 {
		s.try()
	}
	require.Equal(t, latest, s.waits.after)
	over()
	s.waits.timer.Reset(time.Millisecond)
	require.Eventually(t, func() bool { return s.Storage().Waiting == 0 }, 5*time.Second, 10*time.Millisecond)
	require.Len(t, s.kept(t, roundsStore), 1)
	require.Zero(t, s.waits.after)
}

// Where there is no local storage either, it is said that a page that is closed loses it.
func TestRefusedWithoutSpool(t *testing.T) {
	s := newStore(t, t.Name())
	refusing(t)
	s.tries(t, practised(t, 0, 1))
	require.Equal(t, view.Storage{Waiting: 1}, s.Storage())
}

// A round is in the spool before Keep returns, and out of it once it is kept.
func TestSpooledAtOnce(t *testing.T) {
	local := small()
	s := openStore(t, t.Name(), local)
	r := practised(t, 0, 1)
	come := make(chan error, 1)
	s.Keep(r, func(err error) { come <- err })
	require.Equal(t, []string{spoolKey + r.ID}, idb.ItemKeys(local, spoolKey))
	require.NoError(t, <-come)
	require.Empty(t, idb.ItemKeys(local, spoolKey))
}

// What an earlier visit has left in the spool is kept at the next start, once, as that
// of whom it belongs to, also if it had been kept just before the page was left; what
// cannot be read stays.
func TestSpoolIsTaken(t *testing.T) {
	local := small()
	before := openStore(t, t.Name(), local)
	all := practice(t, 0, 3, 3)
	before.keepNow(t, all[0])
	left := func(r history.Round, who person) {
		text, err := json.Marshal(spooled{who.Id, who.name, who.made, format(t, r)})
		require.NoError(t, err)
		require.NoError(t, idb.SetItem(local, spoolKey+r.ID, string(text)))
	}
	left(all[0], firstPerson)
	left(all[1], firstPerson)
	amira := person{Id: "hers", name: "Amira", made: 5}
	left(all[2], amira)
	require.NoError(t, idb.SetItem(local, spoolKey+"later", `{"person":"first","line":"{\"v\":99}"}`))

	s := openStore(t, t.Name(), local)
	require.Equal(t, jsonl(t, all[:2]...), s.text(t, firstPerson.Id))
	require.Equal(t, of(t, "Amira", all[2]), s.text(t, amira.Id))
	require.Equal(t, []string{spoolKey + "later"}, idb.ItemKeys(local, spoolKey))
	days, told := s.daysNow(t)
	require.Equal(t, 1, told)
	require.Equal(t, 2, rounds(days.Days))
}

// Without a database, what lies in the spool is told, and waits.
func TestSpoolWithoutDatabase(t *testing.T) {
	local := small()
	s := Make(local, js.Null())
	s.Begin(js.ValueOf(map[string]any{"storage": false}))
	all := practice(t, 0, 2, 2)
	require.Equal(t, 2, s.tries(t, all...))
	require.Equal(t, view.Storage{Waiting: 2, Aside: true, None: true}, s.Storage())
	again := Make(local, js.Null())
	again.Begin(js.ValueOf(map[string]any{"storage": false}))
	require.Equal(t, 2, again.Storage().Waiting)
	require.Equal(t, jsonl(t, all...), again.text(t, firstPerson.Id))
}

// What is erased does not come back out of the spool.
func TestErasedInTheSpool(t *testing.T) {
	local := small()
	s := openStore(t, t.Name(), local)
	refusing(t)
	all := practice(t, 0, 2, 2)
	s.tries(t, all[0])
	require.NoError(t, done(func(done func(error)) { s.Erase(firstPerson.Id, done) }))
	require.Empty(t, idb.ItemKeys(local, spoolKey))
	require.Zero(t, s.Storage().Waiting)
	s.tries(t, all[1])
	require.NoError(t, done(func(done func(error)) { s.Erase("", done) }))
	require.Empty(t, idb.ItemKeys(local, spoolKey))
}

// emptied makes a database of a version as somebody else may have left it, with some of
// the stores.
func emptied(t *testing.T, name string, version uint, stores ...string) {
	t.Helper()
	ctx := context.Background()
	request, err := browser.Global().Open(ctx, name, version, func(db *browser.Database, _, _ uint) (err error) {
		for _, store := range stores {
			if _, err = db.CreateObjectStore(store, browser.ObjectStoreOptions{}); err != nil {
				return err
			}
		}
		return nil
	})
	require.NoError(t, err)
	db, err := request.Await(ctx)
	require.NoError(t, err)
	require.NoError(t, db.Close())
}

// Stores are made wherever they lack, whatever version somebody has left without them.
func TestStoresThatLack(t *testing.T) {
	for name, left := range map[string]struct {
		version, becomes int
		Stores           []string
	}{
		"empty at 1":         {1, databaseVersion, nil},
		"empty at 2":         {2, databaseVersion, nil},
		"empty at ours":      {databaseVersion, databaseVersion + repair, nil},
		"one at ours":        {databaseVersion, databaseVersion + repair, []string{roundsStore}},
		"repaired, and less": {databaseVersion + repair, databaseVersion + 2*repair, []string{roundsStore}},
		"repaired earlier":   {2 + repair, databaseVersion + repair, []string{roundsStore}},
	} {
		t.Run(name, func(t *testing.T) {
			emptied(t, t.Name(), uint(left.version), left.Stores...)
			s := newStore(t, t.Name())
			require.Equal(t, left.becomes, s.database.connection.Get("version").Int())
			r := practised(t, 0, 1)
			s.keepNow(t, r)
			lines, err := s.Lines()
			require.NoError(t, err)
			require.Equal(t, []string{format(t, r)}, lines)
			again := newStore(t, t.Name())
			require.Equal(t, left.becomes, again.database.connection.Get("version").Int(), "and that once")
			require.Equal(t, 1, len(again.kept(t, roundsStore)))
		})
	}
}

// A page that is older than what is kept leaves it alone, says so, and lays its rounds
// aside for the page that comes.
func TestOlderPage(t *testing.T) {
	local := small()
	s := openStore(t, t.Name(), local)
	all := practice(t, 0, 2, 2)
	s.keepNow(t, all[0])
	emptied(t, t.Name(), databaseVersion+1, "later") // s lets go of it
	require.True(t, s.Storage().Older)
	require.Equal(t, 1, s.tries(t, all[1]))
	require.Equal(t, view.Storage{Waiting: 1, Aside: true, Older: true}, s.Storage())

	again := Make(local, js.Null())
	again.open(t.Name())
	require.ErrorIs(t, again.err, errOlder)
	require.Equal(t, view.Storage{Waiting: 1, Aside: true, Older: true}, again.Storage())
	require.Equal(t, jsonl(t, all[1]), again.text(t, ""))
	require.Equal(t, []string{spoolKey + all[1].ID}, idb.ItemKeys(local, spoolKey), "for the page that comes")
}

// An earlier page that does not let go keeps this one out, which says so, and goes on by
// itself when it may.
func TestHeldByAnEarlierPage(t *testing.T) {
	firstVersion(t, t.Name(), nil)
	held, err := dom.Await(js.Global().Call("eval", `(name) => new Promise((done) => {
		const request = indexedDB.open(name);
		request.onsuccess = () => done(request.result);
	})`).Invoke(t.Name()))
	require.NoError(t, err)

	s := Make(small(), js.Null())
	s.asked = true
	go s.open(t.Name())
	require.Eventually(t, func() bool { return s.Storage().Blocked }, 5*time.Second, 10*time.Millisecond)
	r := practised(t, 0, 1)
	kept := make(chan error, 1)
	s.Keep(r, func(err error) { kept <- err })
	require.Len(t, idb.ItemKeys(s.local, spoolKey), 1)
	held.Call("close")
	require.NoError(t, <-kept)
	require.Equal(t, view.Storage{Aside: true}, s.Storage())
	require.True(t, strings.Contains(s.text(t, ""), r.ID))
	<-s.database.swept
	s.database.connection.Call("close")
}
