//go:build js

package game

import "groundbeat/game/view"

// liveHead is a drumhead that moves, with the memory it is drawn in. A head
// that is still is drawn once.
type liveHead struct {
	view.Head
	picture view.Picture
	drawn   bool // as it stands
	moves   bool
}

// set puts another head in place of the one before.
func (h *liveHead) set(head view.Head) {
	h.Head, h.drawn = head, false
}

func (h *liveHead) draw() *view.Picture {
	if h.moves || !h.drawn {
		h.drawn = true
		h.picture.Reset()
		h.Head.Draw(&h.picture)
	}
	return &h.picture
}
