package screens

import (
	"groundbeat/game/control"
	"groundbeat/game/picture"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

// review makes the two sides: what was right and what was said.
func (x *Which) review() {
	q := x.question
	x.sides.all = nil
	add := func(id string, c *rhythm.Cycle) {
		if c != nil {
			x.sides.all = append(x.sides.all, roundview.Side{ID: id, Rhythm: c})
		}
	}
	switch form := q.Form(); {
	case form.Halves:
		add("first", q.Rhythm)
		if q.Other != q.Rhythm {
			add("second", q.Other)
		}
	case form.Pool:
		add(q.Rhythm.ID, q.Rhythm)
		if x.given.ID != q.Right {
			add(x.given.ID, x.given.Rhythm) // where a rhythm was told
		}
	default:
		for _, c := range q.Choices {
			x.sides.all = append(x.sides.all, roundview.Side{ID: c.ID})
		}
	}
}

func (x *Which) Screen() view.Screen {
	m := x.model()
	x.blank.Set(m.Head())
	x.sides.put(m)
	return m.Screen(x.s.Words)
}

func (x *Which) model() *roundview.Which {
	a := x.s.Address
	m := &roundview.Which{
		Ask: a.Ask, Answers: a.Answers, From: a.From, Eights: a.Eights,
		Repeated: x.repeated, Second: x.inSecond,
		Level: a.Riff, Levels: x.s.Levels(), Hide: a.Hide,
		Balance: x.s.Ear.Balance, Help: x.s.Ear.Shown(), Replay: roundview.Replay{Drums: x.sides.replay.Drums, Slowly: x.sides.replay.Slowly},
		FromNames: x.names, Fewer: x.fewer, Volume: x.s.ShownVolume(), Notes: x.s.Notes(),
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
		m.Phase, m.Why = view.Voided, control.Whys[x.round.Why()]
	case round.Review:
		x.reveal(m)
	}
	return m
}

// reveal tells the model the answer.
func (x *Which) reveal(m *roundview.Which) {
	q := x.question
	right, _ := q.Choice(q.Right)
	m.Phase = view.Reviewing
	m.Right = view.Option{Value: right.ID, Label: right.Name}
	m.Said = view.Option{Value: x.given.ID, Label: x.given.Name}
	m.BPM = q.BPM
	m.Sides, m.Board = x.sides.shown()
	m.Differences = quiz.Differences(q, x.given.ID)
}

func (x *Which) Draw(place string) *picture.Picture {
	if place != view.PlaceHead {
		return x.sides.draw(place)
	}
	x.blank.Moves = x.blank.Moves && x.round.UnderWay()
	return x.blank.Draw(x.s.Calm())
}
