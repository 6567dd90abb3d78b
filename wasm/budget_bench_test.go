//go:build browser && !js

package main

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	cdpbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

var budgets = flag.Bool("budgets", false, "measure the budgets and write them down (a quarter of an hour)")

// A budget is one line of testdata/budgets.md.
type budget struct{ what, limit, measured, how string }

// ledger is what was measured so far.
type ledger []budget

func (l *ledger) add(what, limit, how, measured string, args ...any) {
	*l = append(*l, budget{what, limit, fmt.Sprintf(measured, args...), how})
}

// What the page may cost. The figures are kept, whether they hold or not.
func TestBudgets(t *testing.T) {
	if !*budgets {
		t.Skip("make budgets")
	}
	var l ledger
	whole := t.Run("page", func(t *testing.T) { l.page(t) })
	whole = t.Run("first frame", func(t *testing.T) { l.firstFrame(t) }) && whole
	whole = t.Run("throttled", func(t *testing.T) { l.throttled(t) }) && whole
	whole = t.Run("heap", func(t *testing.T) { l.heap(t) }) && whole
	const allocations = "`make budgets` runs it first"
	l.add("allocations of a frame in which nothing changed", "0", "`TestIdleFrameAllocatesNothing`, on Dums, Listen, Which and a wrong link; "+allocations, "0")
	l.add("allocations of a read of the stream", "0", "`TestReadDoesNotAllocate`; "+allocations, "0")
	require.Len(t, l, 7, "figures: measure all to write them down")
	require.NoError(t, os.WriteFile(filepath.Join("..", "testdata", "budgets.md"), l.table(open(t)), 0o644))
	require.True(t, whole)
}

func (l ledger) table(b *tab) []byte {
	v, err := chromedp.Call(b.ctx, cdpbrowser.GetVersion, struct{}{})
	require.NoError(b.t, err)
	var out strings.Builder
	fmt.Fprintf(&out, "# Budgets\n\nWritten by `make budgets`. Machine: %d cores (%s), %s, headless, pictures drawn without a graphics card; %s.\n\n",
		runtime.NumCPU(), runtime.GOARCH, strings.Replace(v.Product, "/", " ", 1), runtime.Version())
	out.WriteString("| what | limit | measured | how |\n|---|---|---|---|\n")
	for _, r := range l {
		fmt.Fprintf(&out, "| %s | %s | %s | %s |\n", r.what, r.limit, r.measured, r.how)
	}
	return []byte(out.String())
}

// mostPage is what the whole page may weigh compressed, bytes.
const mostPage = 2_800_000

// weight is what a site weighs as a browser fetches it, in Brotli where that lies
// ready, and its program alone, bytes.
func weight(t *testing.T, site fs.FS) (whole, program int64) {
	t.Helper()
	require.NoError(t, fs.WalkDir(site, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasSuffix(name, ".br") || strings.HasSuffix(name, ".gz") {
			return err
		}
		info, err := fs.Stat(site, name+".br")
		if err != nil {
			info, err = d.Info()
		}
		require.NoError(t, err)
		whole += info.Size()
		if strings.HasSuffix(name, ".wasm") {
			program = info.Size()
		}
		return nil
	}))
	return whole, program
}

// The site as it is put on the web, compressed, which its browser is given so.
func TestPageIsLight(t *testing.T) {
	s := serve(t)
	whole, program := weight(t, os.DirFS(dist))
	require.LessOrEqual(t, whole, int64(mostPage), "bytes in all, in Brotli; make build compresses")

	b := Page(t)
	b.visit(s.URL + quick)
	sent := get[float64](b, `performance.getEntriesByType("resource").find((e) => e.name.endsWith(".wasm")).encodedBodySize`)
	require.Equal(t, float64(program), sent, "bytes of the program, as they come: in Brotli")
	b.begin()
	b.wait("groundbeat.heard()")
}

func (l *ledger) page(t *testing.T) {
	whole, program := weight(t, os.DirFS(dist))
	l.add("the whole page", "2.80 MB", "all files of `dist/` in Brotli; `TestPageIsLight`", "%.2f MB, of it the program %.2f MB",
		float64(whole)/1e6, float64(program)/1e6)
	require.LessOrEqual(t, whole, int64(mostPage))
}
