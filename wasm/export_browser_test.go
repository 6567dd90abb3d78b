//go:build browser && !js

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"groundbeat/scoring/history"
)

// The player's rounds as a file; and where none can be made, the page says so, and
// can be asked again.
func TestRoundsAsAFile(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := undrawing(t).spared()
	folder := t.TempDir()
	_, err := chromedp.Call(b.ctx, browser.SetDownloadBehavior,
		browser.SetDownloadBehaviorParams{Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: folder})
	require.NoError(t, err)
	b.visit(s.URL + quick)
	b.playThrough()
	b.run("document.querySelector('summary').click()")

	b.run(`window.make = URL.createObjectURL; URL.createObjectURL = () => { throw new DOMException("no room", "QuotaExceededError") }`)
	b.press("Save all my rounds as a file")
	const sentence = "The file could not be made. Your rounds are as they were; try once more."
	b.wait(`document.querySelector("[aria-live=assertive]")?.innerText === "` + sentence + `"`)
	require.Equal(t, "export", b.focused())
	require.True(t, get[bool](b, "document.querySelector('[aria-live=assertive]').checkVisibility()"))

	b.run("URL.createObjectURL = make")
	b.press("Save all my rounds as a file")
	b.wait("!document.querySelector('[aria-live=assertive]')")
	name := filepath.Join(folder, "groundbeat-rounds.jsonl")
	require.Eventually(t, func() bool { _, err := os.Stat(name); return err == nil }, 10*time.Second, 50*time.Millisecond, "the file")
	content, err := os.ReadFile(name)
	require.NoError(t, err)
	lines := strings.Split(strings.TrimSuffix(string(content), "\n"), "\n")
	require.Len(t, lines, 1)
	r, err := history.Parse([]byte(lines[0]))
	require.NoError(t, err)
	require.Len(t, r.Taps, 1)
}
