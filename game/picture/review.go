package picture

import (
	"math"
	"time"

	"groundbeat/game/rhythm"
)

// Review is how the taps of a finished round lay, for both pictures. Steps count
// from 0 at the first step of the round, so that the cycle of a step is step
// divided by the steps of a cycle.
type Review struct {
	Asks     func(rhythm.Stroke) bool // which strokes are asked for; nil: the dums
	Steps    int                      // of the whole round
	StepTime time.Duration            // how long a step lasts
	On       time.Duration            // up to this far from its stroke a tap is on it
	Landed   []Landed                 // taps that belong to a stroke
	LeftOut  []int                    // steps of strokes without a tap
	Added    []float64                // taps that belong to no stroke, in steps
	Open     []OpenSteps              // where none is asked, in order
}

// OpenSteps is a declared break or roll, half open, in steps.
type OpenSteps struct {
	From, To int
	Roll     bool // else a break
}

// Landed is a tap that belongs to a stroke. Offset is tap − stroke, + behind, − ahead,
// the set-up's mean already taken off.
type Landed struct {
	Step   int
	Offset time.Duration
}

// Reach is the farthest offset that the pictures have room for; what lies
// farther is drawn at the edge.
const Reach = 100 * time.Millisecond

// asks reports whether a stroke is asked for.
func (r *Review) asks(s rhythm.Stroke) bool {
	if r.Asks == nil {
		return s.Low()
	}
	return r.Asks(s)
}

// gap returns how many steps lie between the stroke asked for at a step and the nearest
// other one of the cycle, going round; the whole cycle if there is no other.
func (r *Review) gap(base rhythm.Pattern, step int) int { return Gap(base, step, r.asks) }

// cycles returns how many cycles of the given steps the round has, at least 1.
func (r *Review) cycles(steps int) int {
	return max(1, (r.Steps+steps-1)/steps)
}

// part returns the offset in parts of Reach, −1 to 1.
func part(offset time.Duration) float64 {
	return max(-1, min(1, float64(offset)/float64(Reach)))
}

// mean returns the mean offset of the taps on one step of the cycle, and how many.
func (r *Review) mean(step, steps int) (time.Duration, int) {
	var sum time.Duration
	n := 0
	for _, l := range r.Landed {
		if l.Step%steps == step {
			sum += l.Offset
			n++
		}
	}
	if n == 0 {
		return 0, 0
	}
	return time.Duration(math.Round(float64(sum) / float64(n))), n
}

// place is what the taps of a review are drawn with: size is the radius of a
// small mark, along the direction of time at the mark as a unit vector.
type place struct {
	x, y, size     float64
	alongX, alongY float64
}

// tapMark draws one tap by how it lay: ahead an open ring, behind a full dot, on
// the dum a short bar across the direction of time.
func (p *Picture) tapMark(at place, offset, on time.Duration) {
	switch {
	case offset < -on:
		p.Ring(InkAhead, at.x, at.y, at.size*0.78, at.size*0.62)
	case offset > on:
		p.Dot(InkBehind, at.x, at.y, at.size)
	default:
		p.Line(InkGood, at.x-at.alongY*at.size, at.y+at.alongX*at.size,
			at.x+at.alongY*at.size, at.y-at.alongX*at.size, at.size*0.75)
	}
}

// TapMark draws one tap at a point as it lay, in the size of a small mark; along is the
// direction of time there, as a unit vector.
func (p *Picture) TapMark(x, y, size, alongX, alongY float64, offset, on time.Duration) {
	p.tapMark(place{x, y, size, alongX, alongY}, offset, on)
}

// addedMark draws a tap that belongs to no stroke: a plus.
func (p *Picture) addedMark(x, y, size float64) {
	p.Line(InkDim, x-size, y, x+size, y, size*0.5)
	p.Line(InkDim, x, y-size, x, y+size, size*0.5)
}

// leftOutMark draws a stroke without a tap: a dash along the direction of time, as
// a rest is written.
func (p *Picture) leftOutMark(at place) {
	p.Line(InkDim, at.x-at.alongX*at.size, at.y-at.alongY*at.size,
		at.x+at.alongX*at.size, at.y+at.alongY*at.size, at.size*0.5)
}

// Only returns of the review what lies in some stretches of so many steps, one after
// the other.
func (r *Review) Only(from []int, steps int) *Review {
	only := &Review{Asks: r.Asks, Steps: len(from) * steps, StepTime: r.StepTime, On: r.On}
	for i, f := range from {
		moved := i*steps - f
		for _, l := range r.Landed {
			if l.Step >= f && l.Step < f+steps {
				only.Landed = append(only.Landed, Landed{l.Step + moved, l.Offset})
			}
		}
		for _, step := range r.LeftOut {
			if step >= f && step < f+steps {
				only.LeftOut = append(only.LeftOut, step+moved)
			}
		}
		for _, at := range r.Added {
			if at >= float64(f) && at < float64(f+steps) {
				only.Added = append(only.Added, at+float64(moved))
			}
		}
	}
	return only
}
