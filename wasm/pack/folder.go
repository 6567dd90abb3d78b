package main

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"groundbeat/wasm/site"
)

// ours lists the files of a folder that an earlier build wrote. It is an error if
// the folder holds anything that no build writes: then it is somebody else's, and
// nothing in it may be touched. A folder that does not exist, or is empty, is ours.
func ours(dir string) ([]string, error) {
	var names []string
	root := os.DirFS(dir)
	err := fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		if name == "." && errors.Is(err, fs.ErrNotExist) {
			return fs.SkipAll
		}
		if err != nil || d.IsDir() {
			return err
		}
		if !built(name) || !d.Type().IsRegular() {
			return fmt.Errorf("%s holds %s, which no build wrote: choose another folder, or empty it yourself", dir, name)
		}
		names = append(names, name)
		return nil
	})
	if err == nil && len(names) > 0 && !slices.ContainsFunc(names, site.Hashed) {
		err = fmt.Errorf("%s holds a page that no build wrote: choose another folder, or empty it yourself", dir)
	}
	return names, err
}

// built reports whether a build writes files of this name.
func built(name string) bool {
	return site.Hashed(name) || name == site.Index || name == site.Index+".br" || name == site.Index+".gz"
}

// write makes dir hold exactly the files given. The page comes after all that it
// refers to, and what it referred to before goes last: whoever loads the page
// meanwhile gets the old site or the new one, whole.
func write(dir string, f files) error {
	old, err := ours(dir)
	if err != nil {
		return err
	}
	names := slices.SortedFunc(maps.Keys(f), pageLast)
	for _, name := range names {
		if err := writeFile(filepath.Join(dir, filepath.FromSlash(name)), f[name]); err != nil {
			return err
		}
	}
	for _, name := range old {
		if _, ok := f[name]; ok {
			continue
		}
		if err := remove(dir, name); err != nil {
			return err
		}
	}
	return nil
}

// remove removes one file of a site, and the folder that it was the last file of.
func remove(dir, name string) error {
	file := filepath.Join(dir, filepath.FromSlash(name))
	if err := os.Remove(file); err != nil {
		return err
	}
	left, err := os.ReadDir(filepath.Dir(file))
	if err != nil || len(left) > 0 || path.Dir(name) == "." {
		return err
	}
	return os.Remove(filepath.Dir(file))
}

// pageLast orders names, the page and its twins behind all others.
func pageLast(a, b string) int {
	pageA, pageB := strings.HasPrefix(a, site.Index), strings.HasPrefix(b, site.Index)
	switch {
	case pageA == pageB:
		return strings.Compare(a, b)
	case pageA:
		return 1
	}
	return -1
}

// writeFile writes one file, readable for all, with the folders that it needs.
func writeFile(name string, content []byte) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		return err
	}
	return os.WriteFile(name, content, 0o644)
}

// summary is what a build tells: how many files there are, and how many bytes a
// first visit loads as each coding.
func summary(dir string, f files) string {
	plain, coded := 0, map[string]int{}
	count := 0
	for name, content := range f {
		if strings.HasSuffix(name, ".br") || strings.HasSuffix(name, ".gz") {
			continue
		}
		count++
		plain += len(content)
		for _, c := range codings {
			if twin, ok := f[name+c.ending]; ok {
				coded[c.ending] += len(twin)
			} else {
				coded[c.ending] += len(content)
			}
		}
	}
	s := fmt.Sprintf("%s: %d files, %.2f MB", dir, count, mb(plain))
	if coded[".br"] < plain {
		s += fmt.Sprintf(" (Brotli %.2f MB, gzip %.2f MB)", mb(coded[".br"]), mb(coded[".gz"]))
	}
	return s + "\n"
}

func mb(bytes int) float64 { return float64(bytes) / 1e6 }
