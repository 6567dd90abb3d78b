package riff

import (
	"fmt"
	"slices"
	"strings"
)

// A Level is how far the lead drum departs from the skeleton.
type Level uint8

// The levels, each further from the skeleton than the one before.
const (
	Bare       Level = iota // the skeleton alone
	Filled                  // and light strokes in its gaps
	Ornamented              // and doubles, pick-ups, a fill at the end of the phrase
	Riffing                 // accents of its own, off the base
	Solo                    // never the base
)

var levelNames = []string{"bare", "filled", "ornamented", "riffing", "solo"}

// String returns the level's name in lower case, or "Level(9)" for one that
// does not exist.
func (l Level) String() string {
	if int(l) >= len(levelNames) {
		return fmt.Sprintf("Level(%d)", uint8(l))
	}
	return levelNames[l]
}

// ParseLevel returns the level of a name as String gives it; case matters. It
// knows all five names, whether or not they are available.
func ParseLevel(name string) (Level, error) {
	i := slices.Index(levelNames, name)
	if i < 0 {
		return 0, fmt.Errorf("unknown riff level '%s'; it is one of %s", name, strings.Join(levelNames, ", "))
	}
	return Level(i), nil
}

// Available reports whether Play can play the level: every one that exists.
func Available(l Level) bool { return l <= Solo }
