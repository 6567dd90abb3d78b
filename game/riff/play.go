package riff

import "groundbeat/game/rhythm"

// Version is the version of the generator: which riff a seed stands for. It
// changes whenever some seed's riff does, and stands in every link and record
// that names a seed.
const Version = 1

// Play returns a number of cycles of a rhythm, from 1 to MaxCycles, at a level.
//
// The same rhythm, level, number of cycles and seed give the same part for ever,
// as long as [Version] stays; fewer cycles are the beginning of more. At Bare and
// Filled nothing is left to chance and the seed is not used:
//
//   - Bare: the lead drum plays the skeleton as it is written.
//   - Filled: the lead drum plays the filled form as it is written, on the
//     form's own steps, with its light strokes soft; the skeleton where the
//     rhythm has no filled form.
//
// The bass drum plays the skeleton, every dum firm and every high stroke, slaps
// too, as a soft tek, but for the open spans of the part.
//
// A level that is not [Available] and a number of cycles out of range are
// errors. c must be as [rhythm.Parse] makes it.
func Play(c *rhythm.Cycle, level Level, cycles int, seed uint64) (Part, error) {
	r, err := New(c, level, seed)
	if err != nil {
		return Part{}, err
	}
	return r.Cycles(0, cycles)
}
