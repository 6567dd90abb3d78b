package round

import (
	"slices"
	"time"
)

// A Landing is the tap on one stroke asked for, or that there was none.
type Landing struct {
	Stroke int           // which of Strokes
	Tapped bool          // a tap belongs to it
	Offset time.Duration // raw: tap − stroke, + behind, − ahead
}

// landing is the tap on the stroke asked for at a step.
func (r *Round) landing(step int) Landing {
	l := Landing{Stroke: r.stroke(step)}
	for _, p := range r.result.Pairs {
		if p.Stroke == l.Stroke {
			l.Tapped, l.Offset = true, p.Offset
		}
	}
	return l
}

// stroke is which of Strokes is the first at a step or after it.
func (r *Round) stroke(step int) int {
	i, _ := slices.BinarySearch(r.steps, step)
	return i
}

// At is when a step of the round sounds, or would: of the frame of [audio.Rate].
func (r *Round) At(step int) time.Duration { return sounded(r.at(0, step)) }

// ask makes the strokes at some steps, in order, those that are asked for.
func (r *Round) ask(steps []int) {
	r.steps = steps
	for _, step := range steps {
		r.strokes = append(r.strokes, r.At(step))
	}
}
