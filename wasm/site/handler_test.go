package site_test

import (
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"groundbeat/wasm/site"
)

const wasm, script, font = "app.0123456789ab.wasm", "boot.00112233aabb.js", "fonts/sans.a0b1c2d3e4f5.woff2"

// files is a small site. The compressed twins hold plain words, so that a test
// sees which one was sent; the script has no Brotli twin.
func files() fstest.MapFS {
	site := fstest.MapFS{}
	for name, content := range map[string]string{
		"index.html": "<!doctype html>page", "index.html.br": "page as br", "index.html.gz": "page as gzip",
		wasm: "\x00asm raw", wasm + ".br": "wasm as br", wasm + ".gz": "wasm as gzip",
		script: "boot()", script + ".gz": "script as gzip", font: "wOF2", ".secret": "hidden", "fonts/.secret": "hidden",
	} {
		site[name] = &fstest.MapFile{Data: []byte(content)}
	}
	return site
}

// ask sends one request; headers are "Name: value".
func ask(h http.Handler, method, target string, headers ...string) *http.Response {
	r := httptest.NewRequest(method, target, nil)
	for _, header := range headers {
		name, value, _ := strings.Cut(header, ": ")
		r.Header.Set(name, value)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func body(t *testing.T, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return string(b)
}

func TestTypesAndCaching(t *testing.T) {
	h := site.New(files(), site.Options{})
	const forEver, anew = "public, max-age=31536000, immutable", "no-cache"
	for _, c := range []struct{ target, contentType, cache, content string }{
		{"/", "text/html; charset=utf-8", anew, "<!doctype html>page"},
		{"/?screen=dums&rhythm=maqsum", "text/html; charset=utf-8", anew, "<!doctype html>page"},
		{"/index.html", "text/html; charset=utf-8", anew, "<!doctype html>page"},
		{"/" + wasm, "application/wasm", forEver, "\x00asm raw"},
		{"/" + script, "text/javascript; charset=utf-8", forEver, "boot()"},
		{"/" + font, "font/woff2", forEver, "wOF2"},
	} {
		r := ask(h, "GET", c.target)
		require.Equal(t, 200, r.StatusCode, c.target)
		require.Equal(t, c.contentType, r.Header.Get("Content-Type"), c.target)
		require.Equal(t, c.cache, r.Header.Get("Cache-Control"), c.target)
		require.Equal(t, "Accept-Encoding", r.Header.Get("Vary"), c.target)
		require.Empty(t, r.Header.Get("Content-Encoding"), c.target)
		require.Equal(t, fmt.Sprint(len(c.content)), r.Header.Get("Content-Length"), c.target)
		require.Equal(t, c.content, body(t, r), c.target)
	}
}

// The values are those that the page is measured and tested under; the header
// and the page's own <meta> must not drift apart.
func TestSecurityHeadersOnEveryAnswer(t *testing.T) {
	h := site.New(files(), site.Options{})
	for _, c := range []struct {
		method, target string
		status         int
	}{
		{"GET", "/", 200}, {"HEAD", "/" + wasm, 200}, {"GET", "/none", 404}, {"POST", "/", 405},
	} {
		r := ask(h, c.method, c.target)
		require.Equal(t, c.status, r.StatusCode)
		for name, want := range map[string]string{
			"Cross-Origin-Opener-Policy":   "same-origin",
			"Cross-Origin-Embedder-Policy": "require-corp",
			"Cross-Origin-Resource-Policy": "same-origin",
			"X-Content-Type-Options":       "nosniff",
			"Referrer-Policy":              "no-referrer",
			"Permissions-Policy":           "microphone=(), camera=(), geolocation=()",
			"Content-Security-Policy":      site.Policy + "; frame-ancestors 'none'",
		} {
			require.Equal(t, want, r.Header.Get(name), "%s %s: %s", c.method, c.target, name)
		}
	}
	require.NotContains(t, site.Policy, "unsafe-inline")
	require.NotContains(t, site.Policy, "blob:")
	require.NotContains(t, site.Policy, "data:")
	require.NotContains(t, site.Policy, "frame-ancestors", "a <meta> element must not carry it")
	require.NotContains(t, site.Policy, `"`, "it stands in an attribute")
}

func TestNotFound(t *testing.T) {
	h := site.New(files(), site.Options{})
	for _, target := range []string{
		"/none", "/fonts", "/fonts/", "/index.html/", "/.secret", "/fonts/.secret", "/../handler.go", "/%2e%2e/handler.go",
		"/fonts/../index.html", "//index.html", "/./index.html", "/fonts//x", "/..%2fhandler.go", `/..\handler.go`,
	} {
		r := ask(h, "GET", target)
		require.Equal(t, 404, r.StatusCode, target)
		require.Equal(t, "text/plain; charset=utf-8", r.Header.Get("Content-Type"), target)
		require.Equal(t, "no-cache", r.Header.Get("Cache-Control"), target)
		require.Equal(t, "Not Found\n", body(t, r), target)
	}
}

func TestOnlyReading(t *testing.T) {
	h := site.New(files(), site.Options{})
	for _, method := range []string{"POST", "PUT", "DELETE", "OPTIONS", "PATCH"} {
		r := ask(h, method, "/")
		require.Equal(t, 405, r.StatusCode, method)
		require.Equal(t, "GET, HEAD", r.Header.Get("Allow"), method)
	}
}

func TestHeadHasTheHeadersOfGet(t *testing.T) {
	h := site.New(files(), site.Options{})
	for _, target := range []string{"/", "/" + wasm, "/" + font} {
		get, head := ask(h, "GET", target, "Accept-Encoding: br"), ask(h, "HEAD", target, "Accept-Encoding: br")
		require.Equal(t, get.Header, head.Header, target)
		require.NotEmpty(t, body(t, get), target)
		require.Empty(t, body(t, head), target)
	}
}

func TestBelowAnyPath(t *testing.T) {
	for _, base := range []string{"/a/b/", "a/b", "/a/b", "a/b/"} {
		h := site.New(files(), site.Options{Base: base})
		require.Equal(t, "<!doctype html>page", body(t, ask(h, "GET", "/a/b/")), base)
		require.Equal(t, "boot()", body(t, ask(h, "GET", "/a/b/"+script)), base)
		for _, target := range []string{"/", "/index.html", "/a/", "/a", "/a/bc/", "/" + script} {
			require.Equal(t, 404, ask(h, "GET", target).StatusCode, "%s below %s", target, base)
		}
		r := ask(h, "GET", "/a/b?screen=dums&bpm=96")
		require.Equal(t, 307, r.StatusCode, base)
		require.Equal(t, "/a/b/?screen=dums&bpm=96", r.Header.Get("Location"), base)
	}
}

func TestRanges(t *testing.T) {
	h := site.New(files(), site.Options{})
	r := ask(h, "GET", "/"+wasm, "Range: bytes=1-3")
	require.Equal(t, 206, r.StatusCode)
	require.Equal(t, "bytes 1-3/8", r.Header.Get("Content-Range"))
	require.Equal(t, "asm", body(t, r))

	// A range is one of the bytes as they are sent, compressed (RFC 9110, §14.1).
	r = ask(h, "GET", "/"+wasm, "Range: bytes=8-", "Accept-Encoding: br")
	require.Equal(t, 206, r.StatusCode)
	require.Equal(t, "2", r.Header.Get("Content-Length"))
	require.Equal(t, "br", body(t, r))

	r = ask(h, "GET", "/"+wasm, "Range: bytes=100-")
	require.Equal(t, 416, r.StatusCode)
	require.Equal(t, "bytes */8", r.Header.Get("Content-Range"))
}

func TestNotModified(t *testing.T) {
	content := files()
	h := site.New(content, site.Options{})
	tags := map[string]bool{}
	for _, coding := range []string{"identity", "gzip", "br"} {
		first := ask(h, "GET", "/", "Accept-Encoding: "+coding)
		tag := first.Header.Get("ETag")
		require.NotEmpty(t, tag)
		tags[tag] = true
		again := ask(h, "GET", "/", "Accept-Encoding: "+coding, "If-None-Match: "+tag)
		require.Equal(t, 304, again.StatusCode, coding)
		require.Empty(t, body(t, again), coding)
	}
	require.Len(t, tags, 3, "two codings of one file are two answers")

	old := ask(h, "GET", "/").Header.Get("ETag")
	content["index.html"].Data = []byte("<!doctype html>new page")
	require.Equal(t, 200, ask(h, "GET", "/", "If-None-Match: "+old).StatusCode)
}
