//go:build js

package dom

import (
	"encoding/binary"
	"math"
	"syscall/js"
)

// The kinds of letter; the page's mail.js has the same list with the meaning
// of each value.
const (
	ReadingLetter   = 1
	PlacementLetter = 2
	TapLetter       = 3
	StateLetter     = 4
)

const letterSize = 8 // numbers in a letter

// A letter is a kind and seven values.
type Letter [letterSize]float64

// A mailbox reads what the page's scripts posted.
type Mailbox struct {
	box, letters js.Value
	raw          []byte
}

func NewMailbox(box js.Value) *Mailbox {
	letters := box.Get("letters")
	return &Mailbox{box: box, letters: letters, raw: make([]byte, letters.Get("length").Int())}
}

// read calls each for every waiting letter, oldest first. With nothing waiting
// it costs one look and allocates nothing.
func (m *Mailbox) Read(each func(Letter)) {
	n := m.box.Get("waiting").Int()
	if n == 0 {
		return
	}
	js.CopyBytesToGo(m.raw[:n*letterSize*8], m.letters)
	m.box.Call("clear")
	for i := range n {
		var l Letter
		for j := range l {
			l[j] = math.Float64frombits(binary.LittleEndian.Uint64(m.raw[(i*letterSize+j)*8:]))
		}
		each(l)
	}
}
