//go:build js

package main

import (
	"encoding/binary"
	"encoding/hex"
	"syscall/js"
	"time"
)

// wall is the browser's time and chance.
type wall struct {
	performance js.Value
	crypto      js.Value
}

func newWall() *wall {
	return &wall{performance: js.Global().Get("performance"), crypto: js.Global().Get("crypto")}
}

// Now implements [game.Wall].
func (w *wall) Now() float64 { return w.performance.Call("now").Float() }

// Date implements [game.Wall].
func (w *wall) Date() time.Time { return time.Now() }

// Seed implements [game.Wall]. Seeds are small enough to be read out and to
// survive a spreadsheet: below 10⁶.
func (w *wall) Seed() uint64 { return binary.LittleEndian.Uint64(w.random(8))%999_999 + 1 }

// ID implements [game.Wall]: 96 random bits in hexadecimal. randomUUID would
// need a secure page.
func (w *wall) ID() string { return hex.EncodeToString(w.random(12)) }

func (w *wall) random(n int) []byte {
	bytes := js.Global().Get("Uint8Array").New(n)
	w.crypto.Call("getRandomValues", bytes)
	out := make([]byte, n)
	js.CopyBytesToGo(out, bytes)
	return out
}
