package session

import (
	"time"

	"groundbeat/game/playback"
	"groundbeat/game/view"
)

// helped answers the controls of the ear, while a player's passage is under way or
// while it is not. It reports whether it was one of them.
func (d *desk) helped(p *playback.Track, underWay bool, action, value string) bool {
	at, eight := time.Duration(0), time.Duration(0)
	if underWay {
		at, _, _ = p.Heard(d.Wall.Now())
		eight = playback.Eight(p.Passage.Rhythm(max(at, 0)), p.Passage.BPM())
	}
	return d.ear.Act(action, value, at, eight)
}

// cut ends a round that is under way, without result.
func (d *desk) cut(p *playback.Track, r interface {
	UnderWay() bool
	Cut(why string)
}, why string) {
	if r.UnderWay() {
		r.Cut(why)
		p.Stop()
		d.ear.Back()
	}
}

// placed adds the notes on how the taps of a round in review were placed.
func (d *desk) placed(notes []view.Note, s *playback.Taps) []view.Note {
	if s.Coarse {
		notes = append(notes, view.NoteCoarse)
	}
	if d.outputs.Measured() == nil {
		notes = append(notes, view.NoteNoSetUp)
	}
	return notes
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
