package scoring

import (
	"fmt"
	"slices"
	"time"
)

// Half widths of the windows in use. ±25 ms is the strict tolerance of onset
// evaluation (Böck, Krebs and Schedl, ISMIR 2012); ±100 ms is common practice for a
// beginner, without a source.
const (
	Close = 25 * time.Millisecond // the least that [CloseAt] gives, but where strokes crowd
	Wide  = 100 * time.Millisecond
)

// CloseAt returns how far from a stroke a tap may lie and still be on it, to either side,
// where beats are so far apart, and the nearest two strokes so far: [Close] or 4 % of the
// beat, whichever is more, but never more than half way to the middle between two strokes.
//
// Taps are spread in proportion to the time between them: by 2 to 4 % of it in people with
// training and 4 to 8 % in others (Repp, Sensorimotor synchronization: a review of the
// tapping literature, Psychonomic Bulletin & Review 12, 969–992, 2005; from memory), so
// that one width for all tempi asks more of who taps slowly. The bound is an own choice.
func CloseAt(beat, gap time.Duration) time.Duration {
	return min(max(Close, beat/25), gap/4)
}

// reach is the largest time, either way, that a stroke or a tap may have:
// 2⁶¹ ns, about 73 years. Differences and sums of these cannot overflow.
const reach = time.Duration(1) << 61

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

// Match pairs taps with strokes, as the package comment says; within is how far from a
// stroke a tap may lie and still belong to it. Both lists must ascend (equal times are
// allowed) and lie within ±2⁶¹ ns (73 years), and within must be from 0 to 2⁶¹ ns;
// anything else is a programmer's mistake and panics.
func Match(strokes, taps []time.Duration, within time.Duration) Matching {
	mustAscend("strokes", strokes)
	mustAscend("taps", taps)
	if within < 0 || within > reach {
		panic(fmt.Sprintf("scoring: window of %d ns", int64(within)))
	}
	return collect(strokes, taps, nearest(strokes, taps, within))
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

// nearest returns the tap of each stroke.
func nearest(strokes, taps []time.Duration, within time.Duration) []int32 {
	tapOf := slices.Repeat([]int32{none}, len(strokes))
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
