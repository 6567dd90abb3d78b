package session

import (
	"io"
	"time"

	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Outside is all that the game needs from outside.
type Outside struct {
	Sound   Sound
	Page    Page
	Store   Store
	Diary   Diary
	Wall    Wall
	Room    Room
	Words   view.Words
	First   *rhythm.Cycle            // that of Home's drumhead and of the first round
	Rhythms func() *rhythm.Catalogue // all; they need not be read before they are asked for
	Query   string                   // of the link that opened the page
	Export  func()                   // hands the player a file of all rounds
	Reload  func()                   // loads the page anew
}

// Sound is the way to the loudspeaker.
type Sound interface {
	// Play cuts what was queued and begins a new epoch, in which frames from
	// base on, and none before, will be heard as soon as possible.
	Play(base int64)
	// Stop silences the sound within 30 ms.
	Stop()
	// Next is the next frame of the stream to be rendered.
	Next() int64
	// Schedule adds hits to the stream; see [audio.Stream].
	Schedule(hits ...audio.Hit) error
	// Drop forgets the hits from a frame on.
	Drop(from int64)
	// Heard tells which frame is heard at a performance time in ms.
	Heard(at float64) (clock.Position, error)
	// Whole reports whether the frames were placed without a gap.
	Whole(epoch int, from, to int64) bool
	// Balance sets the levels of the drums, 0 to 1.
	Balance(lead, bass float64)
	// Stage sets where the drums stand.
	Stage(s audio.Stage)
	// Volume sets the loudness, 0 to 1 of the full level.
	Volume(v float64)
	// Audible is false where there is no sound at all and rounds are played on
	// in pictures.
	Audible() bool
}

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
	Sketch(place string, p *view.Picture)
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

// EventKind is what an Event is about.
type EventKind uint8

// Kinds of event.
const (
	Act        EventKind = iota // a control was used: Action, Value
	Tapped                      // a tap: Tap
	Stopped                     // the sound was interrupted: Reason
	Running                     // the sound runs (again), or there turned out to be none
	Stored                      // how it stands with what is kept has changed
	Told                        // another window has kept something: Value is Things or Rounds
	Visited                     // the browser went back or forward: Value is the query, Mark the entry's
	Unexported                  // the file of all rounds could not be made: Reason
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

// Store keeps finished rounds.
type Store interface {
	// Keep stores a round, which is safe against a page that is left as soon as it
	// returns, if it can be; done is called with nil or the reason why it waits.
	Keep(r history.Round, done func(error))
	// Storage is how it stands with what is kept.
	Storage() view.Storage
	// SaveWaiting hands over a file of the rounds that wait to be kept.
	SaveWaiting() error
	// Outputs are the outputs that are known; none if there are none, or
	// if what is kept of them cannot be read.
	Outputs() Outputs
	// KeepOutputs stores them, or tells why not.
	KeepOutputs(o Outputs) error
	// Begun reports whether a round was ever finished here; false if that
	// cannot be known.
	Begun() bool
	// KeepBegun stores that one was, where that can be stored.
	KeepBegun()
	// Remembered is what was remembered under a name; "" if nothing was.
	Remembered(name string) string
	// Remember remembers a text under a name, where it can be: else for this visit.
	Remember(name, text string)
}

// Room keeps what belongs to a teacher's classes, apart from what players keep, and
// hands over files.
type Room interface {
	// Kept is the text that is kept under a name; "" if there is none, or if it cannot
	// be read.
	Kept(name string) string
	// KeptUnder are the texts whose names begin with a text, those that were kept first
	// at first.
	KeptUnder(prefix string) []string
	// Keep keeps a text under a name, or tells why not; then it holds for this visit. A
	// text that is "" is removed.
	Keep(name, text string) error
	// Save hands over a file of a media type, or tells why not.
	Save(name, kind, text string) error
}

// Wall tells time and chance, which pure packages are not allowed to know.
type Wall interface {
	Now() float64    // performance time, ms
	Date() time.Time // wall time
	Seed() uint64    // a new random seed
	ID() string      // a new random id for a record
}
