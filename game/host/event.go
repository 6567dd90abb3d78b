package host

import "io"

// EventKind is what an Event is about.
type EventKind uint8

// Kinds of event.
const (
	Used         EventKind = iota // a control was used: Action, Value
	Tapped                        // a tap: Tap
	Stopped                       // the sound was interrupted: Reason
	Running                       // the sound runs (again), or there turned out to be none
	Stored                        // how it stands with what is kept has changed
	Told                          // another window has kept something: Value is Things or Rounds
	Visited                       // the browser went back or forward: Value is the query, Mark the entry's
	ExportFailed                  // the file of all rounds could not be made: Reason
)

// What another window can have kept.
const (
	Things = "things" // outputs, what belongs to classes, what is remembered
	Rounds = "rounds"
)

// An Event is something that happened on the page.
type Event struct {
	Kind   EventKind
	Action string
	Value  string
	Mark   string
	Reason string // hidden, interrupted, dry, device
	Tap    Tap
	File   io.Reader // the whole of a file that was opened, whose beginning is in Value; not to be read in a frame
}

// A Tap is one press, with the time that the browser stamped on it.
type Tap struct {
	At    float64 // performance time, ms
	X, Y  float64 // place in the tap area, 0..1
	By    string  // key, mouse, touch, pen or click
	Round int     // number of the round that was on the page
}

// Reasons why what was playing cannot count.
const (
	WhyGap    = "gap"
	WhyHidden = "hidden"
	WhyPaused = "paused"
	WhySilent = "silent"
	WhyStop   = "stop"
)
