package playback

import (
	"groundbeat/game/picture"
)

// Drawing is what draws itself into an empty picture, as still as was asked for.
type Drawing interface {
	Draw(p *picture.Picture)
	SetCalm(calm bool)
}

// Live is a drawing that changes, with the memory that its picture is drawn in. One that
// does not move is drawn once.
type Live[T any, P interface {
	*T
	Drawing
}] struct {
	Shown T    // what the picture shows now
	Moves bool // it is another in every frame

	picture picture.Picture
	drawn   bool // as it stands
	calm    bool // less motion was asked for
}

// The live pictures: a drumhead, a whiteboard line, and the line on the wall of a room.
type (
	Head = Live[picture.Head, *picture.Head]
	Line = Live[picture.Line, *picture.Line]
	Wall = Live[picture.Wall, *picture.Wall]
)

// Set puts another drawing in place of the one before.
func (l *Live[T, P]) Set(shown T) {
	l.Shown = shown
	P(&l.Shown).SetCalm(l.calm)
	l.Changed()
}

// Changed says that what is shown was changed.
func (l *Live[T, P]) Changed() { l.drawn = false }

// Draw returns the picture as it is now, calm if less motion was asked for.
func (l *Live[T, P]) Draw(calm bool) *picture.Picture {
	d := P(&l.Shown)
	if l.calm != calm {
		l.calm, l.drawn = calm, false
		d.SetCalm(calm)
	}
	if l.Moves || !l.drawn {
		l.drawn = true
		l.picture.Reset()
		d.Draw(&l.picture)
	}
	return &l.picture
}

// Turn moves the sweep of a head to a turn, or takes it off.
func Turn(h *Head, on bool, turn float64) {
	h.Moves = h.Moves && h.Shown.Turning || on // once more when it stops
	h.Shown.Turning, h.Shown.Turn = on, turn
}
