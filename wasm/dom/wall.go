//go:build js

package dom

import (
	"encoding/binary"
	"encoding/hex"
	"syscall/js"
	"time"
)

// wall is the browser's time and chance.
type Wall struct {
	performance js.Value
	crypto      js.Value
}

func NewWall() *Wall {
	return &Wall{performance: js.Global().Get("performance"), crypto: js.Global().Get("crypto")}
}

// Now implements [game.Wall].
func (w *Wall) Now() float64 { return w.performance.Call("now").Float() }

// Date implements [game.Wall].
func (w *Wall) Date() time.Time { return time.Now() }

// Seed implements [game.Wall]. Seeds are small enough to be read out and to
// survive a spreadsheet: below 10⁶.
func (w *Wall) Seed() uint64 { return binary.LittleEndian.Uint64(w.random(8))%999_999 + 1 }

// ID implements [game.Wall]: 96 random bits in hexadecimal. randomUUID would
// need a secure page.
func (w *Wall) ID() string { return hex.EncodeToString(w.random(12)) }

func (w *Wall) random(n int) []byte {
	bytes := js.Global().Get("Uint8Array").New(n)
	w.crypto.Call("getRandomValues", bytes)
	out := make([]byte, n)
	js.CopyBytesToGo(out, bytes)
	return out
}
