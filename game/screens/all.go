package screens

import (
	"groundbeat/game/control"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// All are new controllers of all screens but those that need more than what is shared,
// by the screens. A kind of round whose strokes are tapped, and that is not named here,
// has nothing of its own but these.
func All(s *control.Shared) map[string]control.Controller {
	all := map[string]control.Controller{
		view.ScreenStop: NewStop(s), view.ScreenCarry: NewCarry(s), view.ScreenWhich: NewWhich(s), view.ScreenChange: NewChange(s),
		view.ScreenListen: NewListen(s), view.ScreenSetUp: NewSetUp(s), view.ScreenCheck: NewSoundCheck(s), view.ScreenHome: NewHome(s),
	}
	for _, k := range history.Kinds {
		if _, own := all[k.ID]; k.Play == history.Tapped && !own {
			all[k.ID] = NewTapped(s, k.ID)
		}
	}
	return all
}
