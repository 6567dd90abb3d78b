package scoring

import (
	"errors"
	"fmt"
	"slices"
	"time"
)

// How [MeasureSetUp] looks for a set-up. The reach is from a player far ahead of
// a wired output to one behind a slow wireless one: reports of wireless headphones
// lie between 140 and 300 ms, and the ear and the hand come on top.
const (
	MinSetUp = -150 * time.Millisecond
	MaxSetUp = 600 * time.Millisecond

	agree     = 60 * time.Millisecond  // taps so far from one shift, either way, agree on it
	belong    = 150 * time.Millisecond // from the middle of those that agree: still the same player
	bounce    = 40 * time.Millisecond  // after a tap: another so soon is the key's or the finger's bounce
	leastTaps = 6                      // fewer tell nothing

	// MostSpread is the largest spread that a set-up may have.
	MostSpread = 60 * time.Millisecond
)

// Why [MeasureSetUp] refuses, with errors.Is. The limits are chosen, without a
// source.
var (
	// ErrFewTaps: fewer than six taps belong to a stroke, or fewer than half of
	// the strokes have one.
	ErrFewTaps = errors.New("too few taps belong to a stroke")
	// ErrScattered: the spread is more than [MostSpread].
	ErrScattered = errors.New("the taps are too scattered")
	// ErrUnclear: another mean fits nearly as well, or too many taps lie
	// between the strokes: something else was tapped.
	ErrUnclear = errors.New("the taps fit the strokes in more than one way")
)

// SetUp is how far behind a player's taps come on one output, ear and hand
// included.
type SetUp struct {
	Mean    time.Duration // + behind, − ahead
	Spread  time.Duration // 0 or more
	Taps    int           // taps that it rests on
	Strokes int           // strokes that were asked for
}

// MeasureSetUp estimates a player's own mean offset from a tap-along with
// strokes that are a second or so apart, however far behind the output is
// within [MinSetUp] and [MaxSetUp].
//
//  1. Of taps less than 40 ms apart only the first counts, and none counts that is
//     out of reach of all strokes: who taps along with the count-in does no harm.
//  2. Each tap − stroke within the reach is a shift that might be the mean. It is
//     worth as many strokes as [Match] gives a tap within ±60 ms of it. The best
//     is taken; of several the one with the smallest sum of distances.
//  3. Strokes and taps are matched within ±150 ms of it (half a gap at most), and
//     again about the median of the offsets, until that stays.
//  4. Mean is the trimmed mean of those offsets, a fifth of them left out at each
//     end (Tukey and McLaughlin, Less vulnerable confidence and significance
//     procedures for location based on a single sample, Sankhyā A 25, 331–352,
//     1963); Spread is 1.4826 times the median distance from the median (Hampel, The
//     influence curve and its role in robust estimation, JASA 69, 383–393, 1974).
//
// So neither strokes left out nor single stray or doubled taps nor a slow drift
// move the mean far.
//
// A refusal is [ErrFewTaps], [ErrScattered] or [ErrUnclear], in this order. The
// SetUp returned with it tells what was found so far, and must not be used as one.
// The lists must ascend, as for [Match]. They are meant to be short: the time
// needed grows with the square of their length.
func MeasureSetUp(strokes, taps []time.Duration) (SetUp, error) {
	mustAscend("strokes", strokes)
	mustAscend("taps", taps)
	taps = settled(strokes, taps)
	found := SetUp{Strokes: len(strokes)}
	all := shifts(strokes, taps)
	best := bestShift(all, func(time.Duration) bool { return true })
	if best.taps == 0 {
		return found, few(found)
	}
	offsets := about(strokes, taps, best.by)
	found.Taps = len(offsets)
	found.Mean, found.Spread = trimmedMean(offsets), robustSpread(offsets)
	if 2*found.Taps < len(strokes) || found.Taps < leastTaps {
		return found, few(found)
	}
	if found.Spread > MostSpread {
		return found, fmt.Errorf("%w: by %v", ErrScattered, found.Spread)
	}
	return found, unclear(strokes, taps, all, found)
}

func few(found SetUp) error { return fmt.Errorf("%w: %d of %d", ErrFewTaps, found.Taps, found.Strokes) }

