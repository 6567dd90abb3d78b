//go:build browser && !js

package main

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/round"
	"groundbeat/scoring"
	"groundbeat/scoring/history"
)

// What is kept of finished rounds, and where nothing can be kept.

// database gives what the browser's database holds: its version, the values of its
// rounds in the order of their keys, and, where there is such a store, what was set
// aside.
const database = `(async () => {
	const done = (r) => new Promise((yes, no) => { r.onsuccess = () => yes(r.result); r.onerror = () => no(r.error) });
	const db = await done(indexedDB.open("groundbeat"));
	const all = async (name) => db.objectStoreNames.contains(name) ? done(db.transaction(name).objectStore(name).getAll()) : [];
	const values = await all("rounds"), aside = (await all("aside")).map((a) => a.value);
	db.close();
	return { version: db.version, values, aside };
})()`

// things gives the texts of all things that lie in the local storage, by key; see
// things.go.
const things = `Object.fromEntries(Object.entries(localStorage).filter(([k]) => k.startsWith("groundbeat.thing."))
	.map(([k, v]) => [k.slice("groundbeat.thing.".length), JSON.parse(v).text]))`

// forget removes all that the browser keeps.
func (b *tab) forget() {
	b.t.Helper()
	b.run(`localStorage.clear(); await new Promise((done) => {
		const request = indexedDB.deleteDatabase("groundbeat");
		request.onsuccess = request.onerror = done;
	})`)
}

type stored struct {
	Version int
	Values  []json.RawMessage
	Aside   []json.RawMessage
}

// lines are the stored values, each of which must be a text.
func (s stored) lines(t *testing.T) []string {
	t.Helper()
	var lines []string
	for _, v := range s.Values {
		var line string
		require.NoError(t, json.Unmarshal(v, &line))
		lines = append(lines, line)
	}
	return lines
}

func TestKeptRound(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := undrawing(t).spared()
	b.visit(s.URL + quick)
	b.play(func() {
		for range 5 {
			b.keys("j")
			b.rest(290)
		}
	})
	kept := get[stored](b, database)
	require.Equal(t, 3, kept.Version)
	lines := kept.lines(t)
	require.Len(t, lines, 1)

	t.Run("fields", func(t *testing.T) {
		var round map[string]any
		require.NoError(t, json.Unmarshal([]byte(lines[0]), &round))
		require.ElementsMatch(t, []string{"v", "kind", "rhythm", "bpm", "riff", "eights", "seed", "strokes", "taps", "setup", "score", "id", "when",
			"output", "epoch", "rate", "coarse", "window", "bias", "spread", "median", "drift", "matched", "out", "added", "close"}, keysOf(round))
		for _, tap := range round["taps"].([]any) {
			require.ElementsMatch(t, []string{"at", "offset", "stroke", "frame", "reading", "by"}, keysOf(tap.(map[string]any)))
			require.ElementsMatch(t, []string{"context", "performance"}, keysOf(tap.(map[string]any)["reading"].(map[string]any)))
		}
	})
	r, err := history.Parse([]byte(lines[0]))
	require.NoError(t, err)
	t.Run("one line in one form", func(t *testing.T) {
		again, err := history.Format(r)
		require.NoError(t, err)
		require.Equal(t, string(again), lines[0])
	})
	t.Run("values", func(t *testing.T) { consistent(t, r) })
	t.Run("the page's script tells the same", func(t *testing.T) {
		b.t = t
		told := get[[]any](b, "groundbeat.log()")
		var want any
		require.NoError(t, json.Unmarshal([]byte(lines[0]), &want))
		require.Equal(t, []any{want}, told)
	})
	t.Run("a reload keeps it", func(t *testing.T) {
		b.t = t
		b.visit(s.URL + quick)
		require.Equal(t, lines, get[stored](b, database).lines(t))
		require.Equal(t, 1, b.rounds())
	})
	t.Run("two windows add to one log", func(t *testing.T) {
		other := b.beside(t)
		other.visit(s.URL + quick)
		other.playThrough()
		b.t = t
		b.playThrough()
		require.Equal(t, 3, other.rounds())
		require.Equal(t, 3, b.rounds())
		require.Len(t, get[stored](b, database).lines(t), 3)
		ids := get[[]string](b, "groundbeat.log().then((l) => l.map((r) => r.id))")
		require.Len(t, slices.Compact(slices.Sorted(slices.Values(ids))), 3)
		require.Equal(t, r.ID, ids[0], "the oldest first")
	})
}

func keysOf(m map[string]any) (names []string) {
	for name := range m {
		names = append(names, name)
	}
	return names
}

