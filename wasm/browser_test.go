//go:build browser && !js

package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"groundbeat/wasm/site"
)

// dist is the built site, which the Makefile builds before these tests.
var dist = filepath.Join("..", "dist")

// TestMain lets another folder than dist/ be tested.
func TestMain(m *testing.M) {
	other := flag.String("site", dist, "the folder with the built site")
	flag.Parse()
	dist = *other
	code := m.Run()
	if shared.close != nil {
		shared.close()
	}
	os.Exit(code)
}

// server serves the site as it is deployed, headers and all, and beside it
// what a test's own scripts need.
type server struct {
	*httptest.Server
	mu      sync.Mutex
	capture []byte
}

func serve(t *testing.T) *server {
	t.Helper()
	_, err := os.Stat(filepath.Join(dist, "index.html"))
	require.NoError(t, err, "the site is not built: make build")
	s := &server{}
	mux := http.NewServeMux()
	mux.Handle("/", site.New(os.DirFS(dist), site.Options{}))
	mux.HandleFunc("/test/", s.test)
	s.Server = httptest.NewServer(mux)
	t.Cleanup(s.Close)
	return s
}

func (s *server) port() string { return s.URL[strings.LastIndex(s.URL, ":")+1:] }

// at is the same server under another origin.
func (s *server) At(origin string) *httptest.Server { return &httptest.Server{URL: origin} }

// test serves the files of testdata and takes captured sound.
func (s *server) test(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Cross-Origin-Embedder-Policy", "require-corp")
	w.Header().Set("Cross-Origin-Opener-Policy", "same-origin")
	w.Header().Set("Cross-Origin-Resource-Policy", "same-origin")
	if r.Method == http.MethodPost {
		data, _ := io.ReadAll(r.Body)
		s.mu.Lock()
		s.capture = data
		s.mu.Unlock()
		return
	}
	http.ServeFile(w, r, filepath.Join("testdata", filepath.Base(r.URL.Path)))
}

// tab is one page in a fresh browser.
type tab struct {
	t      *testing.T
	ctx    context.Context
	spares bool // see spared
	mu     sync.Mutex
	log    []string
}

// open starts a browser with no memory of earlier ones. Flags are "name" or
// "name=value".
func open(t *testing.T, flags ...string) *tab {
	t.Helper()
	return openFor(t, 3*time.Minute, flags...)
}

// openFor is open for a test that may last so long.
func openFor(t *testing.T, patience time.Duration, flags ...string) *tab {
	t.Helper()
	ctx, closed := start(t.TempDir(), flags...)
	ctx, late := context.WithTimeout(ctx, patience)
	t.Cleanup(func() { late(); closed() })
	b := &tab{t: t, ctx: ctx}
	b.do(chromedp.Evaluate[any]("1"))
	go b.listen()
	return b
}

// start starts a browser with its memory in a folder.
func start(folder string, flags ...string) (context.Context, func()) {
	opts := []chromedp.ExecAllocatorOption{
		chromedp.Flag("headless", true), chromedp.NoSandbox, chromedp.NoFirstRun,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.Flag("use-gl", "angle"), chromedp.Flag("use-angle", "swiftshader"),
		chromedp.Flag("enable-unsafe-swiftshader", true),
		chromedp.UserDataDir(folder), chromedp.WindowSize(1280, 800),
	}
	for _, f := range flags {
		name, value, given := strings.Cut(f, "=")
		if given {
			opts = append(opts, chromedp.Flag(name, value))
		} else {
			opts = append(opts, chromedp.Flag(name, true))
		}
	}
	allocator, stop := chromedp.NewExecAllocator(context.Background(), opts...)
	ctx, cancel := chromedp.NewContext(allocator)
	return ctx, func() { cancel(); stop() }
}

// listen keeps what the page writes to its console, for a failing test.
func (b *tab) listen() {
	for m := range chromedp.Console(b.ctx) {
		if strings.Contains(m.Text, "GPU stall due to ReadPixels") {
			continue // the driver's remark on a browser that is opened plainly
		}
		b.mu.Lock()
		b.log = append(b.log, fmt.Sprintf("%s: %s", m.Type, m.Text))
		b.mu.Unlock()
	}
}

func (b *tab) console() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return strings.Join(b.log, "\n")
}

