package session

import (
	"groundbeat/game/host"
	"groundbeat/game/view"
)

// An exercise is one of the things that can lie on the desk.
type exercise interface {
	lay()                            // makes ready what the address says
	act(action, value string)        // a control was used
	tap(t *host.Tap)                 // a press on the tap area
	interrupted(why string)          // the sound was interrupted
	tick(now float64) bool           // follows what is heard; is the screen another?
	screen() view.Screen             // what the page shows
	draw(place string) *view.Picture // what lives in a place; nil: nothing
	stands() view.Phase              // where its round stands; Ready where there are none
	goOut()                          // goes back from a round to where it is got ready
}

// exercises are all that can lie on the desk.
type exercises struct {
	tapping  *tapping
	hearing  *hearing
	asking   *asking
	setting  *setting
	checking *checking
	changing *changing
	stopping *stopping
	carrying *carrying
	welcome  *welcome
	teaching *teaching
	journal  *journal
	planning *planning
}

func newExercises(d *desk) exercises {
	return exercises{
		tapping: newTapping(d), hearing: newHearing(d), asking: newAsking(d), setting: newSetting(d),
		checking: newChecking(d), changing: newChanging(d), stopping: newStopping(d), carrying: newCarrying(d),
		welcome: newWelcome(d), teaching: newTeaching(d), journal: newJournal(d), planning: newPlanning(d),
	}
}

// of is the exercise of a screen; of one that is not known, Dums.
func (e *exercises) of(screen string) exercise {
	switch screen {
	case view.ScreenListen:
		return e.hearing
	case view.ScreenWhich:
		return e.asking
	case view.ScreenSetUp:
		return e.setting
	case view.ScreenChange:
		return e.changing
	case view.ScreenStop:
		return e.stopping
	case view.ScreenCarry:
		return e.carrying
	case view.ScreenCheck:
		return e.checking
	case view.ScreenHome:
		return e.welcome
	case view.ScreenClass:
		return e.teaching
	case view.ScreenPractice:
		return e.planning
	case view.ScreenDiary:
		return e.journal
	}
	return e.tapping
}
