//go:build js

package dom

import (
	"strings"
	"syscall/js"
)

// newPageDocument puts into the test's document what the page's own has.
func newPageDocument() js.Value {
	document := js.Global().Get("document")
	root := document.Call("createElement", "main")
	root.Set("id", "page")
	document.Get("body").Call("append", root)
	return document
}

// outline is what lies below an element as "tag#id", children in brackets;
// elements without an id are left out.
func outline(el js.Value) string {
	var parts []string
	for child := el.Get("firstElementChild"); child.Truthy(); child = child.Get("nextElementSibling") {
		id := child.Get("id").String()
		if id == "" {
			continue
		}
		part := strings.ToLower(child.Get("tagName").String()) + "#" + id
		if below := outline(child); below != "" {
			part += "[" + below + "]"
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, " ")
}

// active is the id of what has the focus, "" if nothing has.
func (p *Page) active() string { return p.Document.Get("activeElement").Get("id").String() }

// script runs a script in the test's page.
func (p *Page) script(source string) {
	js.Global().Get("Function").New(source).Invoke()
}
