package host

import (
	"groundbeat/game/picture"
	"groundbeat/game/view"
)

// A Place is where the page has left room for a live picture, in CSS pixels of
// the window.
type Place struct {
	Picture    string
	X, Y, W, H float64
}

// Page is the browser's page: it shows screens and tells what the player did.
type Page interface {
	// Show makes the page show a screen; equal screens cost nothing.
	Show(s view.Screen)
	// Events hands over what happened since the last call, in order.
	Events(into []Event) []Event
	// Places hands over where the live pictures are.
	Places(into []Place) []Place
	// Canvas reports whether live pictures can be drawn on the engine's canvas; once
	// they cannot, each is to be handed to Sketch in each frame.
	Canvas() bool
	// Sketch draws a live picture into its place on the page itself; nil empties the
	// place. A picture that is drawn there already costs nothing.
	Sketch(place string, p *picture.Picture)
	// Light reports whether the light palette is in use.
	Light() bool
	// Calm reports whether the person's system asks for less motion.
	Calm() bool
	// Theme sets which palette is used: one of the view's themes.
	Theme(theme string)
	// Width is the width of the window in CSS pixels.
	Width() float64
	// TwoColumns reports whether there is room for the drumhead beside the words.
	TwoColumns() bool
	// Touch reports whether what is pressed is pressed with a finger: there is no
	// keyboard in use.
	Touch() bool
	// Link shows an address in the browser's address bar, without loading it, under
	// the mark of an entry of its history: of a new one, to which the back button
	// returns, or in place. An empty query leaves the address as it is.
	Link(query, mark string, visit bool)
	// Back goes back from the entry of a mark, if that is where the browser is.
	Back(mark string)
}
