package playback

import (
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/round"
)

// Follower shows a passage on a drumhead: the second ring cycle by cycle, and the
// drummer's hands.
type Follower struct {
	of      *round.Passage
	strikes []round.Strike // of the lead drummer; nil until they are asked for
	Ringed  int            // the cycle whose ring is shown, from 0; −1: none
}

// Follow begins with a passage.
func (f *Follower) Follow(p *round.Passage) { *f = Follower{of: p, Ringed: -1} }

// Clear says that what was on the head is gone.
func (f *Follower) Clear() { f.Ringed = -1 }

// Ring shows on a head what the lead drum plays in the cycle that is seen at a time,
// and reports whether it is another than before.
func (f *Follower) Ring(h *picture.Head, at time.Duration) bool {
	c := f.of.Rhythm(at)
	cycle := max(0, int((at-f.of.Start())/c.Length(f.of.BPM())))
	if cycle == f.Ringed {
		return false
	}
	f.Ringed = cycle
	h.Riff = picture.RiffOf(f.of.Played(0), c.Steps(), cycle)
	return true
}

// ShowHands draws the drummer's hands on a head as they are at a time, if they are shown.
func (f *Follower) ShowHands(h *picture.Head, hands bool, at time.Duration) {
	if h.ShowHands = hands && f.of != nil; !h.ShowHands {
		return
	}
	if f.strikes == nil {
		f.strikes = f.of.Strikes()
	}
	if h.Hands = picture.HandsAt(f.strikes, at); h.Calm {
		h.Hands = picture.HandsStanding(f.strikes, at)
	}
}
