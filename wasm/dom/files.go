//go:build js

package dom

import (
	"errors"
	"io"
	"syscall/js"
)

// mostRead is how much of a file is read: more than any rhythm has. A file
// that is longer is refused by whoever reads its text.
const mostRead = 1 << 17

// dragged lets files be dropped. Where no control opens one, a drop does nothing:
// the browser's own answer would leave the page.
func (p *Page) dragged(event js.Value) { event.Call("preventDefault") }

func (p *Page) dropped(event js.Value) {
	event.Call("preventDefault")
	opener := p.opener()
	if !opener.Truthy() {
		return
	}
	p.opened(opener.Get("dataset").Get("action").String(), event.Get("dataTransfer").Get("files"))
}

func (p *Page) opener() js.Value { return p.root.Call("querySelector", ".file[data-action]") }

// opened reads the first of the files and hands over its name and the beginning of its
// text, a line break between them, and the way to the whole.
func (p *Page) opened(action string, files js.Value) {
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
		p.Pending[len(p.Pending)-1].File = &fileReader{file: file}
	}
	read = js.FuncOf(func(_ js.Value, args []js.Value) any { done(args[0].String()); return nil })
	failed = js.FuncOf(func(js.Value, []js.Value) any { done(""); return nil }) // as if it were empty
	file.Call("slice", 0, mostRead).Call("text").Call("then", read, failed)
}

// fileReader reads a file of the player's from its beginning, in pieces: a long one at
// once would hold up the page. Read waits for the browser, and so must not be called
// within a frame.
type fileReader struct {
	file  js.Value // a File, or another Blob
	At    int      // bytes that were asked for
	piece []byte
}

const pieceSize = 1 << 16 // bytes

// Read implements [io.Reader].
func (r *fileReader) Read(into []byte) (int, error) {
	if len(r.piece) == 0 {
		if r.At >= r.file.Get("size").Int() {
			return 0, io.EOF
		}
		buffer, err := Await(r.file.Call("slice", r.At, r.At+pieceSize).Call("arrayBuffer"))
		if err != nil {
			return 0, err
		}
		r.At += pieceSize
		bytes := js.Global().Get("Uint8Array").New(buffer)
		r.piece = make([]byte, bytes.Length())
		js.CopyBytesToGo(r.piece, bytes)
	}
	n := copy(into, r.piece)
	r.piece = r.piece[n:]
	return n, nil
}

// await waits for what a promise comes to.
func Await(promise js.Value) (value js.Value, err error) {
	come := make(chan struct{})
	kept := js.FuncOf(func(_ js.Value, args []js.Value) any { value = args[0]; close(come); return nil })
	broken := js.FuncOf(func(_ js.Value, args []js.Value) any {
		err = errors.New(js.Global().Call("String", args[0]).String())
		close(come)
		return nil
	})
	defer kept.Release()
	defer broken.Release()
	promise.Call("then", kept, broken)
	<-come
	return value, err
}
