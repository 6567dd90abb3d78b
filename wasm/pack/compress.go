package main

import (
	"bytes"
	"compress/gzip"
	"io"
	"io/fs"
	"runtime"
	"sync"

	"github.com/andybalholm/brotli"

	"groundbeat/wasm/site"
)

// coding is one way to compress a file.
type coding struct {
	ending string
	write  func(io.Writer) io.WriteCloser
	read   func(io.Reader) (io.Reader, error)
}

// window is the widest that every browser unpacks: 2²⁴ bytes (RFC 7932, §9.1), so
// that the program's end may repeat its beginning. Eight bytes in a thousand.
const window = 24

// codings are the ways that a file is compressed, both at
// their best: a site is built seldom and loaded often.
var codings = [...]coding{
	{
		".br",
		func(w io.Writer) io.WriteCloser {
			return brotli.NewWriterOptions(w, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: window})
		},
		func(r io.Reader) (io.Reader, error) { return brotli.NewReader(r), nil },
	},
	{
		".gz",
		func(w io.Writer) io.WriteCloser {
			z, err := gzip.NewWriterLevel(w, gzip.BestCompression)
			if err != nil {
				panic(err) // not for a level that the package itself names
			}
			return z
		},
		func(r io.Reader) (io.Reader, error) { return gzip.NewReader(r) },
	},
}

// compressAll adds the compressed twins of all files that compressing helps. A
// twin that lies ready in the folder of the earlier build, and unpacks to the same
// content, is taken from there: the program alone takes half a minute.
func compressAll(f files, earlier fs.FS) {
	var names []string
	for name := range f {
		if site.Compressible(name) {
			names = append(names, name)
		}
	}
	twins := make([][len(codings)][]byte, len(names))
	slots := make(chan struct{}, runtime.NumCPU())
	var wait sync.WaitGroup
	for i, name := range names {
		for j, c := range codings {
			wait.Go(func() {
				slots <- struct{}{}
				defer func() { <-slots }()
				twins[i][j] = c.twin(f[name], earlier, name+c.ending)
			})
		}
	}
	wait.Wait()
	for i, name := range names {
		for j, c := range codings {
			f[name+c.ending] = twins[i][j]
		}
	}
}

// twin is content compressed, from the earlier build if it can be.
func (c coding) twin(content []byte, earlier fs.FS, name string) []byte {
	if old, err := fs.ReadFile(earlier, name); err == nil && c.holds(old, content) {
		return old
	}
	var b bytes.Buffer
	w := c.write(&b)
	// A bytes.Buffer takes all that it is given, so neither call can fail.
	if _, err := w.Write(content); err != nil {
		panic(err)
	}
	if err := w.Close(); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// holds reports whether packed unpacks to content.
func (c coding) holds(packed, content []byte) bool {
	r, err := c.read(bytes.NewReader(packed))
	if err != nil {
		return false
	}
	unpacked, err := io.ReadAll(r)
	return err == nil && bytes.Equal(unpacked, content)
}
