package riff

import (
	"slices"

	"groundbeat/game/rhythm"
)

// pulsesPerStep is the grid on which the lead drum's syncopation is counted; what
// lies between its pulses counts on the one before.
const pulsesPerStep = 2

// syncopationHalf is where half the weight of syncopation is felt: half way along
// the 0 to 15 of the rhythms by which Fitch and Rosenfeld found that listeners lose
// the beat, each 16 pulses long.
const syncopationHalf = 8

// unsettled is how near, in thousandths, the lead drum's full strokes come to
// moving the beat: by what their syncopation is more than that of the base, in the
// mean of the cycles that have no open span.
func unsettled(c *rhythm.Cycle, p Part, lead []Stroke) int {
	weights := MetreWeights(c, pulsesPerStep)
	onsets := make(rhythm.Pulses, len(weights))
	for step, s := range c.Skeleton {
		onsets[step*pulsesPerStep] = s.Sounds()
	}
	own := Syncopation(onsets, weights)
	more, cycles := 0, 0
	for cycle := range p.Bass[len(p.Bass)-1].Step/c.Steps() + 1 {
		from, to := cycle*c.Steps(), (cycle+1)*c.Steps()
		clear(onsets)
		for len(lead) > 0 && lead[0].Step < to {
			if s := lead[0]; !s.Sound.Light() {
				onsets[(s.tick()-from*TicksPerStep)*pulsesPerStep/TicksPerStep] = true
			}
			lead = lead[1:]
		}
		if slices.ContainsFunc(p.Open, func(s Span) bool { return s.From < to && from < s.To }) {
			continue
		}
		more += max(0, Syncopation(onsets, weights)-own)
		cycles++
	}
	if cycles == 0 {
		return 0
	}
	return saturated(more*16, syncopationHalf*cycles*len(weights))
}
