package screens

import (
	"groundbeat/game/control"
	"groundbeat/game/view"
)

// All are new controllers of all screens but those that need more than what is shared,
// by the screens.
func All(s *control.Shared) map[string]control.Controller {
	return map[string]control.Controller{
		view.ScreenDums: NewTapped(s, view.ScreenDums), view.ScreenStop: NewStop(s), view.ScreenCarry: NewCarry(s),
		view.ScreenWhich: NewWhich(s), view.ScreenChange: NewChange(s), view.ScreenListen: NewListen(s),
		view.ScreenSetUp: NewSetUp(s), view.ScreenCheck: NewSoundCheck(s), view.ScreenHome: NewHome(s),
	}
}
