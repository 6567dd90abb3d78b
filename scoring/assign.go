package scoring

import "time"

// assign gives each time of must a time of its own of may, not further than
// within, with the smallest sum of distances, and of such the earliest. It
// returns indices into may, ascending. A way to do so must exist. Linear time.
//
// At any place on the line let f be how many of must are still waiting for
// one to the right (f > 0), or of may used already for one to the right
// (f < 0). Passing a stretch of length δ costs δ|f|; the sum of that is the
// sum of distances. With F(f) the smallest cost so far,
//
//	a stretch δ:  F(f) += δ|f|
//	one of must:  F(f) = F(f−1)
//	one of may:   F(f) = min(F(f), F(f+1)), unused or used
//
// Since pairs do not cross, the window bounds f alone: before one of may at
// time t, all of must before t−within have been served; after it, no more are
// served than there are of must up to t+within.
//
// F stays convex, so its steps F(f+1)−F(f) ascend; they are kept instead of
// F (the "slope trick"; the same decomposition of a matching on a line as in
// Karp and Li, Two special cases of the assignment problem, Discrete
// Mathematics 13, 129–142, 1975, with a window on top). A stretch lowers
// every step left of 0 and raises every step right of it; one of may inserts
// a step 0 in its place. All of it happens at the ends of three queues.
func assign(must, may []time.Duration, within time.Duration) []int32 {
	if len(must) == len(may) || len(must) == 0 {
		return identity(len(must)) // pairs do not cross, so there is only one way
	}
	useBelow := make([]int32, len(may)) // a time of may is used where f is below this
	var s steps
	var passed, near, lost int // of must: before this time; in reach or before; out of reach
	at := min(must[0], may[0])
	for j, t := range may {
		for passed < len(must) && must[passed] <= t {
			s.stretch(must[passed] - at)
			s.shift()
			at = must[passed]
			passed++
		}
		s.stretch(t - at)
		at = t
		for lost < passed && t-must[lost] > within {
			lost++
		}
		s.atMost(passed - lost)
		useBelow[j] = int32(s.insert())
		for near < len(must) && must[near]-t <= within {
			near++
		}
		s.atLeast(passed - near)
	}
	return trace(must, may, useBelow)
}

// trace walks the decisions back from the end, where nothing waits.
func trace(must, may []time.Duration, useBelow []int32) []int32 {
	out := make([]int32, len(must))
	f, i, k := int32(0), len(must)-1, len(must)-1
	for j := len(may) - 1; j >= 0; j-- {
		for i >= 0 && must[i] > may[j] {
			f--
			i--
		}
		if f < useBelow[j] {
			out[k] = int32(j)
			k--
			f++
		}
	}
	return out
}

func identity(n int) []int32 {
	out := make([]int32, n)
	for i := range out {
		out[i] = int32(i)
	}
	return out
}

// steps are the steps F(f+1)−F(f) of a convex function on the integers from
// lo to hi, ascending: first those left of 0, which are never above 0 and
// fall, then those right of 0, which rise, the negative ones apart.
type steps struct {
	lo, hi          int
	left, low, high deque         // left of 0; right of 0 and negative; right of 0 and not
	lefts, rights   time.Duration // to be added to each step left of 0, right of 0
	flat            int           // how many of left are exactly 0; they are its last
}

// stretch adds d|f|, d ≥ 0.
func (s *steps) stretch(d time.Duration) {
	if d == 0 {
		return
	}
	s.lefts -= d
	s.rights += d
	s.flat = 0
	for s.low.len() > 0 && s.low.last()+s.rights >= 0 {
		s.high.pushFirst(s.low.popLast())
	}
}

// shift moves the function one to the right.
func (s *steps) shift() {
	if s.lo < 0 && s.hi >= 0 { // the step from −1 to 0 comes to lie right of 0
		flat := s.flat > 0
		v := s.popLeftLast() - s.rights
		if flat {
			s.high.pushFirst(v)
		} else {
			s.low.pushFirst(v)
		}
	}
	s.lo++
	s.hi++
}

// insert replaces F(f) by min(F(f), F(f+1)), defined from lo−1 on, and
// returns the f below which F(f+1) is the smaller.
func (s *steps) insert() int {
	from := s.lo + s.left.len() - s.flat + s.low.len()
	switch {
	case s.lo > 0: // all steps lie right of 0
		s.high.pushFirst(-s.rights)
	case s.low.len() > 0:
		s.left.pushLast(s.low.popFirst() + s.rights - s.lefts)
		s.high.pushFirst(-s.rights)
		s.flat = 0
	default:
		s.left.pushLast(-s.lefts)
		s.flat++
	}
	s.lo--
	return from
}

// atMost cuts the function off above hi.
func (s *steps) atMost(hi int) {
	for s.hi > hi {
		switch {
		case s.high.len() > 0:
			s.high.popLast()
		case s.low.len() > 0:
			s.low.popLast()
		default:
			s.popLeftLast()
		}
		s.hi--
	}
}

// atLeast cuts the function off below lo.
func (s *steps) atLeast(lo int) {
	for s.lo < lo {
		switch {
		case s.left.len() > 0:
			s.left.popFirst()
			s.flat = min(s.flat, s.left.len())
		case s.low.len() > 0:
			s.low.popFirst()
		default:
			s.high.popFirst()
		}
		s.lo++
	}
}

// popLeftLast removes the last step left of 0 and returns it.
func (s *steps) popLeftLast() time.Duration {
	s.flat = max(s.flat-1, 0)
	return s.left.popLast() + s.lefts
}
