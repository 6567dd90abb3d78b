//go:build js

package main

import (
	"syscall/js"

	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
)

// page shows screens as real elements and tells what the player did with them.
// It is the one renderer: a screen's tree goes in, and only what changed is
// touched, so that focus, caret and scroll stay where they are.
type page struct {
	document js.Value
	root     js.Value
	start    js.Value // what the page says until the first screen is shown; then null
	shown    view.Screen
	nodes    map[string]*node
	events   []host.Event
	places   []host.Place
	moved    bool // the places must be measured again
	width    float64
	light    js.Value
	calm     js.Value
	broad    js.Value
	theme    string
	at       func(action, value string) // told of an action at once, before the next tick
	room     *room
	sketches *sketches
	trail    *trail
	coarse   js.Value // whether the pointer is a finger
	typed    bool     // a keyboard was used
}

// node is an item on the page with what was last written to it.
type node struct {
	item view.Item
	el   js.Value // the item's own element
	main js.Value // where its children or its value live
}

func newPage(start js.Value) *page {
	window := js.Global()
	p := &page{
		document: window.Get("document"),
		start:    start,
		nodes:    map[string]*node{},
		moved:    true,
		light:    window.Call("matchMedia", "(prefers-color-scheme: light)"),
		calm:     window.Call("matchMedia", "(prefers-reduced-motion: reduce)"),
		broad:    window.Call("matchMedia", "(min-width: 640px) and (min-aspect-ratio: 1/1)"), // as style.css has it
		coarse:   window.Call("matchMedia", "(pointer: coarse)"),
		at:       func(string, string) {},
	}
	p.root = p.document.Call("getElementById", "page")
	p.listen(p.root, "click", p.clicked)
	p.listen(p.root, "input", p.changed)
	p.listen(window, "keydown", p.pressed)
	p.room = newRoom(p)
	p.sketches = newSketches(p)
	p.trail = newTrail(p)
	p.listen(window, "dragover", p.dragged)
	p.listen(window, "drop", p.dropped)
	move := func(js.Value) { p.moved = true }
	p.measure()
	p.listen(window, "resize", func(js.Value) { p.measure() })
	p.listen(p.document, "scroll", move)
	watch := js.FuncOf(func(js.Value, []js.Value) any { p.moved = true; return nil })
	window.Get("ResizeObserver").New(watch).Call("observe", p.root)
	return p
}

func (p *page) listen(target js.Value, kind string, f func(event js.Value)) {
	target.Call("addEventListener", kind, js.FuncOf(func(_ js.Value, args []js.Value) any {
		f(args[0])
		return nil
	}), true)
}

func (p *page) act(action, value string) {
	if action != "" {
		p.at(action, value)
		p.atOnce(action)
		p.events = append(p.events, host.Event{Kind: host.Used, Action: action, Value: value})
	}
}

// clicked answers buttons; other controls are answered when they change.
func (p *page) clicked(event js.Value) {
	target := event.Get("target").Call("closest", "button[data-action]")
	if !target.IsNull() {
		p.act(target.Get("dataset").Get("action").String(), target.Get("value").String())
	}
}

func (p *page) changed(event js.Value) {
	target := event.Get("target")
	holder := target.Call("closest", "[data-action]")
	if holder.IsNull() {
		return
	}
	action := holder.Get("dataset").Get("action").String()
	if files := target.Get("files"); files.Truthy() {
		p.opened(action, files)
		target.Set("value", "") // the same file may be opened again
		return
	}
	value := target.Get("value").String()
	if target.Get("type").String() == "checkbox" {
		value = ""
		if target.Get("checked").Bool() {
			value = "yes"
		}
	}
	p.act(action, value)
}

func (p *page) pressed(event js.Value) {
	composing := event.Get("isComposing").Truthy()                                                       // Escape is then for what is being typed
	p.typed = p.typed || !composing && event.Get("isTrusted").Bool() && event.Get("code").String() != "" // keys on glass have no place
	if !composing && p.keyed(event) {
		return
	}
	if event.Get("key").String() == "Escape" && !event.Get("repeat").Bool() && !composing {
		p.act(p.shown.Escape, view.ByEscape)
	}
}

// Events implements [host.Page].
func (p *page) Events(into []host.Event) []host.Event {
	into = append(into, p.events...)
	p.events = p.events[:0]
	return into
}

// Light implements [host.Page].
func (p *page) Light() bool {
	if p.theme != link.ThemeSystem {
		return p.theme == link.ThemeLight
	}
	return p.light.Get("matches").Bool()
}

// Theme implements [host.Page]. The style sheet knows it by the root element.
func (p *page) Theme(theme string) {
	p.theme = theme
	root := p.document.Get("documentElement")
	if theme == link.ThemeSystem {
		root.Call("removeAttribute", "data-theme")
		return
	}
	root.Call("setAttribute", "data-theme", theme)
}

// Calm implements [host.Page].
func (p *page) Calm() bool { return p.calm.Get("matches").Bool() }

// Width implements [host.Page].
func (p *page) Width() float64 { return p.width }

