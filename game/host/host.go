// Package host is what the game needs from outside: the sound, the page, what is kept,
// time and chance, as small interfaces, and the values that they hand over. Package wasm
// supplies them; a test, paper ones.
package host

import (
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/say"
)

// Host is all that the game needs from outside.
type Host struct {
	Sound   Sound
	Page    Page
	Store   Store
	Diary   Diary
	Wall    Wall
	Classes Classes
	Words   say.Words
	First   *rhythm.Cycle            // that of Home's drumhead and of the first round
	Rhythms func() *rhythm.Catalogue // all; they need not be read before they are asked for
	Query   string                   // of the link that opened the page
	Export  func()                   // hands the player a file of all rounds
	Reload  func()                   // loads the page anew
}

// Wall tells time and chance, which pure packages are not allowed to know.
type Wall interface {
	Now() float64    // performance time, ms
	Date() time.Time // wall time
	Seed() uint64    // a new random seed
	ID() string      // a new random id for a record
}
