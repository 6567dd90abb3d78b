package session

import (
	"groundbeat/game/classroom"
	"groundbeat/game/control"
	"groundbeat/game/screens"
	"groundbeat/game/view"
)

// controllers are those of all screens.
type controllers map[string]control.Controller

func newControllers(s *control.Shared, diary *screens.Diary) controllers {
	all := controllers(screens.All(s))
	all[view.ScreenClass], all[view.ScreenPractice], all[view.ScreenDiary] = classroom.NewClass(s), screens.NewPlan(s), diary
	return all
}

// of is the controller of a screen; of one that is not known, that of Dums.
func (all controllers) of(screen string) control.Controller {
	if x, ok := all[screen]; ok {
		return x
	}
	return all[view.ScreenDums]
}
