//go:build js

package idb

import (
	"syscall/js"
	"time"
)

// slice is how long work goes on before the page may do something else: a third of a
// frame at 60 a second.
const slice = 6 * time.Millisecond

// work is something long, done in slices.
type Work struct{ since time.Time }

func NewWork() *Work { return &Work{time.Now()} }

// rest lets the page do what waits, once a slice is over.
func (w *Work) Rest() {
	if time.Since(w.since) < slice {
		return
	}
	pause()
	w.since = time.Now()
}

// pause goes on in another task of the page's. A message comes at once, where a timer
// would come after 4 ms.
func pause() {
	channel := js.Global().Get("MessageChannel").New()
	come := make(chan struct{})
	heard := js.FuncOf(func(js.Value, []js.Value) any { close(come); return nil })
	defer heard.Release()
	channel.Get("port1").Set("onmessage", heard)
	channel.Get("port2").Call("postMessage", true)
	<-come
	channel.Get("port1").Call("close")
}
