package rhythm

import (
	"fmt"
	"slices"
)

// Pulses is a rhythm of one voice: for each pulse of a cycle, whether an onset
// falls on it.
type Pulses []bool

// Onsets returns the pulses, from 0, that have an onset, in order.
func (p Pulses) Onsets() []int {
	var onsets []int
	for i, onset := range p {
		if onset {
			onsets = append(onsets, i)
		}
	}
	return onsets
}

// Hamming returns at how many places two equally long lists differ: pulses, or
// the strokes of two patterns, voices and all. It panics if they are not
// equally long; see [StepForStep] and [CommonPulse].
func Hamming[E comparable](a, b []E) int {
	mustMatch(len(a), len(b))
	differ := 0
	for i := range a {
		if a[i] != b[i] {
			differ++
		}
	}
	return differ
}

// Edit returns the fewest places to insert, delete or change that turn one list
// into the other (Levenshtein 1966). Among variations of the son it predicts how
// different people find two rhythms with r = 0.87 (Post & Toussaint 2011,
// Empirical Musicology Review 6(3)).
func Edit[E comparable](a, b []E) int {
	row := make([]int, len(b)+1) // distances from the first i of a to the first j of b
	for j := range row {
		row[j] = j
	}
	for i := range a {
		before := row[0]
		row[0] = i + 1
		for j := range b {
			change := before
			if a[i] != b[j] {
				change++
			}
			before = row[j+1]
			row[j+1] = min(change, row[j]+1, before+1)
		}
	}
	return row[len(b)]
}

// Swap returns the fewest exchanges of an onset with the rest beside it that
// turn one rhythm into another with as many onsets: Σ|aᵢ − bᵢ| over the onsets
// in order (Toussaint 2004, A comparison of rhythmic similarity measures). It
// does not cross the end of the cycle. It panics if the rhythms differ in length
// or in the number of onsets; [DirectedSwap] is for those.
func Swap(a, b Pulses) int {
	mustMatch(len(a), len(b))
	from, to := a.Onsets(), b.Onsets()
	if len(from) != len(to) {
		panic(fmt.Sprintf("rhythm: %d onsets against %d", len(from), len(to)))
	}
	moves := 0
	for i := range from {
		moves += distance(from[i], to[i])
	}
	return moves
}

// DirectedSwap returns the fewest steps by which the onsets of the denser rhythm
// move onto those of the sparser, each of which takes at least one (Díaz-Báñez,
// Farigu, Gómez, Rappaport & Toussaint 2004, El compás flamenco: a phylogenetic
// analysis). With equal numbers of onsets it is [Swap].
//
// The paper does not say what a rhythm without onsets costs; here each onset
// that has none to go to moves by the whole cycle. It panics if the rhythms
// differ in length.
func DirectedSwap(a, b Pulses) int {
	mustMatch(len(a), len(b))
	from, to := a.Onsets(), b.Onsets()
	if len(from) < len(to) {
		from, to = to, from
	}
	if len(to) == 0 {
		return len(from) * len(a)
	}
	return move(from, to, 2*len(a)*len(from))
}

// move returns the least cost of moving every onset of from, in order, onto to,
// which has no more onsets. never is more than any cost.
//
// row[j] is the cost of the onsets so far onto the first j of to:
// D(i,j) = |fromᵢ − toⱼ| + min(D(i−1,j−1), D(i−1,j)).
func move(from, to []int, never int) int {
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = never
	}
	row[0] = 0
	for _, f := range from {
		before := row[0]
		row[0] = never
		for j, t := range to {
			best := min(before, row[j+1])
			before = row[j+1]
			row[j+1] = distance(f, t) + best
		}
	}
	return row[len(to)]
}

// Chronotonic returns the area between the interval charts of two rhythms: over
// every pulse stands the length of the interval that it lies in, and the
// differences are summed (Gustafson 1988; Hofmann-Engl 2002; Toussaint 2004).
// The last interval goes on into the next cycle. It panics if the rhythms differ
// in length.
func Chronotonic(a, b Pulses) int { return area(a.chart(true), b.chart(true)) }

// LinearChronotonic is [Chronotonic] of rhythms that are heard once: the silence
// before the first onset is an interval, and the last ends with the cycle. It is
// the convention of Díaz-Báñez et al. 2004.
func LinearChronotonic(a, b Pulses) int { return area(a.chart(false), b.chart(false)) }

// chart returns for each pulse the length of its interval, from the onset at or
// before it to the next. A rhythm without onsets is one interval.
func (p Pulses) chart(cyclic bool) []int {
	onsets, n := p.Onsets(), len(p)
	before, after := 0, n
	if cyclic && len(onsets) > 0 {
		before, after = onsets[len(onsets)-1]-n, onsets[0]+n
	}
	edges := slices.Concat([]int{before}, onsets, []int{after})
	chart := make([]int, n)
	for i, edge := range edges[1:] {
		for pulse := max(edges[i], 0); pulse < min(edge, n); pulse++ {
			chart[pulse] = edge - edges[i]
		}
	}
	return chart
}

func area(a, b []int) int {
	mustMatch(len(a), len(b))
	sum := 0
	for i := range a {
		sum += distance(a[i], b[i])
	}
	return sum
}

// distance returns |a − b|.
func distance(a, b int) int { return max(a-b, b-a) }
