package session

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
func (h *liveHead) set(head view.Head) {
	head.Calm = h.Calm
	h.Head, h.drawn = head, false
}

// turn moves the sweep to a turn, or takes it off.
func (h *liveHead) turn(on bool, turn float64) {
	h.moves = h.moves && h.Turning || on // once more when it stops
	h.Turning, h.Turn = on, turn
}

// draw returns the head as it is now, calm if less motion was asked for.
func (h *liveHead) draw(calm bool) *view.Picture {
	if h.Calm != calm {
		h.Calm, h.drawn = calm, false
	}
	return h.live.draw(&h.Head)
}

// liveLine is a whiteboard line that is drawn anew when it has changed.
type liveLine struct {
	view.Line
	live
}

// set puts another line in place of the one before.
func (l *liveLine) set(line view.Line) {
	line.Calm = l.Calm
	l.Line, l.drawn = line, false
}

// draw returns the line as it is now, calm if less motion was asked for.
func (l *liveLine) draw(calm bool) *view.Picture {
	if l.Calm != calm {
		l.Calm, l.drawn = calm, false
	}
	return l.live.draw(&l.Line)
}

// liveWall is a room's line that is drawn anew when it has changed.
type liveWall struct {
	view.Wall
	live
}

// set puts another line in place of the one before.
func (l *liveWall) set(wall view.Wall) {
	wall.Calm = l.Calm
	l.Wall, l.drawn = wall, false
}

// draw returns the line as it is now, calm if less motion was asked for.
func (l *liveWall) draw(calm bool) *view.Picture {
	if l.Calm != calm {
		l.Calm, l.drawn = calm, false
	}
	return l.live.draw(&l.Wall)
}

// calm reports whether pictures are to stand from stroke to stroke.
func (d *desk) calm() bool { return d.Page.Calm() }

// board is about how wide a whiteboard line is, in CSS pixels: as wide as the page, or
// as one of its two columns, and no wider than the page lets it be.
func (d *desk) board() float64 {
	if d.Page.TwoColumns() {
		return min(0.42*d.width, boardWide)
	}
	return min(d.width-32, boardWide)
}

// boardWide is the width that the style sheet lets a line have.
const boardWide = 576
