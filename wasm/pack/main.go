// Command pack builds the site: a folder of static files that any web host can
// serve, below any path.
//
//	pack [-compress] [-out dist]
//
// It is run at the top of the repository. It compiles wasm/ for the browser, adds
// the toolchain's own wasm_exec.js and every file of wasm/page, makes one script of
// boot.js and all that it imports, and gives each file but index.html a name that
// holds a hash of its content. Files refer to one another by plain names as
// "./style.css", relative to the folder of the file that refers; pack puts the hashed
// names in their place (see references), and fails where a reference names no file,
// or where nothing refers to a file. The compiled program is "./app.wasm".
//
// In index.html it also fills in {{WASM_BYTES}} (the size of the program as it is
// before compression, for a true loading progress), {{VERSION}} and {{CSP}} (the
// content security policy, for a <meta> element).
//
// With -compress, each file that compressing helps gets a twin in Brotli and one
// in gzip beside it. The same input gives the same bytes, with the same version of
// Go. Files of an earlier build that are no longer needed are removed; a folder
// that holds anything else is left alone and is an error.
//
// Not handled: references in single quotes or back quotes (an error), to a folder
// above, put together at run time, or with a query behind the name.
package main

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"

	"groundbeat/wasm/site"
)

func main() {
	out := flag.String("out", "dist", "the folder to write")
	squeeze := flag.Bool("compress", false, "write each file in Brotli and gzip too")
	flag.Parse()
	if err := run(*out, *squeeze); err != nil {
		fmt.Fprintln(os.Stderr, "pack:", err)
		os.Exit(1)
	}
}

func run(out string, squeeze bool) error {
	// Looked at before anything is compiled: an error now is better than in a minute.
	if _, err := ours(out); err != nil {
		return err
	}
	page, err := read(os.DirFS(filepath.FromSlash("wasm/page")))
	if err != nil {
		return err
	}
	if err := addProgram(page); err != nil {
		return err
	}
	if err := bundle(page); err != nil {
		return err
	}
	packed, err := pack(page, map[string]string{
		"WASM_BYTES": strconv.Itoa(len(page[programName])),
		"VERSION":    version(),
		"CSP":        site.Policy,
	})
	if err != nil {
		return err
	}
	if squeeze {
		compressAll(packed, os.DirFS(out))
	}
	if err := write(out, packed); err != nil {
		return err
	}
	fmt.Print(summary(out, packed))
	return nil
}

// files are a site's files: name, with slashes and relative to its folder, to content.
type files map[string][]byte

// read reads all files of a folder.
func read(folder fs.FS) (files, error) {
	f := files{}
	err := fs.WalkDir(folder, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		f[name], err = fs.ReadFile(folder, name)
		return err
	})
	return f, err
}
