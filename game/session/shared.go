package session

import (
	"io"

	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Shared is what the session hands to its controllers: what they may ask, and what they
// may change. It knows none of them.
type Shared struct {
	*host.Host
	Practice Practice

	Address  link.Address
	Problems []link.Problem // what is wrong with the link, if anything is
	Volume   int            // 0 to 100
	Width    float64        // of the window when the screen was made, in CSS pixels
	nth      uint64         // how many questions ago the link's own was asked
	Finished bool           // a round was finished here, now or earlier
	Stale    bool           // the screen must be made again
	Unsaved  error          // why the outputs were not
	Unmade   error          // why the file of all rounds was not made, when it was last asked for
	Outputs  host.Outputs
	Ear      playback.Ear
	Learner  Learner
	File     io.Reader // that was opened by the control that is used; nil: none
}

// Practice is how a controller asks for a practice, which the session goes through.
type Practice struct {
	Begin    func(steps []quiz.Step) // goes through its steps
	Finished func(r history.Round)   // a round is over, of it or not
	Meeting  func() bool             // is a rhythm being met that is new to the player?
}

// SetVolume sets the volume, 0 to 100. The level goes with its square, which is
// nearer to how loudness is heard.
func (d *Shared) SetVolume(volume int) {
	d.Volume = min(max(volume, 0), 100)
	part := float64(d.Volume) / 100
	d.Sound.Volume(part * part)
}

// ShownVolume is the volume, or less than 0 where there is no sound to set.
func (d *Shared) ShownVolume() int {
	if !d.Sound.Audible() {
		return -1
	}
	return d.Volume
}

// Notes are the asides that every screen may need.
func (d *Shared) Notes() []view.Note {
	var notes []view.Note
	if !d.Sound.Audible() {
		notes = append(notes, view.NoteNoSound)
	}
	if d.Unsaved != nil && !d.Store.Storage().None { // or it is said of everything
		notes = append(notes, view.NoteNotKept)
	}
	if d.Unmade != nil {
		notes = append(notes, view.NoteNotExported)
	}
	if d.Address.Riffs != 0 && d.Address.Seed != 0 {
		notes = append(notes, view.NoteRiffs)
	}
	return notes
}

// Calm reports whether pictures are to stand from stroke to stroke.
func (d *Shared) Calm() bool { return d.Page.Calm() }

// Board is about how wide a whiteboard line is, in CSS pixels: as wide as the page, or
// as one of its two columns, and no wider than the page lets it be.
func (d *Shared) Board() float64 {
	if d.Page.TwoColumns() {
		return min(0.42*d.Width, boardWide)
	}
	return min(d.Width-32, boardWide)
}

// boardWide is the width that the style sheet lets a line have.
const boardWide = 576

// Known is what is known of her on the output in use.
func (d *Shared) Known() quiz.Known { return d.Learner.Known(d.OutputName()) }

// Lean is which wrong answers come first in her questions. Where a link names the
// question it names its answers too, whoever opens it.
func (d *Shared) Lean() quiz.Lean {
	if d.Address.Seed != 0 || !d.Learner.IsRead() {
		return quiz.Lean{}
	}
	return d.Known().Lean()
}

// themeRemembered is the name under which the theme is remembered.
const themeRemembered = "theme"

// Theme is the theme that was chosen.
func (d *Shared) Theme() string { return link.Theme(d.Store.Remembered(themeRemembered)) }

// SetTheme chooses a theme.
func (d *Shared) SetTheme(theme string) {
	d.Store.Remember(themeRemembered, link.Theme(theme))
	d.Page.Theme(link.Theme(theme))
}
