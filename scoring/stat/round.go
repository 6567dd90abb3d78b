package stat

import (
	"time"

	"groundbeat/scoring"
)

// Played is a round as far as its timing goes.
type Played struct {
	Strokes []time.Duration // asked for, ascending
	Pairs   []scoring.Pair  // taps that belong to them, ascending, raw offsets
	Setup   time.Duration   // the player's set-up mean, taken off here
	// Counts tells for each stroke which stroke of the cycle it is, from 0.
	// nil where nothing is wanted by count.
	Counts []int
	// Beat is the length of a beat, round which Circle goes. 0 where it is not
	// wanted.
	Beat time.Duration
}

// Round tells how the taps of one round lie. All offsets are in ms, less the
// set-up mean: + behind, − ahead.
type Round struct {
	Bias   scoring.Estimate // mean offset, see [Mean]
	Median scoring.Estimate
	Centre scoring.Estimate // robust bias, see [Centre]
	Spread scoring.Estimate // standard deviation
	Robust scoring.Estimate // robust spread
	Drift  scoring.Estimate // ms a minute: + falling behind, − rushing, see [Slope]
	Lag    scoring.Estimate // −1 to 1, how alike neighbours are, see [Lag]
	Circle Circle           // offsets around a beat: 0 on it, 0.25 a quarter of a beat behind
	Counts []Count          // by stroke of the cycle
}

// OfRound measures the taps of one round. Strokes that were left out part
// neighbours: the taps on both sides of them are none.
func OfRound(p Played) Round {
	minutes, offsets, at := p.lists()
	r := Round{
		Bias: mean(offsets, at), Median: Median(offsets), Centre: Centre(offsets),
		Spread: Spread(offsets), Robust: Robust(offsets),
		Drift: slope(minutes, offsets, at), Lag: lag(offsets, at),
		Circle: Around(nil),
	}
	if p.Beat > 0 {
		r.Circle = Around(p.turns())
	}
	for _, g := range p.gather() {
		c := g.count()
		c.Offset = meanApart(g.offsets, LeastTaps)
		r.Counts = append(r.Counts, c)
	}
	return r
}

// lists returns, of each tap, the time of its stroke in minutes from the first,
// its offset in ms, and its stroke.
func (p Played) lists() (minutes, offsets []float64, at []int) {
	n := len(p.Pairs)
	minutes, offsets, at = make([]float64, n), make([]float64, n), make([]int, n)
	for i, pair := range p.Pairs {
		minutes[i] = (p.Strokes[pair.Stroke] - p.Strokes[p.Pairs[0].Stroke]).Minutes()
		offsets[i] = milliseconds(pair.Offset - p.Setup)
		at[i] = pair.Stroke
	}
	return minutes, offsets, at
}

// turns returns the offsets as parts of a beat.
func (p Played) turns() []float64 {
	offsets := make([]time.Duration, len(p.Pairs))
	for i, pair := range p.Pairs {
		offsets[i] = pair.Offset - p.Setup
	}
	return Turns(offsets, p.Beat)
}

// LeastRounds is the least number of rounds for what is measured from round to
// round: of 5 no two enclose the median with 95 %.
const LeastRounds = LeastTaps

// Rhythm tells how the taps of many rounds of one rhythm, on one output, lie.
// Its observations are the rounds: each counts alike, and what happens within
// one (taps that follow one another are alike) does not narrow an interval.
type Rhythm struct {
	Rounds int // rounds with two taps or more; others do not count
	Taps   int // taps in them

	Bias   scoring.Estimate // mean of the rounds' mean offsets, ms: + behind, − ahead
	Centre scoring.Estimate // robust: the same by [Centre]
	Spread scoring.Estimate // ms: root of the mean variance within a round
	Robust scoring.Estimate // ms: median of the rounds' robust spreads
	Drift  scoring.Estimate // ms a minute: mean of the rounds' slopes
	Lag    scoring.Estimate // mean of the rounds' autocorrelations, less their bias
	// Wander is how far the bias itself goes from round to round: the standard
	// deviation of the rounds' means, in ms.
	Wander scoring.Estimate
	Counts []Count // by stroke of the cycle; observations are the rounds' means
}

// OfRounds measures many rounds of one rhythm on one output. Rounds of
// different outputs are never to be put together: each has its own bias. Drift
// and Lag rest on the rounds that have [LeastSeries] taps, Robust on those with
// [LeastTaps].
//
// The interval of Spread is by the jackknife over rounds, on the logarithm
// (Miller, The jackknife: a review, Biometrika 61, 1–15, 1974).
func OfRounds(rounds []Played) Rhythm {
	var all columns
	for _, p := range rounds {
		all.add(p)
	}
	return Rhythm{
		Rounds: len(all.means), Taps: all.taps,
		Bias: meanApart(all.means, LeastRounds), Centre: Centre(all.means), Wander: Spread(all.means),
		Spread: within(all.variances, all.freedoms), Robust: Median(all.robusts),
		Drift: meanApart(all.drifts, LeastRounds), Lag: meanApart(all.lags, LeastRounds),
		Counts: all.allCounts(),
	}
}

// columns are what is known of each round.
type columns struct {
	taps                                int
	means, variances, freedoms, robusts []float64
	drifts, lags                        []float64
	counts                              []Count
	byCount                             [][]float64
}

func (c *columns) add(p Played) {
	if len(p.Pairs) < 2 {
		return
	}
	minutes, offsets, at := p.lists()
	m, v := meanVariance(offsets)
	c.taps += len(offsets)
	c.means, c.variances = append(c.means, m), append(c.variances, v)
	c.freedoms = append(c.freedoms, float64(len(offsets)-1))
	if len(offsets) >= LeastTaps {
		c.robusts = append(c.robusts, robustValue(offsets))
	}
	if len(offsets) >= LeastSeries {
		c.addSeries(minutes, offsets, at, m)
	}
	c.addCounts(p.gather())
}

func (c *columns) addSeries(minutes, offsets []float64, at []int, m float64) {
	if _, b, squares := line(minutes, offsets); squares > 0 {
		c.drifts = append(c.drifts, b)
	}
	if r, ok := correlation(deviations(offsets, m), at); ok {
		c.lags = append(c.lags, r+(1+3*r)/float64(len(offsets)))
	}
}

func (c *columns) addCounts(all []gathered) {
	for k, g := range all {
		if k == len(c.counts) {
			c.counts, c.byCount = append(c.counts, Count{}), append(c.byCount, nil)
		}
		q := g.count()
		c.counts[k].Ahead += q.Ahead
		c.counts[k].Behind += q.Behind
		c.counts[k].Out += q.Out
		if len(g.offsets) > 0 {
			c.byCount[k] = append(c.byCount[k], average(g.offsets))
		}
	}
}

func (c *columns) allCounts() []Count {
	for k := range c.counts {
		c.counts[k].Offset = meanApart(c.byCount[k], LeastRounds)
	}
	return c.counts
}
