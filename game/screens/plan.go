package screens

import (
	"strconv"

	"groundbeat/game/coach"
	"groundbeat/game/control"
	"groundbeat/game/diaryview"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/view"
)

// Plan is the screen on which a practice begins: its plan. It is made once what
// there was before is known.
type Plan struct {
	s     *control.Shared
	known coach.Known
	steps []coach.Step
}

func NewPlan(s *control.Shared) *Plan { return &Plan{s: s} }

func (x *Plan) Prepare() {
	x.steps = nil
	if x.s.Learner.Err != nil { // perhaps it can be read now
		x.s.Learner.Read()
	}
	x.plan()
}

// plan makes the plan, if what there was before is known.
func (x *Plan) plan() {
	if !x.s.Learner.IsRead() {
		return
	}
	x.known = x.s.Known()
	x.steps = x.known.Practice(max(x.s.Address.Minutes, link.LeastMinutes), x.s.Learner.Pool(x.known), x.s.Wall.Seed())
}

func (x *Plan) Act(action, value string) {
	switch action {
	case view.ActBegin:
		if len(x.steps) > 0 && x.s.Sound.Audible() {
			x.s.Practice.Begin(x.steps)
		}
	case view.ActDiaryMinutes:
		number, _ := strconv.Atoi(value)
		x.s.Address.Minutes = min(max(number, link.LeastMinutes), link.MostMinutes)
		x.plan()
	}
}

func (x *Plan) Interrupt(string)             {}
func (x *Plan) Draw(string) *picture.Picture { return nil }

// Tick makes the plan as soon as it can be made.
func (x *Plan) Tick(float64) bool {
	if x.steps != nil || !x.s.Learner.IsRead() {
		return false
	}
	x.plan()
	return x.steps != nil
}

func (x *Plan) Screen() view.Screen {
	m := &diaryview.Plan{
		Minutes: x.s.Address.Minutes, Reading: x.steps == nil, Steps: x.steps,
		First: len(x.known.Rounds) == 0, Rhythms: x.s.Cycles(), Volume: x.s.ShownVolume(), Notes: x.s.Notes(),
	}
	return m.Screen(x.s.Words)
}
