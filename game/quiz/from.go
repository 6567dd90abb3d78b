package quiz

import (
	"fmt"
	"strings"

	"groundbeat/game/rhythm"
)

// The named pools.
const (
	Five = "five" // the most used
	Even = "even" // all that go evenly into eights
	All  = "all"  // odd metres too
)

// From returns the rhythms of a named pool, or those of ids joined by points,
// such as "maqsum.baladi", in the order of the catalogue and each once. An id
// that there is not, and one that is no answer in a quiz, are errors.
func From(c *rhythm.Catalogue, from string) ([]*rhythm.Cycle, error) {
	switch from {
	case Even, All:
		return c.Answers(from == All), nil
	case Five:
		return some(c.Answers(true), func(cycle *rhythm.Cycle) bool { return cycle.Core }), nil
	}
	asked := map[string]bool{}
	for id := range strings.SplitSeq(from, ".") {
		cycle, found := c.Get(id)
		if !found {
			return nil, fmt.Errorf("quiz: there is no rhythm '%s'", id)
		}
		if !cycle.Quiz {
			return nil, fmt.Errorf("quiz: %s can be heard, but is no answer in a quiz", cycle.Name)
		}
		asked[id] = true
	}
	return some(c.Answers(true), func(cycle *rhythm.Cycle) bool { return asked[cycle.ID] }), nil
}

func some(cycles []*rhythm.Cycle, wanted func(*rhythm.Cycle) bool) []*rhythm.Cycle {
	var all []*rhythm.Cycle
	for _, c := range cycles {
		if wanted(c) {
			all = append(all, c)
		}
	}
	return all
}
