package session

import (
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// riff is what the drums play over a rhythm as the address says, with a seed.
func (d *desk) riff(c *rhythm.Cycle, seed uint64) riff.Riff {
	r, err := round.Riff(c, d.level(), seed, 0, d.address.Hide)
	if err != nil {
		panic(err) // the address allows only what there is
	}
	return r
}

// riffed writes into a record which riff was played, how far it hides the base, and
// the help for the ear.
func (d *desk) riffed(r *history.Round, c *rhythm.Cycle, played riff.Part, hide int) {
	r.Helps = d.ear.Helps()
	level, err := riff.ParseLevel(r.Riff)
	if err != nil || level < riff.Filled {
		return
	}
	hides := riff.Hide(c, played, r.BPM)
	if r.Hide = &hides; level >= riff.Ornamented {
		r.RiffVersion, r.HideAsked = riff.Version, hide
	}
}