func (p *page) measure() {
	p.width = p.document.Get("documentElement").Get("clientWidth").Float()
	p.moved = true
}

// TwoColumns implements [host.Page].
func (p *page) TwoColumns() bool { return p.broad.Get("matches").Bool() }

// Touch implements [host.Page].
func (p *page) Touch() bool { return !p.typed && p.coarse.Get("matches").Bool() }

// Places implements [host.Page]. It measures only after something moved.
func (p *page) Places(into []host.Place) []host.Place {
	if p.moved {
		p.moved = false
		p.places = p.places[:0]
		found := p.document.Call("querySelectorAll", "[data-place]")
		for i := range found.Length() {
			el := found.Index(i)
			box := el.Call("getBoundingClientRect")
			p.places = append(p.places, host.Place{
				Picture: el.Get("dataset").Get("place").String(),
				X:       box.Get("x").Float(), Y: box.Get("y").Float(),
				W: box.Get("width").Float(), H: box.Get("height").Float(),
			})
		}
	}
	return append(into, p.places...)
}

// Show implements [host.Page].
func (p *page) Show(s view.Screen) {
	arrived := s.ID != p.shown.ID
	html := p.document.Get("documentElement")
	if s.Title != p.shown.Title {
		p.document.Set("title", s.Title)
	}
	if s.Lang != p.shown.Lang {
		html.Set("lang", s.Lang)
	}
	if s.Dir != p.shown.Dir {
		html.Set("dir", s.Dir)
	}
	if p.start.Truthy() {
		p.start.Call("remove")
		p.start = js.Null()
	}
	if arrived {
		p.root.Get("dataset").Set("screen", s.ID)
		js.Global().Call("scrollTo", 0, 0)
	}
	p.room.show(s.Room)
	before := p.document.Get("activeElement")
	if p.patch(p.root, p.shown.Items, s.Items) {
		p.moved = true
	}
	if dialog := p.root.Call("querySelector", "dialog:not([open])"); dialog.Truthy() {
		dialog.Call("showModal") // the rest is inert
	}
	if arrived || s.Focus != p.shown.Focus {
		p.focus(s.FocusID())
	} else {
		p.refocus(before, &s)
	}
	p.shown = s
}

// refocus gives the focus back where the patch has taken it away: to what had
// it, to what stands under the same id now, or else as on arrival.
func (p *page) refocus(before js.Value, s *view.Screen) {
	body := p.document.Get("body")
	if before.Equal(body) || !p.document.Get("activeElement").Equal(body) {
		return
	}
	if before.Get("isConnected").Bool() {
		focus(before)
	} else if id := before.Get("id").String(); p.nodes[id] != nil {
		p.focus(id)
	} else {
		p.focus(s.FocusID())
	}
}

func (p *page) focus(id string) {
	if n := p.nodes[id]; n != nil {
		focus(n.el)
	}
}

func focus(el js.Value) { el.Call("focus", map[string]any{"preventScroll": true}) }

// patch makes the children of parent show the items; it reports whether it
// changed anything. Children keep their elements as long as id and role stay.
func (p *page) patch(parent js.Value, old, items []view.Item) bool {
	if same(old, items) {
		return false
	}
	keep := map[string]bool{}
	for i := range items {
		keep[items[i].ID] = true
	}
	for i := range old {
		n := p.nodes[old[i].ID]
		if n != nil && !keep[old[i].ID] && n.el.Get("parentNode").Equal(parent) {
			p.forget(&old[i])
		}
	}
	var last *node
	for i := range items {
		n := p.node(&items[i])
		at := parent.Get("firstElementChild")
		if last != nil {
			at = last.el.Get("nextElementSibling")
		}
		if !n.el.Equal(at) {
			parent.Call("insertBefore", n.el, at)
		}
		last = n
	}
	return true
}

// node returns the item's node, made or brought up to date.
func (p *page) node(it *view.Item) *node {
	n := p.nodes[it.ID]
	if n != nil && n.item.Role != it.Role {
		p.forget(&n.item)
		n = nil
	}
	if n == nil {
		n = p.build(it)
		p.nodes[it.ID] = n
		p.write(n, nil, it)
	} else if !view.Same(&n.item, it) {
		p.write(n, &n.item, it)
	}
	p.patch(n.main, n.item.Children, it.Children)
	n.item = *it
	return n
}

// forget takes an item and all that is still below it off the page.
func (p *page) forget(it *view.Item) {
	n := p.nodes[it.ID]
	if n == nil {
		return
	}
	for i := range it.Children {
		if c := p.nodes[it.Children[i].ID]; c != nil && c.el.Get("parentNode").Equal(n.main) {
			p.forget(&it.Children[i])
		}
	}
	n.el.Call("remove")
	delete(p.nodes, it.ID)
}

// same reports whether two lists of items are equal down to the leaves. It
// allocates nothing: an unchanged screen costs only this.
func same(a, b []view.Item) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if !view.Same(&a[i], &b[i]) || !same(a[i].Children, b[i].Children) {
			return false
		}
	}
	return true
}
