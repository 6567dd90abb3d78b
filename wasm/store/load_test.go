//go:build js

package store

import (
	"context"
	"fmt"
	"strings"
	"syscall/js"
	"testing"

	browser "github.com/hack-pad/go-indexeddb/idb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// What a long practice costs: 10,000 rounds, 40 a day. Beside the mean time, each
// benchmark reports the least of all its repetitions (least-ms), and the longest time for
// which the page could do nothing else (held-ms), likewise the least of all repetitions:
// other programs on the machine only add to it. BenchmarkNothing tells how much.
const (
	manyRounds = 10_000
	aDay       = 40
)

var manyLines string

// many is a file of so many rounds.
func many(b *testing.B) string {
	b.Helper()
	if manyLines == "" {
		manyLines = jsonl(b, practice(b, 0, manyRounds, aDay)...)
	}
	return manyLines
}

// manyKept is a store with so many rounds, all counted. It serves all benchmarks, and
// goes with the browser.
var manyKept *Store

func filled(b *testing.B) *Store {
	b.Helper()
	if manyKept == nil {
		manyKept = Make(js.Null(), js.Null())
		manyKept.asked = true
		manyKept.open("many")
		manyKept.importNow(b, many(b))
		require.Equal(b, manyRounds, manyKept.acceptNow(b, true).Rounds)
		manyKept.daysNow(b)
	}
	return manyKept
}

// watch begins to watch how long the page is held up, and returns what ends that and
// tells the longest time, ms: that between two turns of a timer, less what the timer
// waits by itself.
func watch() func() float64 {
	held := js.Global().Call("eval", `(() => {
		let last = performance.now(), longest = 0, on = true;
		const wait = 4;
		setTimeout(function turn() {
			const now = performance.now();
			longest = Math.max(longest, now - last - wait);
			last = now;
			if (on) setTimeout(turn, wait);
		}, wait);
		return () => { on = false; return Math.max(longest, performance.now() - last - wait) };
	})()`)
	return func() float64 { return held.Invoke().Float() }
}

func now() float64 { return js.Global().Get("performance").Call("now").Float() }

// least is the least time of some repetitions, and the least of how long the page was
// held up in them, ms.
type least struct{ time, held float64 }

// repeat runs f once and notes how long it took.
func (l *least) repeat(f func()) {
	held, from := watch(), now()
	f()
	took, h := now()-from, held()
	if l.time == 0 {
		*l = least{took, h}
	}
	l.time, l.held = min(l.time, took), min(l.held, h)
}

func (l *least) report(b *testing.B, name string) {
	b.ReportMetric(l.time, name+"least-ms")
	b.ReportMetric(l.held, name+"held-ms")
}

// loop runs f as a benchmark.
func loop(b *testing.B, f func()) {
	b.Helper()
	var l least
	for b.Loop() {
		l.repeat(f)
	}
	l.report(b, "")
}

// BenchmarkDays tells all days of a practice that is counted.
func BenchmarkDays(b *testing.B) {
	s := filled(b)
	loop(b, func() {
		days, told := s.daysNow(b)
		require.Equal(b, []int{manyRounds, manyRounds / aDay, 1}, []int{rounds(days.Days), len(days.Days), told})
	})
}

// BenchmarkRecount makes all summaries anew.
func BenchmarkRecount(b *testing.B) {
	s := filled(b)
	want, _ := s.daysNow(b)
	var got host.Days
	loop(b, func() {
		s.change(b, func(tx idb.Transaction) error { return tx.Clear(daysStore) })
		got, _ = s.daysNow(b)
	})
	require.Equal(b, texts(want.Days), texts(got.Days))
}

// BenchmarkKeep keeps one more round, on a new day.
func BenchmarkKeep(b *testing.B) {
	s := filled(b)
	n := manyRounds
	loop(b, func() {
		s.keepNow(b, practised(b, n, aDay))
		n++
	})
	s.change(b, func(tx idb.Transaction) error {
		cards, err := allCards(tx, byDay, idb.StartingWith(firstPerson.Id, "2026-09-12"))
		require.NoError(b, err)
		require.Len(b, cards, n-manyRounds)
		require.NoError(b, removeRounds(tx, cards))
		return forget(tx, cards)
	})
}

// BenchmarkLatest reads the last hundred rounds of a kind.
func BenchmarkLatest(b *testing.B) {
	s := filled(b)
	loop(b, func() {
		come := make(chan int, 1)
		s.Latest("which", 100, func(r []history.Round, _ error) { come <- len(r) })
		require.Equal(b, 100, <-come)
	})
}

// BenchmarkImport reads a file, keeps its rounds and undoes it, and reports each.
func BenchmarkImport(b *testing.B) {
	text := many(b)
	s := newStore(b, b.Name())
	var read, accept, undo least
	for b.Loop() {
		read.repeat(func() { require.Equal(b, manyRounds, s.importNow(b, text).New) })
		accept.repeat(func() { require.Equal(b, manyRounds, s.acceptNow(b, true).Rounds) })
		undo.repeat(func() { require.NoError(b, done(s.Undo)) })
	}
	read.report(b, "read-")
	accept.report(b, "accept-")
	undo.report(b, "undo-")
}

// BenchmarkUpgrade opens a database of version 1: until something is told, until all
// is counted.
func BenchmarkUpgrade(b *testing.B) {
	values := map[string]any{}
	for i, line := range strings.Split(strings.TrimSpace(many(b)), "\n") {
		values[fmt.Sprintf("round-%d", i)] = line
	}
	var first, all least
	for b.Loop() {
		b.StopTimer()
		name := b.Name()
		firstVersion(b, name, values)
		b.StartTimer()
		s := newStore(b, name)
		come := make(chan host.Days, mostReadings)
		var d host.Days
		all.repeat(func() {
			first.repeat(func() {
				s.Days(func(d host.Days) { come <- d })
				d = <-come
			})
			for d.Behind > 0 {
				d = <-come
			}
		})
		require.NoError(b, d.Err)
		require.Equal(b, manyRounds, rounds(d.Days))
		b.StopTimer()
		s.database.connection.Call("close")
		request, err := browser.Global().DeleteDatabase(name)
		require.NoError(b, err)
		require.NoError(b, request.Await(context.Background()))
		b.StartTimer()
	}
	first.report(b, "first-")
	all.report(b, "")
}

// BenchmarkExport makes the two files.
func BenchmarkExport(b *testing.B) {
	s := filled(b)
	for name, make := range map[string]func(string) (js.Value, error){"lines": s.allLines, "sheet": s.sheet} {
		b.Run(name, func(b *testing.B) {
			loop(b, func() {
				parts, err := make("")
				require.NoError(b, err)
				require.Positive(b, parts.Length())
			})
		})
	}
}

// BenchmarkNothing tells how long the page is held up by the machine alone, while it
// works in slices as long as those of the store, at nothing.
func BenchmarkNothing(b *testing.B) {
	loop(b, func() {
		w := idb.NewWork()
		for from := now(); now()-from < 2000; {
			w.Rest()
		}
	})
}
