package scoring

import (
	"fmt"
	"math"
	"time"
)

// Sigma is the standard deviation of the Gaussian by which a matched tap is
// credited: 40 ms, as in mir_eval and madmom and in Davies, Degara and
// Plumbley, Evaluation methods for musical audio beat tracking algorithms,
// C4DM-TR-09-06, 2009.
const Sigma = 40 * time.Millisecond

// Result is a scored round.
type Result struct {
	// Matching holds the pairs with their raw offsets, nothing taken off.
	Matching
	// Setup is the player's set-up mean that was taken off every tap before
	// matching and scoring: + where the set-up is behind.
	Setup time.Duration
	// Accuracy is the Gaussian beat accuracy, 0 to 1:
	//
	//	Σ exp(−d²/2σ²) / ((strokes + taps)/2)
	//
	// over the matched pairs, with d = offset − Setup and σ = [Sigma]. A
	// stroke left out and a tap added both lower it, and so does a window:
	// what lies outside is worth nothing, not little (at 100 ms .044).
	//
	// In Cemgil et al., and in mir_eval, d is the distance from each stroke
	// to the nearest tap, however far, and one tap may serve two strokes;
	// in madmom it is the distance from each tap to the nearest stroke, and
	// one stroke may serve two taps. Neither is one to one. Where each
	// stroke's nearest tap is its own, all three agree.
	//
	// With no strokes and no taps it is 1, with either of them 0, as in
	// madmom: silence was asked for and given. mir_eval says 0 (and warns).
	Accuracy float64
	// Timing tells how the matched taps lie, with Setup taken off.
	Timing Timing
}

// Score matches the taps, less the player's set-up mean, with the strokes,
// and measures the outcome. The conditions are those of [Match], for the
// taps less setup; setup must lie within ±2⁶¹ ns.
func Score(strokes, taps []time.Duration, setup, within time.Duration) Result {
	if setup < -reach || setup > reach {
		panic(fmt.Sprintf("scoring: set-up mean of %d ns", int64(setup)))
	}
	mustAscend("taps", taps)
	shifted := make([]time.Duration, len(taps))
	for j, tap := range taps {
		shifted[j] = tap - setup
	}
	m := Match(strokes, shifted, within)
	r := Result{
		Matching: m,
		Setup:    setup,
		Accuracy: accuracy(m.Pairs, len(strokes)+len(taps)),
		Timing:   timing(m.Pairs, strokes),
	}
	for k := range m.Pairs {
		m.Pairs[k].Offset += setup
	}
	return r
}

// accuracy is the Gaussian beat accuracy for so many strokes and taps together.
func accuracy(pairs []Pair, events int) float64 {
	if events == 0 {
		return 1
	}
	var sum float64
	for _, p := range pairs {
		z := p.Offset.Seconds() / Sigma.Seconds()
		sum += math.Exp(-z * z / 2)
	}
	return sum / (float64(events) / 2)
}
