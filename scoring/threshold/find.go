package threshold

import (
	"fmt"
	"math"

	"groundbeat/scoring"
)

// LeastTrials is the least number of trials for a threshold of which nothing is
// known beforehand: with 30 its interval is narrower than half of the levels
// considered for nine of ten simulated listeners who are asked by a staircase,
// among two to four choices (with two alone it takes 40).
const LeastTrials = 30

// Lapses is the share of wrong answers, less those right by chance, that are
// due to a slip and not to the ear: 4 % (chosen; Wichmann and Hill 2001 found up
// to 6 % in trained observers, and that leaving it at 0 biases the threshold).
const Lapses = 0.04

// Trial is one answer.
type Trial struct {
	Level   float64
	Right   bool
	Choices int // 2 or more answers to choose from
}

// Search says where a threshold is looked for.
type Search struct {
	Low, High float64 // the thresholds considered, all alike likely beforehand
	Falling   bool    // lower levels are harder
	// Expected, with Spread above 0, is a threshold from elsewhere, such as the
	// player's own over all rhythms, and how far (standard deviation) this one
	// may be expected to lie from it: few trials then move it little.
	Expected, Spread float64
}

// Threshold is what trials tell about a listener.
type Threshold struct {
	// Level is the threshold α, at which answers are right half way between
	// chance and best. Its interval holds 95 % of the probability. Where it
	// reaches an end of the levels considered, the threshold may lie beyond.
	Level scoring.Estimate
	// Gradual is β: from 73 % to 27 % of the way between chance and best it
	// takes 2β levels.
	Gradual scoring.Estimate
}

// The grid of the search: thresholds in equal steps, graduality in equal
// ratios from 1/steepest to 1/flattest of the levels considered.
const (
	thresholds, gradualities = 161, 12
	steepest, flattest       = 100., 4.
)

// Find estimates a listener's threshold from all trials. It goes through a
// grid of thresholds and gradualities, all alike likely beforehand (the
// latter's logarithm) but for what is Expected, and weighs each with the
// probability of the answers: Level and Gradual are means of what remains
// (Kontsevich and Tyler, Bayesian adaptive estimation of psychometric slope and
// threshold, Vision Research 39, 2729–2737, 1999, without its choice of levels;
// Kuss, Jäkel and Wichmann, Bayesian inference for psychometric functions,
// Journal of Vision 5, 478–492, 2005). Lapses are [Lapses].
//
// What is Expected makes do with one trial, and says little more than what was
// expected then; otherwise it takes [LeastTrials]. The time grows with the
// trials, 5 µs each natively: the latest few hundred are enough, and ears change.
//
// It panics on a search without room, and on trials with less than two choices
// or a level that is not finite.
func Find(trials []Trial, s Search) Threshold {
	s.check()
	for _, t := range trials {
		t.check()
	}
	weights := s.weigh(trials)
	least := LeastTrials
	if s.Spread > 0 {
		least = 1
	}
	n := len(trials)
	return Threshold{
		Level:   summary(weights.byThreshold(), s.threshold, n, least),
		Gradual: summary(weights.byGraduality(), s.graduality, n, least),
	}
}

func (t Trial) check() {
	if t.Choices < 2 || math.IsNaN(t.Level) || math.IsInf(t.Level, 0) {
		panic(fmt.Sprintf("threshold: a trial at %v among %d", t.Level, t.Choices))
	}
}

func (s Search) check() {
	if !(s.Low < s.High) || math.IsInf(s.High-s.Low, 0) {
		panic(fmt.Sprintf("threshold: no levels from %v to %v", s.Low, s.High))
	}
	if !(s.Spread >= 0) || math.IsNaN(s.Expected) {
		panic("threshold: an expectation that is none")
	}
}

// threshold returns the i-th threshold of the grid.
func (s Search) threshold(i float64) float64 {
	return s.Low + (s.High-s.Low)*i/(thresholds-1)
}

// graduality returns the i-th graduality of the grid.
func (s Search) graduality(i float64) float64 {
	return (s.High - s.Low) / steepest * math.Pow(steepest/flattest, i/(gradualities-1))
}
