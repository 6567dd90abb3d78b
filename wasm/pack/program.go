package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// The plain names of what is not in wasm/page.
const (
	programName = "app.wasm"
	loaderName  = "wasm_exec.js"
)

// addProgram compiles the program and adds it, with the loader that belongs to
// the same version of Go.
func addProgram(page files) error {
	for _, name := range []string{programName, loaderName} {
		if _, ok := page[name]; ok {
			return fmt.Errorf("wasm/page/%s: a file of this name is made by the build", name)
		}
	}
	var err error
	if page[programName], err = compile("./wasm"); err != nil {
		return err
	}
	root, err := output("go", "env", "GOROOT")
	if err != nil {
		return err
	}
	page[loaderName], err = os.ReadFile(filepath.Join(root, "lib", "wasm", loaderName))
	return err
}

// inlined are the packages of which speed matters more than size.
var inlined = []string{
	"runtime", "internal/runtime/...", "groundbeat/audio", "math",
	"github.com/ebitengine/oto/v3/...", "github.com/hajimehoshi/ebiten/v2/audio/...",
}

// compile builds a package for the browser. Neither paths nor the state of the
// repository go into the program: its name in the site changes only when it does.
// Symbols are left out, which saves two bytes in a hundred; and functions are not
// written out where they are called, which saves eleven once it is compressed, but for
// what makes the sound and what all else runs on.
func compile(pkg string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "pack")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, programName)
	args := []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-gcflags=all=-l"}
	for _, fast := range inlined {
		args = append(args, "-gcflags="+fast+"=")
	}
	c := exec.Command("go", append(args, "-o", file, pkg)...)
	c.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	c.Stderr = os.Stderr
	if err := c.Run(); err != nil {
		return nil, fmt.Errorf("%s for js/wasm: %w", strings.Join(c.Args[:2], " "), err)
	}
	return os.ReadFile(file)
}

// version names what was built, as git does; "dev" where git or its repository is
// missing, or holds no commit yet.
func version() string {
	v, err := output("git", "describe", "--always", "--dirty")
	if err != nil || v == "" {
		return "dev"
	}
	return v
}

// output runs a command and returns the line that it prints.
func output(name string, args ...string) (string, error) {
	b, err := exec.Command(name, args...).Output()
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		err = fmt.Errorf("%s: %w: %s", name, err, strings.TrimSpace(string(exit.Stderr)))
	}
	return strings.TrimSpace(string(b)), err
}
