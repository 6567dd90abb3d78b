//go:build js

package main

import (
	"groundbeat/audio"
	"groundbeat/game/host"
)

// lateSound is the sound from the start, before the browser was asked for it: that
// takes a while, for which the page's first words do not wait. Until it is made it is
// silent, and keeps how loud it is to be.
type lateSound struct {
	host.Sound
	make func() (host.Sound, error) // nil: it is made

	lead, bass, volume float64
	stage              audio.Stage
}

// Audible is true until it turns out that there is no sound.
func (s *lateSound) Audible() bool { return s.make != nil || s.Sound.Audible() }

func (s *lateSound) Balance(lead, bass float64) {
	s.lead, s.bass = lead, bass
	s.Sound.Balance(lead, bass)
}

func (s *lateSound) Stage(stage audio.Stage) {
	s.stage = stage
	s.Sound.Stage(stage)
}

func (s *lateSound) Volume(v float64) {
	s.volume = v
	s.Sound.Volume(v)
}

// made makes it, unless it is; it reports whether it turned out that there is none.
func (s *lateSound) made() (none bool, err error) {
	if s.make == nil {
		return false, nil
	}
	sound, err := s.make()
	if err != nil {
		return false, err
	}
	s.Sound, s.make = sound, nil
	sound.Balance(s.lead, s.bass)
	sound.Stage(s.stage)
	sound.Volume(s.volume)
	return !sound.Audible(), nil
}
