package session

import (
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
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
	r.Helps = d.ear.helps()
	level, err := riff.ParseLevel(r.Riff)
	if err != nil || level < riff.Filled {
		return
	}
	hides := riff.Hide(c, played, r.BPM)
	if r.Hide = &hides; level >= riff.Ornamented {
		r.RiffVersion, r.HideAsked = riff.Version, hide
	}
}

// eightOf is how long an eight of a rhythm lasts at a tempo.
func eightOf(c *rhythm.Cycle, bpm int) time.Duration { return c.At(c.CyclesIn(1)*c.Steps(), bpm) }

// follower shows a passage on a drumhead: the second ring cycle by cycle, and the
// drummer's hands.
type follower struct {
	of      *round.Passage
	strikes []round.Strike // of the lead drummer; nil until they are asked for
	ringed  int            // the cycle whose ring is shown, from 0; −1: none
}

// follow begins with a passage.
func (f *follower) follow(p *round.Passage) { *f = follower{of: p, ringed: -1} }

// ring shows on a head what the lead drum plays in the cycle that is seen at a time,
// and reports whether it is another than before.
func (f *follower) ring(h *view.Head, at time.Duration) bool {
	c := f.of.Rhythm(at)
	cycle := max(0, int((at-f.of.Start())/c.Length(f.of.BPM())))
	if cycle == f.ringed {
		return false
	}
	f.ringed = cycle
	h.Riff = view.RiffOf(f.of.Played(0), c.Steps(), cycle)
	return true
}

// show draws the drummer's hands on a head as they are at a time, if they are shown.
func (f *follower) show(h *view.Head, hands bool, at time.Duration) {
	if h.ShowHands = hands && f.of != nil; !h.ShowHands {
		return
	}
	if f.strikes == nil {
		f.strikes = f.of.Strikes()
	}
	if h.Hands = view.HandsAt(f.strikes, at); h.Calm {
		h.Hands = view.HandsStanding(f.strikes, at)
	}
}
