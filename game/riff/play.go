package riff

import (
	"fmt"

	"groundbeat/game/rhythm"
)

// MaxCycles is the longest part, in cycles. At one second a cycle, malfuf at 120
// beats a minute, it lasts 2 hours 47 minutes.
const MaxCycles = 10_000

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

// A Part is what the two drums play, each in the order of time.
type Part struct {
	Lead []Stroke
	Bass []Stroke
}

// How hard the strokes are played. Chosen, not measured and from no source:
// dums lead, and the bass drum's teks stay under the lead drum.
const (
	firm  = 1.0
	plain = 0.8
	soft  = 0.3
)

// Play returns a number of cycles of a rhythm, from 1 to MaxCycles, at a level.
//
// The same rhythm, level, number of cycles and seed give the same part for
// ever. At level Bare nothing is left to chance and the seed is not used: the
// lead drum plays the skeleton as it is written, the bass drum plays it with
// every dum firm and every high stroke, slaps too, as a soft tek.
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
	return Part{
		Lead: repeat(c.Skeleton, cycles, leadStroke),
		Bass: repeat(c.Skeleton, cycles, bassStroke),
	}, nil
}

// repeat plays the sounding strokes of a pattern cycle after cycle.
func repeat(p rhythm.Pattern, cycles int, play func(rhythm.Stroke) Stroke) []Stroke {
	var all []Stroke
	for step := range cycles * len(p) {
		if s := p[step%len(p)]; s.Sounds() {
			stroke := play(s)
			stroke.Step = step
			all = append(all, stroke)
		}
	}
	return all
}

func leadStroke(s rhythm.Stroke) Stroke {
	if s.Low() {
		return Stroke{Sound: s, Strength: firm}
	}
	return Stroke{Sound: s, Strength: plain}
}

func bassStroke(s rhythm.Stroke) Stroke {
	if s.Low() {
		return Stroke{Sound: rhythm.Dum, Strength: firm}
	}
	return Stroke{Sound: rhythm.Tek, Strength: soft}
}
