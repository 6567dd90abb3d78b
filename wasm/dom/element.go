//go:build js

package dom

import (
	"slices"
	"strconv"
	"syscall/js"

	"groundbeat/game/picture"
	"groundbeat/game/view"
)

// build makes the element for an item's role; write fills it.
func (p *Page) build(it *view.Item) *node {
	n := &node{el: p.make(tagOf(it))}
	n.main = n.el
	switch it.Role {
	case view.RoleHeading:
		n.el.Set("tabIndex", -1)
	case view.RoleButton:
		n.el.Set("type", "button")
	case view.RolePicture:
		n.el.Call("setAttribute", "role", "img")
	case view.RoleDialog:
		action := it.Action
		p.Listen(n.el, "cancel", func(event js.Value) { // the way back of a telephone, for one
			event.Call("preventDefault")
			p.act(action, "")
		})
	case view.RoleTapArea:
		n.el.Call("setAttribute", "role", "button")
		n.el.Set("tabIndex", 0)
	case view.RoleDetails:
		n.main = p.make("div")
		n.el.Call("append", p.make("summary"), n.main)
	}
	n.el.Set("id", it.ID)
	n.el.Get("classList").Call("add", it.Role.String())
	return n
}

// tags are the elements of roles; "" is a div. A tap area is no button element: its own
// click on the space bar would be a second tap.
var tags = [view.Roles]string{
	view.RoleText: "p", view.RoleButton: "button", view.RoleChoice: "fieldset",
	view.RoleSlider: "label", view.RoleField: "label", view.RoleCheckBox: "label", view.RoleFile: "label",
	view.RoleList: "ul", view.RoleListItem: "li", view.RoleTable: "table", view.RoleDialog: "dialog",
	view.RoleProgress: "progress", view.RoleLink: "a", view.RoleDetails: "details",
}

func tagOf(it *view.Item) string {
	if it.Role == view.RoleHeading {
		return "h" + strconv.Itoa(it.Level)
	}
	if tag := tags[it.Role]; tag != "" {
		return tag
	}
	return "div"
}

func (p *Page) make(tag string) js.Value { return p.Document.Call("createElement", tag) }

// put appends a new element with a text to parent.
func (p *Page) put(parent js.Value, tag, class, text string) js.Value {
	el := p.make(tag)
	if class != "" {
		el.Set("className", class)
	}
	if text != "" {
		el.Set("textContent", text)
	}
	parent.Call("append", el)
	return el
}

// write brings an element up to date; old is nil for a new one.
func (p *Page) write(n *node, old, it *view.Item) {
	if old == nil {
		old = &view.Item{}
	}
	if old.Look != it.Look {
		if old.Look != "" {
			n.el.Get("classList").Call("remove", old.Look)
		}
		if it.Look != "" {
			n.el.Get("classList").Call("add", it.Look)
		}
	}
	attribute(n.el, "lang", old.Lang, it.Lang)
	attribute(n.el, "dir", old.Dir, it.Dir)
	attribute(n.el, "data-action", old.Action, it.Action)
	if it.Live != old.Live {
		attribute(n.el, "aria-live", old.Live, it.Live)
	}
	p.content(n, old, it)
}

func (p *Page) content(n *node, old, it *view.Item) {
	switch it.Role {
	case view.RoleHeading:
		n.el.Set("textContent", it.Name)
	case view.RoleText, view.RoleStatus:
		p.text(n.el, it)
	case view.RoleButton:
		p.pressable(n.el, it)
	case view.RoleLink:
		n.el.Set("textContent", it.Name)
		n.el.Set("href", it.Value)
		n.el.Call("setAttribute", "href", n.el.Get("href")) // whole, as it is printed
	case view.RoleChoice:
		p.choice(n.el, old, it)
	case view.RoleSlider, view.RoleField, view.RoleCheckBox, view.RoleFile:
		p.control(n.el, it)
	case view.RoleListItem:
		if len(it.Children) == 0 {
			n.el.Set("textContent", it.Text)
		}
	case view.RoleTable:
		p.table(n.el, it)
	case view.RolePicture:
		n.el.Call("setAttribute", "aria-label", it.Name+". "+it.Text)
		attribute(n.el, "data-place", old.Place, it.Place)
		p.picture(n.el, it)
	case view.RoleTapArea:
		n.el.Call("setAttribute", "aria-label", it.Name)
		n.el.Get("dataset").Set("tap", it.Value)
	case view.RoleProgress:
		n.el.Call("setAttribute", "aria-label", it.Name)
		n.el.Set("max", it.Max-it.Min)
		n.el.Set("value", it.Num-it.Min)
	case view.RoleDetails:
		n.el.Get("firstElementChild").Set("textContent", it.Name)
	case view.RoleDialog:
		n.el.Call("setAttribute", "aria-label", it.Name)
	case view.RoleGroup:
		named(n.el, "group", it.Name)
	case view.RoleList:
		named(n.el, "list", it.Name)
	}
}

// named gives a group or a list a name, if it has one.
func named(el js.Value, role, name string) {
	if name != "" {
		el.Call("setAttribute", "role", role)
		el.Call("setAttribute", "aria-label", name)
	}
}

// pressable is the state of a button.
func (p *Page) pressable(el js.Value, it *view.Item) {
	p.button(el, it)
	el.Set("disabled", it.Disabled)
	el.Set("value", it.Value)
	if it.Action == view.ActGo {
		toggle(el, "aria-current", it.Pressed)
	} else {
		toggle(el, "aria-pressed", it.Pressed)
	}
}

// text writes a paragraph; a figure has its value above its words.
func (p *Page) text(el js.Value, it *view.Item) {
	if it.Look != view.LookFigure {
		el.Set("textContent", it.Text)
		return
	}
	p.twoLines(el, it.Value, it.Text)
}

