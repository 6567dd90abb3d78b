package scoring

// Confidence is the share of intervals that hold the true number, for every
// [Estimate]: 95 of 100.
const Confidence = 0.95

// Estimate is a Figure with its uncertainty: a number measured from a sample,
// and the interval in which the true number lies with [Confidence].
//
// Where the sample is too small, or tells nothing (all values alike), it is
// not Known, and Value, Low and High are 0.
type Estimate struct {
	Figure
	Low, High float64 // ends of the interval, finite, Low ≤ High
	N         int     // observations that it rests on
	Least     int     // the fewest observations that would do
}

// Missing is how many more observations are needed before the number can be
// known. An Estimate that lacks none and is not Known cannot be told from
// these observations.
func (e Estimate) Missing() int { return max(0, e.Least-e.N) }

// Excludes reports whether v lies outside the interval. A bias whose interval
// excludes 0 is ahead or behind for more reason than chance; one that is not
// Known excludes nothing.
func (e Estimate) Excludes(v float64) bool {
	return e.Known && (v < e.Low || v > e.High)
}

// Estimated returns a known Estimate.
func Estimated(value, low, high float64, n, least int) Estimate {
	return Estimate{Figure: known(value), Low: low, High: high, N: n, Least: least}
}

// Unknown returns an Estimate that n observations do not yield, where least
// might.
func Unknown(n, least int) Estimate { return Estimate{N: n, Least: least} }
