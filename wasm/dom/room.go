//go:build js

package dom

import (
	"strings"
	"syscall/js"
	"time"

	"groundbeat/game/view"
)

// room is what a page does while a room sees it: the display stays awake, and the
// pointer hides when it rests.
type room struct {
	*Page
	on    bool
	lock  js.Value // of the display; null: none
	rests *time.Timer
}

// pointerRests is how long the pointer stands still before it hides.
const pointerRests = 2 * time.Second

func newRoom(p *Page) *room {
	r := &room{Page: p, lock: js.Null()}
	p.Listen(p.Document, "visibilitychange", func(js.Value) { r.awake() })
	p.Listen(js.Global(), "pointermove", func(js.Value) { r.pointed() })
	// A press leaves the focus where it is, so that the next key goes on.
	p.Listen(p.root, "mousedown", func(event js.Value) {
		if r.on && !event.Get("target").Call("closest", "button").IsNull() {
			event.Call("preventDefault")
		}
	})
	return r
}

// show begins or ends it.
func (r *room) show(on bool) {
	if on == r.on {
		return
	}
	r.on = on
	r.Document.Get("documentElement").Get("classList").Call("toggle", "room", on)
	if on {
		r.awake()
		r.pointed()
		return
	}
	r.hide(false)
	if !r.lock.IsNull() {
		r.lock.Call("release")
		r.lock = js.Null()
	}
}

// awake asks for the display to stay awake, as far as the browser can; what is hidden
// gives that up by itself.
func (r *room) awake() {
	locks := js.Global().Get("navigator").Get("wakeLock")
	if !r.on || !locks.Truthy() || r.Document.Get("hidden").Bool() {
		return
	}
	asked := locks.Call("request", "screen")
	go func() {
		lock, err := Await(asked)
		switch {
		case err != nil: // then it does not
		case r.on:
			r.lock = lock
		default: // the room was left meanwhile
			lock.Call("release")
		}
	}()
}

func (r *room) pointed() {
	if !r.on {
		return
	}
	r.hide(false)
	if r.rests != nil {
		r.rests.Stop()
	}
	r.rests = time.AfterFunc(pointerRests, func() { r.hide(r.on) })
}

func (r *room) hide(on bool) {
	r.Document.Get("documentElement").Get("classList").Call("toggle", "resting", on)
}

// atOnce does what the browser allows only while a press is answered.
func (p *Page) atOnce(action string) {
	switch action {
	case view.ActPrint:
		js.Global().Call("print")
	case view.ActFull:
		root := p.Document.Get("documentElement")
		switch {
		case p.Document.Get("fullscreenElement").Truthy():
			go Await(p.Document.Call("exitFullscreen"))
		case root.Get("requestFullscreen").Truthy():
			go Await(root.Call("requestFullscreen"))
		}
	}
}

// keyed answers a key of the screen's own, and reports whether it was one. A control
// that has the focus comes first: Enter and the space bar are a button's, and all keys
// those of what is typed or set.
func (p *Page) keyed(event js.Value) bool {
	if len(p.shown.Keys) == 0 || event.Get("ctrlKey").Bool() || event.Get("metaKey").Bool() || event.Get("altKey").Bool() {
		return false
	}
	name := event.Get("key").String()
	if len(name) == 1 {
		name = strings.ToLower(name)
	}
	for _, k := range p.shown.Keys {
		if k.Key != name {
			continue
		}
		if p.belongs(name) {
			return false
		}
		event.Call("preventDefault")
		if !event.Get("repeat").Bool() {
			p.act(k.Action, k.Value)
		}
		return true
	}
	return false
}

// scrolls reports whether a key scrolls the page now: there is more of it that way.
func (p *Page) scrolls(key string) bool {
	at, html := js.Global().Get("scrollY").Float(), p.Document.Get("documentElement")
	switch key {
	case "PageUp":
		return at > 0
	case "PageDown":
		return p.shown.Escape == view.ActClassLeave && at+html.Get("clientHeight").Float()+1 < html.Get("scrollHeight").Float()
	}
	return false
}

// belongs reports whether a key is for what has the focus, or for scrolling.
func (p *Page) belongs(key string) bool {
	focused := p.Document.Get("activeElement")
	if focused.Call("matches", "input, textarea, select").Bool() {
		return true
	}
	if (key == "Enter" || key == " ") && focused.Call("matches", "button, a, summary").Bool() {
		return true
	}
	return !p.shown.Room && p.scrolls(key)
}
