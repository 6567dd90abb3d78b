package quiz

import "groundbeat/game/rhythm"

// mistakable reports whether one of two rhythms, played for as long as a
// question lasts, could be the other at some speed.
func Mistakable(a, b *rhythm.Cycle) bool { return couldBe(a, b) || couldBe(b, a) }

// couldBe reports whether heard, played for whichEights, is the beginning of
// other at some speed: as many strokes, as far apart in proportion, low where
// it is low, until it ends. Times count from the first stroke.
func couldBe(heard, other *rhythm.Cycle) bool {
	cycles := heard.CyclesIn(whichEights)
	as := baseOf(heard, cycles)
	bs := baseOf(other, 1+(len(as)+len(baseOf(other, 1)))/len(baseOf(other, 1))) // more than as many
	last := len(as) - 1
	for i, a := range as {
		if a.low != bs[i].low || a.step*bs[last].step != bs[i].step*as[last].step {
			return false
		}
	}
	end := cycles*heard.Steps() - heard.Skeleton.Pulses(rhythm.Stroke.Sounds).Onsets()[0]
	return bs[last+1].step*as[last].step >= end*bs[last].step
}

// based is a stroke of the base, so many steps from the first.
type based struct {
	step int
	low  bool
}

// baseOf returns the strokes of a number of cycles of a skeleton.
func baseOf(c *rhythm.Cycle, cycles int) []based {
	onsets := c.Skeleton.Pulses(rhythm.Stroke.Sounds).Onsets()
	var all []based
	for cycle := range cycles {
		for _, step := range onsets {
			all = append(all, based{cycle*c.Steps() + step - onsets[0], c.Skeleton[step].Low()})
		}
	}
	return all
}
