package view

import (
	"math"
	"time"
)

// Result is a finished round in figures. Offsets have the set-up's mean taken
// off; + is behind.
type Result struct {
	Asked   int           // dums in the round
	On      int           // dums with a tap on them: within the narrowest window
	Landed  int           // dums with a tap that belongs to them
	LeftOut int           // dums without
	Added   int           // taps that belong to no dum
	Bias    time.Duration // mean of the offsets
	Spread  time.Duration // standard deviation of the offsets
	SetUp   *time.Duration
	Counts  []CountResult
	Taps    []TapResult
	Open    []OpenResult // where no dum is asked, in order: those of Review.Open
}

// OpenResult is where a break or a roll begins: in which eight, from 1, on which
// count.
type OpenResult struct {
	Eight int
	Count string
}

// TapResult is one dum or one added tap, in the order of time.
type TapResult struct {
	Eight  int    // from 1
	Count  string // as it is said in the eight: "7", "2 &"
	State  TapState
	Offset time.Duration // of a tap that belongs to a dum
}

// TapState says what became of a dum or a tap.
type TapState uint8

// The states, in the words of the feedback.
const (
	TapOn TapState = iota
	TapAhead
	TapBehind
	TapLeftOut
	TapAdded
)

// What a finding needs before it is said. Own choices: so many taps that a
// single one decides nothing, and differences that a listener can use; 20 ms is
// about what fingers vary by at these tempi.
const (
	leastTimes  = 2                     // a count left out, or taps added
	leastOfOne  = 3                     // taps on a count
	leastTaps   = 6                     // taps in all
	leastCount  = 20 * time.Millisecond // mean offset of one count
	leastApart  = 12 * time.Millisecond // of one count from the mean of all
	leastBias   = 15 * time.Millisecond // mean offset of all
	leastSpread = 40 * time.Millisecond
	addedShare  = 5 // one tap added in so many dums
)

// Finding says the single most useful thing about a round: a count that is left
// out at least half the time; else taps added; else a count that comes early or
// late by itself; else a lean of the whole; else a wide spread; else that it is
// steady. A lean counts only if it is more than two standard errors.
func Finding(r Result, w Words) string {
	for _, find := range []func(Result, Words) string{
		findNothing, findLeftOut, findAdded, findFew, findCount, findBias, findSpread,
	} {
		if text := find(r, w); text != "" {
			return text
		}
	}
	return steady(r, w)
}

// steady is said where there is nothing else to say.
func steady(r Result, w Words) string { return w.Say("find-steady", "n", r.On, "of", r.Asked) }

func findNothing(r Result, w Words) string {
	if r.Landed+r.Added > 0 {
		return ""
	}
	return w.Say("find-nothing")
}

func findLeftOut(r Result, w Words) string {
	worst := CountResult{}
	for _, c := range r.Counts {
		if c.Asked-c.Tapped > worst.Asked-worst.Tapped {
			worst = c
		}
	}
	n := worst.Asked - worst.Tapped
	if n < leastTimes || 2*n < worst.Asked {
		return ""
	}
	return w.Say("find-left-out", "count", worst.Count, "n", n, "of", worst.Asked)
}

func findAdded(r Result, w Words) string {
	if r.Added < leastTimes || addedShare*r.Added < r.Asked {
		return ""
	}
	return w.Say("find-added", "n", r.Added)
}

func findFew(r Result, w Words) string {
	if r.Landed >= leastTaps {
		return ""
	}
	return w.Say("find-few")
}

func findCount(r Result, w Words) string {
	worst := CountResult{}
	for _, c := range r.Counts {
		if c.Tapped >= leastOfOne && magnitude(c.Mean) > magnitude(worst.Mean) {
			worst = c
		}
	}
	if magnitude(worst.Mean) < leastCount || magnitude(worst.Mean-r.Bias) < leastApart ||
		!leans(worst.Mean, worst.Spread, worst.Tapped) {
		return ""
	}
	if worst.Mean < 0 {
		return w.Say("find-count-ahead", "count", worst.Count, "ms", about(worst.Mean))
	}
	return w.Say("find-count-behind", "count", worst.Count, "ms", about(worst.Mean))
}

func findBias(r Result, w Words) string {
	if magnitude(r.Bias) < leastBias || !leans(r.Bias, r.Spread, r.Landed) {
		return ""
	}
	if r.Bias < 0 {
		return w.Say("find-all-ahead", "ms", about(r.Bias))
	}
	return w.Say("find-all-behind", "ms", about(r.Bias))
}

func findSpread(r Result, w Words) string {
	if r.Spread < leastSpread {
		return ""
	}
	return w.Say("find-spread", "ms", about(r.Spread))
}

// leans reports whether a mean of n offsets lies more than two standard errors,
// 2·spread/√n, from zero.
func leans(mean, spread time.Duration, n int) bool {
	return float64(magnitude(mean)) > 2*float64(spread)/math.Sqrt(float64(n))
}

func magnitude(d time.Duration) time.Duration { return max(d, -d) }

// about returns the size of an offset in milliseconds, to the nearest five.
func about(d time.Duration) int {
	return 5 * int(math.Round(float64(magnitude(d))/float64(5*time.Millisecond)))
}
