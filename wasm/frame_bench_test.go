//go:build browser && !js

package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/andybalholm/brotli"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"groundbeat/wasm/site"
)

// mostFrame is how much longer our page's first frame may take than that of the
// engine alone.
const mostFrame = 1.3

// loads is how often each page is loaded, in turn, and rest how long a new tab is left
// alone before: making it is the browser's work, not the page's.
const (
	loads = 21
	rest  = 700 * time.Millisecond
)

// firstFrame compares the time from asking for our page to its first painted
// frame with that of the least program that the engine can run, both served by
// the same server in Brotli and loaded in turn, each time with nothing kept.
func (l *ledger) firstFrame(t *testing.T) {
	alone := engineAlone(t)
	engine := httptest.NewServer(site.New(alone, site.Options{}))
	t.Cleanup(engine.Close)
	ours := serve(t)
	browser := open(t)
	var times [2][]float64
	for i := range loads + 1 {
		for j, address := range []string{engine.URL, ours.URL} {
			if ms := browser.loadCold(address); i > 0 { // the first of each warms the machine
				times[j] = append(times[j], ms)
			}
		}
	}
	var ratios []float64
	for i := range loads {
		ratios = append(ratios, times[1][i]/times[0][i])
	}
	ratio := median(times[1]) / median(times[0])
	_, program := weight(t, os.DirFS(dist))
	_, least := weight(t, alone)
	how := fmt.Sprintf("from asking for the page to the frame after the first draw call; %d cold loads of each, in turn, each in a new tab at rest; `testdata/engine`", loads)
	l.add("first frame", "1.3 times the engine alone", how,
		"%.2f times: %.0f ms (%.0f to %.0f) against %.0f ms (%.0f to %.0f); pair by pair %.2f to %.2f; programs %.2f and %.2f MB",
		ratio, median(times[1]), slices.Min(times[1]), slices.Max(times[1]), median(times[0]), slices.Min(times[0]), slices.Max(times[0]),
		slices.Min(ratios), slices.Max(ratios), float64(program)/1e6, float64(least)/1e6)
	t.Logf("%v", *l)
	require.LessOrEqual(t, ratio, mostFrame)
}

// loadCold loads a page in a browser that remembers nothing, and returns when
// its first frame was painted, ms.
func (b *tab) loadCold(address string) float64 {
	b.t.Helper()
	ctx, closed := chromedp.NewContext(b.ctx, chromedp.WithNewBrowserContext())
	defer closed()
	fresh := &tab{t: b.t, ctx: ctx}
	fresh.do(chromedp.Evaluate[any]("1"))
	hook, err := os.ReadFile("testdata/frame.js")
	require.NoError(b.t, err)
	fresh.early(string(hook))
	time.Sleep(rest)
	fresh.load(address)
	return get[float64](fresh, "firstFrame")
}

func median(of []float64) float64 { return slices.Sorted(slices.Values(of))[len(of)/2] }

// engineAlone builds the page of testdata/engine, with a twin in Brotli beside
// each file, as ours is built.
func engineAlone(t *testing.T) fs.FS {
	t.Helper()
	folder := filepath.Join("..", "testdata", "out", "engine")
	require.NoError(t, os.MkdirAll(folder, 0o755))
	build := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", filepath.Join(folder, "app.wasm"), "./testdata/engine")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	said, err := build.CombinedOutput()
	require.NoError(t, err, string(said))
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	for name, from := range map[string]string{
		"app.wasm": folder, "index.html": "testdata/engine", "start.js": "testdata/engine",
		"wasm_exec.js": filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm"),
	} {
		content, err := os.ReadFile(filepath.Join(from, name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), content, 0o644))
		squeeze(t, filepath.Join(folder, name+".br"), content)
	}
	return os.DirFS(folder)
}

// squeeze writes content in Brotli as wasm/pack does, unless it lies there.
func squeeze(t *testing.T, name string, content []byte) {
	t.Helper()
	if old, err := os.ReadFile(name); err == nil {
		var b bytes.Buffer
		if _, err := b.ReadFrom(brotli.NewReader(bytes.NewReader(old))); err == nil && bytes.Equal(b.Bytes(), content) {
			return
		}
	}
	var b bytes.Buffer
	w := brotli.NewWriterOptions(&b, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: 24})
	_, err := w.Write(content)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	require.NoError(t, os.WriteFile(name, b.Bytes(), 0o644))
}
