package roundview

import (
	"time"

	"groundbeat/game/say"
	"groundbeat/scoring/stat"
)

// Landing is the tap that belongs to a stop, or to the 1 after it, or that it was
// left out.
type Landing struct {
	Tapped bool
	Offset time.Duration // + behind, − ahead, the set-up's mean taken off
}

// leastLanding is how far a single tap must lie from a stop, or from the 1 after it,
// before it is worth a sentence: one tap varies more than a mean does. Own choice.
const leastLanding = 40 * time.Millisecond

// near reports whether a tap was there, and near enough to need no word.
func (l Landing) near() bool { return l.Tapped && say.Magnitude(l.Offset) < leastLanding }

// elsewhere is how she taps the dums elsewhere in a round, against which single taps are
// held.
type elsewhere struct {
	stat.Group               // the offsets, ms
	off        time.Duration // what is the output's of every offset, and is not told of single ones
}

// tapped are the offsets, in ms, of those that were tapped.
func tapped(all []Landing) []float64 {
	var ms []float64
	for _, l := range all {
		if l.Tapped {
			ms = append(ms, say.InMs(l.Offset))
		}
	}
	return ms
}

// habit is the mean of some taps if it is another than elsewhere by more than chance, and
// far enough to matter; of few taps it is not told.
func (e elsewhere) habit(taps []Landing) (mean time.Duration, ok bool) {
	ms := tapped(taps)
	apart := stat.Against(ms, e.Group)
	mean = say.Millis(stat.GroupOf(ms).Mean) - e.off
	return mean, apart.Excludes(0) && e.matters(mean, apart.Value)
}

// unlike reports of several kinds of taps whether one of a kind is unlike those elsewhere
// by more than chance, with regard to how many there are of all kinds and that habits are
// looked for besides, and far enough to matter.
func (e elsewhere) unlike(kinds ...[]Landing) []bool {
	var ms []float64
	var kind []int
	for k, taps := range kinds {
		for _, v := range tapped(taps) {
			ms, kind = append(ms, v), append(kind, k)
		}
	}
	is := make([]bool, len(kinds))
	for i, apart := range stat.Beside(ms, e.Group, len(ms)+len(kinds)) {
		if apart.Excludes(0) && e.matters(say.Millis(ms[i])-e.off, apart.Value) {
			is[kind[i]] = true
		}
	}
	return is
}

// matters reports whether taps lie far from where they belong, and to the side to which
// they lie apart, in ms, from those elsewhere.
func (e elsewhere) matters(offset time.Duration, apart float64) bool {
	return say.Magnitude(offset) >= leastLanding && offset > 0 == (apart > 0)
}

// farthest is how far from where they belong the farthest of some taps lies.
func (e elsewhere) farthest(taps []Landing) time.Duration {
	low, high := e.ends(taps)
	return max(-low, high)
}

// ends are how far ahead and how far behind some taps lay, at the farthest; 0 where none
// lay there.
func (e elsewhere) ends(taps []Landing) (low, high time.Duration) {
	for _, ms := range tapped(taps) {
		low, high = min(low, say.Millis(ms)-e.off), max(high, say.Millis(ms)-e.off)
	}
	return low, high
}

// say lists where taps lay, in order, in the given word where there was none.
func (e elsewhere) say(w say.Words, taps []Landing, none string) string {
	said := ""
	for i, l := range taps {
		here := none
		if l.Tapped {
			here = say.Offset(w, l.Offset-e.off)
		}
		if i == 0 {
			said = here
		} else {
			said = w.Say("list-then", "first", said, "then", here)
		}
	}
	return said
}

// offOutput is how much of every offset is probably the output's: the lean that is
// common to all, where no set-up is kept for it.
func (r Result) offOutput(w say.Words) time.Duration {
	if findUnmeasured(r, w) == "" {
		return 0
	}
	return r.lean()
}

// either is the sentence for behind or the one for ahead.
func either(d time.Duration, behind, ahead string) string {
	if d > 0 {
		return behind
	}
	return ahead
}
