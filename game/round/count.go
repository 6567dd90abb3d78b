package round

import "time"

var countIn = [CountInBeats]string{"5", "6", "7", "8"}

// Count is the count being heard: 5 6 7 8 in the count-in, then the dancer's
// count of the beat in its eight. It is empty where none is heard: before the
// round's first frame, after the question, and of a round that is not under way.
func (r *Round) Count() string {
	if !r.underWay() || r.heard < 0 || r.heard >= r.End() {
		return ""
	}
	c := r.Question.Rhythm
	step, perBeat := r.step(r.heard), c.StepsPerBeat()
	if step < 0 {
		return countIn[CountInBeats+floor(step, perBeat)/perBeat]
	}
	return c.CountInEight(floor(step, perBeat))
}

// Turn is how far round the cycle what is being heard has come: from 0, at its
// first step, to just below 1.
func (r *Round) Turn() float64 { return r.TurnAt(r.heard) }

// TurnAt is how far round its cycle a time lies: from 0 to just below 1, also
// for times before the first step.
func (r *Round) TurnAt(t time.Duration) float64 {
	steps := r.Question.Rhythm.Steps()
	first := floor(r.step(t), steps)
	from, to := r.at(first), r.at(first+steps)
	return float64(t-from) / float64(to-from)
}

// step is the step of the question that a time lies in: the last one at or
// before it, negative before the first. It is found by the exact times of steps
// near a guess, since the guess, from the rounded length of a cycle, may be a
// few nanoseconds out.
func (r *Round) step(t time.Duration) int {
	c := r.Question.Rhythm
	length := c.Length(r.Question.BPM)
	since := t - r.Start()
	step := c.Steps()*int(since/length) + int(since%length*time.Duration(c.Steps())/length)
	for r.at(step) > t {
		step--
	}
	for r.at(step+1) <= t {
		step++
	}
	return step
}

// floor is the greatest multiple of n that is not above a.
func floor(a, n int) int { return a - ((a%n)+n)%n }
