package roundview

import (
	"math"
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// Result is a finished round in figures. Offsets have the set-up's mean taken
// off; + is behind.
type Result struct {
	Kind    string           // of the round; "": Dums
	Asked   int              // strokes that were asked for
	On      int              // strokes with a tap on them: within the narrowest window
	Landed  int              // strokes with a tap that belongs to them
	LeftOut int              // strokes without
	Added   int              // taps that belong to none
	Bias    time.Duration    // mean of the offsets
	Spread  time.Duration    // standard deviation of the offsets
	Lean    scoring.Estimate // the mean offset, ms, and how far chance may reach
	// Far is how far from the strokes all taps lie, one like the other, where few are near
	// enough to belong to one; nil: they do not.
	Far      *time.Duration
	SetUp    *time.Duration // its mean, which is taken off; nil: there is nothing to take off
	Measured bool           // a set-up is kept for the output
	Counts   []picture.CountResult
	Taps     []TapResult
	Open     []OpenResult // where none is asked for, in order: those of Review.Open
}

// OpenResult is where a break or a roll begins: in which eight, from 1, on which
// count.
type OpenResult struct {
	Eight int
	Count string
}

// TapResult is one stroke or one added tap, in the order of time.
type TapResult struct {
	Eight  int    // from 1
	Count  string // as it is said in the eight: "7", "2 &"
	State  TapState
	Offset time.Duration // of a tap that belongs to a stroke
}

// TapState says what became of a stroke or a tap.
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
	leastTimes  = 2                     // dums left out
	leastOften  = 3                     // dums left out where they are few of all, or taps added
	leastShare  = 4                     // one dum in so many left out, one tap added for so many
	leastTaps   = 6                     // taps in all
	leastCount  = 20 * time.Millisecond // of one count from the others
	leastBias   = 15 * time.Millisecond // mean offset of all
	nearZero    = 10 * time.Millisecond // the others of a count that is off are on the dums
	leastSpread = 40 * time.Millisecond
	usualSpread = 30 * time.Millisecond
)

// Finding says the single most useful thing about a round: that no tap came, or that all
// came far from the dums; on an output without a set-up that all lean, which is probably
// the output's; else that dums are left out, one count above all if it is so by more than
// chance ([stat.LeftOut]); else taps added; else that there are too few; else a count that
// lies apart from the others by more than chance, with regard to how many there are
// ([stat.Apart]); else a lean of the whole whose interval excludes 0 ([stat.Mean]); else
// a wide spread; else how many were on the dum, and if most were, that they are steady.
func Finding(r Result, w say.Words) string {
	if text := findLost(r, w); text != "" {
		return text
	}
	if text := findUnmeasured(r, w); text != "" {
		if rest := firstOf(r, w, findLeftOut, findAdded, findCount); rest != "" {
			return w.Say("find-both", "first", text, "then", rest)
		}
		return text
	}
	if text := firstOf(r, w, findLeftOut, findAdded, findFew, findCount, findBias, findSpread); text != "" {
		return text
	}
	return unremarkable(r, w)
}

// A finder says one thing about a round if it is so, else nothing.
type finder func(Result, say.Words) string

func firstOf(r Result, w say.Words, all ...finder) string {
	for _, find := range all {
		if text := find(r, w); text != "" {
			return text
		}
	}
	return ""
}

// unremarkable is said where there is nothing else to say: praise only where three of
// four dums or more are on.
func unremarkable(r Result, w say.Words) string {
	if r.steady() {
		return r.says(w, foundSteady, "n", r.On, "of", r.Asked)
	}
	return r.says(w, foundNoLean, "n", r.On, "of", r.Asked)
}

// says puts in words what names the strokes.
func (r Result) says(w say.Words, f found, values ...any) string {
	return tappingOf(r.Kind).found(w, f, values...)
}

func (r Result) steady() bool { return 4*r.On >= 3*r.Asked && !r.leans() }

// leans reports whether the taps have a lean in common, by more than chance and by so
// much that it matters.
func (r Result) leans() bool {
	return r.Landed >= leastTaps && say.Magnitude(r.lean()) >= leastBias && r.Lean.Excludes(0)
}

func (r Result) lean() time.Duration { return say.Millis(r.Lean.Value) }

// findLost says that no tap came, or that all came far from what was asked for.
func findLost(r Result, w say.Words) string {
	switch {
	case r.Landed+r.Added == 0:
		return r.says(w, foundNothing)
	case r.Far == nil:
		return ""
	case r.Measured:
		return w.Say("find-far-measured", "where", either(*r.Far,
			w.Say("far-behind", "ms", about(*r.Far)), w.Say("far-ahead", "ms", about(*r.Far))))
	}
	return SayUnmeasured(w, *r.Far, *r.Far)
}

// findUnmeasured says of a lean on an output without a set-up what it probably is.
func findUnmeasured(r Result, w say.Words) string {
	if r.Measured || !r.leans() {
		return ""
	}
	return SayUnmeasured(w, r.lean(), r.lean())
}

