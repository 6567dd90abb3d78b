package riff

import (
	"fmt"

	"groundbeat/game/rhythm"
)

// MaxCycles is the longest part, in cycles. At one second a cycle, malfuf at 120
// beats a minute, it lasts 2 hours 47 minutes.
const MaxCycles = 10_000

// A Part is what the two drums play, each in the order of time.
type Part struct {
	Lead []Stroke
	Bass []Stroke
}

// Play returns a number of cycles of a rhythm, from 1 to MaxCycles, at a level.
//
// The same rhythm, level, number of cycles and seed give the same part for
// ever. At the levels that are available nothing is left to chance and the seed
// is not used:
//
//   - Bare: the lead drum plays the skeleton as it is written.
//   - Filled: the lead drum plays the filled form as it is written, on the
//     form's own steps, with its light strokes soft; the skeleton where the
//     rhythm has no filled form.
//
// The bass drum plays the skeleton, every dum firm and every high stroke, slaps
// too, as a soft tek.
//
// A level that is not [Available] and a number of cycles out of range are
// errors. c must be as [rhythm.Parse] makes it.
func Play(c *rhythm.Cycle, level Level, cycles int, seed uint64) (Part, error) {
	if !Available(level) {
		return Part{}, fmt.Errorf("riff level '%s' is not available", level)
	}
	if cycles < 1 || cycles > MaxCycles {
		return Part{}, fmt.Errorf("%d cycles; a part has 1 to %d", cycles, MaxCycles)
	}
	_ = seed // drawn on by the later levels
	lead := c.Skeleton
	if level == Filled && c.Filled != nil {
		lead = c.Filled
	}
	return Part{
		Lead: repeat(lead, c.Steps(), cycles, leadStroke),
		Bass: repeat(c.Skeleton, c.Steps(), cycles, bassStroke),
	}, nil
}

// repeat plays the sounding strokes of a pattern cycle after cycle. The pattern
// has as many steps as the cycle, or twice as many.
func repeat(p rhythm.Pattern, steps, cycles int, play func(rhythm.Stroke) Stroke) []Stroke {
	ticks := TicksPerStep * steps / len(p) // from one step of the pattern to the next
	var all []Stroke
	for i := range cycles * len(p) {
		if s := p[i%len(p)]; s.Sounds() {
			stroke := play(s)
			stroke.Step, stroke.Sub = i*ticks/TicksPerStep, i*ticks%TicksPerStep
			all = append(all, stroke)
		}
	}
	return all
}

func leadStroke(s rhythm.Stroke) Stroke {
	switch {
	case s.Low():
		return Stroke{Sound: s, Strength: firm}
	case s.Light():
		return Stroke{Sound: s, Strength: light}
	}
	return Stroke{Sound: s, Strength: plain}
}

func bassStroke(s rhythm.Stroke) Stroke {
	if s.Low() {
		return Stroke{Sound: rhythm.Dum, Strength: firm}
	}
	return Stroke{Sound: rhythm.Tek, Strength: soft}
}
