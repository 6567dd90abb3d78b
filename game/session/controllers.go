package session

import (
	"groundbeat/game/view"
)

// controllers are those of all screens.
type controllers map[string]Controller

func newControllers(s *Shared, diary *Diary) controllers {
	return controllers{
		view.ScreenDums: NewDums(s), view.ScreenStop: NewStop(s), view.ScreenCarry: NewCarry(s),
		view.ScreenWhich: NewWhich(s), view.ScreenChange: NewChange(s), view.ScreenListen: NewListen(s),
		view.ScreenSetUp: NewSetUp(s), view.ScreenCheck: NewSoundCheck(s), view.ScreenHome: NewHome(s),
		view.ScreenClass: NewClass(s), view.ScreenPractice: NewPlan(s), view.ScreenDiary: diary,
	}
}

// of is the controller of a screen; of one that is not known, that of Dums.
func (all controllers) of(screen string) Controller {
	if x, ok := all[screen]; ok {
		return x
	}
	return all[view.ScreenDums]
}