// sends reports whether what is found is for Set-up to mend.
func (r Result) sends(w say.Words) bool {
	return r.Landed+r.Added > 0 && r.Far != nil || findUnmeasured(r, w) != "" || !r.Measured && findAdded(r, w) != ""
}

func findLeftOut(r Result, w say.Words) string {
	var out, asked []int
	for _, c := range r.Counts {
		out, asked = append(out, c.Asked-c.Tapped), append(asked, c.Asked)
	}
	if k := stat.LeftOut(out, asked); k >= 0 && out[k] >= leastTimes && 2*out[k] >= asked[k] {
		return r.says(w, foundOutAt, "count", r.Counts[k].Count, "n", out[k], "of", asked[k])
	}
	most := r.LeftOut >= leastTimes && 2*r.LeftOut >= r.Asked
	if most || r.LeftOut >= leastOften && leastShare*r.LeftOut >= r.Asked {
		return r.says(w, foundOut, "n", r.LeftOut, "of", r.Asked)
	}
	return ""
}

func findAdded(r Result, w say.Words) string {
	switch {
	case r.Added < leastOften || leastShare*r.Added < r.Asked:
		return ""
	case !r.Measured && 2*r.Landed < r.Asked:
		return r.says(w, foundUnmeasured, "n", r.Added)
	}
	return r.says(w, foundAdded, "n", r.Added)
}

func findFew(r Result, w say.Words) string {
	if r.Landed >= leastTaps {
		return ""
	}
	return w.Say("find-few")
}

// findCount names the count that lies apart from the others. Of two counts either might
// be the one that is off: it is the one farther from the dum, and both are named unless
// the other is on it. Where nobody knows how late the sound is, being on it says nothing.
func findCount(r Result, w say.Words) string {
	k, apart := r.oddCount()
	if k < 0 {
		return ""
	}
	count := r.Counts[k]
	if others := count.Mean - apart; r.Measured && say.Magnitude(others) <= nearZero {
		return either(count.Mean, w.Say("find-count-behind", "count", count.Count, "ms", about(count.Mean)),
			w.Say("find-count-ahead", "count", count.Count, "ms", about(count.Mean)))
	}
	if others := r.tapped(); len(others) == 2 {
		other := others[0]
		if other == k {
			other = others[1]
		}
		name := r.Counts[other].Count
		return either(apart, w.Say("find-count-behind-one", "count", count.Count, "ms", about(apart), "other", name),
			w.Say("find-count-ahead-one", "count", count.Count, "ms", about(apart), "other", name))
	}
	return either(apart, r.says(w, foundCountBehind, "count", count.Count, "ms", about(apart)),
		r.says(w, foundCountAhead, "count", count.Count, "ms", about(apart)))
}

// tapped are which of the counts were tapped.
func (r Result) tapped() []int {
	var all []int
	for k, c := range r.Counts {
		if c.Tapped > 0 {
			all = append(all, k)
		}
	}
	return all
}

// oddCount is which count lies farthest apart from the others, for how sure that is, and
// by how much; −1 where none does by more than chance, or by enough to matter.
func (r Result) oddCount() (int, time.Duration) {
	var groups []stat.Group
	for _, c := range r.Counts {
		groups = append(groups, stat.Group{N: c.Tapped, Mean: say.InMs(c.Mean), Spread: say.InMs(c.Spread)})
	}
	odd, sure, apart := -1, 0., time.Duration(0)
	for k, e := range stat.Apart(groups) {
		d := say.Millis(e.Value)
		if !e.Excludes(0) || say.Magnitude(d) < leastCount {
			continue
		}
		s := math.Abs(e.Value) / (e.High - e.Low)
		if alike := math.Abs(s-sure) < 1e-9; odd >= 0 && (s < sure && !alike || alike && say.Magnitude(r.Counts[k].Mean) <= say.Magnitude(r.Counts[odd].Mean)) {
			continue
		}
		odd, sure, apart = k, s, d
	}
	return odd, apart
}

func findBias(r Result, w say.Words) string {
	if !r.leans() {
		return ""
	}
	return either(r.lean(), w.Say("find-all-behind", "ms", about(r.lean())), w.Say("find-all-ahead", "ms", about(r.lean())))
}

func findSpread(r Result, w say.Words) string {
	if !wide(stat.SpreadOf(stat.Group{N: r.Landed, Spread: say.InMs(r.Spread)})) {
		return ""
	}
	return w.Say("find-spread", "ms", about(r.Spread))
}

// wide reports whether a spread, in ms, is worth a sentence, and wider than usual by more
// than chance.
func wide(e scoring.Estimate) bool {
	return e.Known && say.Millis(e.Value) >= leastSpread && say.Millis(e.Low) > usualSpread
}

// about returns the size of an offset in milliseconds, to the nearest five.
func about(d time.Duration) int {
	return 5 * int(math.Round(float64(say.Magnitude(d))/float64(5*time.Millisecond)))
}
