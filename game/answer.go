//go:build js

package game

import (
	"errors"
	"slices"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// review makes the two sides: what was right and what was said.
func (x *asking) review() {
	q := x.question
	x.sides = nil
	add := func(id string, c *rhythm.Cycle) {
		if c != nil {
			x.sides = append(x.sides, view.Side{ID: id, Rhythm: c})
		}
	}
	switch q.Ask {
	case quiz.Which:
		add(q.Rhythm.ID, q.Rhythm)
		if x.given.ID != q.Right {
			add(x.given.ID, x.given.Rhythm)
		}
	case quiz.Stroke:
		x.sides = []view.Side{{ID: "dum"}, {ID: "tek"}}
	case quiz.HowMany:
		add(q.Rhythm.ID, q.Rhythm)
	case quiz.Same:
		add("first", q.Rhythm)
		if q.Other != q.Rhythm {
			add("second", q.Other)
		}
	}
}

// hearSide plays one eight of a side of the review, or one stroke.
func (x *asking) hearSide(id string) {
	p, err := x.sidePassage(id)
	if err != nil {
		return
	}
	x.play(p, x.Wall.Now())
}

var errNoSide = errors.New("game: no such side")

func (x *asking) sidePassage(id string) (*round.Passage, error) {
	for i, s := range x.sides {
		if s.ID == id {
			x.side = i + 1
			if s.Rhythm == nil {
				return passageOf(alone(x.question, id))
			}
			return round.NewPassage(x.tempoOf(s), x.question.Level, x.question.Seed, false,
				round.Section{Rhythm: s.Rhythm, Cycles: s.Rhythm.CyclesIn(1)})
		}
	}
	return nil, errNoSide
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

// tempoOf is the tempo of a side: of a rhythm that was a choice, the one it
// would have been played at.
func (x *asking) tempoOf(s view.Side) int {
	if c, ok := x.question.Choice(s.ID); ok && c.BPM != 0 {
		return c.BPM
	}
	return x.question.BPM
}

func (x *asking) followSide(now float64) {
	at, _, why := x.heard(now)
	if why != "" || at >= x.passage.End() {
		x.silence()
		return
	}
	if x.side <= len(x.sides) {
		h := &x.heads[x.side-1]
		h.moves, h.Turning, h.Turn = true, at >= 0, x.passage.TurnAt(max(at, 0))
	}
}

func (x *asking) screen() view.Screen {
	m := x.model()
	x.blank.set(m.Head())
	for i := range x.heads {
		x.heads[i].set(m.SideHead(i))
		x.heads[i].moves = x.side == i+1
	}
	return m.Screen(x.Words)
}

func (x *asking) model() *view.Which {
	a := x.address
	m := &view.Which{
		Ask: a.Ask, Answers: a.Answers, From: a.From, Eights: a.Eights,
		Repeated: x.repeated,
		Level:    a.Riff, Levels: x.levels(), FromNames: x.names, Volume: x.shownVolume(), Notes: x.notes(),
	}
	for _, c := range x.question.Choices {
		m.Choices = append(m.Choices, view.Option{Value: c.ID, Label: c.Name})
	}
	switch x.round.Phase() {
	case round.CountIn:
		m.Phase, m.CountIn, m.Repeat = view.Playing, true, true
	case round.Playing:
		m.Phase, m.Repeat = view.Playing, true
	case round.Waiting:
		m.Phase, m.Repeat = view.Waiting, true
	case round.Void:
		m.Phase, m.Why = view.Voided, whys[x.round.Why()]
	case round.Review:
		x.reveal(m)
	}
	return m
}

// reveal tells the model the answer.
func (x *asking) reveal(m *view.Which) {
	q := x.question
	right, _ := q.Choice(q.Right)
	m.Phase = view.Reviewing
	m.Right = view.Option{Value: right.ID, Label: right.Name}
	m.Said = view.Option{Value: x.given.ID, Label: x.given.Name}
	m.BPM = q.BPM
	m.Sides = append(m.Sides, x.sides...)
	for i := range m.Sides {
		m.Sides[i].Hearing = x.side == i+1
	}
	m.Differences = quiz.Differences(q, x.given.ID)
	m.Board = max(x.board(), min(x.width/2, 700))
}

func (x *asking) draw(place string) *liveHead {
	switch {
	case place == view.PlaceHead:
		x.blank.moves = x.blank.moves && x.round.UnderWay()
		return &x.blank
	case place == view.PlaceHeadA:
		return &x.heads[0]
	case place == view.PlaceHeadB:
		return &x.heads[1]
	}
	return nil
}
