package rhythm

import (
	"fmt"
	"slices"
	"strconv"
	"time"
)

// A Form is one pattern of a rhythm laid over one cycle: its skeleton, filled
// form or a variant, with the counts and times of its own steps. A filled form
// of 16 steps over 4/4 counts 1 e & a where the skeleton of 8 counts 1 &.
//
// Its methods expect a form as [Cycle.Form] makes it.
type Form struct {
	Metre   Metre
	Pattern Pattern
}

// Form lays a pattern over one cycle. It panics unless the pattern has 1, 2, 4
// or 8 steps for each beat, as the skeleton, the filled form and every variant
// of c have.
func (c *Cycle) Form(p Pattern) Form {
	beats := c.Metre.Beats
	if len(p)%beats != 0 || syllables[len(p)/beats] == nil {
		panic(fmt.Sprintf("rhythm: %d steps over %s", len(p), c.Metre))
	}
	return Form{c.Metre, p}
}

// Base returns the skeleton as a form.
func (c *Cycle) Base() Form { return Form{c.Metre, c.Skeleton} }

// Steps returns the number of steps in a cycle.
func (f Form) Steps() int { return len(f.Pattern) }

// StepsPerBeat returns how many steps share one beat: 1, 2, 4 or 8.
func (f Form) StepsPerBeat() int { return len(f.Pattern) / f.Metre.Beats }

// Count returns what is said on a step inside a cycle: the number of the beat
// on the beat, from "1", and "&" or "e", "&", "a" between. Maqsum (4/4, 8 steps)
// counts 1 & 2 & 3 & 4 &, malfuf (2/4, 8 steps) 1 e & a 2 e & a.
//
// Odd metres number their beats straight through, and the grouping says
// where the long group lies: 9/8 of 2+2+2+3 is 1 2 3 4 5 6 7 8 9, so that
// karşılama falls on 1-3-5-789 (bellydancegeek.com, 2013, "The big 5 9/8s") and
// sama'i thaqil on 1, 4, 6, 7, 8 of 10 (francisdrummingblog.com, 2021, "Samai
// thaqil"). F. Lazzaro (gildedserpent.com) counts 9/8 as 1+2+3+123 instead; this
// says "1" twice in a cycle, so that a count alone would not name a step.
//
// A step outside the cycle, also a negative one, counts as in its own cycle.
//
// There is no word for half of a sixteenth: where 8 steps share a beat, every second one
// counts "".
func (f Form) Count(step int) string { return f.say(step, f.Metre.Beats) }

// CountInEight is [Cycle.CountInEight] on the steps of the form, with "" as Count.
func (f Form) CountInEight(step int) string {
	if f.Metre.odd() {
		return f.Count(step)
	}
	return f.say(step, eight)
}

// Spoken is [Cycle.Spoken] on the steps of the form. A step that has no word is
// named after the one before: "just after 1", "just after the e of 1".
func (f Form) Spoken(step int) string {
	count := f.Count(step)
	beat := f.Count(step - modulo(step, f.StepsPerBeat()))
	switch count {
	case "":
		return "just after " + f.Spoken(step-1)
	case beat:
		return beat
	}
	return "the " + count + " of " + beat
}

// At is [Cycle.At] on the steps of the form, as exact and with the same limits.
func (f Form) At(step, bpm int) time.Duration {
	if bpm < 1 || bpm > maxRate {
		panic(fmt.Sprintf("rhythm: %d beats a minute", bpm))
	}
	rate := uint64(bpm * f.StepsPerBeat())
	if step < 0 {
		return -divide(uint64(-step), rate)
	}
	return divide(uint64(step), rate)
}

// syllables are the words said on the steps of one beat after its number.
var syllables = map[int][]string{
	1: {""},
	2: {"", "&"},
	4: {"", "e", "&", "a"},
	8: {"", "", "e", "", "&", "", "a", ""},
}

// say returns the count of a step where numbers return to 1 after some beats.
func (f Form) say(step, beats int) string {
	perBeat := f.StepsPerBeat()
	within := modulo(step, perBeat)
	if within > 0 {
		return syllables[perBeat][within]
	}
	return strconv.Itoa(modulo(step/perBeat, beats) + 1)
}

// modulo returns the remainder of a by n with the sign of n.
func modulo(a, n int) int {
	return (a%n + n) % n
}

// refined returns the pattern on so many times as many steps.
func (p Pattern) refined(times int) Pattern {
	fine := slices.Repeat(Pattern{Rest}, len(p)*times)
	for i, s := range p {
		fine[i*times] = s
	}
	return fine
}
