//go:build js

package main

import "syscall/js"

// mostRead is how much of a file is read: more than any rhythm has. A file
// that is longer is refused by whoever reads its text.
const mostRead = 1 << 17

// dragged lets files be dropped. Where no control opens one, a drop does nothing:
// the browser's own answer would leave the page.
func (p *page) dragged(event js.Value) { event.Call("preventDefault") }

func (p *page) dropped(event js.Value) {
	event.Call("preventDefault")
	opener := p.opener()
	if !opener.Truthy() {
		return
	}
	p.opened(opener.Get("dataset").Get("action").String(), event.Get("dataTransfer").Get("files"))
}

func (p *page) opener() js.Value { return p.root.Call("querySelector", ".file[data-action]") }

// opened reads the first of the files and hands over its name and its text, a
// line break between them.
func (p *page) opened(action string, files js.Value) {
	if files.Get("length").Int() == 0 {
		return
	}
	file := files.Index(0)
	name := file.Get("name").String()
	var read, failed js.Func
	done := func(text string) {
		read.Release()
		failed.Release()
		p.act(action, name+"\n"+text)
	}
	read = js.FuncOf(func(_ js.Value, args []js.Value) any { done(args[0].String()); return nil })
	failed = js.FuncOf(func(js.Value, []js.Value) any { done(""); return nil }) // as if it were empty
	file.Call("slice", 0, mostRead).Call("text").Call("then", read, failed)
}
