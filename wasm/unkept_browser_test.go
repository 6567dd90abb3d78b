//go:build browser && !js

package main

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// Where the browser keeps nothing, a round is played all the same, the page says
// so, and the page's script has it for as long as the page is open.
func TestNothingCanBeKept(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(`for (const name of ["indexedDB", "localStorage"])
		Object.defineProperty(window, name, { get() { throw new DOMException("no", "SecurityError") } });`)
	b.visit(s.URL + quick)
	b.playThrough()
	b.notKept("This browser keeps nothing for this page.", "1 round could not be kept yet.", "lost if you close the page")
	b.press("Once more")
	b.wait("document.querySelector('.taparea')")
}

// Rounds that the browser refuses are told until all of them are kept, wherever one is,
// and are not lost with the page.
func TestRefusedRounds(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(`
		const add = IDBObjectStore.prototype.add;
		IDBObjectStore.prototype.add = function (...all) {
			const request = add.apply(this, all);
			if (localStorage.room) return request;
			this.transaction.abort();
			throw new DOMException("full", "QuotaExceededError");
		};`)
	b.visit(s.URL + quick)
	b.playThrough()
	b.notKept("1 round could not be kept yet.", "stays in this browser")
	b.press("Once more")
	b.wait("document.querySelector('.taparea')")
	b.finish(func() { b.keys("j") })
	b.notKept("2 rounds could not be kept yet.")
	b.visit(s.URL + "/?screen=listen") // the page is closed, and another comes
	b.wait("document.querySelector('#waiting')?.innerText.includes('2 rounds')")
	b.run(`document.querySelector("#save-waiting").click(); localStorage.room = "some"`)
	b.run(`document.dispatchEvent(new Event("visibilitychange"))`)
	b.wait("!document.querySelector('#waiting')")
	require.Len(t, get[stored](b, database).lines(t), 2)
	require.Equal(t, 2, b.rounds())
}

// notKept checks that a round with one tap was played, and what is said of it.
func (b *tab) notKept(says ...string) {
	b.t.Helper()
	for _, part := range says {
		b.wait(fmt.Sprintf("document.querySelector('#keeping')?.innerText.includes(%q)", part))
	}
	require.Equal(b.t, "heading", b.focused())
	require.Contains(b.t, get[[]string](b, "groundbeat.log().then((l) => l.flatMap((r) => r.taps.map((t) => t.by)))"), "key")
}

// fill makes a database as another program, or a later version of ours, may have
// left it, before the page is opened.
func (b *tab) fill(s *server, version int, values string) {
	b.t.Helper()
	b.load(s.URL + "/test/hook.js")
	b.run(fmt.Sprintf(`await new Promise((done, failed) => {
		const request = indexedDB.open("groundbeat", %d);
		request.onupgradeneeded = () => request.result.createObjectStore("rounds");
		request.onerror = failed;
		request.onsuccess = () => {
			const tx = request.result.transaction("rounds", "readwrite");
			%s.forEach((value, i) => tx.objectStore("rounds").add(value, "0" + i));
			tx.oncomplete = () => { request.result.close(); done() };
		};
	});`, version, values))
}

// A database of a later version is left as it is: the page says that it is to be loaded
// anew, and its rounds wait for the page that comes.
func TestLaterDatabase(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.fill(s, 7, `["{\"v\":7}"]`)
	b.visit(s.URL + quick)
	b.playThrough()
	b.notKept("belongs to a newer Groundbeat", "1 round of this page waits in this browser")
	kept := get[stored](b, database)
	require.Equal(t, 7, kept.Version)
	require.Equal(t, []string{`{"v":7}`}, kept.lines(t))

	b.run("window.before = true")
	b.press("Reload the page")
	b.wait("!window.before && document.querySelector('#keeping')?.innerText.includes('1 round of this page waits')")
	b.run(`await new Promise((done) => { indexedDB.deleteDatabase("groundbeat").onsuccess = done })`) // as if the newer page had come
	b.visit(s.URL + quick)
	require.Equal(t, 1, b.rounds())
	require.Len(t, get[stored](b, database).lines(t), 1)
}

// closes closes each connection to a database soon after it was made, as a
// browser does when its storage is cleared.
const closes = `
	const result = Object.getOwnPropertyDescriptor(IDBRequest.prototype, "result").get;
	Object.defineProperty(IDBRequest.prototype, "result", { get() {
		const value = result.call(this);
		if (value instanceof IDBDatabase) setTimeout(() => value.close(), 500);
		return value;
	} });`

// Records that cannot be read are set aside as they are, a later version's is left where
// it is, and what can be read is told. And a connection that was closed is opened anew.
func TestBrokenRecords(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.fill(s, 1, `["{\"v\":1,\"kind\":", "{\"v\":7,\"kind\":\"later\"}", 5, { v: 1 }]`)
	b.early(closes)
	b.visit(s.URL + quick)
	require.Equal(t, 2, b.rounds(), "a later version's record and an object")
	b.playThrough()
	require.Equal(t, []any{"dums", "later", nil}, get[[]any](b, "groundbeat.log().then((l) => l.map((r) => r.kind ?? null).sort())"))
	require.NotContains(t, b.text("#page"), "This browser keeps nothing")
	kept := get[stored](b, database)
	require.Len(t, kept.Values, 2)
	require.Contains(t, kept.lines(t), `{"v":7,"kind":"later"}`)
	require.JSONEq(t, `["{\"v\":1,\"kind\":", 5, {"v": 1}]`, get[string](b, "("+database+").then((d) => JSON.stringify(d.aside))"))

	b.visit(s.URL + "/?screen=diary")
	b.wait("document.querySelector('#set-aside')")
	require.Contains(t, b.text("#set-aside"), "3 rounds could not be read")
	require.Contains(t, b.text("#newer"), "1 round is from a newer Groundbeat")
}
