package riff

import (
	"time"

	"groundbeat/game/rhythm"
)

// TicksPerStep divides a step for strokes that fall between steps: halves,
// thirds, quarters and sixths of a step are whole ticks.
const TicksPerStep = 12

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
