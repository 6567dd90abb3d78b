package riff

import (
	"fmt"

	"groundbeat/game/rhythm"
)

// MaxCycles is the longest part, in cycles. At one second a cycle, malfuf at 120
// beats a minute, it lasts 2 hours 47 minutes.
const MaxCycles = 10_000

// lastCycle is the last that a part may begin with: half a second each, 17 years.
const lastCycle = 1 << 30

// A Riff is what both drums play over a rhythm, cycle after cycle without end.
// The zero Riff plays nothing; see [New]. It is a value: two are equal if they
// were made from the same one in the same way.
type Riff struct {
	*shape
	level Level
	seed  uint64
	busy  int // how far it goes from the base, 0 to mostBusy
	bpm   int // as fast as it must be played; 0: as its rhythm is
}

// mostBusy is the most that a riff leads away from the base within its level.
const mostBusy = 8

// New returns the riff of a seed, or an error for a level that is not
// [Available]. c must be as [rhythm.Parse] makes it.
func New(c *rhythm.Cycle, level Level, seed uint64) (Riff, error) {
	if !Available(level) {
		return Riff{}, fmt.Errorf("riff level '%s' is not available", level)
	}
	usual := draw(seed, level, forUsual, 0)
	return Riff{shape: shapeOf(c), level: level, seed: seed, busy: 3 + usual.below(3)}, nil
}

// Rhythm is the rhythm that the riff is played over.
func (r Riff) Rhythm() *rhythm.Cycle { return r.shape.cycle }

// Cycles returns cycles of the riff, from the cycle first on, counted from 0.
// Steps are counted from the start of the cycle first. Cycles(0, 1), Cycles(1, 1)
// and so on, one after the other, are the same strokes as all at once, so that a
// loop can play for ever. A number of cycles out of range is an error.
func (r Riff) Cycles(first, n int) (Part, error) {
	if n < 1 || n > MaxCycles {
		return Part{}, fmt.Errorf("%d cycles; a part has 1 to %d", n, MaxCycles)
	}
	if first < 0 || first > lastCycle {
		return Part{}, fmt.Errorf("cycle %d of a riff", first)
	}
	m := composer{Riff: r}
	var p Part
	for i := range n {
		m.cycle(first+i).addTo(&p, r.shape, i)
	}
	return p, nil
}
