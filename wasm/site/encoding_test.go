package site_test

import (
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/wasm/site"
)

// Cases beyond the plain ones are those of RFC 9110, §12.5.3.
func TestCoding(t *testing.T) {
	h := site.New(files(), site.Options{})
	for _, c := range []struct{ target, accept, coding, content string }{
		{wasm, "", "", "\x00asm raw"},
		{wasm, "gzip, deflate, br, zstd", "br", "wasm as br"},
		{wasm, "gzip, deflate", "gzip", "wasm as gzip"},
		{wasm, "GZIP", "gzip", "wasm as gzip"},
		{wasm, "*", "br", "wasm as br"},
		{wasm, "br;q=0, *", "gzip", "wasm as gzip"},
		{wasm, "br;q=0, gzip", "gzip", "wasm as gzip"},
		{wasm, "br;q=0.5, gzip;q=0.8", "gzip", "wasm as gzip"},
		{wasm, "br; q=0.8 , gzip ; Q=0.8", "br", "wasm as br"},
		{wasm, "gzip;q=0.001", "gzip", "wasm as gzip"},
		{wasm, "gzip;q=0.5, identity", "", "\x00asm raw"},
		{wasm, "gzip, identity", "gzip", "wasm as gzip"},
		{wasm, "gzip;q=0, br;q=0", "", "\x00asm raw"},
		{wasm, "identity", "", "\x00asm raw"},
		{wasm, "identity;q=0, gzip;q=0", "", "\x00asm raw"},
		{wasm, "br;q=2, gzip;q=-1", "", "\x00asm raw"},
		{wasm, "br;q=NaN", "", "\x00asm raw"},
		{wasm, "br;q=much, gzip", "gzip", "wasm as gzip"},
		{wasm, "deflate, zstd", "", "\x00asm raw"},
		{wasm, ",;, ;q=1", "", "\x00asm raw"},
		{script, "gzip, br", "gzip", "script as gzip"},
		{script, "br", "", "boot()"},
		{font, "gzip, br", "", "wOF2"},
	} {
		r := ask(h, "GET", "/"+c.target, "Accept-Encoding: "+c.accept)
		require.Equal(t, 200, r.StatusCode, c.accept)
		require.Equal(t, c.coding, r.Header.Get("Content-Encoding"), "%s for %q", c.target, c.accept)
		require.Equal(t, c.content, body(t, r), "%s for %q", c.target, c.accept)
		require.Equal(t, site.Type(c.target), r.Header.Get("Content-Type"), "the type is that of the file, not of the coding")
	}
}

// Whatever a client writes, it is answered with the file in a coding that it
// named, or as it is.
func FuzzCoding(f *testing.F) {
	f.Add("gzip, deflate, br")
	f.Add("br;q=0.5,*;q=0")
	h := site.New(files(), site.Options{})
	f.Fuzz(func(t *testing.T, accept string) {
		r := httptest.NewRequest("GET", "/"+wasm, nil)
		r.Header.Set("Accept-Encoding", accept)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		require.Equal(t, 200, w.Code)
		require.Contains(t, []string{"", "br", "gzip"}, w.Header().Get("Content-Encoding"))
	})
}
