//go:build !js

package main

import (
	"slices"
	"strings"
	"testing"
)

func TestImportOrder(t *testing.T) {
	for _, f := range goFiles(t) {
		shelf, known := shelves[f.pkg]
		if !known {
			t.Errorf("%s: the package %q has no place in the import order. "+
				"Put it on a shelf in house_test.go, as low as it can go: what is not placed grows into a knot.", f.name, f.pkg)
			continue
		}
		for imported := range f.imports {
			pkg, mine := ours(imported)
			if !mine || pkg == f.pkg { // a package's outside test imports the package
				continue
			}
			if below, ok := shelves[pkg]; !ok || below >= shelf {
				t.Errorf("%s (shelf %d) imports %s (shelf %d). A package imports only from lower shelves, and its tests too: "+
					"so each can be read, tested and changed knowing only what lies below it. "+
					"Leaves meet in standard types, such as []time.Duration.", f.name, shelf, pkg, below)
			}
		}
	}
}

func TestCommandsImportOnlyTheSite(t *testing.T) {
	for _, f := range goFiles(t) {
		if f.pkg != "wasm/serve" && f.pkg != "wasm/pack" {
			continue
		}
		for imported := range f.imports {
			if pkg, mine := ours(imported); mine && pkg != "wasm/site" {
				t.Errorf("%s imports %s. The commands that build and serve the page import nothing of ours but wasm/site: "+
					"they must run while the game itself does not compile.", f.name, pkg)
			}
		}
	}
}

// keeper is a package that few may import.
type keeper struct {
	imported string
	below    bool     // the rule holds for what lies below it too
	packages []string // who may import it
	onlyJS   bool     // and only in files for the browser
	onlyTest bool     // and only in tests
	tests    []string // whose tests may import it besides
	reason   string
}

var keepers = []keeper{
	{imported: "github.com/hajimehoshi/ebiten/v2/audio", below: true, packages: []string{"audio/speaker"}, onlyJS: true,
		reason: "Sound goes through one door, whose timing is measured; and elsewhere native builds would need a sound library."},
	{imported: "github.com/ebitengine/oto", below: true,
		reason: "Sound goes through audio/speaker, which uses the engine's own player."},
	{imported: "github.com/hajimehoshi/ebiten/v2", below: true, packages: []string{"game"}, onlyJS: true,
		reason: "The engine needs a display as soon as it is imported; all else must build and be tested without one."},
	{imported: "syscall/js", packages: []string{"wasm", "wasm/dom", "wasm/store", "wasm/idb", "audio/speaker"}, onlyJS: true,
		reason: "Only the edge of the program knows the browser; all else is tested natively, in milliseconds."},
	{imported: "github.com/hack-pad/", below: true, packages: []string{"wasm/store", "wasm/idb"}, onlyJS: true,
		reason: "Storage is the browser's; the packages within get it as an interface."},
	{imported: "github.com/chromedp/", below: true, packages: []string{"wasm"}, onlyTest: true,
		reason: "It drives a browser in tests, and must not get into the program."},
	{imported: "github.com/stretchr/testify", below: true, onlyTest: true, packages: []string{"*"},
		reason: "It is for tests, and must not get into the program."},
	{imported: module + "/game/paper", onlyTest: true, packages: []string{"*"},
		reason: "It is a browser for tests, and must not get into the program."},
	{imported: module + "/game/rig", onlyTest: true, packages: []string{"*"},
		reason: "It tries one controller in tests, and must not get into the program."},
	{imported: module + "/game/proof", onlyTest: true, packages: []string{"*"},
		reason: "It is what tests share, and must not get into the program."},
	{imported: module + "/game/screenproof", onlyTest: true, packages: []string{"*"},
		reason: "It is what tests share, and must not get into the program."},
	{imported: "github.com/andybalholm/brotli", below: true, packages: []string{"wasm/pack"},
		tests: []string{"wasm"}, reason: "The browser unpacks; only the build packs, and a test reads the page's fonts."},
	{imported: "github.com/evanw/esbuild", below: true, packages: []string{"wasm/pack"},
		reason: "It makes one script of the page's, and must not get into the program."},
}

// forTests are packages that tests alone import: there they count as tests.
var forTests = []string{"game/paper", "game/proof", "game/rig", "game/screenproof"}

// of reports whether an import is one that this rule is about.
func (k keeper) of(imported string) bool {
	if strings.HasSuffix(k.imported, "/") {
		return strings.HasPrefix(imported, k.imported)
	}
	return imported == k.imported || k.below && under(imported, k.imported)
}

// allows reports whether a file may have the import.
func (k keeper) allows(f goFile) bool {
	if f.test && slices.Contains(k.tests, f.pkg) {
		return true
	}
	return (slices.Contains(k.packages, f.pkg) || slices.Contains(k.packages, "*")) &&
		(f.onlyJS || !k.onlyJS) && (f.test || !k.onlyTest || slices.Contains(forTests, f.pkg))
}

func TestKeptImports(t *testing.T) {
	for _, f := range goFiles(t) {
		for imported := range f.imports {
			// The first rule that is about an import decides: the more special come first.
			i := slices.IndexFunc(keepers, func(k keeper) bool { return k.of(imported) })
			if i < 0 || keepers[i].allows(f) {
				continue
			}
			k := keepers[i]
			t.Errorf("%s imports %s. Only %v may (files for the browser only: %v, tests only: %v). %s",
				f.name, imported, k.packages, k.onlyJS, k.onlyTest, k.reason)
		}
	}
}

// heavy are packages that would add much to what a visitor downloads: the first
// brings its own network stack, templates keep every exported method alive, and
// gonum's stat brings matrices and all their solvers (mathext does not).
var heavy = []string{"net/http", "text/template", "html/template", "testing",
	"gonum.org/v1/gonum/stat", "gonum.org/v1/gonum/stat/distuv", "gonum.org/v1/gonum/mat"}

func TestNothingHeavyInTheProgram(t *testing.T) {
	commands := []string{"wasm/serve", "wasm/pack", "wasm/site"}
	for _, f := range goFiles(t) {
		if f.test || slices.Contains(commands, f.pkg) || slices.Contains(forTests, f.pkg) {
			continue
		}
		for _, h := range heavy {
			if _, ok := f.imports[h]; ok {
				t.Errorf("%s imports %s. It is compiled into the page, and would add hundreds of kilobytes to what thirty telephones in a room load at once.", f.name, h)
			}
		}
	}
}
