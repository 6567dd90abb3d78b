package scoring

import (
	"fmt"
	"slices"
	"time"
)

// Half widths of the windows in use. ±50 ms is the usual tolerance of onset
// evaluation (Raffel et al., mir_eval, ISMIR 2014); ±25 ms is the strict one
// (Böck, Krebs and Schedl, ISMIR 2012); ±100 ms is common practice for a
// beginner, without a source.
const (
	Close = 25 * time.Millisecond
	Near  = 50 * time.Millisecond
	Wide  = 100 * time.Millisecond
)

// reach is the largest time, either way, that a stroke or a tap may have:
// 2⁶¹ ns, about 73 years. Differences and sums of these cannot overflow.
const reach = time.Duration(1) << 61

// Window says how far from a stroke a tap may lie and still belong to it.
type Window struct {
	// Within is the tolerance to either side, zero or more. A tap at exactly
	// this distance is inside.
	Within time.Duration
	// Capped also bounds the window, on each side, by half the gap to the
	// neighbouring stroke, so that a tap belongs to one stroke at most: to
	// the nearest. A tap exactly half way between two strokes belongs to the
	// earlier one, as if behind it. In a gap of an odd number of nanoseconds
	// there is no half way: both strokes get the whole part of the half. Of
	// strokes at one and the same time the first owns the taps up to and at
	// that time, the last those after it.
	//
	// Where it is false every window is ±Within, and windows may overlap.
	Capped bool
}

// Pair is one stroke and the tap that belongs to it.
type Pair struct {
	Stroke, Tap int           // indices into the lists given
	Offset      time.Duration // tap − stroke: + behind, − ahead
}

// Matching is the outcome of [Match]. Every stroke is either in Pairs or in
// Out, every tap either in Pairs or in Added. All three ascend.
type Matching struct {
	Pairs []Pair
	Out   []int // strokes left out
	Added []int // taps added
}

// Match pairs taps with strokes, as the package comment says. Both lists must
// ascend (equal times are allowed) and lie within ±2⁶¹ ns (73 years), and
// w.Within must be from 0 to 2⁶¹ ns; anything else is a programmer's mistake
// and panics.
func Match(strokes, taps []time.Duration, w Window) Matching {
	mustAscend("strokes", strokes)
	mustAscend("taps", taps)
	if w.Within < 0 || w.Within > reach {
		panic(fmt.Sprintf("scoring: window of %d ns", int64(w.Within)))
	}
	if w.Capped {
		return collect(strokes, taps, nearest(strokes, taps, w.Within))
	}
	return collect(strokes, taps, best(strokes, taps, w.Within))
}

func mustAscend(what string, times []time.Duration) {
	if !slices.IsSorted(times) {
		panic("scoring: " + what + " do not ascend")
	}
	if n := len(times); n > 0 && (times[0] < -reach || times[n-1] > reach) {
		panic("scoring: " + what + " beyond ±2⁶¹ ns")
	}
}

// none marks a stroke or a tap without a partner.
const none int32 = -1

// nearest returns the tap of each stroke where the windows do not overlap.
func nearest(strokes, taps []time.Duration, within time.Duration) []int32 {
	tapOf := lonely(len(strokes))
	owner := 0
	for j, tap := range taps {
		for owner+1 < len(strokes) && tap-strokes[owner] > strokes[owner+1]-tap {
			owner++
		}
		if owner == len(strokes) {
			break
		}
		d := (tap - strokes[owner]).Abs()
		if d > within {
			continue
		}
		if old := tapOf[owner]; old == none || d < (taps[old]-strokes[owner]).Abs() {
			tapOf[owner] = int32(j)
		}
	}
	return tapOf
}

func lonely(n int) []int32 {
	partner := make([]int32, n)
	for i := range partner {
		partner[i] = none
	}
	return partner
}

// collect turns the tap of each stroke into a Matching.
func collect(strokes, taps []time.Duration, tapOf []int32) Matching {
	pairs := 0
	for _, j := range tapOf {
		if j != none {
			pairs++
		}
	}
	m := Matching{
		Pairs: make([]Pair, 0, pairs),
		Out:   make([]int, 0, len(strokes)-pairs),
		Added: make([]int, 0, len(taps)-pairs),
	}
	next := 0
	for i, j := range tapOf {
		if j == none {
			m.Out = append(m.Out, i)
			continue
		}
		m.addUpTo(next, int(j))
		next = int(j) + 1
		m.Pairs = append(m.Pairs, Pair{i, int(j), taps[j] - strokes[i]})
	}
	m.addUpTo(next, len(taps))
	return m
}

func (m *Matching) addUpTo(from, to int) {
	for j := from; j < to; j++ {
		m.Added = append(m.Added, j)
	}
}

// Precision is the share of the taps that were matched, 0 to 1. Without any
// tap it is 1: none was wrong. (So in madmom; mir_eval says 0 with a warning.
// A part of a piece with no stroke in it asks for silence, and silence there
// is right.)
func (m Matching) Precision() float64 { return share(len(m.Pairs), len(m.Added)) }

// Recall is the share of the strokes that were matched, 0 to 1. Without any
// stroke it is 1: none was left out.
func (m Matching) Recall() float64 { return share(len(m.Pairs), len(m.Out)) }

// F is the harmonic mean of precision and recall, 0 to 1; 0 where either is 0.
func (m Matching) F() float64 {
	p, r := m.Precision(), m.Recall()
	if p == 0 || r == 0 {
		return 0
	}
	return 2 * p * r / (p + r)
}

func share(of, rest int) float64 {
	if of+rest == 0 {
		return 1
	}
	return float64(of) / float64(of+rest)
}
