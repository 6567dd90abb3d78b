package main

import (
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"
)

var (
	// reference is a name in double quotes that begins with "./" and goes on with
	// more than a query or a fragment: "./" alone and "./?screen=dums" are the page.
	reference = regexp.MustCompile(`"\./([^"?#\n][^"\n]*)"`)
	// wrongReference begins as a reference does, in quotes of another kind or none.
	wrongReference = regexp.MustCompile("(?:['`(]|=[ \t]*)\\./[\\w]")
)

// refers reports whether a file may refer to others.
func refers(name string) bool {
	switch path.Ext(name) {
	case ".html", ".css", ".js", ".webmanifest", ".svg":
		return true
	}
	return false
}

// alone reports whether a file is part of the site though nothing refers to it:
// a licence goes with the files that it lies beside.
func alone(name string) bool { return strings.HasPrefix(path.Base(name), "LICENSE") }

// references lists the names of the files that a file refers to, in order, each
// once.
func references(name string, content []byte) ([]string, error) {
	if !refers(name) {
		return nil, nil
	}
	if at := wrongReference.FindIndex(content); at != nil {
		return nil, fmt.Errorf("%s: write references in double quotes: %q", place(name, content, at[0]), content[at[0]:at[1]])
	}
	var names []string
	for _, m := range reference.FindAllSubmatch(content, -1) {
		names = append(names, path.Join(path.Dir(name), string(m[1])))
	}
	slices.Sort(names)
	return slices.Compact(names), nil
}

// rewrite puts the hashed names, by plain name, in the place of the plain ones. A
// file and its hashed twin lie in one folder, so only the last element changes.
func rewrite(name string, content []byte, hashed map[string]string) []byte {
	if !refers(name) {
		return content
	}
	return reference.ReplaceAllFunc(content, func(quoted []byte) []byte {
		plain := string(quoted[len(`"./`) : len(quoted)-1])
		last := path.Base(hashed[path.Join(path.Dir(name), plain)])
		return []byte(`"./` + path.Join(path.Dir(plain), last) + `"`)
	})
}

// place is where in a file an offset lies, as "name:line".
func place(name string, content []byte, offset int) string {
	return fmt.Sprintf("%s:%d", name, 1+strings.Count(string(content[:offset]), "\n"))
}
