package screens

import (
	"slices"
	"time"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
)

// eightLasts is how long an eight of a question among rhythms is heard, however
// fast it is: a length that went with the tempo would tell the rhythm.
const eightLasts = 8 * time.Minute / 100

// passageOf is what a question sounds like. A count-in would tell the tempo, and
// so something of the rhythm: there is none where the rhythm is asked.
func passageOf(q quiz.Question, hide int) (*round.Passage, error) {
	cycles := q.Cycles()
	if q.Form().Named {
		cycles += int(time.Duration(q.Eights)*eightLasts/q.Rhythm.Length(q.BPM)) + 1
	}
	var sections []round.Section
	for i, c := range []*rhythm.Cycle{q.Rhythm, q.Other} {
		if c == nil {
			continue
		}
		r, err := round.Riff(c, q.Level, q.Seed, i, hide)
		if err != nil {
			return nil, err
		}
		sections = append(sections, round.Section{Rhythm: c, Cycles: cycles, Riff: r})
	}
	return round.NewPassage(q.BPM, q.Level, q.Seed, q.Form().Counted, sections...)
}

// alone is a question of one stroke with the stroke of an answer in it.
func alone(q quiz.Question, id string) quiz.Question {
	c := *q.Rhythm
	c.Skeleton = slices.Clone(c.Skeleton)
	c.Skeleton[0] = rhythm.Tek
	if id == "dum" {
		c.Skeleton[0] = rhythm.Dum
	}
	q.Rhythm = &c
	return q
}
