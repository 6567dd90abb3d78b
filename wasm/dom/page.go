//go:build js

package dom

import (
	"syscall/js"

	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
)

// page shows screens as real elements and tells what the player did with them.
// It is the one renderer: a screen's tree goes in, and only what changed is
// touched, so that focus, caret and scroll stay where they are.
type Page struct {
	Document js.Value
	root     js.Value
	start    js.Value // what the page says until the first screen is shown; then null
	shown    view.Screen
	nodes    map[string]*node
	Pending  []host.Event
	places   []host.Place
	moved    bool // the places must be measured again
	width    float64
	light    js.Value
	calm     js.Value
	broad    js.Value
	theme    string
	At       func(action, value string) // told of an action at once, before the next tick
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

func NewPage(start js.Value) *Page {
	window := js.Global()
	p := &Page{
		Document: window.Get("document"),
		start:    start,
		nodes:    map[string]*node{},
		moved:    true,
		light:    window.Call("matchMedia", "(prefers-color-scheme: light)"),
		calm:     window.Call("matchMedia", "(prefers-reduced-motion: reduce)"),
		broad:    window.Call("matchMedia", "(min-width: 640px) and (min-aspect-ratio: 1/1)"), // as style.css has it
		coarse:   window.Call("matchMedia", "(pointer: coarse)"),
		At:       func(string, string) {},
	}
	p.root = p.Document.Call("getElementById", "page")
	p.Listen(p.root, "click", p.clicked)
	p.Listen(p.root, "input", p.Changed)
	p.Listen(window, "keydown", p.pressed)
	p.room = newRoom(p)
	p.sketches = newSketches(p)
	p.trail = newTrail(p)
	p.Listen(window, "dragover", p.dragged)
	p.Listen(window, "drop", p.dropped)
	move := func(js.Value) { p.moved = true }
	p.measure()
	p.Listen(window, "resize", func(js.Value) { p.measure() })
	p.Listen(p.Document, "scroll", move)
	watch := js.FuncOf(func(js.Value, []js.Value) any { p.moved = true; return nil })
	window.Get("ResizeObserver").New(watch).Call("observe", p.root)
	return p
}

func (p *Page) Listen(target js.Value, kind string, f func(event js.Value)) {
	target.Call("addEventListener", kind, js.FuncOf(func(_ js.Value, args []js.Value) any {
		f(args[0])
		return nil
	}), true)
}

func (p *Page) act(action, value string) {
	if action != "" {
		p.At(action, value)
		p.atOnce(action)
		p.Pending = append(p.Pending, host.Event{Kind: host.Used, Action: action, Value: value})
	}
}

// clicked answers buttons; other controls are answered when they change.
func (p *Page) clicked(event js.Value) {
	target := event.Get("target").Call("closest", "button[data-action]")
	if !target.IsNull() {
		p.act(target.Get("dataset").Get("action").String(), target.Get("value").String())
	}
}

func (p *Page) Changed(event js.Value) {
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

func (p *Page) pressed(event js.Value) {
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
func (p *Page) Events(into []host.Event) []host.Event {
	into = append(into, p.Pending...)
	p.Pending = p.Pending[:0]
	return into
}

// Light implements [host.Page].
func (p *Page) Light() bool {
	if p.theme != link.ThemeSystem {
		return p.theme == link.ThemeLight
	}
	return p.light.Get("matches").Bool()
}

// Theme implements [host.Page]. The style sheet knows it by the root element.
func (p *Page) Theme(theme string) {
	p.theme = theme
	root := p.Document.Get("documentElement")
	if theme == link.ThemeSystem {
		root.Call("removeAttribute", "data-theme")
		return
	}
	root.Call("setAttribute", "data-theme", theme)
}

// Calm implements [host.Page].
func (p *Page) Calm() bool { return p.calm.Get("matches").Bool() }

// Width implements [host.Page].
func (p *Page) Width() float64 { return p.width }

func (p *Page) measure() {
	p.width = p.Document.Get("documentElement").Get("clientWidth").Float()
	p.moved = true
}

// TwoColumns implements [host.Page].
func (p *Page) TwoColumns() bool { return p.broad.Get("matches").Bool() }

// Touch implements [host.Page].
func (p *Page) Touch() bool { return !p.typed && p.coarse.Get("matches").Bool() }

// Places implements [host.Page]. It measures only after something moved.
func (p *Page) Places(into []host.Place) []host.Place {
	if p.moved {
		p.moved = false
		p.places = p.places[:0]
		found := p.Document.Call("querySelectorAll", "[data-place]")
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
func (p *Page) Show(s view.Screen) {
	arrived := s.ID != p.shown.ID
	html := p.Document.Get("documentElement")
	if s.Title != p.shown.Title {
		p.Document.Set("title", s.Title)
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
	before := p.Document.Get("activeElement")
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
func (p *Page) refocus(before js.Value, s *view.Screen) {
	body := p.Document.Get("body")
	if before.Equal(body) || !p.Document.Get("activeElement").Equal(body) {
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

func (p *Page) focus(id string) {
	if n := p.nodes[id]; n != nil {
		focus(n.el)
	}
}

func focus(el js.Value) { el.Call("focus", map[string]any{"preventScroll": true}) }

// patch makes the children of parent show the items; it reports whether it
// changed anything. Children keep their elements as long as id and role stay.
func (p *Page) patch(parent js.Value, old, items []view.Item) bool {
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
func (p *Page) node(it *view.Item) *node {
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
func (p *Page) forget(it *view.Item) {
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
