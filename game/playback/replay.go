package playback

import (
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

// Replay is how what was played is heard once more in a review.
type Replay struct {
	Drums  string // view.DrumsBoth and so on; "": both
	Slowly bool
}

// Apply lets the drums be heard that were chosen.
func (a *Replay) Apply(s host.Sound) {
	switch a.Drums {
	case roundview.DrumsBass:
		s.Balance(Levels(100))
	case roundview.DrumsLead:
		s.Balance(Levels(-100))
	default:
		s.Balance(1, 1)
	}
}

// Set answers the controls of a review, and reports whether what is heard must
// begin anew.
func (a *Replay) Set(action, value string) (anew bool) {
	if action == view.ActDrums {
		a.Drums = value
		return false
	}
	a.Slowly = value != ""
	return true
}

// Tempo is how fast it is heard.
func (a *Replay) Tempo(bpm int) int {
	if a.Slowly {
		return max(link.LeastBPM, bpm*2/3)
	}
	return bpm
}
