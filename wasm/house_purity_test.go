//go:build !js

package main

import (
	"go/ast"
	"slices"
	"testing"
)

// impure are the packages that are not pure: the edge of the program, and its
// commands.
var impure = []string{"audio/speaker", "game", "wasm", "wasm/dom", "wasm/store", "wasm/idb", "wasm/serve", "wasm/pack", "wasm/render", "wasm/site"}

// clockCalls of package time read or wait for the machine's clock.
var clockCalls = []string{"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTimer", "NewTicker"}

// seeded are the names of math/rand/v2 that take their randomness as an argument.
var seeded = []string{"New", "NewPCG", "NewChaCha8", "NewZipf", "Rand", "PCG", "ChaCha8", "Source", "Zipf"}

// outside are packages that reach beyond arguments and results.
var outside = []string{
	"os", "os/exec", "os/signal", "path/filepath", "syscall", "net", "net/http", "log", "log/slog", "flag",
	"crypto/rand", "math/rand", "runtime/debug", "unsafe",
}

func TestPurePackages(t *testing.T) {
	for _, f := range goFiles(t) {
		if f.test || slices.Contains(impure, f.pkg) || slices.Contains(forTests, f.pkg) {
			continue
		}
		for _, o := range outside {
			if _, ok := f.imports[o]; ok {
				t.Errorf("%s imports %s. %s is pure: files, devices and the machine come in as arguments "+
					"(io.Reader, fs.FS, a seed), so that a test says what they are. (math/rand/v2 with a seed is allowed.)", f.name, o, f.pkg)
			}
		}
		for _, use := range uses(f, "time", func(name string) bool { return slices.Contains(clockCalls, name) }) {
			t.Errorf("%s uses time.%s. %s is pure: time comes in as an argument. "+
				"Wall time is no musical time, and a test with a clock in it is a test that fails on Tuesdays.", f.name, use, f.pkg)
		}
		for _, use := range uses(f, "math/rand/v2", func(name string) bool { return !slices.Contains(seeded, name) }) {
			t.Errorf("%s uses rand.%s. %s is pure: randomness comes from a seed that the caller gives. "+
				"The same seed gives the same round for ever, on every machine.", f.name, use, f.pkg)
		}
	}
}

// uses lists the names of an imported package that a file uses and that match.
func uses(f goFile, imported string, match func(name string) bool) []string {
	local, ok := f.imports[imported]
	if !ok {
		return nil
	}
	var names []string
	ast.Inspect(f.syntax, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if x, ok := s.X.(*ast.Ident); ok && x.Name == local && match(s.Sel.Name) {
				names = append(names, s.Sel.Name)
			}
		}
		return true
	})
	return names
}

func TestPurePackagesHaveNoStart(t *testing.T) {
	for _, f := range goFiles(t) {
		if f.test || slices.Contains(impure, f.pkg) {
			continue
		}
		for _, d := range f.syntax.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Name.Name == "init" {
				t.Errorf("%s has an init function. Whoever imports %s would run it unasked, and could not see it fail.", f.name, f.pkg)
			}
		}
	}
}
