package riff

import (
	"slices"

	"groundbeat/game/rhythm"
)

// Syncopation returns how syncopated the onsets of a bar are that is repeated
// without end, 0 if not at all: the sum of the strengths of its syncopations.
//
// A bar is divided as its metre is, as far as onsets make it necessary; each part
// left over is a note, if it begins with an onset, or a rest (a tie counts as one).
// Where a rest weighs more than the note before it, that is a syncopation, and the
// difference is its strength (H. C. Longuet-Higgins and C. S. Lee, "The rhythmic
// interpretation of monophonic music", Music Perception 1, 424–441, 1984). The sum,
// with the bar wrapped round, is the index of W. T. Fitch and A. J. Rosenfeld,
// "Perception and production of syncopated rhythms", Music Perception 25, 43–58,
// 2007: the higher it is, the worse were listeners at keeping the beat, and the
// sooner they moved it to where the onsets were.
//
// There is a weight for each pulse, as [Weights] or [MetreWeights] give them; it
// panics if there is not.
func Syncopation(onsets rhythm.Pulses, weights []int) int {
	if len(onsets) != len(weights) {
		panic("riff: not one weight for each pulse")
	}
	var parts []barPart
	if len(onsets) > 0 {
		parts = divideBar(nil, onsets, weights)
	}
	note := slices.IndexFunc(parts, func(p barPart) bool { return p.note })
	if note < 0 {
		return 0
	}
	sum, last := 0, parts[note]
	for i := range parts {
		p := parts[(note+1+i)%len(parts)]
		if p.note {
			last = p
		} else {
			sum += max(0, p.weight-last.weight)
		}
	}
	return sum
}

// barPart is a note or a rest of a divided bar.
type barPart struct {
	weight int
	note   bool
}

// divideBar appends the parts of a stretch of a bar.
func divideBar(parts []barPart, onsets rhythm.Pulses, weights []int) []barPart {
	if !slices.Contains(onsets[1:], true) {
		return append(parts, barPart{weights[0], onsets[0]})
	}
	level, from := slices.Max(weights[1:]), 0
	for at := 1; at < len(weights); at++ {
		if weights[at] == level {
			parts = divideBar(parts, onsets[from:at], weights[from:at])
			from = at
		}
	}
	return divideBar(parts, onsets[from:], weights[from:])
}