// consistent checks that a record of the quick round follows from its strokes
// and its taps.
func consistent(t *testing.T, r history.Round) {
	t.Helper()
	q := question(t, 200, 1)
	require.Equal(t, []any{q.Kind, q.Rhythm.ID, q.BPM, q.Level.String(), q.Eights, q.Seed}, []any{r.Kind, r.Rhythm, r.BPM, r.Riff, r.Eights, r.Seed})
	require.WithinDuration(t, time.Now(), r.Time(), time.Minute)
	require.Equal(t, int(audio.Rate), r.Rate)
	require.Positive(t, r.Epoch)
	require.False(t, r.Coarse)
	require.Empty(t, r.Output)
	require.Zero(t, r.Setup)
	require.Equal(t, 100.0, r.Window)

	asked, err := round.New(q)
	require.NoError(t, err)
	require.Len(t, r.Strokes, len(asked.Strokes()))
	for i, want := range asked.Strokes() {
		require.InDelta(t, (want - asked.Strokes()[0]).Seconds(), r.Strokes[i]-r.Strokes[0], 1.0/48000, "stroke %d", i)
		require.InDelta(t, math.Round(r.Strokes[i]*48000), r.Strokes[i]*48000, 1e-4, "a stroke lies on a frame")
	}
	var strokes, taps []time.Duration
	for _, s := range r.Strokes {
		strokes = append(strokes, time.Duration(math.Round(s*1e9)))
	}
	for _, tap := range r.Taps {
		require.Equal(t, "key", tap.By)
		require.Greater(t, tap.At, tap.Reading.Performance-1000)
		taps = append(taps, time.Duration(tap.Frame/48000*1e9))
	}
	want := scoring.Score(strokes, taps, 0, round.Window)
	require.Equal(t, []int{len(want.Pairs), len(want.Out), len(want.Added)}, []int{r.Matched, r.Out, r.Added})
	require.InDelta(t, want.Accuracy, r.Score, 1e-4)
	for _, p := range want.Pairs {
		tap := r.Taps[p.Tap]
		require.NotNil(t, tap.Stroke)
		require.Equal(t, p.Stroke, *tap.Stroke)
		require.InDelta(t, float64(p.Offset)/1e6, *tap.Offset, 0.01)
	}
}

// A page that is left while the database is made (a link followed at once) does not keep
// the next one from it.
func TestLeftWhileMade(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	for i := range 8 {
		fresh := b.alone(t)
		fresh.early(`const open = IDBFactory.prototype.open;
			IDBFactory.prototype.open = function (...all) { window.asked = true; return open.apply(this, all); };`)
		fresh.load(s.URL + "/?screen=set-up")
		fresh.wait("window.asked")
		time.Sleep(time.Duration(i) * 8 * time.Millisecond)
		fresh.load(s.URL + "/?screen=listen")
		fresh.wait("window.groundbeat")
		require.Equal(t, 0, get[int](fresh, "Promise.race([groundbeat.log().then((l) => l.length), new Promise((r) => setTimeout(r, 10000, -1))])"), "time %d", i)
	}
}

// A page that is loaded anew in the very task in which the review is shown has lost
// nothing: the round is kept, and once.
func TestLeftWithTheReview(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := undrawing(t).spared()
	b.early(`new MutationObserver(() => {
		if (sessionStorage.left || !document.querySelector("#finding")) return;
		sessionStorage.left = "yes";
		location.reload();
	}).observe(document, { subtree: true, childList: true });`)
	b.visit(s.URL + quick)
	for range 3 { // a machine that is busy with something else may cut the sound
		b.begin()
		b.countedIn()
		b.keys("j")
		b.wait("!document.querySelector('.taparea')")
		if b.wait("document.querySelector('#begin, #why')"); get[bool](b, "Boolean(sessionStorage.left)") {
			break
		}
		b.press("Change the round")
	}
	b.wait("sessionStorage.left && document.querySelector('#begin')")
	require.Equal(t, 1, b.rounds())
	lines := get[stored](b, database).lines(t)
	require.Len(t, lines, 1)
	b.visit(s.URL + quick)
	require.Equal(t, 1, b.rounds())
	require.Equal(t, lines, get[stored](b, database).lines(t))
	require.Empty(t, get[[]string](b, `Object.keys(localStorage).filter((k) => k.startsWith("groundbeat.round."))`))
}

// Two windows beside each other: what one sets shows in the other, and neither takes from
// the other what it has kept.
func TestWindowsTellEachOther(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := openFor(t, 5*time.Minute).spared()
	b.load(s.URL + "/test/hook.js")
	b.run(`localStorage.setItem("groundbeat.outputs", JSON.stringify({ v: 1, chosen: "studio", outputs: [
		{ name: "studio", mean: 38, spread: 12, when: "2026-01-31T18:30:00Z" }] }))`)
	b.visit(s.URL + soundCheck)
	other := b.beside(t)
	other.visit(s.URL + soundCheck)
	both := []*tab{b, other}
	b.press("As measured: 40 ms later")
	other.wait("document.querySelector('#later output').innerText.startsWith('40')")

	for i, name := range []string{"Monday", "Friday"} {
		both[i].run(`document.querySelector("[data-action=go][value=class]").click()`)
		both[i].wait("document.querySelector('#class-set-name')")
		both[i].run(fmt.Sprintf(`const field = document.querySelector("#class-set-name input");
			field.value = %q;
			field.dispatchEvent(new Event("input", { bubbles: true }))`, name))
		both[i].rest(100)
		both[i].run(`document.querySelector("[data-action=class-save]").click()`)
	}
	for _, window := range both {
		window.wait("['Monday', 'Friday'].every((name) => document.querySelector('#class-sets').innerText.includes(name))")
		window.run(`document.querySelector("[data-action=go][value=home], [data-action=home]").click()`)
		window.wait("document.querySelector('#theme')")
	}

	other.dark(true)
	b.run(`document.querySelector("#theme input[value=light]").click()`)
	other.wait("document.documentElement.dataset.theme === 'light'")
	b.run(`const slider = document.querySelector("#volume input"); slider.value = 0; slider.dispatchEvent(new Event("input", { bubbles: true }))`)
	b.wait(things + "['setting/volume'] === '0'")
	require.Equal(t, "60", get[string](other, "document.querySelector('#volume input').value"), "nobody's sound is turned from elsewhere")
	b.visit(s.URL)
	require.Equal(t, "0", get[string](b, "document.querySelector('#volume input').value"), "silence stays silence")
	require.Equal(t, "rgb(248, 242, 231)", get[string](b, "getComputedStyle(document.documentElement).backgroundColor"), "the light ground")
}
