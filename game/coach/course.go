package coach

import (
	"slices"

	"groundbeat/scoring/history"
)

// A Course is a practice under way: the steps of a plan one by one, and what came of
// each. What a plan asks more of from step to step is asked only once it was shown that
// there is reason to: a step is never harder than an earlier one of its kind in whose
// round no tap came, and a rhythm becomes faster only after a round that came out right.
// A step that was left out says nothing: the plan goes on as it was.
type Course struct {
	steps []Step
	came  []came
	at    int
}

// came is what came of a step so far.
type came uint8

const (
	nothingYet came = iota // no round of it was finished
	notTried               // no tap came
	wrong
	right
)

// NewCourse returns a course through the steps of a practice, of which there is one at
// least.
func NewCourse(steps []Step) *Course {
	return &Course{steps: slices.Clone(steps), came: make([]came, len(steps))}
}

// Steps are all steps, those to come as they are planned so far.
func (c *Course) Steps() []Step { return c.steps }

// At is which step it is at, from 0.
func (c *Course) At() int { return c.at }

// Step is the step it is at.
func (c *Course) Step() Step { return c.steps[c.at] }

// Done reports whether a round of the step was finished.
func (c *Course) Done() bool { return c.came[c.at] != nothingYet }

// Finished takes a round of the step that it is at; of several the best counts.
func (c *Course) Finished(r history.Round) {
	is := wrong
	switch {
	case !history.Tried(r):
		is = notTried
	case history.Right(r):
		is = right
	}
	c.came[c.at] = max(c.came[c.at], is)
}

// Next goes on to the next step, and reports whether there is one.
func (c *Course) Next() bool {
	if c.at++; c.at == len(c.steps) {
		return false
	}
	s := &c.steps[c.at]
	if i := c.latest(func(o Step) bool { return o.Kind == s.Kind }); i >= 0 && c.came[i] == notTried {
		s.noMoreRiff(c.steps[i])
	}
	if i := c.latest(func(o Step) bool { return o.Kind == s.Kind && slices.Equal(o.Rhythms, s.Rhythms) }); i >= 0 && c.came[i] != right && s.BPM > 0 {
		s.BPM = min(s.BPM, c.steps[i].BPM)
	}
	return true
}

// latest is the latest of the steps before that were not left out and of which something
// is so; below 0 there is none.
func (c *Course) latest(is func(Step) bool) int {
	for i, s := range slices.Backward(c.steps[:c.at]) {
		if c.came[i] != nothingYet && is(s) {
			return i
		}
	}
	return -1
}

// noMoreRiff lets the base be hidden no farther than in an earlier step.
func (s *Step) noMoreRiff(before Step) {
	if s.Level > before.Level || s.Hide > before.Hide {
		s.Level, s.Hide = before.Level, before.Hide
	}
}
