package control

import (
	"io"

	"groundbeat/game/coach"
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
	Nth      uint64         // how many questions ago the link's own was asked
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
	Begin    func(steps []coach.Step) // goes through its steps
	Finished func(r history.Round)    // a round is over, of it or not
	Meeting  func() bool              // is a rhythm being met that is new to the player?
}

// SetVolume sets the volume, 0 to 100. The level goes with its square, which is
// nearer to how loudness is heard.
func (s *Shared) SetVolume(volume int) {
	s.Volume = min(max(volume, 0), 100)
	part := float64(s.Volume) / 100
	s.Sound.Volume(part * part)
}

// ShownVolume is the volume, or less than 0 where there is no sound to set.
func (s *Shared) ShownVolume() int {
	if !s.Sound.Audible() {
		return -1
	}
	return s.Volume
}

// Notes are the asides that every screen may need.
func (s *Shared) Notes() []view.Note {
	var notes []view.Note
	if !s.Sound.Audible() {
		notes = append(notes, view.NoteNoSound)
	}
	if s.Unsaved != nil && !s.Store.Storage().None { // or it is said of everything
		notes = append(notes, view.NoteNotKept)
	}
	if s.Unmade != nil {
		notes = append(notes, view.NoteNotExported)
	}
	if s.Address.Riffs != 0 && s.Address.Seed != 0 {
		notes = append(notes, view.NoteRiffs)
	}
	return notes
}

// Calm reports whether pictures are to stand from stroke to stroke.
func (s *Shared) Calm() bool { return s.Page.Calm() }

// Board is about how wide a whiteboard line is, in CSS pixels: as wide as the page, or
// as one of its two columns, and no wider than the page lets it be.
func (s *Shared) Board() float64 {
	if s.Page.TwoColumns() {
		return min(0.42*s.Width, boardWide)
	}
	return min(s.Width-32, boardWide)
}

// boardWide is the width that the style sheet lets a line have.
const boardWide = 576

// Known is what is known of her on the output in use.
func (s *Shared) Known() coach.Known { return s.Learner.Known(s.OutputName()) }

// Lean is which wrong answers come first in her questions. Where a link names the
// question it names its answers too, whoever opens it.
func (s *Shared) Lean() quiz.Lean {
	if s.Address.Seed != 0 || !s.Learner.IsRead() {
		return quiz.Lean{}
	}
	return s.Known().Lean()
}

// ThemeRemembered is the name under which the theme is remembered.
const ThemeRemembered = "theme"

// Theme is the theme that was chosen.
func (s *Shared) Theme() string { return link.Theme(s.Store.Remembered(ThemeRemembered)) }

// SetTheme chooses a theme.
func (s *Shared) SetTheme(theme string) {
	s.Store.Remember(ThemeRemembered, link.Theme(theme))
	s.Page.Theme(link.Theme(theme))
}
