//go:build browser && !js

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"groundbeat/scoring/history"
)

// answers are rounds of Which rhythm? on as many days, as lines: maqsum, told rightly or
// taken for sa'idi.
func answers(t *testing.T, n int, right bool) string {
	t.Helper()
	var lines strings.Builder
	for i := range n {
		answer := map[bool]string{true: "maqsum", false: "saidi"}[right]
		took := 4000.0
		r, err := history.NewAnswered(history.Round{
			Kind: history.Which, Rhythm: "maqsum", BPM: 96, Riff: "bare", Eights: 2, Seed: uint64(i + 1),
			Choices: []string{"maqsum", "saidi"}, Answer: answer, Right: right, Took: &took, Heard: 2, Epoch: 1, Rate: 48000,
			ID: fmt.Sprintf("%t-%d", right, i), When: fmt.Sprintf("2026-03-%02dT18:30:00+01:00", i%28+1),
		})
		require.NoError(t, err)
		line, err := history.Format(r)
		require.NoError(t, err)
		lines.Write(append(line, '\n'))
	}
	return lines.String()
}

// give gives a file control a file.
func (b *tab) give(control, name, text string) {
	b.t.Helper()
	path := filepath.Join(b.t.TempDir(), name)
	require.NoError(b.t, os.WriteFile(path, []byte(text), 0o644))
	b.steps(chromedp.SetUploadFiles(control, []string{path}))
}

// The diary from its empty state: a file is looked into, taken, taken back and taken
// again; somebody else comes; all is erased, but not by mistake.
func TestDiary(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL + "/?screen=diary")
	b.wait("document.querySelector('#empty') && document.querySelector('#practise')")
	b.reach()

	b.give("#import input", "mine.jsonl", answers(t, 20, true)+"{\"v\":1,\"kind\":\"which\"}\n"+answers(t, 10, false)+answers(t, 2, true))
	b.wait("document.querySelector('#take')")
	require.Contains(t, b.text("#found"), "30 rounds that are not here yet")
	require.Contains(t, b.text("#found"), "2 that are here already")
	b.run("document.querySelector('#broken-lines').open = true")
	require.Contains(t, b.text("#broken-lines"), "line 21", "its place")
	require.Equal(t, 0, b.rounds(), "nothing is kept yet")
	b.press("Add 30 rounds")
	b.wait("document.querySelector('#named-finding')")
	require.Equal(t, 30, b.rounds())
	// 20 of 30: .667, Wilson's interval .4878 to .8077 (formula of the NIST handbook 7.2.4.1, reckoned by hand).
	require.Contains(t, b.text("#named-finding"), "49 to 81\u00a0% of the time")
	b.press("Take it back")
	b.wait("document.querySelector('#empty')")
	require.Equal(t, 0, b.rounds())
	b.give("#import input", "mine.jsonl", answers(t, 30, true))
	b.wait("document.querySelector('#take')")
	b.press("Add 30 rounds")
	b.wait("document.querySelector('#named-finding')")

	// Somebody else has a diary of her own, also after the page is loaded anew.
	b.run("document.querySelector('#persons').open = true")
	b.run("document.querySelector('#nickname input').focus()")
	b.keys("Rim")
	b.press("Add this nickname")
	b.wait("document.querySelector('#empty') && document.querySelector('#who')")
	b.visit(s.URL + "/?screen=diary")
	b.wait("document.querySelector('#empty') && document.querySelector('#who')")
	b.run("document.querySelector('#who input:not(:checked)').click()")
	b.wait("document.querySelector('#named-finding')")

	// Erasing is asked twice, and Escape is no.
	b.press("Erase the diary of the first player")
	b.wait("document.querySelector('dialog[open]')")
	require.Equal(t, "erase-no", b.focused())
	b.keys(kb.Escape)
	b.wait("!document.querySelector('dialog')")
	require.Equal(t, 30, b.rounds())
	b.press("Erase the diary of the first player")
	b.wait("document.querySelector('dialog[open]')")
	b.press("Erase them")
	b.wait("document.querySelector('#empty')")
	require.Equal(t, 0, b.rounds())
	require.NotContains(t, b.console(), "error:")
}

