package session

import (
	"strconv"

	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/view"
)

// planning is the screen on which a practice begins: its plan. It is made once what
// there was before is known.
type planning struct {
	*desk
	known quiz.Known
	steps []quiz.Step
}

func newPlanning(d *desk) *planning { return &planning{desk: d} }

func (x *planning) lay() {
	x.steps = nil
	if x.desk.learner.err != nil { // perhaps it can be read now
		x.desk.learner.read()
	}
	x.plan()
}

// plan makes the plan, if what there was before is known.
func (x *planning) plan() {
	if !x.desk.learner.isRead() {
		return
	}
	x.known = x.desk.learner.known()
	x.steps = x.known.Practice(max(x.desk.address.Minutes, view.LeastMinutes), x.desk.learner.pool(x.known), x.desk.Wall.Seed())
}

func (x *planning) act(action, value string) {
	switch action {
	case view.ActBegin:
		if len(x.steps) > 0 && x.desk.Sound.Audible() {
			x.desk.through(x.steps)
		}
	case view.ActDiaryMinutes:
		number, _ := strconv.Atoi(value)
		x.desk.address.Minutes = min(max(number, view.LeastMinutes), view.MostMinutes)
		x.plan()
	}
}

func (x *planning) tap(*host.Tap)             {}
func (x *planning) interrupted(string)        {}
func (x *planning) draw(string) *view.Picture { return nil }

// tick makes the plan as soon as it can be made.
func (x *planning) tick(float64) bool {
	if x.steps != nil || !x.desk.learner.isRead() {
		return false
	}
	x.plan()
	return x.steps != nil
}

func (x *planning) screen() view.Screen {
	m := &view.Plan{
		Minutes: x.desk.address.Minutes, Reading: x.steps == nil, Steps: x.steps,
		First: len(x.known.Rounds) == 0, Rhythms: x.desk.exercises.journal.all(), Volume: x.desk.shownVolume(), Notes: x.desk.notes(),
	}
	return m.Screen(x.desk.Words)
}
