//go:build browser && !js

package main

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// What a player meets where something is missing: a sentence, and never a blank
// page or a dead program.

// said waits for one of the page's own sentences and checks that it is the only
// thing beside the heading, that what can help has the focus, and that nothing
// of a game is left.
func (b *tab) said(sentence string, reload bool) {
	b.t.Helper()
	b.waitFor("document.querySelector('[role=alert]:not([hidden])')", 15*time.Second)
	require.Equal(b.t, "Groundbeat", b.text("h1"))
	alerts := get[[]string](b, `[...document.querySelectorAll("[role=alert]")].filter((e) => e.checkVisibility()).map((e) => e.innerText)`)
	require.Len(b.t, alerts, 1)
	require.Contains(b.t, alerts[0], sentence)
	require.False(b.t, get[bool](b, `document.querySelector("#boot-loading").checkVisibility()`))
	require.False(b.t, get[bool](b, `Boolean(document.querySelector("#begin, .taparea"))`))
	require.Equal(b.t, reload, get[bool](b, `document.querySelector("#boot-reload").checkVisibility()`))
	if reload {
		require.Equal(b.t, "boot-reload", b.focused())
	}
}

func TestCannotStart(t *testing.T) {
	t.Parallel()
	s := serve(t)
	for _, c := range []struct {
		name, early, sentence string
		reload                bool
	}{
		{"no WebGL", `
			const get = HTMLCanvasElement.prototype.getContext;
			HTMLCanvasElement.prototype.getContext = function (kind, ...rest) { return kind.startsWith("webgl") ? null : get.call(this, kind, ...rest) };`,
			"WebGL is missing or switched off", false},
		{"WebGL refused", `HTMLCanvasElement.prototype.getContext = () => { throw new Error("refused") };`,
			"WebGL is missing or switched off", false},
		{"no WebAssembly", `delete window.WebAssembly;`, "WebAssembly is missing or switched off", false},
		{"WebAssembly of long ago", `WebAssembly.instantiateStreaming = async () => { throw new WebAssembly.CompileError("unknown opcode") };`,
			"WebAssembly is missing or switched off", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := Page(t)
			b.early(c.early)
			b.load(s.URL + quick)
			b.said(c.sentence, c.reload)
		})
	}
}

// A part of the site is missing, or arrives in part.
func TestPartsDoNotArrive(t *testing.T) {
	t.Parallel()
	s := serve(t)
	missing := func(part string) http.HandlerFunc {
		return func(w http.ResponseWriter, r *http.Request) {
			if strings.HasPrefix(r.URL.Path, "/"+part+".") {
				http.NotFound(w, r)
				return
			}
			s.Config.Handler.ServeHTTP(w, r)
		}
	}
	for name, handler := range map[string]http.HandlerFunc{
		"no program":            missing("app"),
		"no script":             missing("boot"),
		"the connection breaks": func(w http.ResponseWriter, r *http.Request) { half(s, w, r, true) },
		"half was uploaded":     func(w http.ResponseWriter, r *http.Request) { half(s, w, r, false) },
	} {
		t.Run(name, func(t *testing.T) {
			host := httptest.NewServer(handler)
			t.Cleanup(host.Close)
			b := Page(t)
			b.load(host.URL + quick)
			b.said("A part of Groundbeat did not arrive.", true)
		})
	}
}

// half sends the first half of the program: as if it were all, or with the
// connection breaking there.
func half(s *server, w http.ResponseWriter, r *http.Request, breaks bool) {
	if !strings.HasPrefix(r.URL.Path, "/app.") {
		s.Config.Handler.ServeHTTP(w, r)
		return
	}
	r.Header.Del("Accept-Encoding")
	whole := httptest.NewRecorder()
	s.Config.Handler.ServeHTTP(whole, r)
	for name, values := range whole.Header() {
		w.Header()[name] = values
	}
	if !breaks {
		w.Header().Del("Content-Length")
	}
	_, _ = w.Write(whole.Body.Bytes()[:whole.Body.Len()/2])
	if breaks {
		panic(http.ErrAbortHandler)
	}
}

// The program stops by mistake: by an error of its own, here because the page
// does not let it make what it wants to show, or because its memory is spoilt.
func TestProgramStops(t *testing.T) {
	t.Parallel()
	s := serve(t)
	for name, spoil := range map[string]string{
		"an error": `const make = document.createElement;
			document.createElement = (tag) => { if (tag !== "canvas") throw new Error("broken"); return make.call(document, tag) };
			document.querySelector("#stop, #change").click()`,
		"memory": `new Uint8Array(program.exports.mem.buffer).fill(255)`,
	} {
		t.Run(name, func(t *testing.T) {
			b := Page(t)
			b.early(`const start = WebAssembly.instantiateStreaming;
				WebAssembly.instantiateStreaming = async (...all) => { const made = await start(...all); window.program = made.instance; return made };`)
			b.visit(s.URL + quick)
			b.begin()
			b.wait("groundbeat.heard()")
			b.run(spoil)
			b.said("Groundbeat has stopped by mistake. Finished rounds are kept.", true)
			b.keys(" ") // the reload button has the focus
			b.wait("document.querySelector('#begin')")
		})
	}
}
