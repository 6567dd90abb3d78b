//go:build browser && !js

package main

import (
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"groundbeat/audio"
)

const soundCheck = "/?screen=sound-check"

// heardAs opens the page with the monitor in the sound's way, and the drums where
// the page itself lets them stand.
func heardAs(t *testing.T, s *server, url string) *tab {
	t.Helper()
	hook, err := os.ReadFile("testdata/hook.js")
	require.NoError(t, err)
	b := undrawing(t)
	b.early(string(hook))
	b.visit(url)
	b.wait("monitor.ready")
	b.run("groundbeat.volume(1); monitor.rise = 0.1")
	return b
}

// caught is what reaches the loudspeaker from when something is done to a second
// and a half after the first stroke.
func (b *tab) caught(s *server, do func()) (left, right []float32) {
	b.t.Helper()
	b.run("monitor.clear()")
	do()
	b.wait("monitor.onsets.length > 0")
	b.rest(1500)
	require.Zero(b.t, get[struct{ Missed int }](b, "monitor.send()").Missed)
	s.mu.Lock()
	defer s.mu.Unlock()
	return samples(s.capture)
}

// oneStroke is what is caught of the one stroke that a button brings. A machine that is busy
// with something else may cut it, and then it is pressed once more.
func (b *tab) oneStroke(s *server, button string) (left, right []float32) {
	b.t.Helper()
	for range 5 {
		if left, right = b.caught(s, func() { b.press(button) }); strokes(left, aStroke) == 1 {
			return left, right
		}
		b.t.Log("once more")
	}
	require.Fail(b.t, "never one stroke, and no more", button)
	return nil, nil
}

// aStroke is how far a stroke rises at least.
const aStroke = 0.1

// strokes counts onsets: rises above a level after a tenth of a second below it.
func strokes(sound []float32, level float64) (n int) {
	last := -int(audio.Rate)
	for i, v := range sound {
		if math.Abs(float64(v)) >= level {
			if i-last > int(audio.Rate)/10 {
				n++
			}
			last = i
		}
	}
	return n
}

// lowShare is the part of a sound's energy below about 200 Hz: behind two low
// passes of the first order, one after the other.
func lowShare(sound []float32) float64 {
	a := 1 - math.Exp(-2*math.Pi*200/float64(audio.Rate))
	var one, two, low, all float64
	for _, v := range sound {
		one += a * (float64(v) - one)
		two += a * (one - two)
		low += two * two
		all += float64(v) * float64(v)
	}
	return low / all
}

// One dum and one tek sound at once, with no count-in, once, in both ears alike;
// the dum is low and the tek is not.
func TestSoundCheckStrokes(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := heardAs(t, s, s.URL+soundCheck)
	for _, c := range []struct {
		button      string
		least, most float64 // of the energy below 200 Hz
	}{{"One dum", 0.5, 1}, {"One tek", 0, 0.1}, {"One dum", 0.5, 1}} {
		left, right := b.oneStroke(s, c.button)
		require.Equal(t, left, right, "in the middle")
		share := lowShare(left)
		t.Logf("%s: %.1f %% of its energy below 200 Hz", c.button, 100*share)
		require.True(t, share >= c.least && share <= c.most, "%s: %v", c.button, share)
	}
	require.Equal(t, "strike-dum", b.focused())
	require.Empty(t, b.text("#silent"))
}

// Mono is how it begins; without it the drums stand apart, and back in the middle
// both ears hear the same again, to the bit.
func TestSoundCheckMono(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := heardAs(t, s, s.URL+soundCheck)
	b.press("Play")
	b.wait("monitor.onsets.length > 0")
	side := func() float64 { // the energy of what the two ears do not share, in parts of what they do
		left, right := b.caught(s, func() {})
		var apart, together float64
		for i := range left {
			d, m := float64(left[i]-right[i]), float64(left[i]+right[i])
			apart, together = apart+d*d, together+m*m
		}
		require.Greater(t, together, 1.0, "something sounds")
		return apart / together
	}
	require.Zero(t, side())
	const wideNow = "JSON.parse(" + things + "['output/this device']).wide"
	b.click("#mono")
	b.wait(wideNow)
	b.rest(100)
	wide := side()
	t.Logf("spread: what the ears do not share has %.1f %% of the energy of what they do", 100*wide)
	require.Greater(t, wide, 0.005)
	b.click("#mono")
	b.wait("!" + wideNow)
	b.rest(100)
	require.Zero(t, side())
}

