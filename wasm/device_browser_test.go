//go:build browser && !js

package main

import (
	"fmt"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// held keeps the audio context where a test can reach it.
const held = `
	const Native = window.AudioContext;
	window.AudioContext = class extends Native { constructor(...all) { super(...all); window.held = this; } };`

// The sound goes to another device, as when headphones are pulled out, or is taken
// away: Listen plays on or can be started again, and a round is void and says why.
func TestDeviceIsLost(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(held)
	b.visit(s.URL + "/?screen=listen&rhythm=maqsum")
	b.press("Play")
	b.wait("document.querySelector('#play').innerText === 'Stop'")
	b.rest(500) // what ran before Play is over
	b.wait("groundbeat.heard()")
	epoch := get[int](b, "groundbeat.heard().epoch")
	b.run(`held.dispatchEvent(new Event("sinkchange"))`)
	b.wait("groundbeat.heard()?.epoch > " + strconv.Itoa(epoch))
	require.Equal(t, "Stop", b.text("#play"), "it plays on")
	b.run("await held.suspend()")
	b.wait("document.querySelector('#play').innerText === 'Play'")
	b.press("Play")
	b.wait("groundbeat.heard()")

	b.visit(s.URL + quick)
	b.begin()
	b.countedIn()
	b.run(`held.dispatchEvent(new Event("sinkchange"))`)
	b.wait("document.querySelector('#why')")
	require.Equal(t, "This round does not count", b.text("h1"))
	require.Equal(t, "The sound was interrupted, so your taps cannot be placed.", b.text("#why"))
	b.press("Once more")
	b.wait("document.querySelector('.taparea')")
	b.finish(func() { b.keys("j") })
	require.Equal(t, 1, b.rounds(), "only the whole one")
}

// A browser tells that the sound runs a while after it does (the event is a task of
// its own, and a busy page comes to it late): what plays by then is not begun anew.
func TestStateToldLate(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := Page(t)
	b.early(held)
	b.visit(s.URL + quick)
	epoch := 0
	b.play(func() {
		epoch = get[int](b, "groundbeat.heard().epoch")
		b.run(`held.dispatchEvent(new Event("statechange"))`)
		b.keys("j")
	})
	require.Equal(t, 1, b.rounds())
	require.Equal(t, epoch, get[int](b, "groundbeat.heard().epoch"))
}

// wakes stands for a device that takes a while to start: asked meanwhile to suspend, it
// tells so, and begins anew when it is asked again.
const wakes = `
	const { resume, suspend } = AudioContext.prototype;
	let asked = 0;
	AudioContext.prototype.resume = async function () {
		const mine = asked;
		await %s;
		return mine === asked ? resume.call(this) : new Promise(() => {});
	};
	AudioContext.prototype.suspend = async function () {
		asked++;
		if (this.state !== "running") this.dispatchEvent(new Event("statechange"));
		return suspend.call(this);
	};`

// A device takes its time to start, as a wireless one does that has to wake: the round
// begins when it has, and counts. One that never starts is said to be silent.
func TestDeviceWakes(t *testing.T) {
	t.Parallel()
	s := serve(t)
	browser := Page(t)
	for name, when := range map[string]string{
		"in 1.2 s": "new Promise((wake) => setTimeout(wake, 1200))",
		"in 3 s":   "new Promise((wake) => setTimeout(wake, 3000))",
		"never":    "new Promise(() => {})",
	} {
		t.Run(name, func(t *testing.T) {
			b := browser.alone(t)
			b.early(fmt.Sprintf(wakes, when))
			if name == "never" {
				b.visit(s.URL + quick)
				b.begin()
				require.False(t, b.over())
				require.Contains(t, b.text("#why"), "No sound came.")
				return
			}
			b.afterWaking(s)
			require.Equal(t, 1, b.rounds())
			b.clean()
		})
	}
}

// afterWaking plays a round whose Begin wakes the device; on a busy machine up to five
// times, each on a page of its own.
func (b *tab) afterWaking(s *server) {
	b.t.Helper()
	for range 5 {
		b.visit(s.URL + quick)
		b.begin()
		b.keys("5") // nothing is heard yet
		b.countedIn()
		b.keys("j")
		if b.over() {
			return
		}
		require.Equal(b.t, "The sound was interrupted, so your taps cannot be placed.", b.text("#why"))
	}
	require.Fail(b.t, "no round came to its end", b.console())
}
