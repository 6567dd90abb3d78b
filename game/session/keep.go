package session

import (
	"time"

	"groundbeat/audio"
	"groundbeat/game/playback"
	"groundbeat/scoring/history"
)

// setup is the player's own set-up mean for the output in use; 0 without one.
func (d *desk) setup() time.Duration {
	if in := d.outputs.Measured(); in != nil {
		return duration(in.Mean)
	}
	return 0
}

// saveOutputs keeps the outputs, or says on the screen why not, and lets the one
// in use sound as it was set.
func (d *desk) saveOutputs() {
	d.unsaved = d.Store.KeepOutputs(d.outputs)
	d.setOutput()
}

// useOutput uses the output of a name from now on.
func (d *desk) useOutput(name string) {
	d.outputs.Chosen = name
	d.saveOutputs()
}

// setOutput lets the drums stand, and the balance lie, as set for the output.
func (d *desk) setOutput() {
	c := d.outputs.Adjustment()
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

// blank is a record with what all records share.
func (d *desk) blank(kind, rhythm string) history.Round {
	r := history.Round{
		Kind: kind, Rhythm: rhythm, ID: d.Wall.ID(), When: d.Wall.Date().Format(time.RFC3339), Rate: int(audio.Rate),
	}
	r.Output = d.outputName()
	return r
}

// outputName is the name of the output in use; "" of one that was not measured, which
// has no name from the player either.
func (d *desk) outputName() string {
	if in := d.outputs.Measured(); in != nil {
		return in.Name
	}
	return ""
}

// keep stores the record of a finished round; if it cannot be, the screen says so for
// as long as the round waits.
func (d *desk) keep(r history.Round, err error) {
	if !d.finished {
		d.finished = true
		d.Store.KeepBegun()
	}
	if err != nil {
		d.unsaved, d.stale = err, true
		return
	}
	if d.practice != nil {
		d.practice.Finished(r)
		d.stale = true
	}
	times := d.learner.times
	d.Store.Keep(r, func(error) {
		if times == d.learner.times { // or it is read from the store
			d.learner.add(r)
		}
	})
}
