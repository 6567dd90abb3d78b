package riff

import (
	"time"

	"groundbeat/game/rhythm"
)

// TicksPerStep divides a step for strokes that fall between steps: halves,
// thirds, quarters and sixths of a step are whole ticks.
const TicksPerStep = 12

// A Stroke is one sounding stroke of one drum.
type Stroke struct {
	Step     int           // from the start of the part, counted through its cycles; from 0
	Sub      int           // ticks after the step, from 0 to TicksPerStep−1; 0 at level Bare
	Sound    rhythm.Stroke // never a rest
	Strength float64       // above 0, to 1 for the firmest
}

// How hard the strokes are played. Chosen, not measured and from no source:
// dums lead, light strokes stay behind those of the skeleton, and the bass
// drum's teks stay under the lead drum.
const (
	firm  = 1.0
	plain = 0.8
	light = 0.45
	soft  = 0.3
)

// At returns the time of the stroke from step 0 of its part, played at bpm beats
// a minute, to the nearest nanosecond: with n ticks up to the stroke,
//
//	n · 60·10⁹ / (bpm · steps per beat · TicksPerStep)
//
// in integers and rounded once, as [rhythm.Cycle.At], whose time it is where Sub
// is 0. c is the rhythm of the part; bpm is from 1 to 83,333, else At panics.
func (s Stroke) At(c *rhythm.Cycle, bpm int) time.Duration {
	return c.At(s.Step*TicksPerStep+s.Sub, bpm*TicksPerStep)
}
