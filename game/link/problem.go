package link

import (
	"fmt"
	"strings"
)

// Problem is one wrong parameter of a link.
type Problem struct {
	Name, Value string
	Allowed     string // values; or, where Unknown or Screen is set, names
	Unknown     bool   // there is no parameter of this name
	Screen      string // there is one, but not on this screen; else empty
}

// String says the problem as "bpm=900: allowed is 40 to 220".
func (p Problem) String() string {
	switch {
	case p.Unknown:
		return fmt.Sprintf("%s: known are %s", p.Name, p.Allowed)
	case p.Screen != "":
		return fmt.Sprintf("%s: %s has only %s", p.Name, p.Screen, p.Allowed)
	}
	return fmt.Sprintf("%s=%s: allowed is %s", p.Name, p.Value, p.Allowed)
}

// LinkError lists everything that is wrong with a link, in the link's order of
// parameters: those that belong to its screen first, then the others by name.
type Error struct{ Problems []Problem }

// Error says every problem, semicolons between.
func (e *Error) Error() string {
	var all []string
	for _, p := range e.Problems {
		all = append(all, p.String())
	}
	return strings.Join(all, "; ")
}
