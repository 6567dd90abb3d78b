//go:build browser && !js

package main

import (
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
	b := open(t)
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
	b := open(t)
	b.early(held)
	b.visit(s.URL + quick)
	b.begin()
	b.countedIn()
	epoch := get[int](b, "groundbeat.heard().epoch")
	b.run(`held.dispatchEvent(new Event("statechange"))`)
	b.finish(func() { b.keys("j") })
	require.Equal(t, 1, b.rounds())
	require.Equal(t, epoch, get[int](b, "groundbeat.heard().epoch"))
}