// No brings what to try; more bass drum lowers the lead drum, and is kept.
func TestSoundCheckTips(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := heardAs(t, s, s.URL+soundCheck)
	require.Zero(t, get[int](b, "document.querySelectorAll('#tips').length"))
	loud, _ := b.oneStroke(s, "One dum")
	if once, _ := b.oneStroke(s, "One dum"); energy(once) > energy(loud) { // the first may be cut while the sound wakes
		loud = once
	}
	b.click("#hears label:nth-of-type(2)")
	b.wait("document.querySelector('#tips')")
	require.Contains(t, b.text("#tips"), "Turn it up")
	for _, want := range []string{"20", "40"} {
		b.press("More bass drum")
		b.wait(fmt.Sprintf("document.querySelector('#balance').innerText === '%s\u00a0%% towards the bass drum.'", want))
	}
	b.rest(2500)                                                 // of the strokes that this plays
	soft, _ := b.caught(s, func() { b.press("More bass drum") }) // lets the dum be heard as it is now
	if strokes(soft, aStroke) != 1 {                             // a busy machine has cut it
		soft, _ = b.oneStroke(s, "One dum")
	}
	if once, _ := b.oneStroke(s, "One dum"); energy(once) < energy(soft) { // no two are alike
		soft = once
	}
	t.Logf("at most bass drum a dum has %.0f %% of its energy before", 100*energy(soft)/energy(loud))
	require.Less(t, energy(soft), 0.8*energy(loud))
	b.click("#hears label:nth-of-type(1)")
	b.wait("document.querySelector('#heard') && !document.querySelector('#tips')")

	b.visit(s.URL + "/?screen=listen")
	require.Equal(t, "60 % towards the bass drum", b.text("#balance output"), "Listen begins with it")
	b.visit(s.URL + soundCheck)
	b.press("Both drums alike")
	b.wait("!document.querySelector('#balance')")
	require.Equal(t, "heading", b.focused(), "what had the focus is gone")
}

func energy(sound []float32) (sum float64) {
	for _, v := range sound {
		sum += float64(v) * float64(v)
	}
	return sum
}

// The slider's value is kept for its output over a reload, and shows as the sweep
// lies behind what the page's script hears.
func TestPictureWaitsAndIsKept(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL + soundCheck)
	b.run("document.querySelector('#later input').focus()")
	for range 18 {
		b.keys(kb.ArrowRight)
	}
	b.wait("document.querySelector('#later output').innerText === '180 ms later'")
	require.Equal(t, "180 ms later", get[string](b, "document.querySelector('#later input').ariaValueText"))
	require.Equal(t, "later", get[string](b, "document.activeElement.parentElement.id"), "the slider keeps the focus")
	b.visit(s.URL + soundCheck)
	require.Equal(t, "180", get[string](b, "document.querySelector('#later input').value"))
	kept := get[map[string]string](b, things)
	require.Equal(t, "this device", kept["output-chosen"])
	require.JSONEq(t, `{"name":"this device","mean":0,"spread":0,"later":180}`, kept["output/this device"])

	// A text of an earlier program, of before the sound check, with two outputs.
	b.forget()
	b.run(`localStorage.setItem("groundbeat.outputs", JSON.stringify({ v: 1, chosen: "studio", outputs: [
		{ name: "headphones", mean: 212.4, spread: 20, when: "2026-01-31T18:30:00Z" },
		{ name: "studio", mean: 38, spread: 12, when: "2026-01-31T18:30:00Z" }] }))`)
	b.visit(s.URL + soundCheck)
	require.Equal(t, "studio", get[string](b, "document.querySelector('#output input:checked').value"))
	b.press("As measured: 40 ms later")
	b.wait("document.querySelector('#later output').innerText === '40 ms later'")
	b.click("#output label:nth-of-type(1)")
	b.wait("document.querySelector('#later output').innerText === 'as it comes'")
	b.press("As measured: 210 ms later")
	b.wait("document.querySelector('#later output').innerText === '210 ms later'")
	b.visit(s.URL + soundCheck)
	require.Equal(t, "210 ms later", b.text("#later output"))
	b.click("#output label:nth-of-type(2)")
	b.wait("document.querySelector('#later output').innerText === '40 ms later'")

	// One of a later version is set aside, as it was.
	b.run(`localStorage.setItem("groundbeat.outputs", '{"v":2}')`)
	b.visit(s.URL + soundCheck)
	require.Equal(t, "40 ms later", b.text("#later output"))
	require.Equal(t, `{"v":2}`, get[string](b, "localStorage.getItem('groundbeat.outputs.broken')"))
}

