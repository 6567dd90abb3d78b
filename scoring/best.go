package scoring

import (
	"slices"
	"time"
)

// best returns the tap of each stroke in the best matching with windows that
// may overlap, in linear time.
//
// A sweep finds the most pairs. If that leaves strokes out, the taps that
// these strokes could have had instead are scarce: by the decomposition of
// Dulmage and Mendelsohn (Coverings of bipartite graphs, Canadian Journal of
// Mathematics 10, 517–534, 1958) every matching with the most pairs uses all
// scarce taps, for strokes around them, and all the other strokes, with taps
// that are not scarce. So there are two separate questions of one kind: all
// of one list must be matched, any of the other may be. [assign] answers it.
func best(strokes, taps []time.Duration, within time.Duration) []int32 {
	tapOf, strokeOf := sweep(strokes, taps, within)
	scarce := scarceTaps(strokes, taps, tapOf, strokeOf, within)
	if scarce == nil { // no stroke is left out
		return assign(strokes, taps, within)
	}
	wanting := func(i int) bool { return tapOf[i] == none || scarce[tapOf[i]] }
	var must, may part

	must.fill(strokes, func(i int) bool { return !wanting(i) })
	may.fill(taps, func(j int) bool { return !scarce[j] })
	match := lonely(len(strokes))
	for k, j := range assign(must.times, may.times, within) {
		match[must.index[k]] = may.index[j]
	}

	must.fill(taps, func(j int) bool { return scarce[j] })
	may.fill(strokes, wanting)
	for k, i := range assign(must.times, may.times, within) {
		match[may.index[i]] = must.index[k]
	}
	return match
}

// part is some of a list, and where in the list each of them was.
type part struct {
	times []time.Duration
	index []int32
}

func (p *part) fill(from []time.Duration, in func(int) bool) {
	p.times = slices.Grow(p.times[:0], len(from))
	p.index = slices.Grow(p.index[:0], len(from))
	for i, t := range from {
		if in(i) {
			p.times, p.index = append(p.times, t), append(p.index, int32(i))
		}
	}
}

// sweep pairs as many strokes and taps as can be paired: from the left, each
// with the first that it reaches. With equal windows that gives the most
// pairs: if the first two reach one another, pairing them costs nothing.
func sweep(strokes, taps []time.Duration, within time.Duration) (tapOf, strokeOf []int32) {
	tapOf, strokeOf = lonely(len(strokes)), lonely(len(taps))
	for i, j := 0, 0; i < len(strokes) && j < len(taps); {
		switch d := taps[j] - strokes[i]; {
		case d > within:
			i++
		case d < -within:
			j++
		default:
			tapOf[i], strokeOf[j] = int32(j), int32(i)
			i, j = i+1, j+1
		}
	}
	return tapOf, strokeOf
}

// scarceTaps marks the taps that a stroke left out could have had if others
// changed partners: those in its window, those in the windows of their
// partners, and so on. Such a reach is one stretch of the line, so it is
// followed once to the right and once to the left. It returns nil if no
// stroke is left out.
func scarceTaps(strokes, taps []time.Duration, tapOf, strokeOf []int32, within time.Duration) []bool {
	var out []int32
	for i, j := range tapOf {
		if j == none {
			out = append(out, int32(i))
		}
	}
	if out == nil {
		return nil
	}
	scarce := make([]bool, len(taps))
	// last is the last stroke reached so far; it reaches taps up to within after it.
	last, k := none, 0
	for j, tap := range taps {
		for k < len(out) && strokes[out[k]]-tap <= within {
			last = max(last, out[k])
			k++
		}
		if last != none && tap-strokes[last] <= within {
			scarce[j] = true
			last = max(last, strokeOf[j])
		}
	}
	first := int32(len(strokes))
	k = len(out) - 1
	for j := len(taps) - 1; j >= 0; j-- {
		for k >= 0 && taps[j]-strokes[out[k]] <= within {
			first = min(first, out[k])
			k--
		}
		if int(first) < len(strokes) && strokes[first]-taps[j] <= within {
			scarce[j] = true
			first = min(first, strokeOf[j])
		}
	}
	return scarce
}
