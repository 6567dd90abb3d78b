//go:build js

// Command wasm is the program in the page: it starts the game with the
// browser's own means. Elements, storage, taps and the bridge to the sound are
// here, and nothing that could be tested without a browser.
package main

import (
	"runtime/debug"
	"sync"
	"syscall/js"

	"groundbeat/assets"
	"groundbeat/audio"
	"groundbeat/game"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/wasm/dom"
	"groundbeat/wasm/store"
)

func main() {
	if err := run(); err != nil {
		panic(err) // the page says that the program has stopped
	}
}

func run() error {
	words, err := say.Load(assets.Words)
	if err != nil {
		return err
	}
	first, err := rhythm.Read(assets.Rhythms, link.FirstRound().Rhythm)
	if err != nil {
		return err
	}
	parts := js.Global().Get("groundbeatParts")
	b := newBrowser(parts)
	s := store.Make(parts.Get("local"), parts.Get("session"))
	s.Changed = func() { b.Pending = append(b.Pending, host.Event{Kind: host.Stored}) }
	s.Told = func(of string) { b.Pending = append(b.Pending, host.Event{Kind: host.Told, Value: of}) }
	b.shown = func() { s.Begin(parts) }
	publish(parts, b.sound, b.wall, s)
	g := game.New(host.Host{
		Sound: b.sound, Page: b, Store: s, Diary: s, Wall: b.wall,
		Classes: &store.Classroom{Store: s, Document: b.Document},
		Words:   words, First: first, Rhythms: sync.OnceValue(rhythms),
		Query:  js.Global().Get("location").Get("search").String(),
		Export: func() { b.export(s) },
		Reload: func() { js.Global().Get("location").Call("reload") },
	}, assets.Regular, assets.Bold)
	b.hideCanvas()
	return g.Run()
}

// rhythms reads all of them, most of which the first frame need not wait for.
func rhythms() *rhythm.Catalogue {
	all, err := rhythm.Load(assets.Rhythms)
	if err != nil {
		panic(err) // they are supplied
	}
	return all
}

// browser is the page with the sound and the taps that arrive through it.
type browser struct {
	*dom.Page
	wall   *dom.Wall
	sound  *lateSound
	played *bridgedSound // nil without sound, and until it is made
	box    *dom.Mailbox
	frames int    // up to 2
	shown  func() // what waits until the first frame is on the page, and takes a while
}

func newBrowser(parts js.Value) *browser {
	b := &browser{Page: dom.NewPage(parts.Get("start")), wall: dom.NewWall(), box: dom.NewMailbox(parts.Get("box"))}
	b.sound = &lateSound{Sound: &noSound{now: b.wall.Now}}
	if bridge := parts.Get("bridge"); bridge.Truthy() {
		b.sound.make = func() (host.Sound, error) { return b.listen(bridge) }
	} else {
		b.silent()
	}
	return b
}

// listen starts the sound, where there is one. The engine must not be asked to
// where there is none: it would end the program.
func (b *browser) listen(bridge js.Value) (host.Sound, error) {
	if !bridge.Call("open", int(audio.Rate)).Bool() {
		b.silent()
		return b.sound.Sound, nil
	}
	s, err := newSound(bridge)
	if err != nil {
		return nil, err
	}
	b.played = s
	b.At = func(action, value string) { // however long the next tick takes to come
		switch {
		case action == view.ActStop:
			s.Stop()
		case action == view.ActAlone && value != "":
			s.Balance(0, 1)
		}
	}
	return s, nil
}

// silent is how rounds are played on where there is no sound.
func (b *browser) silent() { b.Page.Listen(b.Document, "visibilitychange", b.hidden) }

// hidden cuts a round in pictures that nobody sees; with sound the bridge does.
func (b *browser) hidden(js.Value) {
	if b.Document.Get("hidden").Bool() {
		b.Pending = append(b.Pending, host.Event{Kind: host.Stopped, Reason: host.WhyHidden})
	}
}

// hideCanvas keeps the engine's canvas out of the way of focus and of screen
// readers: it shows only what the page says in words as well.
func (b *browser) hideCanvas() {
	canvas := b.Document.Call("querySelector", "canvas")
	canvas.Call("setAttribute", "aria-hidden", "true")
	canvas.Set("tabIndex", -1)
}

func (b *browser) export(s *store.Store) {
	s.ExportLines(s.Player.Id, func(err error) {
		if err != nil {
			b.Pending = append(b.Pending, host.Event{Kind: host.ExportFailed, Reason: err.Error()})
		}
	})
}

// Events implements [host.Page]: what came by mail, then what was done on the
// page.
func (b *browser) Events(into []host.Event) []host.Event {
	if b.frames++; b.frames == 2 { // the first is on the page
		debug.SetGCPercent(100) // off until now: the page starts it so
		go b.shown()
		switch none, err := b.sound.made(); {
		case err != nil:
			panic(err) // the page says that the program has stopped
		case none:
			into = append(into, host.Event{Kind: host.Running})
		}
	}
	b.box.Read(func(l dom.Letter) {
		if b.played != nil {
			b.played.hear(l)
		}
		switch int(l[0]) {
		case dom.TapLetter:
			into = append(into, host.Event{Kind: host.Tapped, Tap: host.Tap{
				At: l[1], X: l[2], Y: l[3], By: tappers[int(l[5])], Round: int(l[6]),
			}})
		case dom.StateLetter:
			into = append(into, stateEvent(l))
		}
	})
	return b.Page.Events(into)
}

// tappers are what a tap can be made by, in the order of the page's taps.js.
var tappers = [...]string{"key", "mouse", "touch", "pen", "click"}

// reasons are why a sound stops, in the order of the page's mail.js.
var reasons = [...]string{"", host.WhyHidden, host.WhyPaused, host.WhyGap, host.WhyGap}

func stateEvent(l dom.Letter) host.Event {
	if reason := reasons[int(l[2])]; reason != "" {
		return host.Event{Kind: host.Stopped, Reason: reason}
	}
	return host.Event{Kind: host.Running}
}
