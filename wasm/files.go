//go:build js

package main

import "syscall/js"

// mostRead is how much of a file is read: more than any rhythm has. A file
// that is longer is refused by whoever reads its text.
const mostRead = 1 << 17

// dragged lets files be dropped where the screen has a control that opens one.
func (p *page) dragged(event js.Value) {
	if p.opener().Truthy() {
		event.Call("preventDefault")
	}
}

func (p *page) dropped(event js.Value) {
	opener := p.opener()
	if !opener.Truthy() {
		return
	}
	event.Call("preventDefault")
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
	var read js.Func
	read = js.FuncOf(func(_ js.Value, args []js.Value) any {
		defer read.Release()
		p.act(action, name+"\n"+args[0].String())
		return nil
	})
	file.Call("slice", 0, mostRead).Call("text").Call("then", read)
}
