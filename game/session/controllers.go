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
	return controllers{
		view.ScreenDums: screens.NewDums(s), view.ScreenStop: screens.NewStop(s), view.ScreenCarry: screens.NewCarry(s),
		view.ScreenWhich: screens.NewWhich(s), view.ScreenChange: screens.NewChange(s), view.ScreenListen: screens.NewListen(s),
		view.ScreenSetUp: screens.NewSetUp(s), view.ScreenCheck: screens.NewSoundCheck(s), view.ScreenHome: screens.NewHome(s),
		view.ScreenClass: classroom.NewClass(s), view.ScreenPractice: screens.NewPlan(s), view.ScreenDiary: diary,
	}
}

// of is the controller of a screen; of one that is not known, that of Dums.
func (all controllers) of(screen string) control.Controller {
	if x, ok := all[screen]; ok {
		return x
	}
	return all[view.ScreenDums]
}