// settled leaves out taps that bounce, and those before and after all strokes.
func settled(strokes, taps []time.Duration) []time.Duration {
	if len(strokes) == 0 {
		return nil
	}
	first, last := strokes[0]+MinSetUp-belong, strokes[len(strokes)-1]+MaxSetUp+belong
	var kept []time.Duration
	for _, tap := range taps {
		if tap < first || tap > last {
			continue
		}
		if n := len(kept); n == 0 || tap-kept[n-1] >= bounce {
			kept = append(kept, tap)
		}
	}
	return kept
}

// shift is a mean that might be, and how well it fits.
type shift struct {
	by   time.Duration
	taps int           // how many agree
	far  time.Duration // sum of their distances
}

// shifts returns every mean that a tap and a stroke could have.
func shifts(strokes, taps []time.Duration) []shift {
	var all []shift
	for _, tap := range taps {
		for _, stroke := range strokes {
			if by := tap - stroke; by >= MinSetUp && by <= MaxSetUp {
				all = append(all, fit(strokes, taps, by))
			}
		}
	}
	return all
}

func fit(strokes, taps []time.Duration, by time.Duration) shift {
	s := shift{by: by}
	for _, p := range matchAbout(strokes, taps, by, agree) {
		s.taps++
		s.far += p.Offset.Abs()
	}
	return s
}

// matchAbout matches the taps less a shift; so are the offsets.
func matchAbout(strokes, taps []time.Duration, by, within time.Duration) []Pair {
	shifted := make([]time.Duration, len(taps))
	for j, tap := range taps {
		shifted[j] = tap - by
	}
	return Match(strokes, shifted, within).Pairs
}

// bestShift returns the best of those that may be taken; of equals the first.
func bestShift(all []shift, may func(by time.Duration) bool) shift {
	var best shift
	for _, s := range all {
		if may(s.by) && (s.taps > best.taps || s.taps == best.taps && s.far < best.far) {
			best = s
		}
	}
	return best
}

// about returns the offsets, ascending, of all taps that belong to strokes when
// the middle of them is near a shift.
func about(strokes, taps []time.Duration, by time.Duration) []time.Duration {
	var offsets []time.Duration
	for range 8 { // it stays after two or three
		offsets = offsets[:0]
		for _, p := range matchAbout(strokes, taps, by, belong) {
			offsets = append(offsets, p.Offset+by)
		}
		slices.Sort(offsets)
		next := middle(offsets)
		if next == by {
			break
		}
		by = next
	}
	return offsets
}

// middle returns the median of ascending durations, at least one.
func middle(x []time.Duration) time.Duration {
	a, b := x[(len(x)-1)/2], x[len(x)/2]
	return a + (b-a)/2
}

// trimmedMean returns the mean of ascending durations without the first and the
// last fifth, rounded to whole nanoseconds.
func trimmedMean(x []time.Duration) time.Duration {
	x = x[len(x)/5 : len(x)-len(x)/5]
	var sum time.Duration
	for _, d := range x {
		sum += d
	}
	n := time.Duration(len(x))
	if sum < 0 {
		return (sum - n/2) / n
	}
	return (sum + n/2) / n
}

// robustSpread returns 1.4826 times the median distance from the median.
func robustSpread(x []time.Duration) time.Duration {
	far, mid := make([]time.Duration, len(x)), middle(x)
	for i, d := range x {
		far[i] = (d - mid).Abs()
	}
	slices.Sort(far)
	return middle(far) * 14826 / 10000
}

// unclear refuses a set-up that has a rival with three quarters of its taps, or
// with more than half as many taps beside the strokes as it rests on.
func unclear(strokes, taps []time.Duration, all []shift, found SetUp) error {
	own := fit(strokes, taps, found.Mean)
	rival := bestShift(all, func(by time.Duration) bool { return (by - found.Mean).Abs() > 2*agree })
	if 4*rival.taps >= 3*own.taps {
		return fmt.Errorf("%w: %v or %v", ErrUnclear, found.Mean, rival.by)
	}
	if beside := len(taps) - found.Taps; 2*beside > found.Taps {
		return fmt.Errorf("%w: %d taps between the strokes", ErrUnclear, beside)
	}
	return nil
}
