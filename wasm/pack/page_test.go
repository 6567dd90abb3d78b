package main

import (
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/wasm/site"
)

// small is a page of every kind of file that refers and is referred to.
func small() files {
	return files{
		"index.html": []byte(`<meta content="{{CSP}}"><link href="./style.css"><link href="./app.webmanifest">` +
			`<script type="module" src="./boot.js" data-bytes="{{WASM_BYTES}}" data-version="{{VERSION}}"></script><a href="./?screen=dums">`),
		"style.css":         []byte(`@font-face { src: url("./fonts/sans.woff2") }`),
		"app.webmanifest":   []byte(`{"start_url": "./", "id": "./index.html"}`),
		"boot.js":           []byte("import \"./bridge.js\";\nnew URL(\"./app.wasm\", import.meta.url)"),
		"bridge.js":         []byte(`export {}`),
		"app.wasm":          []byte("\x00asm \"./not-a-reference\""),
		"fonts/sans.woff2":  []byte("wOF2"),
		"fonts/LICENSE.txt": []byte("free"),
	}
}

var values = map[string]string{"CSP": "default-src 'none'", "WASM_BYTES": "4", "VERSION": "v1"}

// byPlainName undoes the hashes of a site's names.
func byPlainName(f files) map[string]string {
	hash := regexp.MustCompile(`\.[0-9a-f]{12}\.`)
	plain := map[string]string{}
	for name := range f {
		plain[hash.ReplaceAllString(name, ".")] = name
	}
	return plain
}

func TestPackNamesAndRewrites(t *testing.T) {
	out, err := pack(small(), values)
	require.NoError(t, err)
	name := byPlainName(out)
	require.ElementsMatch(t, slices.Collect(maps.Keys(small())), slices.Collect(maps.Keys(name)))

	require.Equal(t, `<meta content="default-src 'none'"><link href="./`+name["style.css"]+`"><link href="./`+name["app.webmanifest"]+`">`+
		`<script type="module" src="./`+name["boot.js"]+`" data-bytes="4" data-version="v1"></script><a href="./?screen=dums">`, string(out["index.html"]))
	require.Equal(t, `@font-face { src: url("./`+name["fonts/sans.woff2"]+`") }`, string(out[name["style.css"]]))
	require.Equal(t, string(small()["app.webmanifest"]), string(out[name["app.webmanifest"]]))
	require.Contains(t, string(out[name["boot.js"]]), `import "./`+name["bridge.js"]+`";`)
	for _, plain := range []string{"app.wasm", "fonts/sans.woff2", "fonts/LICENSE.txt"} {
		require.Equal(t, small()[plain], out[name[plain]], plain)
	}
	for n, content := range out {
		if n != site.Index {
			require.True(t, site.Hashed(n), n)
			require.Equal(t, site.Name(strings.Replace(n, hashOf(n), "", 1), content), n, "the hash is that of the content as it is served")
		}
	}
}

// hashOf is the ".0123456789ab" of a name.
func hashOf(name string) string { return regexp.MustCompile(`\.[0-9a-f]{12}`).FindString(name) }

// A change reaches the name of every file that refers to it, however far away;
// otherwise a browser would keep the old one for ever.
func TestAChangeTravelsUpwards(t *testing.T) {
	before, err := pack(small(), values)
	require.NoError(t, err)
	page := small()
	page["bridge.js"] = []byte(`export { mended }`)
	after, err := pack(page, values)
	require.NoError(t, err)
	a, b := byPlainName(before), byPlainName(after)
	for _, changed := range []string{"bridge.js", "boot.js"} {
		require.NotEqual(t, a[changed], b[changed], changed)
	}
	for _, same := range []string{"style.css", "app.wasm", "fonts/sans.woff2"} {
		require.Equal(t, a[same], b[same], same)
	}
	require.NotEqual(t, string(before["index.html"]), string(after["index.html"]))
}

func TestPackErrors(t *testing.T) {
	for _, c := range []struct{ name, file, content, want string }{
		{"no such file", "bridge.js", `import "./none.js"`, `bridge.js refers to none.js, and there is no such file`},
		{"in a folder", "index.html", `"./fonts/none.woff2"`, `index.html refers to fonts/none.woff2, and there is no such file`},
		{"never referred to", "lost.js", `1`, `lost.js: nothing refers to this file: name it as "./lost.js", or take it away`},
		{"single quotes", "bridge.js", "let a;\nimport('./boot.js')", `bridge.js:2: write references in double quotes: "'./b"`},
		{"back quotes", "bridge.js", "`./boot.js`", "bridge.js:1: write references in double quotes: \"`./b\""},
		{"no quotes, css", "style.css", "a{}\n\nb{src:url(./fonts/sans.woff2)}", `style.css:3: write references in double quotes: "(./f"`},
		{"no quotes, html", "index.html", "<a href=./style.css>", `index.html:1: write references in double quotes: "=./s"`},
		{"a circle", "bridge.js", `import "./boot.js"`, `index.html → boot.js → bridge.js → boot.js: files must not refer to one another in a circle: no name could hold a hash`},
		{"itself", "bridge.js", `import "./bridge.js"`, `index.html → boot.js → bridge.js → bridge.js: files must not refer to one another in a circle: no name could hold a hash`},
		{"a value that is not there", "index.html", `"./style.css" "./boot.js" "./app.webmanifest" {{SIZE}}`, `index.html: no value for {{SIZE}}; there are [CSP VERSION WASM_BYTES]`},
		{"out of the folder", "bridge.js", `"./../secret.js"`, `bridge.js refers to ../secret.js, and there is no such file`},
	} {
		page := small()
		page[c.file] = []byte(c.content)
		_, err := pack(page, values)
		require.EqualError(t, err, c.want, c.name)
	}
	_, err := pack(files{"boot.js": nil}, values)
	require.EqualError(t, err, "the page index.html is missing")
}

func TestPackIsDeterministic(t *testing.T) {
	first, err := pack(small(), values)
	require.NoError(t, err)
	compressAll(first, os.DirFS(t.TempDir()))
	for range 20 {
		again, err := pack(small(), values)
		require.NoError(t, err)
		compressAll(again, os.DirFS(t.TempDir()))
		require.Equal(t, first, again)
	}
}

// The page of this repository: every file of it is referred to, and every
// reference has its file.
func TestTheRealPageIsWhole(t *testing.T) {
	page, err := read(os.DirFS("../page"))
	require.NoError(t, err)
	page[programName], page[loaderName] = []byte("a program"), []byte("loader()")
	require.NoError(t, bundle(page))
	out, err := pack(page, map[string]string{"CSP": site.Policy, "WASM_BYTES": "9", "VERSION": "v1"})
	require.NoError(t, err)
	index := string(out[site.Index])
	require.Contains(t, index, site.Policy, "static hosts have no header: the page carries {{CSP}} in a <meta> element")
	for _, inline := range []string{"<style", " style=", " onclick=", " onload=", "javascript:"} {
		require.NotContains(t, index, inline, "the policy forbids inline styles and scripts")
	}
	scripts := regexp.MustCompile(`<script[^>]*>`).FindAllString(index, -1)
	fromFiles := regexp.MustCompile(`<script[^>]* src="\./[^>]*></script>`).FindAllString(index, -1)
	require.Len(t, fromFiles, len(scripts), "the policy forbids inline scripts")
}
