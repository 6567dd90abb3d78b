package round

import (
	"slices"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring"
)

// hideCycles is over how many cycles a riff is asked to hide the base: as long as a
// theme lasts where four cycles make a phrase, whatever the length of the round.
const hideCycles = 16

// Riff returns what the drums play over the nth section of a passage of a level and
// a seed, the first being 0: as [NewPassage] chooses it, or with hide above 0 the
// one of the seed that comes nearest to hiding the base by hide of 100, as predicted
// at the rhythm's usual tempo. So it is the same at every tempo and length. Bare and
// Filled hide what they hide.
func Riff(c *rhythm.Cycle, level riff.Level, seed uint64, nth, hide int) (riff.Riff, error) {
	seed = mix(seed, uint64(nth))
	if hide == 0 || level < riff.Ornamented {
		return riff.New(c, level, seed)
	}
	return riff.Hidden(c, level, hideCycles, seed, float64(hide)/100, c.Tempo.Usual)
}

// Played is what both drums play in a section of the passage.
func (p *Passage) Played(section int) riff.Part { return p.parts[section].Part }

// OpenSteps are the declared breaks and rolls of the round, in steps of the
// question.
func (r *Round) OpenSteps() []riff.Span { return r.parts[0].Open }

// passOver takes out the taps that go along with a declared break or roll and
// belong to no stroke: nothing is asked there.
func (r *Round) passOver(setup time.Duration) {
	open := r.Open()
	if len(open) == 0 {
		return
	}
	r.sift(setup, r.strokes, nil, func(t time.Duration) bool {
		return slices.ContainsFunc(open, func(o Span) bool { return t >= o.From-Window && t < o.To })
	})
}

// sift takes taps out of the round and returns them: those that belong to a stroke
// that is not asked for (asked is nil where all are), and of those that belong to
// none the ones at times that are unasked. Times are less the set-up.
func (r *Round) sift(setup time.Duration, strokes []time.Duration, asked []bool, unasked func(time.Duration) bool) (out []Tap) {
	times := make([]time.Duration, len(r.taps))
	for i, t := range r.taps {
		times[i] = t.At - setup
	}
	m := scoring.Match(strokes, times, r.within)
	drop := make([]bool, len(r.taps))
	for _, p := range m.Pairs {
		drop[p.Tap] = asked != nil && !asked[p.Stroke]
	}
	for _, i := range m.Added {
		drop[i] = unasked(times[i])
	}
	var kept []Tap
	for i, t := range r.taps {
		if drop[i] {
			out = append(out, t)
		} else {
			kept = append(kept, t)
		}
	}
	r.taps = kept
	return out
}
