package rhythm

import "slices"

// A Difference is one place where two rhythms do not sound alike.
type Difference struct {
	Count string // as said in a sentence: "the & of 2"
	A, B  Stroke // what each plays there, perhaps nothing: Rest
}

// Differ returns where the skeletons of two rhythms differ as they sound at the
// same number of beats a minute, in the order of time; none if they sound alike.
//
// They are laid side by side on a [CommonPulse] and counted straight through
// it: maqsum against malfuf 1 to 4, baladi against masmudi kabir 1 to 8. Where
// neither cycle goes into the other, as 9/8 and 4/4, the list is right but long;
// say the metres instead.
func Differ(a, b *Cycle) []Difference { return a.Base().Differ(b.Base()) }

// Differ is [Differ] of two forms, such as the filled forms of two rhythms.
func (f Form) Differ(other Form) []Difference {
	p, q := CommonPulse(f, other)
	var all []Difference
	for step, s := range p.Pattern {
		if s != q.Pattern[step] {
			all = append(all, Difference{p.Spoken(step), s, q.Pattern[step]})
		}
	}
	return all
}

// SameButSpeed reports whether two skeletons are the same strokes at the same
// places, but perhaps at another speed or written out a different number of
// times, as maqsum and fallahi are. Then b at bpm·times/per beats a minute
// sounds as a at bpm: for maqsum and fallahi, times/per is 1/2. Otherwise both
// are 0.
func SameButSpeed(a, b *Cycle) (times, per int, same bool) {
	p, q := a.Base().essence(), b.Base().essence()
	if !slices.Equal(p.pattern, q.pattern) {
		return 0, 0, false
	}
	times, per = q.beats*p.of, p.beats*q.of
	common := gcd(times, per)
	return times / common, per / common, true
}

// SoundsAs reports whether a at bpm beats a minute may be taken for b: it is the
// same but for speed, and b played so fast lies within b's own range of tempo.
// Two such rhythms are not both answers to one question.
func SoundsAs(a, b *Cycle, bpm int) bool {
	times, per, same := SameButSpeed(a, b)
	return same && b.Tempo.Slow*per <= bpm*times && bpm*times <= b.Tempo.Fast*per
}

// SameDums reports whether the dums of two skeletons are the same taps, at some
// speed: their places count from the start of the cycle, so that çiftetelli and
// masmudi kabir, half a cycle apart, do not have the same. Someone who taps the
// dums alone shows no difference between such rhythms.
//
// A cycle that repeats itself counts once. Maqsum's dums on 1 and 3 of four are
// the same taps as wahda's or malfuf's one dum a cycle, played faster.
func SameDums(a, b *Cycle) bool {
	return slices.Equal(a.dumsOnly().essence().pattern, b.dumsOnly().essence().pattern)
}

// dumsOnly returns the skeleton with a rest for every stroke that is no dum.
func (c *Cycle) dumsOnly() Form {
	dums := slices.Clone(c.Skeleton)
	for i, s := range dums {
		if !s.Low() {
			dums[i] = Rest
		}
	}
	return Form{c.Metre, dums}
}

// An essence is a pattern on the fewest steps that hold it, once: without
// repetitions and without rests on every second step. It lasts beats/of beats.
type essence struct {
	pattern   Pattern
	beats, of int
}

func (f Form) essence() essence {
	apart := len(f.Pattern)
	for i, s := range f.Pattern {
		if s.Sounds() {
			apart = gcd(apart, i)
		}
	}
	var p Pattern
	for i := 0; i < len(f.Pattern); i += apart {
		p = append(p, f.Pattern[i])
	}
	once := p.period()
	return essence{p[:once], f.Metre.Beats * once, len(p)}
}

// period returns after how many steps the pattern repeats itself.
func (p Pattern) period() int {
	for n := 1; n < len(p); n++ {
		if len(p)%n == 0 && slices.Equal(p[n:], p[:len(p)-n]) {
			return n
		}
	}
	return len(p)
}
