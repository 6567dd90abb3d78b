package riff

import (
	"slices"

	"groundbeat/game/rhythm"
)

// Weights returns how much each pulse of a bar weighs that is divided into so many
// equal parts, each of these into so many, and so on: 0 for the first, and one less
// for what begins only at the next level (Longuet-Higgins and Lee, see
// [Syncopation]). Weights(2, 3), 6/8 in eighths, is 0 −2 −2 −1 −2 −2. It panics for
// a part below 1.
func Weights(parts ...int) []int {
	weights := []int{0}
	for level, n := range parts {
		if n < 1 {
			panic("riff: a bar divided into less than one part")
		}
		var finer []int
		for _, w := range weights {
			finer = append(finer, w)
			finer = append(finer, slices.Repeat([]int{-level - 1}, n-1)...)
		}
		weights = finer
	}
	return weights
}

// MetreWeights returns the weights of one cycle of a rhythm, of so many pulses for
// each step. The cycle is divided into its printed groups, and these into beats;
// without groups into halves, again and again, down to beats. Beats are divided in
// the same way; what is no longer even is divided at once: six pulses into two and
// then three. It panics for less than one pulse.
func MetreWeights(c *rhythm.Cycle, pulses int) []int {
	if pulses < 1 {
		panic("riff: less than one pulse for a step")
	}
	beats := beatWeights(c)
	lightest := slices.Min(beats)
	within := Weights(halves(pulses * c.StepsPerBeat())...)[1:]
	var weights []int
	for _, beat := range beats {
		weights = append(weights, beat)
		for _, w := range within {
			weights = append(weights, lightest+w)
		}
	}
	return weights
}

// beatWeights are the weights of a cycle's beats.
func beatWeights(c *rhythm.Cycle) []int {
	if c.Grouping == nil {
		return Weights(halves(c.Beats())...)
	}
	var weights []int
	for _, beats := range c.Grouping {
		weights = append(weights, -1)
		weights = append(weights, slices.Repeat([]int{-2}, beats-1)...)
	}
	weights[0] = 0
	return weights
}

// halves divides a number by two as long as that goes, then by what is left.
func halves(n int) []int {
	var parts []int
	for ; n%2 == 0; n /= 2 {
		parts = append(parts, 2)
	}
	if n > 1 {
		parts = append(parts, n)
	}
	return parts
}
