package session

import (
	"time"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/playback"
)

// SetUp is the player's own set-up mean for the output in use; 0 without one.
func (d *Shared) SetUp() time.Duration {
	if in := d.Outputs.Measured(); in != nil {
		return host.Duration(in.Mean)
	}
	return 0
}

// OutputName is the name of the output in use; "" of one that was not measured, which
// has no name from the player either.
func (d *Shared) OutputName() string {
	if in := d.Outputs.Measured(); in != nil {
		return in.Name
	}
	return ""
}

// SaveOutputs keeps the outputs, or says on the screen why not, and lets the one
// in use sound as it was set.
func (d *Shared) SaveOutputs() {
	d.Unsaved = d.Store.KeepOutputs(d.Outputs)
	d.SetOutput()
}

// UseOutput uses the output of a name from now on.
func (d *Shared) UseOutput(name string) {
	d.Outputs.Chosen = name
	d.SaveOutputs()
}

// SetOutput lets the drums stand, and the balance lie, as set for the output.
func (d *Shared) SetOutput() {
	c := d.Outputs.Adjustment()
	d.Sound.Balance(playback.Levels(c.Bass))
	// In the middle unless asked otherwise: a telephone, and many a loudspeaker in
	// a studio, has but one side; of two in a room, whoever stands near one hears
	// little of the other; and some hear with one ear. Everywhere else nothing is
	// lost by it.
	stage := audio.Centre
	if c.Wide {
		stage = audio.Spread
	}
	d.Sound.Stage(stage)
}
