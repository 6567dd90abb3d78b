package session

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
			x.sides = append(x.sides, view.Side{ID: c.ID})
		}
	}
}

// hearSide plays one eight of a side of the review, or one stroke.
func (x *asking) hearSide(id string) {
	p, err := x.sidePassage(id)
	if err != nil {
		return
	}
	x.follower.Follow(p)
	x.again.Apply(x.desk.Sound)
	x.track.Play(p, x.desk.Wall.Now())
}

// actReview answers the controls of a review, and reports whether it was one of them.
func (x *asking) actReview(action, value string, phase round.Phase) bool {
	switch {
	case action == view.ActHear || action == view.ActDrums || action == view.ActSlowly:
		x.actSide(action, value)
	case action == view.ActStop && phase == round.Review:
		x.silence()
	default:
		return false
	}
	return true
}

// actSide answers the controls of the sides.
func (x *asking) actSide(action, value string) {
	if action == view.ActHear {
		x.hearSide(value)
		return
	}
	anew := x.again.Set(action, value)
	if x.side == 0 {
		return
	}
	x.again.Apply(x.desk.Sound)
	if anew {
		x.hearSide(x.sides[x.side-1].ID)
	}
}

var errNoSide = errors.New("game: no such side")

func (x *asking) sidePassage(id string) (*round.Passage, error) {
	for i, s := range x.sides {
		if s.ID == id {
			x.side = i + 1
			if s.Rhythm == nil {
				return passageOf(alone(x.question, id), 0)
			}
			return x.heardAgain(s, i)
		}
	}
	return nil, errNoSide
}

// heardAgain is one eight of a side, with the riff that it was heard under, or would
// have been.
func (x *asking) heardAgain(s view.Side, i int) (*round.Passage, error) {
	nth := 0
	if x.question.Form().Halves {
		nth = i // the second half has a riff of its own
	}
	r, err := round.Riff(s.Rhythm, x.question.Level, x.question.Seed, nth, x.desk.address.Hide)
	if err != nil {
		return nil, err
	}
	return round.NewPassage(x.again.Tempo(x.tempoOf(s)), x.question.Level, x.question.Seed, false,
		round.Section{Rhythm: s.Rhythm, Cycles: s.Rhythm.CyclesIn(1), Riff: r})
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
	at, _, why := x.track.Heard(now)
	if why != "" || at >= x.track.Passage.End() {
		x.silence()
		return
	}
	if x.side <= min(len(x.sides), len(x.heads)) {
		at = x.track.Seen(at)
		h := &x.heads[x.side-1]
		h.Moves, h.Shown.Turning, h.Shown.Turn = true, at >= 0, x.track.Passage.TurnAt(max(at, 0))
		if x.question.Form().Pool && at >= 0 {
			x.follower.Ring(&h.Shown, at)
			x.follower.ShowHands(&h.Shown, x.desk.ear.Hands, at)
		}
	}
}

func (x *asking) screen() view.Screen {
	m := x.model()
	x.blank.Set(m.Head())
	x.setSides(m)
	return m.Screen(x.desk.Words)
}

// setSides puts the sides of a review on their heads.
func (x *asking) setSides(m *view.Which) {
	x.follower.Clear() // what was on the heads is gone
	for i := range x.heads {
		x.heads[i].Set(m.SideHead(i))
		x.heads[i].Moves = x.side == i+1
	}
}

// shownSides are the sides of a review, and how wide both are together.
func (x *asking) shownSides() (sides []view.Side, board float64) {
	sides = slices.Clone(x.sides)
	for i := range sides {
		sides[i].Hearing = x.side == i+1
	}
	return sides, max(x.desk.board(), min(x.desk.width/2, 700))
}

func (x *asking) model() *view.Which {
	a := x.desk.address
	m := &view.Which{
		Ask: a.Ask, Answers: a.Answers, From: a.From, Eights: a.Eights,
		Repeated: x.repeated, Second: x.inSecond,
		Level: a.Riff, Levels: x.desk.levels(), Hide: a.Hide,
		Balance: x.desk.ear.Balance, Help: x.desk.ear.Shown(), Again: view.Again{Drums: x.again.Drums, Slowly: x.again.Slowly},
		FromNames: x.names, Fewer: x.fewer, Volume: x.desk.shownVolume(), Notes: x.desk.notes(),
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
	m.Sides, m.Board = x.shownSides()
	m.Differences = quiz.Differences(q, x.given.ID)
}

func (x *asking) draw(place string) *view.Picture {
	switch {
	case place == view.PlaceHead:
		x.blank.Moves = x.blank.Moves && x.round.UnderWay()
		return x.blank.Draw(x.desk.calm())
	case place == view.PlaceHeadA:
		return x.heads[0].Draw(x.desk.calm())
	case place == view.PlaceHeadB:
		return x.heads[1].Draw(x.desk.calm())
	}
	return nil
}
