package warmup

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A Task is one thing that a room is asked, or asked to do.
type Task struct {
	Kind    Kind
	Rhythm  *rhythm.Cycle // what is played
	Other   *rhythm.Cycle // WhatChanged: as it is played the second time; else nil
	Moved   [2]int        // WhatChanged: the step from which a stroke is moved, and to which
	Last    int           // FindTheOne: the step on which it breaks off
	BPM     int           // beats a minute of Rhythm
	Level   riff.Level    // as asked; of BaseOrRiff this tells the answer
	Under   riff.Level    // what it is heard under once it is known, Level at least
	Seed    uint64
	Choices []quiz.Choice // of what is counted, in the order in which they are asked; else none
	Right   string        // the ID of the right one; else ""
}

// The answers of BaseOrRiff.
const (
	OnBase  = "on"
	OffBase = "off"
)

// Choice returns the choice of an ID.
func (t Task) Choice(id string) (quiz.Choice, bool) {
	return quiz.Question{Choices: t.Choices}.Choice(id)
}

// classAnswers is how many names are asked for: each takes a room some seconds.
const classAnswers = 3

// mostCounts is of how many counts at most it is asked one by one; of more, the right
// one and its neighbours.
const mostCounts = 4

// draw makes the task of a kind, a level and a seed. Where sections must be compared
// stroke for stroke the level is Filled at most: two riffs differ anyhow.
func (s Set) draw(pool []*rhythm.Cycle, k Kind, level riff.Level, seed uint64) (Task, error) {
	t := Task{Kind: k, Level: level, Under: max(level, s.Level), Seed: seed}
	r := quiz.Draw(seed, 7)
	switch k {
	case HandsUp:
		return t.handsUp(pool)
	case WhatChanged, FindTheOne:
		t.Level = min(level, riff.Filled)
	case BaseOrRiff:
		t.Level = []riff.Level{riff.Filled, riff.Solo}[r.IntN(2)]
	}
	all := quiz.Candidates(pool, 0, t.Level)
	all = slices.DeleteFunc(all, func(p quiz.Candidate) bool { return !t.suits(p.Cycle) })
	if len(all) == 0 {
		return Task{}, quiz.TooFew("none of them suits it")
	}
	p := quiz.Pick(r, all)
	if !k.Counted() {
		p.Fast = max(p.Slow, p.Tempo.Usual) // it is walked, and spoken
	}
	t.Rhythm, t.BPM = p.Cycle, p.AnyTempo(r)
	switch k {
	case WhatChanged:
		t.change(r)
	case BaseOrRiff:
		t.Choices, t.Right = quiz.Plain(OnBase, OffBase), OnBase
		if t.Level == riff.Solo {
			t.Right = OffBase
		}
	case FindTheOne:
		t.breakOff(r)
	}
	return t, nil
}

// handsUp asks for a name, as Which does.
func (t Task) handsUp(pool []*rhythm.Cycle) (Task, error) {
	q, err := quiz.Next(quiz.Which, pool, classAnswers, 0, t.Level, t.Seed)
	if err != nil {
		return Task{}, err
	}
	t.Rhythm, t.BPM, t.Choices, t.Right = q.Rhythm, q.BPM, q.Choices, q.Right
	return t, nil
}

// suits reports whether a rhythm can be used: eights are walked and stopped in, so
// that its cycles must go into them.
func (t Task) suits(c *rhythm.Cycle) bool {
	switch t.Kind {
	case SayIt, WalkAndClap, CatchTheStop:
		return !c.Odd()
	case WhatChanged:
		return len(movable(c)) > 0
	}
	return true
}

// movable are the moves of one stroke to an empty step beside it in the same count,
// so that there is one count to be named.
func movable(c *rhythm.Cycle) (moves [][2]int) {
	for from, stroke := range c.Skeleton {
		for _, to := range []int{from - 1, from + 1} {
			if stroke.Sounds() && to >= 0 && to < c.Steps() && !c.Skeleton[to].Sounds() &&
				from/c.StepsPerBeat() == to/c.StepsPerBeat() {
				moves = append(moves, [2]int{from, to})
			}
		}
	}
	return moves
}

// change moves one stroke for the second time it is heard.
func (t *Task) change(r *rand.Rand) {
	t.Moved = quiz.Pick(r, movable(t.Rhythm))
	t.Other = swapped(t.Rhythm, t.Moved)
	t.askCount(t.Moved[0]/t.Rhythm.StepsPerBeat(), r)
}

// swapped is a rhythm with two of its steps in each other's place, also in its filled
// form.
func swapped(c *rhythm.Cycle, steps [2]int) *rhythm.Cycle {
	other := *c
	other.Variants = nil
	swap := func(p rhythm.Pattern) rhythm.Pattern {
		p = slices.Clone(p)
		a, b := steps[0]*len(p)/c.Steps(), steps[1]*len(p)/c.Steps()
		p[a], p[b] = p[b], p[a]
		return p
	}
	other.Skeleton = swap(c.Skeleton)
	if c.Filled != nil {
		other.Filled = swap(c.Filled)
	}
	return &other
}

// breakOff chooses the count on which it breaks off: one with a stroke on it.
func (t *Task) breakOff(r *rand.Rand) {
	var on []int
	for step, s := range t.Rhythm.Skeleton {
		if s.Sounds() && step%t.Rhythm.StepsPerBeat() == 0 {
			on = append(on, step)
		}
	}
	t.Last = quiz.Pick(r, on)
	t.askCount(t.Last/t.Rhythm.StepsPerBeat(), r)
}

// askCount asks for a count of the cycle, the right one being the beat, from 0. Of
// many it asks for some that follow one another, anywhere among which lies the right
// one.
func (t *Task) askCount(beat int, r *rand.Rand) {
	beats := t.Rhythm.Beats()
	first, n := 0, min(beats, mostCounts)
	if beats > n {
		first = min(max(beat-r.IntN(n), 0), beats-n)
	}
	for b := first; b < first+n; b++ {
		t.Choices = append(t.Choices, quiz.Plain(strconv.Itoa(b+1))...)
	}
	t.Right = strconv.Itoa(beat + 1)
}

// String tells the task for a golden: "hands-up saidi 96 bare: maqsum saidi* baladi".
func (t Task) String() string {
	text := fmt.Sprintf("%s %s %d %s", t.Kind, t.Rhythm.ID, t.BPM, t.Level)
	if t.Other != nil {
		text += fmt.Sprintf(" %s", t.Other.Skeleton)
	}
	if len(t.Choices) == 0 {
		return text
	}
	text += ":"
	for _, c := range t.Choices {
		text += " " + c.ID
		if c.ID == t.Right {
			text += "*"
		}
	}
	return text
}
