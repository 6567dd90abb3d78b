//go:build browser && !js

package main

import (
	"fmt"
	"testing"
)

// looks are the windows that the screens are looked at in.
var looks = []struct {
	name          string
	width, height int64
	scale         float64
	dark          bool
}{
	{"phone", 390, 844, 2, true},
	{"phone-wide", 844, 390, 2, false},
	{"tablet", 768, 1024, 1, false},
	{"desktop", 1280, 800, 1, true},
	{"projector", 1920, 1080, 1, false},
	{"projector-4-3", 1024, 768, 1, false},
}

func TestLook(t *testing.T) {
	s := serve(t)
	b := open(t)
	for _, l := range looks {
		b.size(l.width, l.height, l.scale)
		b.dark(l.dark)
		b.visit(s.URL + "/?screen=dums&rhythm=maqsum&bpm=110&eights=2&riff=bare&seed=7")
		b.wait("document.querySelector('#begin')")
		b.rest(300)
		b.shoot("ready-" + l.name)
		b.press("Begin")
		origin := get[float64](b, "performance.timeOrigin")
		b.wait("document.querySelector('.taparea')")
		b.wait("groundbeat.heard()")
		b.rest(1000)
		b.shoot("count-in-" + l.name)
		b.rest(1600)
		for i := range 6 {
			b.key("j", b.now(), origin)
			b.rest([]int{1090, 1060, 1120, 1080, 1100, 1091}[i])
		}
		b.shoot("playing-" + l.name)
		b.waitFor("document.querySelector('#finding')", 2e10)
		b.rest(300)
		b.shoot("review-" + l.name)
		b.run("scrollTo(0, 1e6)")
		b.rest(200)
		b.shoot("review-end-" + l.name)
		t.Log(l.name, get[any](b, "groundbeat.log().then((l) => l.at(-1).taps.map((t) => t.offset))"),
			fmt.Sprint(b.console()))
	}
}
