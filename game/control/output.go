package control

import (
	"time"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/playback"
)

// SetUp is the player's own set-up mean for the output in use; 0 without one.
func (s *Shared) SetUp() time.Duration {
	if in := s.Outputs.Measured(); in != nil {
		return host.Duration(in.Mean)
	}
	return 0
}

// OutputName is the name of the output in use; "" of one that was not measured, which
// has no name from the player either.
func (s *Shared) OutputName() string {
	if in := s.Outputs.Measured(); in != nil {
		return in.Name
	}
	return ""
}

// SaveOutputs keeps the outputs, or says on the screen why not, and lets the one
// in use sound as it was set.
func (s *Shared) SaveOutputs() {
	s.Unsaved = s.Store.KeepOutputs(s.Outputs)
	s.SetOutput()
}

// UseOutput uses the output of a name from now on.
func (s *Shared) UseOutput(name string) {
	s.Outputs.Chosen = name
	s.SaveOutputs()
}

// SetOutput lets the drums stand, and the balance lie, as set for the output.
func (s *Shared) SetOutput() {
	c := s.Outputs.Adjustment()
	s.Sound.Balance(playback.Levels(c.Bass))
	// In the middle unless asked otherwise: a telephone, and many a loudspeaker in
	// a studio, has but one side; of two in a room, whoever stands near one hears
	// little of the other; and some hear with one ear. Everywhere else nothing is
	// lost by it.
	stage := audio.Centre
	if c.Wide {
		stage = audio.Spread
	}
	s.Sound.Stage(stage)
}
