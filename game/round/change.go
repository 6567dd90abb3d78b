package round

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// Lengths of a round in which the rhythm may change, and of one in which the
// drummer breaks off, in eights.
const (
	MinLongEights, MaxLongEights = 4, 8
)

// A Change is a rhythm that becomes another at the start of an eight, at the same
// tempo, or that never does. The same Change sounds the same for ever.
type Change struct {
	From   *rhythm.Cycle // what is played first
	To     *rhythm.Cycle // what it becomes; nil: it never changes
	At     int           // after how many eights; 0 where it never changes
	Eights int           // length, MinLongEights to MaxLongEights
	BPM    int           // beats a minute of either rhythm, MinBPM to MaxBPM
	Level  riff.Level
	Seed   uint64
}

// FirstChange is the first eight, counted from 0, that may begin with a change: a
// quarter of the round has been heard by then.
func FirstChange(eights int) int { return (eights + 3) / 4 }

// LastChange is the last eight that may begin with one: the round's last eight is
// left for hearing it.
func LastChange(eights int) int { return eights - 2 }

// Check reports what is wrong with the change, or nil.
func (c Change) Check() error {
	q := Setting{Kind: Dums, Rhythm: c.From, BPM: c.BPM, Eights: c.Eights, Level: c.Level}
	switch err := q.Check(); {
	case err != nil:
		return err
	case c.Eights < MinLongEights || c.Eights > MaxLongEights:
		return fmt.Errorf("round: %d eights; a change is asked in %d to %d", c.Eights, MinLongEights, MaxLongEights)
	case c.To == nil && c.At != 0:
		return fmt.Errorf("round: no change, after %d eights", c.At)
	case c.To != nil && (c.At < FirstChange(c.Eights) || c.At > LastChange(c.Eights)):
		return fmt.Errorf("round: a change after %d eights of %d; allowed is %d to %d",
			c.At, c.Eights, FirstChange(c.Eights), LastChange(c.Eights))
	}
	return nil
}

// passage is what both drums play. The riff after the change goes on in its
// phrases as if it had been played from the start: a lead drum that began anew
// would tell of the change by itself.
func (c Change) passage() (*Passage, error) {
	if c.To == nil {
		return NewPassage(c.BPM, c.Level, c.Seed, true, eightsOf(c.From, 0, c.Eights))
	}
	return NewPassage(c.BPM, c.Level, c.Seed, true, eightsOf(c.From, 0, c.At), eightsOf(c.To, c.At, c.Eights))
}

// eightsOf are the cycles of a rhythm from one eight up to another, counted from
// 0. An eight of an odd metre is as many whole cycles as last eight counts at
// least.
func eightsOf(c *rhythm.Cycle, from, to int) Section {
	n := c.CyclesIn(1)
	return Section{Rhythm: c, Cycles: (to - from) * n, First: from * n}
}

var errInaudible = errors.New("round: the change cannot be heard")

// differs is how long after the change the new rhythm first differs from the old
// one going on: by a stroke that the old one does not have, that is low where it
// is high or high where it is low, or that is left out. All strokes that are no
// dums count alike.
//
// The bass drum holds the rhythm and decides, but for declared breaks and rolls;
// so does the lead drum at Bare and Filled, where it plays what is written. From
// Ornamented on what the lead drum plays is left to chance, and tells nothing.
func (c Change) differs(p *Passage) (time.Duration, error) {
	played := &p.parts[1]
	length := played.to - played.from
	old, err := riff.Play(c.From, min(c.Level, riff.Filled), 1+int(length/c.From.Length(c.BPM)), 0)
	if err != nil {
		return 0, err
	}
	first, found := apart(
		soundings(played.Base(), c.To, c.BPM, length),
		slices.DeleteFunc(soundings(old.Bass, c.From, c.BPM, length), func(s sounding) bool { return p.open(1, s.at) }))
	if c.Level <= riff.Filled {
		lead, other := apart(soundings(played.Lead, c.To, c.BPM, length), soundings(old.Lead, c.From, c.BPM, length))
		if other && (!found || lead < first) {
			first, found = lead, true
		}
	}
	if !found {
		return 0, errInaudible
	}
	return first, nil
}

// open reports whether a time since the start of a section lies in a declared
// break or roll of it.
func (p *Passage) open(i int, at time.Duration) bool {
	step := p.step(i, p.parts[i].from+at)
	return slices.ContainsFunc(p.parts[i].Open, func(s riff.Span) bool { return s.Contains(step) })
}

// sounding is a stroke as it is heard, so long after the change.
type sounding struct {
	at  time.Duration
	low bool
}

// soundings are the strokes of one drum before a time, in the order of time.
// Equal places of two rhythms at one tempo are the same time to the nanosecond,
// since each is rounded once from the same fraction.
func soundings(strokes []riff.Stroke, c *rhythm.Cycle, bpm int, until time.Duration) []sounding {
	var all []sounding
	for _, s := range strokes {
		if at := s.At(c, bpm); at < until {
			all = append(all, sounding{at, s.Sound.Low()})
		}
	}
	return all
}

// apart is when two runs of strokes first differ.
func apart(a, b []sounding) (at time.Duration, found bool) {
	for i := range max(len(a), len(b)) {
		switch {
		case i >= len(a):
			return b[i].at, true
		case i >= len(b):
			return a[i].at, true
		case a[i] != b[i]:
			return min(a[i].at, b[i].at), true
		}
	}
	return 0, false
}
