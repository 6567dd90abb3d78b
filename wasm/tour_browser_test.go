//go:build browser && !js

package main

import "testing"

func TestTour(t *testing.T) {
	s := serve(t)
	b := open(t)
	b.size(1280, 800, 1)
	b.dark(true)
	b.visit(s.URL + "/?screen=listen&rhythm=saidi&riff=filled")
	b.rest(300)
	b.shoot("listen")
	b.press("Play")
	b.rest(2500)
	b.shoot("listen-playing")
	b.visit(s.URL + "/?screen=which&seed=5")
	b.rest(300)
	b.shoot("which-ready")
	b.press("Begin")
	b.rest(2500)
	b.shoot("which-asked")
	b.run(`document.querySelector("#choice-1").click()`)
	b.rest(800)
	b.shoot("which-review")
	b.visit(s.URL + "/?screen=dums&rhythm=any")
	b.rest(300)
	b.shoot("dums-any")
	t.Log(b.console())
}