// All of it by keyboard, and what a screen reader is told.
func TestSoundCheckByKeyboard(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.visit(s.URL + "/?screen=set-up")
	b.tabTo("to-check")
	b.keys(kb.Enter)
	b.wait("document.querySelector('#page').dataset.screen === 'sound-check'")
	require.Equal(t, "heading", b.focused())
	tree := b.tree()
	for _, line := range []string{
		"RootWebArea Sound check – Groundbeat", "heading Sound check", "button One dum", "button One tek", "slider Volume",
		"group Can you hear the dum? In a room, from the back?", "radio Yes", "radio No", "heading Does the picture move with the sound?",
		"button Play", "slider Picture", "checkbox Mono: both drums in the middle, best in a room", "button Measure the delay",
	} {
		require.Contains(t, tree, line)
	}
	b.reach()
	b.tabTo("strike-dum")
	b.keys(kb.Enter)
	b.wait("groundbeat.heard()")
	require.Equal(t, "strike-dum", b.focused())
	b.tabTo("play")
	b.keys(" ")
	b.wait("document.querySelector('#play').innerText === 'Stop'")
	require.Equal(t, "play", b.focused())
	require.Empty(t, get[[]string](b, "[...document.querySelectorAll('#page [aria-live]')].map((e) => e.id)"), "silent while it sounds")
	b.tree()
	b.keys(kb.Escape)
	b.wait("document.querySelector('#play').innerText === 'Play'")
	require.Equal(t, "play", b.focused())
	b.run("document.querySelector('#hears input[value=no]').focus()")
	b.keys(" ")
	b.wait("document.querySelector('#tips')")
	require.Equal(t, "no", get[string](b, "document.activeElement.value"), "the choice keeps the focus")
	require.Contains(t, b.tree(), "button More bass drum")
	b.reach()
	b.run("document.querySelector('#mono input').focus()")
	b.keys(" ")
	b.wait("JSON.parse(" + things + "['output/this device']).wide")
	b.tabTo("to-set-up")
	b.keys(kb.Enter)
	b.wait("document.querySelector('#page').dataset.screen === 'set-up'")
}

func TestLayoutOfSoundCheck(t *testing.T) {
	t.Parallel()
	s := serve(t)
	for _, some := range byLook() {
		b := Page(t)
		b.into(some[0])
		b.visit(s.URL + soundCheck)
		b.wait("document.fonts.status === 'loaded'")
		b.lieIn(some, "sound-check", "#strike-dum", "#hears")
		b.click("#hears label:nth-of-type(2)")
		b.wait("document.querySelector('#tips')")
		b.press("More bass drum")
		b.wait("document.querySelector('#balance')")
		b.run("scrollTo(0, 0)")
		b.lieIn(some, "sound-check-no")
		b.press("Play")
		b.wait("groundbeat.heard()")
		b.run("document.querySelector('#see').scrollIntoView()")
		b.rest(700)
		b.lieIn(some, "sound-check-playing")
		b.press("Stop")
	}
}
