package site_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/wasm/site"
)

// The hash is the beginning of the SHA-256 of "abc", whose value is given in
// FIPS 180-2 (2002), appendix B.1: ba7816bf 8f01cfea …
func ExampleName() {
	fmt.Println(site.Name("app.wasm", []byte("abc")))
	fmt.Println(site.Name("fonts/sans.woff2", []byte("abc")))
	// Output:
	// app.ba7816bf8f01.wasm
	// fonts/sans.ba7816bf8f01.woff2
}

func TestHashed(t *testing.T) {
	for name, want := range map[string]bool{
		"app.ba7816bf8f01.wasm":          true,
		"app.ba7816bf8f01.wasm.br":       true,
		"fonts/sans.ba7816bf8f01.woff2":  true,
		"index.html":                     false,
		"index.html.br":                  false,
		"app.BA7816BF8F01.wasm":          false,
		"app.ba7816bf8f0.wasm":           false,
		"app.ba7816bf8f012.wasm":         false,
		"app.ba7816bf8f01":               false,
		"app-ba7816bf8f01.wasm":          false,
		"x.ba7816bf8f01.wasm/index.html": false,
	} {
		require.Equal(t, want, site.Hashed(name), name)
	}
	require.True(t, site.Hashed(site.Name("a.b.js", nil)))
	require.False(t, site.Hashed(site.Name("LICENSE", nil)), "without an extension there is no telling")
}
