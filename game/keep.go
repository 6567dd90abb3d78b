//go:build js

package game

import (
	"time"

	"groundbeat/audio"
	"groundbeat/scoring/history"
)

// setup is the player's own set-up mean for the output in use; 0 without one.
func (d *desk) setup() time.Duration {
	if in := d.outputs.in(); in != nil {
		return duration(in.Mean)
	}
	return 0
}

// saveOutputs keeps the outputs, or says on the screen why not.
func (d *desk) saveOutputs() { d.unsaved = d.Store.KeepOutputs(d.outputs) }

// blank is a record with what all records share.
func (d *desk) blank(kind, rhythm string) history.Round {
	return history.Round{
		Kind: kind, Rhythm: rhythm, ID: d.Wall.ID(), When: d.Wall.Date().Format(time.RFC3339), Rate: int(audio.Rate),
		Output: d.outputs.Chosen,
	}
}

// keep stores a record, or says on the screen why not.
func (d *desk) keep(r history.Round, err error) {
	if err != nil {
		d.kept(err)
		return
	}
	d.Store.Keep(r, d.kept)
}

func (d *desk) kept(err error) {
	if err == nil && d.unkept == nil {
		return
	}
	d.unkept = err
	d.stale = true
}