// Ten minutes' practice from Home: its plan, the first rounds of it, what is new heard
// and seen before it is asked, and out of it to the diary, where they stand.
func TestPractice(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL)
	b.run(`localStorage.setItem("groundbeat.begun", "yes")`)
	b.visit(s.URL)
	b.press("Ten minutes’ practice")
	b.wait("document.querySelector('#plan li') && document.querySelectorAll('.primary').length === 1")
	b.shoot("practice-plan")
	b.press("Begin")
	for nth := 1; nth <= 3; nth++ {
		b.wait("document.querySelector('#ask-me, .taparea, #choices')")
		if get[bool](b, "Boolean(document.querySelector('#ask-me'))") {
			b.wait("document.querySelectorAll('.primary').length === 1 && document.querySelector('#line') && document.querySelector('#head')")
			b.shoot(fmt.Sprintf("practice-meet-%d", nth))
			b.press("Ask me now")
			b.wait("document.querySelector('.taparea')")
		}
		if get[bool](b, "Boolean(document.querySelector('.taparea'))") {
			b.toReview()
		} else {
			b.wait("document.querySelector('#choice-1:enabled')")
			b.rest(300)
			b.run("document.querySelector('#choice-1').click()")
		}
		b.wait("document.querySelector('#practice-on.primary')")
		require.Contains(t, b.text("#practice-where"), "Part 1 of ")
		require.Equal(t, 1, get[int](b, "document.querySelectorAll('.primary').length"))
		if nth < 3 {
			b.press("Next round")
			b.wait("document.querySelector('#ask-me, .taparea, #choices')")
		}
	}
	require.Equal(t, 3, b.rounds())
	b.reach()
	b.press("End the practice")
	b.wait("document.querySelector('#days-told')")
	require.Contains(t, b.text("#days-finding"), "3 rounds")
}

// toReview waits for the review of a round that is not tapped; where a busy machine has cut
// the sound, it is begun once more.
func (b *tab) toReview() {
	b.t.Helper()
	for range 5 {
		b.waitFor("document.querySelector('#finding, #why')", 2*time.Minute)
		if b.text("#finding") != "" {
			return
		}
		b.again()
	}
	require.Fail(b.t, "no round came to its end", b.console())
}

// invented are the rounds of an invented learner of thirty days.
func invented(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	const inventor = "../game/diaryview"
	write := exec.Command("go", "test", "-count=1", "-short", "-run", "ThirtyDays/^(practise|golden)$/^#00$", ".", "-invented", folder)
	write.Dir = inventor
	said, err := write.CombinedOutput()
	require.NoError(t, err, string(said))
	text, err := os.ReadFile(filepath.Join(folder, "invented.jsonl"))
	require.NoError(t, err)
	return string(text)
}

// The diary of an invented learner, which says so, in every window, folded and opened.
func TestLayoutOfTheDiary(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL + "/?screen=diary")
	b.wait("document.querySelector('#practise')")
	b.give("#import input", "invented.jsonl", invented(t))
	b.waitFor("document.querySelector('#take')", time.Minute)
	b.run("document.querySelector('#take').click()")
	b.wait("document.querySelector('#imported')")
	b.visit(s.URL + "/?screen=diary")
	b.wait("document.querySelector('#who')")
	b.run(`[...document.querySelectorAll("#who label")].find((e) => e.textContent === "Invented").querySelector("input").click()`)
	b.wait("document.querySelector('#invented')")
	for _, some := range byLook() {
		b.into(some[0])
		b.visit(s.URL + "/?screen=diary")
		b.wait("document.querySelector('#reach-told') && document.fonts.status === 'loaded'")
		require.NotEmpty(t, b.text("#invented"))
		b.lieIn(some, "diary")
		for _, matter := range []string{"named", "fingers", "round", "mixed", "reach", "days"} {
			b.run(fmt.Sprintf("document.querySelector('#%s-told').scrollIntoView()", matter))
			b.shoot("diary-" + matter + "-" + some[0].name)
		}
		b.run("document.querySelectorAll('details').forEach((d) => d.open = true)")
		b.lieIn(some, "diary-opened")
	}
}
