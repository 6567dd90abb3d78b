package main

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// scripts is a page whose script imports, by turns, for what it gets and for what
// it does.
func scripts() files {
	return files{
		"index.html":   []byte("<p>"),
		"halt.js":      []byte("halt()"),
		"boot.js":      []byte("import { compiled } from \"./program.js\";\nimport { post } from \"./mail.js\";\nthird(compiled, post)"),
		"program.js":   []byte("import \"./wasm_exec.js\";\nexport const compiled = second()"),
		"mail.js":      []byte("export const post = 7, never = \"asked for\""),
		"wasm_exec.js": []byte("first()"),
	}
}

func TestBundle(t *testing.T) {
	page := scripts()
	require.NoError(t, bundle(page))
	require.ElementsMatch(t, []string{"index.html", "halt.js", "boot.js"}, slices.Collect(maps.Keys(page)))
	require.Equal(t, "halt()", string(page["halt.js"]), "not imported")
	script := string(page["boot.js"])
	require.True(t, strings.HasPrefix(script, loaderNotice+"\n"))
	at := -1
	for _, call := range []string{"first(", "second(", "third("} {
		require.Equal(t, 1, strings.Count(script, call), script)
		require.Greater(t, strings.Index(script, call), at, "a script runs after what it imports: %s", script)
		at = strings.Index(script, call)
	}
	require.NotContains(t, script, "import")
	require.NotContains(t, script, "asked for")
}

func TestBundleErrors(t *testing.T) {
	for _, c := range []struct{ name, file, content, want string }{
		{"no such file", "mail.js", "\nimport \"./none.js\"", "mail.js:2: there is no file none.js in the page"},
		{"no such name", "mail.js", "export const letter = 7", `boot.js:2: No matching export in "page:mail.js" for import "post"`},
		{"not a script", "mail.js", "export const post = (", `mail.js:1: Unexpected end of file`},
	} {
		page := scripts()
		page[c.file] = []byte(c.content)
		require.EqualError(t, bundle(page), c.want, c.name)
	}
	require.EqualError(t, bundle(files{}), "there is no file boot.js in the page")
}
