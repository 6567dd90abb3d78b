package scoring

import (
	"math"
	"slices"
	"time"
)

// Figure is a measured number, or none where there were too few taps for it.
type Figure struct {
	Value float64 // finite; 0 where not Known
	Known bool
}

// Timing tells how matched taps lie about their strokes. Two taps are needed
// for any of it, three for the drift.
type Timing struct {
	// Bias is the mean offset in ms: + behind, − ahead.
	Bias Figure
	// Median is the median offset in ms, the mean of the middle two if their
	// number is even.
	Median Figure
	// Spread is the standard deviation (n−1) of the offsets in ms, 0 or more.
	Spread Figure
	// Drift is the slope of the least-squares line of the offsets over the
	// times of their strokes, in ms per minute: + falling behind, − rushing.
	// It is not known where all strokes lie at one time.
	Drift Figure
}

// timing measures pairs whose offsets have the set-up mean taken off. Means
// are taken of differences to the first, which are exact, so that large
// numbers lose nothing.
func timing(pairs []Pair, strokes []time.Duration) Timing {
	if len(pairs) < 2 {
		return Timing{}
	}
	offsets := make([]time.Duration, len(pairs))
	for k, p := range pairs {
		offsets[k] = p.Offset
	}
	mean, spread := meanSpread(offsets)
	t := Timing{Bias: known(mean), Spread: known(spread), Drift: drift(pairs, strokes)}
	slices.Sort(offsets)
	t.Median = known(median(offsets))
	return t
}

func known(v float64) Figure { return Figure{Value: v, Known: true} }

// ms is a duration in milliseconds.
func ms(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

// meanSpread returns the mean and the standard deviation (n−1) in ms.
func meanSpread(x []time.Duration) (mean, spread float64) {
	n := float64(len(x))
	var sum float64
	for _, d := range x {
		sum += ms(d - x[0])
	}
	rest := sum / n
	var squares float64
	for _, d := range x {
		e := ms(d-x[0]) - rest
		squares += e * e
	}
	return ms(x[0]) + rest, math.Sqrt(squares / (n - 1))
}

// median returns the median, in ms, of ascending durations.
func median(x []time.Duration) float64 {
	a, b := x[(len(x)-1)/2]-x[0], x[len(x)/2]-x[0]
	return ms(x[0]) + (ms(a)+ms(b))/2
}

// drift fits a line through the offsets over the times of their strokes.
func drift(pairs []Pair, strokes []time.Duration) Figure {
	if len(pairs) < 3 {
		return Figure{}
	}
	first := pairs[0]
	at := func(p Pair) (x, y float64) {
		return (strokes[p.Stroke] - strokes[first.Stroke]).Minutes(), ms(p.Offset - first.Offset)
	}
	var mx, my float64
	for _, p := range pairs {
		x, y := at(p)
		mx, my = mx+x, my+y
	}
	mx, my = mx/float64(len(pairs)), my/float64(len(pairs))
	var sxx, sxy float64
	for _, p := range pairs {
		x, y := at(p)
		sxx += (x - mx) * (x - mx)
		sxy += (x - mx) * (y - my)
	}
	if sxx == 0 {
		return Figure{}
	}
	return known(sxy / sxx)
}