func (b *tab) do(a chromedp.Action[any]) any {
	b.t.Helper()
	v, err := chromedp.Run(b.ctx, a)
	require.NoError(b.t, err, b.console())
	return v
}

func (b *tab) steps(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	require.NoError(b.t, chromedp.Do(b.ctx, steps...), b.console())
}

// early adds a script that runs in every page before the page's own.
func (b *tab) early(script string) {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, cdppage.AddScriptToEvaluateOnNewDocument,
		cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: script})
	require.NoError(b.t, err)
}

// dark sets what the person's system asks for.
func (b *tab) dark(on bool) {
	b.t.Helper()
	scheme := "light"
	if on {
		scheme = "dark"
	}
	_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
	require.NoError(b.t, err)
}

func (b *tab) size(width, height int64, scale float64) {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, emulation.SetDeviceMetricsOverride,
		emulation.SetDeviceMetricsOverrideParams{Width: width, Height: height, DeviceScaleFactor: scale})
	require.NoError(b.t, err)
}

// load loads an address that is not the game's.
func (b *tab) load(url string) {
	b.t.Helper()
	b.steps(chromedp.Navigate(url))
	b.wait("document.readyState === 'complete'")
}

// visit loads an address and waits for the screen's heading or tap area.
func (b *tab) visit(url string) {
	b.t.Helper()
	b.steps(chromedp.Navigate(url))
	b.wait("document.querySelector('#page[data-screen]') !== null")
	if b.spares { // a frame comes late, and the sound after it; where there is none, it never does
		b.run("for (let i = 0; i < 50 && window.groundbeat?.heard(); i++) await new Promise((r) => setTimeout(r, 20))")
	}
}

// wait waits until an expression is true in the page.
func (b *tab) wait(expression string) {
	b.t.Helper()
	b.waitFor(expression, time.Minute)
}

func (b *tab) waitFor(expression string, patience time.Duration) {
	b.t.Helper()
	deadline := time.Now().Add(patience)
	for time.Now().Before(deadline) {
		ok, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool]("Boolean("+expression+")"))
		if err == nil && ok {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	text, _ := chromedp.Run(b.ctx, chromedp.Evaluate[string]("document.body.innerText"))
	require.Fail(b.t, "waited in vain for "+expression, "page: %s\nconsole: %s", text, b.console())
}

// get evaluates an expression, or awaits the promise that it is, into a T.
func get[T any](b *tab, expression string) T {
	b.t.Helper()
	text, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](
		"(async () => JSON.stringify(await ("+expression+")))()", chromedp.EvalAwaitPromise))
	require.NoError(b.t, err, "%s\n%s", expression, b.console())
	var v T
	require.NoError(b.t, json.Unmarshal([]byte(text), &v), text)
	return v
}

// run evaluates statements for what they do.
func (b *tab) run(statements string) {
	b.t.Helper()
	get[bool](b, "(async () => {"+statements+"; return true})()")
}

// press clicks the control with the given name, as a mouse would.
func (b *tab) press(name string) {
	b.t.Helper()
	at := get[[2]float64](b, fmt.Sprintf(`(() => {
		const el = [...document.querySelectorAll("button")].find((e) => e.textContent === %q);
		el.scrollIntoView({ block: "center" });
		const box = el.getBoundingClientRect();
		return [box.x + box.width / 2, box.y + box.height / 2];
	})()`, name))
	b.steps(chromedp.MouseClickXY(at[0], at[1]))
}

// key sends a key press whose event is stamped with a performance time in ms.
func (b *tab) key(key string, at, origin float64) {
	b.t.Helper()
	stamp := input.TimeSinceEpoch((origin + at) / 1000)
	for _, kind := range []input.DispatchKeyEventType{input.DispatchKeyEventTypeKeyDown, input.DispatchKeyEventTypeKeyUp} {
		_, err := chromedp.Call(b.ctx, input.DispatchKeyEvent, input.DispatchKeyEventParams{
			Type: kind, Timestamp: stamp, Key: key, Text: key, WindowsVirtualKeyCode: int64(strings.ToUpper(key)[0]),
		})
		require.NoError(b.t, err)
	}
}

// rest lets time pass in the page.
func (b *tab) rest(ms int) {
	b.t.Helper()
	b.run(fmt.Sprintf("await new Promise((r) => setTimeout(r, %d))", ms))
}
