//go:build !js

package main

import (
	"bytes"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// top are the names that may stand at the top of the repository, beside names
// that begin with a dot.
var top = []string{
	"game", "audio", "scoring", "assets", "wasm", "testdata",
	"go.mod", "go.sum", "README.md", "DEVELOPERS.md", "LICENSE", "Makefile",
}

func TestTopLevel(t *testing.T) {
	entries, err := fs.ReadDir(root, ".")
	require.NoError(t, err)
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && !slices.Contains(top, e.Name()) && !slices.Contains(generated, e.Name()) {
			t.Errorf("%s stands at the top. The top level is fixed, so that a newcomer finds everything in one of six folders: "+
				"commands go below wasm, check values below testdata.", e.Name())
		}
	}
}

func TestOnePackageComment(t *testing.T) {
	comments := map[string][]string{}
	for _, f := range goFiles(t) {
		if f.test {
			continue
		}
		comments[f.pkg] = append(comments[f.pkg], "")
		if f.syntax.Doc != nil && len(f.syntax.Doc.Text()) > 0 {
			comments[f.pkg] = append(comments[f.pkg], f.name)
		}
	}
	for pkg, names := range comments {
		names = slices.DeleteFunc(names, func(n string) bool { return n == "" })
		if len(names) != 1 {
			t.Errorf("%s has %d package comments %v. It needs one: it is the first page of its manual, and two would be joined in no order.", pkg, len(names), names)
		}
	}
}

func TestFilesAreAboutOneNoun(t *testing.T) {
	const most = 350
	for _, f := range goFiles(t) {
		if f.lines > most {
			t.Errorf("%s has %d lines. Over %d, a file is about more than one noun: split it, and name the parts.", f.name, f.lines, most)
		}
	}
}

func TestEveryTargetHasHelp(t *testing.T) {
	makefile, err := fs.ReadFile(root, "Makefile")
	require.NoError(t, err)
	targets := regexp.MustCompile(`(?m)^([A-Za-z][\w-]*):([^=\n].*)?$`).FindAllSubmatch(makefile, -1)
	require.NotEmpty(t, targets)
	for _, m := range targets {
		if !bytes.Contains(m[2], []byte("## ")) {
			t.Errorf("Makefile: %s has no help. End its line with \"## what it does\": make help is how one learns what there is.", m[1])
		}
	}
	for _, want := range []string{"help", "setup", "build", "play", "check", "test", "bench", "fuzz", "golden", "clean"} {
		require.Contains(t, string(makefile), "\n"+want+":", "the Makefile lost a target that the manual names")
	}
}

// leaks are words that tell of one machine or of an unfinished thought. They are
// put together here so that this file does not hold them.
var leaks = map[string]string{
	"proxy." + "golang.org":        "where modules come from is the business of the machine that builds",
	"sum." + "golang.org":          "where modules come from is the business of the machine that builds",
	"registry." + "npmjs.org":      "nothing comes from there",
	"deb." + "debian.org":          "where packages come from is the business of the machine that builds",
	"/wor" + "k/":                  "a path of one machine",
	"/roo" + "t/":                  "a path of one machine",
	"TODO" + " stub":               "an unfinished thought: finish it, or write down what is missing in DEVELOPERS.md",
	"panic(\"not " + "implemented": "an unfinished thought: leave it out until it is built",
}

func TestNoLeaks(t *testing.T) {
	walk(t, func(name string) {
		content, err := fs.ReadFile(root, name)
		require.NoError(t, err)
		if bytes.IndexByte(content, 0) >= 0 { // not text
			return
		}
		for word, reason := range leaks {
			if at := bytes.Index(content, []byte(word)); at >= 0 {
				t.Errorf("%s:%d holds %q: %s.", name, 1+bytes.Count(content[:at], []byte("\n")), word, reason)
			}
		}
	})
}