// button writes what is on a button: its name, and below it a sentence if it has one.
func (p *Page) button(el js.Value, it *view.Item) {
	if it.Text == "" {
		el.Set("textContent", it.Name)
		return
	}
	p.twoLines(el, it.Name, it.Text)
}

// twoLines writes a strong text and another below it.
func (p *Page) twoLines(el js.Value, strong, text string) {
	el.Call("replaceChildren")
	p.put(el, "strong", "", strong)
	el.Call("append", " ") // between the two for those who hear it
	p.put(el, "span", "", text)
}

// choice writes a group of radio buttons, the browser's own. They are made anew
// only where what is offered changes, and the focus stays among them.
func (p *Page) choice(el js.Value, old, it *view.Item) {
	within := el.Call("contains", p.Document.Get("activeElement")).Bool()
	anew := old.Name != it.Name || !slices.Equal(old.Options, it.Options)
	if anew {
		el.Call("replaceChildren")
		p.put(el, "legend", "", it.Name)
		for _, o := range it.Options {
			p.option(el, it.ID, o)
		}
	}
	radios := el.Call("querySelectorAll", "input")
	for i, o := range it.Options {
		radio := radios.Index(i)
		radio.Set("checked", o.Value == it.Value)
		radio.Set("disabled", it.Disabled)
		if anew && within && o.Value == it.Value {
			focus(radio)
		}
	}
}

func (p *Page) option(el js.Value, name string, o view.Option) {
	label := p.put(el, "label", "", "")
	radio := p.put(label, "input", "", "")
	radio.Set("type", "radio")
	radio.Set("name", name)
	radio.Set("value", o.Value)
	p.put(label, "span", "", o.Label)
}

// control writes a labelled input: made once, then only its value is written.
func (p *Page) control(el js.Value, it *view.Item) {
	input := el.Call("querySelector", "input")
	if input.IsNull() {
		p.put(el, "span", "", it.Name)
		input = p.put(el, "input", "", "")
		input.Set("type", map[view.Role]string{view.RoleSlider: "range", view.RoleField: "text", view.RoleCheckBox: "checkbox", view.RoleFile: "file"}[it.Role])
		// For the eye only: the input says its value itself, and an output would be
		// announced besides.
		p.put(el, "output", "", "").Call("setAttribute", "aria-hidden", "true")
		if it.Ends[0] != "" {
			ends := p.put(el, "small", "", "")
			ends.Call("setAttribute", "aria-hidden", "true") // nor are the ends a part of its name
			p.put(ends, "span", "", it.Ends[0])
			p.put(ends, "span", "", it.Ends[1])
		}
	}
	input.Set("disabled", it.Disabled)
	switch it.Role {
	case view.RoleSlider:
		input.Set("min", it.Min)
		input.Set("max", it.Max)
		input.Set("step", it.Step)
		input.Set("value", it.Num)
		input.Call("setAttribute", "aria-valuetext", it.Value)
		el.Call("querySelector", "output").Set("textContent", it.Value)
	case view.RoleField:
		input.Set("value", it.Value)
	case view.RoleCheckBox:
		input.Set("checked", it.Checked)
	}
}

func (p *Page) table(el js.Value, it *view.Item) {
	el.Call("replaceChildren")
	p.put(el, "caption", "", it.Name)
	head := p.put(p.put(el, "thead", "", ""), "tr", "", "")
	for _, c := range it.Columns {
		p.put(head, "th", "", c).Set("scope", "col")
	}
	body := p.put(el, "tbody", "", "")
	for _, row := range it.Rows {
		tr := p.put(body, "tr", "", "")
		for i, cell := range row {
			if i == 0 {
				p.put(tr, "th", "", cell).Set("scope", "row")
			} else {
				p.put(tr, "td", "", cell)
			}
		}
	}
}

// picture leaves a place for the painter, or draws a still picture as SVG.
func (p *Page) picture(el js.Value, it *view.Item) {
	if it.Aspect > 0 {
		el.Get("style").Set("aspectRatio", strconv.FormatFloat(it.Aspect, 'f', 4, 64))
	}
	el.Call("replaceChildren")
	if it.Picture == nil {
		return
	}
	svg, palette := p.paper(it.Picture), picture.Dark()
	for i := range it.Picture.Shapes {
		svg.Call("append", p.mark(&it.Picture.Shapes[i], &palette))
	}
	el.Call("append", svg)
}

// paper is what the marks of a picture are drawn on.
func (p *Page) paper(drawn *picture.Picture) js.Value {
	svg := p.svg("svg")
	svg.Call("setAttribute", "viewBox", "0 0 "+strconv.Itoa(picture.Unit)+" "+strconv.FormatFloat(drawn.Height*picture.Unit, 'f', 0, 64))
	svg.Call("setAttribute", "aria-hidden", "true")
	return svg
}

// mark is a shape as an element.
func (p *Page) mark(shape *picture.Shape, palette *picture.Palette) js.Value {
	name, attrs, text := shape.Element(palette)
	el := p.svg(name)
	for _, a := range attrs {
		el.Call("setAttribute", a.Name, a.Value)
	}
	if text != "" {
		el.Set("textContent", text)
	}
	return el
}

func (p *Page) svg(tag string) js.Value {
	return p.Document.Call("createElementNS", "http://www.w3.org/2000/svg", tag)
}

func attribute(el js.Value, name, old, now string) {
	switch {
	case old == now:
	case now == "":
		el.Call("removeAttribute", name)
	default:
		el.Call("setAttribute", name, now)
	}
}

func toggle(el js.Value, name string, on bool) {
	if on {
		el.Call("setAttribute", name, "true")
	} else {
		el.Call("removeAttribute", name)
	}
}
