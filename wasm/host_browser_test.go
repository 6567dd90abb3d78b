//go:build browser && !js

package main

import (
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/wasm/site"
)

// The site as different hosts serve it.

// violations notes whatever the content security policy forbids, from before the
// page's own scripts on.
const violations = `
	window.forbidden = [];
	document.addEventListener("securitypolicyviolation", (e) => forbidden.push(e.violatedDirective + " " + e.blockedURI));`

// clean checks that nothing was forbidden, and that nothing complained.
func (b *tab) clean() {
	b.t.Helper()
	require.Empty(b.t, get[[]string](b, "window.forbidden ?? []"))
	require.Empty(b.t, b.console())
}

// A whole visit, served as we serve it, with the policy as header and in the page.
func TestNothingForbiddenInAVisit(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(violations)
	b.visit(s.URL + quick)
	require.True(t, get[bool](b, "crossOriginIsolated"), "finer time stamps")
	require.Contains(t, get[string](b, `fetch("").then((r) => r.headers.get("Content-Security-Policy"))`), "frame-ancestors 'none'")
	b.playThrough()
	b.click("summary")
	b.wait("document.querySelector('details[open] table td')")
	b.press("Change the round")
	b.wait("document.querySelector('#begin')")
	b.clean()
}

func TestHosts(t *testing.T) {
	t.Parallel()
	_ = serve(t) // says so if the site is not built
	t.Run("below a path", func(t *testing.T) {
		host := httptest.NewServer(site.New(os.DirFS(dist), site.Options{Base: "/a/b/"}))
		t.Cleanup(host.Close)
		b := Page(t)
		b.early(violations)
		b.visit(host.URL + "/a/b" + quick)
		require.Equal(t, "/a/b/", get[string](b, "location.pathname"))
		b.begin()
		b.wait("groundbeat.heard()")
		b.clean()
	})
	// A host that knows nothing but files: no headers of ours, and no type for
	// the program.
	t.Run("plain files", func(t *testing.T) {
		files := http.FileServer(http.Dir(dist))
		host := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			if strings.HasSuffix(r.URL.Path, ".wasm") {
				w.Header().Set("Content-Type", "application/octet-stream")
			}
			files.ServeHTTP(w, r)
		}))
		t.Cleanup(host.Close)
		b := Page(t)
		b.early(violations)
		b.visit(host.URL + quick)
		require.Nil(t, get[*string](b, `fetch("").then((r) => r.headers.get("Content-Security-Policy"))`))
		b.begin()
		b.wait("groundbeat.heard()")
		b.clean()

		b.run(`const script = document.createElement("script");
			script.textContent = "window.injected = true";
			document.head.append(script);`)
		b.wait("forbidden.length > 0")
		require.Equal(t, []string{"script-src-elem inline"}, get[[]string](b, "forbidden"), "the page's own policy holds")
		require.False(t, get[bool](b, "Boolean(window.injected)"))
	})
}
