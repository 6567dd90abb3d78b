//go:build js

package game

import "groundbeat/game/view"

// drawing is what draws itself into an empty picture.
type drawing interface{ Draw(p *view.Picture) }

// live is the memory that a picture that moves is drawn in. One that is still is
// drawn once.
type live struct {
	picture view.Picture
	drawn   bool // as it stands
	moves   bool
}

// draw returns the picture of d as it is now.
func (l *live) draw(d drawing) *view.Picture {
	if l.moves || !l.drawn {
		l.drawn = true
		l.picture.Reset()
		d.Draw(&l.picture)
	}
	return &l.picture
}

// liveHead is a drumhead that moves.
type liveHead struct {
	view.Head
	live
}

// set puts another head in place of the one before.
func (h *liveHead) set(head view.Head) { h.Head, h.drawn = head, false }

// turn moves the sweep to a turn, or takes it off.
func (h *liveHead) turn(on bool, turn float64) {
	h.moves = h.moves && h.Turning || on // once more when it stops
	h.Turning, h.Turn = on, turn
}

func (h *liveHead) draw() *view.Picture { return h.live.draw(&h.Head) }

// liveLine is a whiteboard line that is drawn anew when it has changed.
type liveLine struct {
	view.Line
	live
}

// set puts another line in place of the one before.
func (l *liveLine) set(line view.Line) { l.Line, l.drawn = line, false }

func (l *liveLine) draw() *view.Picture { return l.live.draw(&l.Line) }

// board is about how wide a whiteboard line is: a column of the page, in CSS pixels.
func (d *desk) board() float64 {
	if d.width < 640 {
		return d.width - 32
	}
	return min(0.42*d.width, 576)
}
