package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
)

func TestTwinsUnpackToTheirFile(t *testing.T) {
	f := files{"index.html": []byte(strings.Repeat("dum tek ", 1000)), "empty.css": {}, "sans.woff2": []byte("wOF2"), "mark.png": []byte("PNG")}
	compressAll(f, os.DirFS(t.TempDir()))
	require.Len(t, f, 8, "two twins for each of two files; fonts and pictures are compressed already")
	for _, c := range codings {
		for _, name := range []string{"index.html", "empty.css"} {
			require.True(t, c.holds(f[name+c.ending], f[name]), name+c.ending)
		}
		require.Less(t, len(f["index.html"+c.ending]), 100)
	}
}

// What lies ready is taken only if it unpacks to the very content: a twin from an
// interrupted build, or of other content, is made anew.
func TestTwinOfAnEarlierBuild(t *testing.T) {
	content := []byte(strings.Repeat("dum tek ", 1000))
	for _, c := range codings {
		fresh := c.twin(content, fstest.MapFS{}, "x")
		// The same content compressed otherwise, to be told apart from a fresh twin.
		var other bytes.Buffer
		w := c.write(&other)
		for _, half := range [][]byte{content[:4000], content[4000:]} {
			_, err := w.Write(half)
			require.NoError(t, err)
			require.NoError(t, w.(interface{ Flush() error }).Flush())
		}
		require.NoError(t, w.Close())
		require.NotEqual(t, fresh, other.Bytes())

		for _, e := range []struct {
			name     string
			old, got []byte
		}{
			{"good", other.Bytes(), other.Bytes()},
			{"cut short", other.Bytes()[:other.Len()/2], fresh},
			{"no such coding", []byte("dear"), fresh},
			{"empty", nil, fresh},
		} {
			earlier := fstest.MapFS{"x" + c.ending: {Data: e.old}}
			require.Equal(t, e.got, c.twin(content, earlier, "x"+c.ending), e.name+c.ending)
		}
		require.Equal(t, c.twin([]byte("other"), fstest.MapFS{}, "x"), c.twin([]byte("other"), fstest.MapFS{"x": {Data: fresh}}, "x"), c.ending)
	}
}
