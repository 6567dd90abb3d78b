package session

import (
	"time"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
)

// Blank is a record with what all records share.
func (d *Shared) Blank(kind, rhythm string) history.Round {
	r := history.Round{
		Kind: kind, Rhythm: rhythm, ID: d.Wall.ID(), When: d.Wall.Date().Format(time.RFC3339), Rate: int(audio.Rate),
	}
	r.Output = d.OutputName()
	return r
}

// Keep stores the record of a finished round; if it cannot be, the screen says so for
// as long as the round waits.
func (d *Shared) Keep(r history.Round, err error) {
	if !d.Finished {
		d.Finished = true
		d.Store.KeepBegun()
	}
	if err != nil {
		d.Unsaved, d.Stale = err, true
		return
	}
	d.Practice.Finished(r)
	times := d.Learner.times
	d.Store.Keep(r, func(error) {
		if times == d.Learner.times { // or it is read from the store
			d.Learner.Add(r)
		}
	})
}

// Riffed writes into a record which riff was played, how far it hides the base, and
// the help for the ear.
func (d *Shared) Riffed(r *history.Round, c *rhythm.Cycle, played riff.Part, hide int) {
	r.Helps = d.Ear.Helps()
	level, err := riff.ParseLevel(r.Riff)
	if err != nil || level < riff.Filled {
		return
	}
	hides := riff.Hide(c, played, r.BPM)
	if r.Hide = &hides; level >= riff.Ornamented {
		r.RiffVersion, r.HideAsked = riff.Version, hide
	}
}
