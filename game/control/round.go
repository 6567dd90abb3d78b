package control

import (
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// Helped answers the controls of the ear, while a player's passage is under way or
// while it is not. It reports whether it was one of them.
func (s *Shared) Helped(p *playback.Track, underWay bool, action, value string) bool {
	at, eight := time.Duration(0), time.Duration(0)
	if underWay {
		at, _, _ = p.Heard(s.Wall.Now())
		eight = playback.Eight(p.Passage.Rhythm(max(at, 0)), p.Passage.BPM())
	}
	return s.Ear.Act(action, value, at, eight)
}

// Cut ends a round that is under way, without result.
func (s *Shared) Cut(p *playback.Track, r interface {
	UnderWay() bool
	Cut(why string)
}, why string) {
	if r.UnderWay() {
		r.Cut(why)
		p.Stop()
		s.Ear.Back()
	}
}

// Placed adds the notes on how the taps of a round in review were placed.
func (s *Shared) Placed(notes []view.Note, taps *playback.Taps) []view.Note {
	if taps.Coarse {
		notes = append(notes, view.NoteCoarse)
	}
	if s.Outputs.Measured() == nil {
		notes = append(notes, view.NoteNoSetUp)
	}
	return notes
}

// PhaseOf is where a round stands, in the terms of its screens.
func PhaseOf(p round.Phase) view.Phase {
	switch p {
	case round.CountIn, round.Playing:
		return view.Playing
	case round.Waiting:
		return view.Waiting
	case round.Void:
		return view.Voided
	case round.Review:
		return view.Reviewing
	}
	return view.Ready
}

// Whys are why a round was cut, in the terms of its screens.
var Whys = map[string]view.Why{
	host.WhyGap: view.WhyCut, host.WhyHidden: view.WhyHidden, host.WhyPaused: view.WhyPaused, host.WhySilent: view.WhySilent,
}
