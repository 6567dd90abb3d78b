package host

import (
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

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
