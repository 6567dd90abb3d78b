package diary

import (
	"math"
	"slices"

	"groundbeat/game/rhythm"
	"groundbeat/scoring"
	"groundbeat/scoring/history"
	"groundbeat/scoring/threshold"
)

const (
	// LeastHeard is the least number of answers for a hide that is heard through: with
	// 40 its interval is narrower than half the scale for nine of ten simulated
	// listeners also where there are but two choices, see threshold.LeastTrials.
	LeastHeard = 40
	// LatestHeard is how many answers a threshold is found from at most: its error is
	// then a thirtieth of the scale, and ears change.
	LatestHeard = 100
)

// heardKinds are the kinds of round that tell how much riff is heard through on an
// output, the most practised first.
func (b *Book) heardKinds(output string) []string {
	often := map[string]int{}
	for _, r := range b.rounds(output) {
		if _, ok := b.heard(r.entry); ok {
			often[r.Kind]++
		}
	}
	return mostFirst(often)
}

// Reach returns how much riff is heard through on an output: in all kinds of round, or in
// those that are named, since one alone may take 4 ms natively.
func (b *Book) Reach(output string, kinds ...string) []Reach {
	trials, days, often := map[string][]threshold.Trial{}, map[string][]string{}, map[string]int{}
	for _, r := range b.rounds(output) {
		if len(kinds) > 0 && !slices.Contains(kinds, r.Kind) {
			continue
		}
		if t, ok := b.heard(r.entry); ok {
			trials[r.Kind], days[r.Kind] = append(trials[r.Kind], t), append(days[r.Kind], r.day)
			often[r.Kind]++
		}
	}
	var all []Reach
	for _, kind := range mostFirst(often) {
		all = append(all, reach(kind, trials[kind], days[kind]))
	}
	return all
}

func reach(kind string, trials []threshold.Trial, days []string) Reach {
	r := Reach{Kind: kind, N: len(trials), Now: through(trials)}
	for _, part := range stretches(days, LeastHeard, MostHeard) {
		r.Spans = append(r.Spans, Heard{
			From: days[part.from], To: days[part.to-1], Hide: through(trials[part.from:part.to]),
		})
	}
	return r
}

// through returns the hide that the latest of some answers are right at half way between
// chance and best.
func through(trials []threshold.Trial) scoring.Estimate {
	if len(trials) < LeastHeard {
		return scoring.Unknown(len(trials), LeastHeard)
	}
	e := threshold.Find(trials[max(0, len(trials)-LatestHeard):], threshold.Search{High: 1}).Level
	e.Least = LeastHeard
	return e
}

// heard returns a round as a trial of how much riff is heard through, if it is one.
// Bare rounds are none: nothing hides the base in them.
func (b *Book) heard(e *entry) (threshold.Trial, bool) {
	if e.Hide == nil || e.Helped || e.Untried {
		return threshold.Trial{}, false
	}
	var c *rhythm.Cycle
	if e.Tapped != nil {
		c = b.cycle(e.Rhythm)
	}
	t := threshold.Trial{Level: *e.Hide, Right: e.Right, Choices: e.guessed(c)}
	return t, t.Choices > 0
}

// Choices returns how likely a round is right of which nothing is heard, as so many
// choices, 2 or more, one over it: see [Reach]. It is 0 where nothing could be said:
// where the rhythm did not change, and she is right who never presses; and where dums
// are tapped of a rhythm of which nothing is known (c is nil; for other rounds c does not
// matter).
func Choices(r history.Round, c *rhythm.Cycle) int {
	e := entryOf(r)
	return e.guessed(c)
}

func (e *entry) guessed(c *rhythm.Cycle) int {
	if k, known := history.KindOf(e.Kind); known {
		return k.Guess(e.asked(c))
	}
	return 0
}

// guesses returns the chance of tapping the dums of a rhythm right without hearing where
// in its cycle one is, as so many choices, 2 or more: one over it, rounded.
//
// Whoever knows the rhythm and its tempo and begins anywhere has taps that lie beside
// the dums by some part of the cycle, all parts alike likely. She is right where that
// part is within the window of one by which the dums, moved, are the dums again: at
// least three of four of them, see [history.Right]. So it is 1 in 6 for maqsum at 96 quarters
// a minute, whose two dums are alike, and 1 in 13 for baladi. Taps at random moments
// would be right far more seldom.
func guesses(c *rhythm.Cycle, bpm int, window float64) int {
	dums, steps := c.Dums(), c.Steps()
	alike, gap := 0, steps
	for move := range steps {
		hits := 0
		for _, d := range dums {
			if slices.Contains(dums, (d+move)%steps) {
				hits++
			}
		}
		if 4*hits >= 3*len(dums) {
			alike++
		}
	}
	for i, d := range dums {
		next := dums[(i+1)%len(dums)]
		gap = min(gap, (next-d+steps-1)%steps+1)
	}
	step := 60_000 / float64(bpm*c.StepsPerBeat()) // ms
	within := 2 * min(window, float64(gap)*step/2)
	if within == 0 {
		return manyChoices
	}
	return int(min(max(2, math.Round(float64(steps)*step/(within*float64(alike)))), manyChoices))
}

// manyChoices stand for a chance of nearly none.
const manyChoices = 1000
