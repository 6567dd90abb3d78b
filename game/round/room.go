package round

import (
	"slices"

	"groundbeat/game/riff"
)

// Quieted returns the passage with both drums silent from one step of its first
// section up to another: a room goes on by itself. The passage stays as it is.
func (p *Passage) Quieted(from, to int) *Passage {
	q := *p
	q.parts = slices.Clone(p.parts)
	span := riff.Span{From: from, To: to, Kind: riff.Break}
	part := &q.parts[0]
	part.put(span, nil)
	part.Open = opened(part.Open, span)
	return &q
}

// Tamed returns the passage with no stroke above a strength, 0 to 1: in a room a
// closing accent must not make anybody start. The passage stays as it is.
func (p *Passage) Tamed(most float64) *Passage {
	q := *p
	q.parts = slices.Clone(p.parts)
	for i := range q.parts {
		q.parts[i].Lead = tamed(q.parts[i].Lead, most)
		q.parts[i].Bass = tamed(q.parts[i].Bass, most)
	}
	return &q
}

func tamed(strokes []riff.Stroke, most float64) []riff.Stroke {
	strokes = slices.Clone(strokes)
	for i := range strokes {
		strokes[i].Strength = min(strokes[i].Strength, most)
		strokes[i].Swell = min(strokes[i].Swell, most)
	}
	return strokes
}
