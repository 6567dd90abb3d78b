// Package control is what the controllers of all screens have in common: what a session
// asks of them, and what it hands to them. What is handed to them knows none of them, and
// they know nothing of the session.
package control

import (
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/view"
)

// A Controller decides what happens next on a screen.
type Controller interface {
	Prepare()                           // makes ready what the address says
	Act(action, value string)           // a control was used
	Interrupt(why string)               // the sound was interrupted
	Tick(now float64) bool              // follows what is heard; is the screen another?
	Screen() view.Screen                // what the page shows
	Draw(place string) *picture.Picture // what lives in a place; nil: nothing
}

// Tapper is a controller on whose screen there is a tap area.
type Tapper interface {
	Tap(t *host.Tap) // a press on it
}

// Entered is a controller whose screen is entered and left: it has rounds, or what is like them.
type Entered interface {
	Phase() view.Phase // where its round stands
	GoOut()            // goes back from a round to where it is got ready
}

// Refresher is a controller that shows what another window may have kept.
type Refresher interface {
	Refresh() // takes it up
}
