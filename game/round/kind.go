package round

import (
	"fmt"
	"slices"

	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// The kinds of round in which strokes are tapped, by the ids of their records.
const (
	Dums    = history.Dums  // the low strokes of a rhythm; see [New]
	Stops   = history.Stop  // likewise, while the drummer breaks off now and then; see [NewStopped]
	Carries = history.Carry // likewise, while the drums fall silent for an eight now and then; see [NewCarried]
)

// kind is what a kind of round has of its own, before it is dealt.
type kind struct {
	id          string
	least, most int    // eights
	allowed     string // says what is asked in so many
	made        string // the function that makes it; "": New
	asks        func(rhythm.Stroke) bool
}

var kinds = []kind{
	{Dums, MinEights, MaxEights, "allowed is", "", rhythm.Stroke.Low},
	{Stops, MinLongEights, MaxLongEights, "stops are asked in", "NewStopped", rhythm.Stroke.Low},
	{Carries, MinLongEights, MaxEights, "carrying on is asked in", "NewCarried", rhythm.Stroke.Low},
}

func kindOf(id string) (kind, bool) {
	i := slices.IndexFunc(kinds, func(k kind) bool { return k.id == id })
	if i < 0 {
		return kind{}, false
	}
	return kinds[i], true
}

// Asks tells which strokes of the base are tapped in a kind of round, such as
// [rhythm.Stroke.Low]. Of one that is not known these are the dums.
func Asks(id string) func(rhythm.Stroke) bool {
	if k, known := kindOf(id); known {
		return k.asks
	}
	return rhythm.Stroke.Low
}

// AskedSteps are the steps of a cycle, from 0, whose strokes are tapped in a kind of
// round, in order.
func AskedSteps(id string, c *rhythm.Cycle) []int { return c.Skeleton.Pulses(Asks(id)).Onsets() }

// check is what is wrong with a length, or nil.
func (k kind) check(eights int) error {
	if eights < k.least || eights > k.most {
		return fmt.Errorf("round: %d eights; %s %d to %d", eights, k.allowed, k.least, k.most)
	}
	return nil
}
