package round

import "time"

var countIn = [CountInBeats]string{"5", "6", "7", "8"}

// Count is the count being heard: 5 6 7 8 in the count-in, then the dancer's
// count of the beat in its eight. It is empty before and after.
func (r *Round) Count() string {
	c := r.Question.Rhythm
	switch r.phase {
	case CountIn:
		for beat := CountInBeats - 1; beat >= 0; beat-- {
			if r.heard >= c.At(beat*c.StepsPerBeat(), r.Question.BPM) {
				return countIn[beat]
			}
		}
	case Playing:
		if step := r.step(); r.heard < r.End() {
			return c.CountInEight(step - step%c.StepsPerBeat())
		}
	}
	return ""
}

// Turn is how far round the cycle what is being heard has come: 0 to 1.
func (r *Round) Turn() float64 { return r.TurnAt(r.heard) }

// TurnAt is how far round the cycle a time lies: 0 to 1, for times before the
// first step too.
func (r *Round) TurnAt(t time.Duration) float64 {
	length := r.Question.Rhythm.Length(r.Question.BPM)
	into := (t - r.Start()) % length
	if into < 0 {
		into += length
	}
	return float64(into) / float64(length)
}

// step is the last step that has been heard.
func (r *Round) step() int {
	c := r.Question.Rhythm
	perCycle := c.Steps()
	length := c.Length(r.Question.BPM)
	step := int((r.heard - r.Start()) * time.Duration(perCycle) / length)
	for r.at(step+1) <= r.heard {
		step++
	}
	return step
}
