package picture

import (
	"math"
	"slices"
	"time"

	"groundbeat/game/rhythm"
)

// CountResult is how the taps on one stroke of the cycle lay, over the whole round.
type CountResult struct {
	Count  string        // as it is said: "3", "2 &"
	Asked  int           // how often the stroke came
	Tapped int           // how often a tap belonged to it
	Mean   time.Duration // of the offsets, + behind; 0 without taps
	Spread time.Duration // standard deviation about the mean (n − 1); 0 below two taps
}

// Tally returns the result of each stroke of the cycle that is asked for, in order.
func (r *Review) Tally(base rhythm.Pattern, counts []string) []CountResult {
	var all []CountResult
	for i, s := range base {
		if r.asks(s) {
			all = append(all, r.count(i, len(base), CountName(counts, i)))
		}
	}
	return all
}

func (r *Review) count(step, steps int, name string) CountResult {
	c := CountResult{Count: name}
	for s := step; s < r.Steps; s += steps {
		if !slices.ContainsFunc(r.Open, func(o OpenSteps) bool { return o.From <= s && s < o.To }) {
			c.Asked++
		}
	}
	c.Mean, c.Tapped = r.mean(step, steps)
	var sum float64
	for _, l := range r.Landed {
		if l.Step%steps == step {
			sum += math.Pow(float64(l.Offset-c.Mean), 2)
		}
	}
	if c.Tapped > 1 {
		c.Spread = time.Duration(math.Round(math.Sqrt(sum / float64(c.Tapped-1))))
	}
	return c
}
