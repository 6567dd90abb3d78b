package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestWriteReplacesAnEarlierBuild(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "dist")
	first, err := pack(small(), values)
	require.NoError(t, err)
	compressAll(first, os.DirFS(dir))
	require.NoError(t, write(dir, first))
	got, err := read(os.DirFS(dir))
	require.NoError(t, err)
	require.Equal(t, first, got)

	page := small()
	page["style.css"] = []byte("body {}")
	delete(page, "fonts/sans.woff2")
	delete(page, "fonts/LICENSE.txt")
	second, err := pack(page, values)
	require.NoError(t, err)
	require.NoError(t, write(dir, second))
	got, err = read(os.DirFS(dir))
	require.NoError(t, err)
	require.Equal(t, second, got, "nothing stale is left, also no compressed twin")
	require.NoDirExists(t, filepath.Join(dir, "fonts"))
}

// A folder given by mistake must come to no harm.
func TestWriteLeavesOtherFoldersAlone(t *testing.T) {
	site, err := pack(small(), values)
	require.NoError(t, err)
	for _, c := range []struct {
		name string
		put  []string
		want string
	}{
		{"a document", []string{"letter.txt"}, "holds letter.txt, which no build wrote"},
		{"a document among ours", []string{"index.html", "app.0123456789ab.wasm", "notes/letter.txt"}, "holds notes/letter.txt, which no build wrote"},
		{"somebody's home page", []string{"index.html"}, "holds a page that no build wrote"},
		{"a repository", []string{".git/HEAD"}, "holds .git/HEAD, which no build wrote"},
	} {
		dir := t.TempDir()
		for _, name := range c.put {
			require.NoError(t, writeFile(filepath.Join(dir, name), []byte("dear")))
		}
		require.ErrorContains(t, write(dir, site), c.want, c.name)
		left, err := read(os.DirFS(dir))
		require.NoError(t, err)
		require.Len(t, left, len(c.put), c.name)
		for name, content := range left {
			require.Equal(t, "dear", string(content), "%s: %s", c.name, name)
		}
	}
}

func TestWriteDoesNotFollowLinks(t *testing.T) {
	dir, elsewhere := t.TempDir(), filepath.Join(t.TempDir(), "kept")
	require.NoError(t, writeFile(elsewhere, []byte("dear")))
	require.NoError(t, os.Symlink(elsewhere, filepath.Join(dir, "app.0123456789ab.wasm")))
	require.ErrorContains(t, write(dir, files{}), "which no build wrote")
	require.FileExists(t, elsewhere)
}

func TestSummary(t *testing.T) {
	f := files{"index.html": make([]byte, 1_000_000), "x.woff2": make([]byte, 500_000)}
	require.Equal(t, "dist: 2 files, 1.50 MB\n", summary("dist", f))
	f["index.html.br"], f["index.html.gz"] = make([]byte, 100_000), make([]byte, 200_000)
	require.Equal(t, "dist: 2 files, 1.50 MB (Brotli 0.60 MB, gzip 0.70 MB)\n", summary("dist", f))
}
