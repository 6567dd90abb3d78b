//go:build !js

package main

import (
	"go/ast"
	"go/build/constraint"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The house rules, as tests: what each package may import, what a pure package
// may do, and what lies where. They read the files themselves, since the answers
// of the go command are kept and not asked anew when a file changes. Each failure
// says why there is a rule.

const module = "groundbeat"

// shelves is the import order: a package imports only from shelves with a lower
// number. Packages on one shelf do not import one another.
var shelves = map[string]int{
	"scoring": 0, // below its own statistics, which extend its Figure
	"assets":  1, "audio": 1, "audio/clock": 1, "game/rhythm": 1, "wasm/site": 1, "wasm/memo": 1,
	"scoring/stat": 1, "scoring/threshold": 1, "scoring/recall": 1,
	"audio/speaker": 2, "scoring/history": 2, "game/riff": 2, "game/say": 2,
	"game/round": 3, "game/proof": 3,
	"game/diary": 4,
	"game/quiz":  5, "game/picture": 5,
	"game/coach": 6, "game/warmup": 6, "game/plan": 6,
	"game/view":        7,
	"game/screenproof": 8,
	"game/link":        9,
	"game/roundview":   10,
	"game/soundview":   11, "game/classview": 11,
	"game/diaryview": 12,
	"game/homeview":  13,
	"game/host":      14,
	"game/playback":  15, "game/paper": 15, "wasm/dom": 15, "wasm/idb": 15,
	"game/control": 16, "wasm/store": 16,
	"game/rig":     17,
	"game/screens": 18, "game/classroom": 18,
	"game/session": 19,
	"game":         20,
	"wasm":         21, "wasm/serve": 21, "wasm/pack": 21, "wasm/render": 21,
}

// goFile is a .go file of the repository, as far as the rules read it.
type goFile struct {
	name    string // from the top, with slashes: "game/rhythm/parse.go"
	pkg     string // its folder: "game/rhythm"
	test    bool
	onlyJS  bool // compiled for the browser only
	lines   int
	syntax  *ast.File
	imports map[string]string // path to the name that it has in the file
}

// root is the repository, seen from this folder.
var root = os.DirFS("..")

// generated is what lies at the top and the repository does not hold.
var generated = []string{".git", ".tools", "dist"}

// walk calls f for each file that the repository holds.
func walk(t *testing.T, f func(name string)) {
	t.Helper()
	require.NoError(t, fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (slices.Contains(generated, name) || name == "testdata/out"):
			return fs.SkipDir
		case !d.IsDir() && !slices.Contains(generated, name): // .git is a file beside another copy
			f(name)
		}
		return nil
	}))
}

// goFiles reads all .go files of the repository.
func goFiles(t *testing.T) []goFile {
	t.Helper()
	var all []goFile
	walk(t, func(name string) {
		if path.Ext(name) == ".go" && !strings.Contains(name, "testdata/") {
			all = append(all, readGo(t, name))
		}
	})
	require.NotEmpty(t, all)
	return all
}

func readGo(t *testing.T, name string) goFile {
	t.Helper()
	content, err := fs.ReadFile(root, name)
	require.NoError(t, err)
	syntax, err := parser.ParseFile(token.NewFileSet(), name, content, parser.ParseComments|parser.SkipObjectResolution)
	require.NoError(t, err)
	f := goFile{
		name: name, pkg: path.Dir(name), test: strings.HasSuffix(name, "_test.go"), syntax: syntax,
		onlyJS: onlyJS(t, name, string(content)), lines: strings.Count(string(content), "\n"), imports: map[string]string{},
	}
	for _, spec := range syntax.Imports {
		p, err := strconv.Unquote(spec.Path.Value)
		require.NoError(t, err)
		f.imports[p] = importName(spec, p)
	}
	return f
}

// importName is the name of an import in its file. Without an explicit one it is
// the last element of the path that is not a version ("math/rand/v2" is rand).
func importName(spec *ast.ImportSpec, p string) string {
	if spec.Name != nil {
		return spec.Name.Name
	}
	if last := path.Base(p); len(last) > 1 && last[0] == 'v' && last[1] >= '0' && last[1] <= '9' {
		return path.Base(path.Dir(p))
	}
	return path.Base(p)
}

// onlyJS reports whether a file is compiled for GOOS=js only: by the end of its
// name, or by a build constraint that nothing but js satisfies.
func onlyJS(t *testing.T, name, content string) bool {
	t.Helper()
	base := strings.TrimSuffix(strings.TrimSuffix(path.Base(name), ".go"), "_test")
	if strings.HasSuffix(base, "_js") || strings.HasSuffix(base, "_js_wasm") {
		return true
	}
	for line := range strings.Lines(content) {
		if strings.HasPrefix(line, "package ") {
			break
		}
		if !constraint.IsGoBuild(line) {
			continue
		}
		expr, err := constraint.Parse(strings.TrimSpace(line))
		require.NoError(t, err, name)
		return !expr.Eval(func(tag string) bool { return tag != "js" })
	}
	return false
}

// ours is the folder of an import of this module.
func ours(importPath string) (string, bool) { return strings.CutPrefix(importPath, module+"/") }

// under reports whether an import is a package or lies below it.
func under(importPath, pkg string) bool {
	return importPath == pkg || strings.HasPrefix(importPath, pkg+"/")
}
