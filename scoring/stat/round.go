package stat

import (
	"time"

	"groundbeat/scoring"
)

// Played is a round as far as its timing goes.
type Played struct {
	Pairs []scoring.Pair // taps that belong to strokes, ascending, raw offsets
	Setup time.Duration  // the player's set-up mean, taken off here
	// Counts tells for each stroke which stroke of the cycle it is, from 0.
	// nil where nothing is wanted by count.
	Counts []int
}

// Bias returns the mean offset of one round in ms, + behind, − ahead, as [mean] says.
// Strokes that were left out part neighbours: the taps on both sides of them are none.
func (p Played) Bias() scoring.Estimate {
	at := make([]int, len(p.Pairs))
	for i, pair := range p.Pairs {
		at[i] = pair.Stroke
	}
	return mean(p.offsets(), at)
}

// offsets returns the offset of each tap in ms.
func (p Played) offsets() []float64 {
	offsets := make([]float64, len(p.Pairs))
	for i, pair := range p.Pairs {
		offsets[i] = milliseconds(pair.Offset - p.Setup)
	}
	return offsets
}

// byCount returns the offsets in ms by the stroke of the cycle, up to the last stroke
// of which there was one.
func (p Played) byCount() [][]float64 {
	if p.Counts == nil {
		return nil
	}
	var all [][]float64
	for _, k := range p.Counts {
		for k >= len(all) {
			all = append(all, nil)
		}
	}
	for i, offset := range p.offsets() {
		k := p.Counts[p.Pairs[i].Stroke]
		all[k] = append(all[k], offset)
	}
	return all
}

// LeastRounds is the least number of rounds for what is measured from round to
// round: of 5 no two enclose the median with 95 %.
const LeastRounds = LeastTaps

// Rhythm tells how the taps of many rounds of one rhythm, on one output, lie.
// Its observations are the rounds: each counts alike, and what happens within
// one (taps that follow one another are alike) does not narrow an interval.
type Rhythm struct {
	Bias   scoring.Estimate // mean of the rounds' mean offsets, ms: + behind, − ahead
	Spread scoring.Estimate // ms: root of the mean variance within a round
	// Counts is Bias by stroke of the cycle, such as the dum on the & of 2, whenever it
	// came; observations are the rounds' means.
	Counts []scoring.Estimate
}

// OfRounds measures many rounds of one rhythm on one output, those with two taps or
// more. Rounds of different outputs are never to be put together: each has its own bias.
//
// The interval of Spread is by the jackknife over rounds, on the logarithm
// (Miller, The jackknife: a review, Biometrika 61, 1–15, 1974).
func OfRounds(rounds []Played) Rhythm {
	var means, variances, freedoms []float64
	var counts [][]float64
	for _, p := range rounds {
		if len(p.Pairs) < 2 {
			continue
		}
		m, v := meanVariance(p.offsets())
		means, variances, freedoms = append(means, m), append(variances, v), append(freedoms, float64(len(p.Pairs)-1))
		for k, offsets := range p.byCount() {
			if k == len(counts) {
				counts = append(counts, nil)
			}
			if len(offsets) > 0 {
				counts[k] = append(counts[k], average(offsets))
			}
		}
	}
	r := Rhythm{Bias: meanApart(means, LeastRounds), Spread: within(variances, freedoms)}
	for _, c := range counts {
		r.Counts = append(r.Counts, meanApart(c, LeastRounds))
	}
	return r
}
