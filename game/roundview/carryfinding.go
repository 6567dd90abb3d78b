package roundview

import (
	"groundbeat/game/say"
	"math"
	"time"
)

// leastTempo is from what share of a time on her own tempo is worth a word, beside how
// far off it has brought her: 0.5 %. Own choice.
const leastTempo = 0.005

// Finding says the single most useful thing: that no tap came in the silences, or few;
// on an output without a set-up that all taps with the drums lean; else where she was
// when the drums came back; else that her taps were spread in the silences; else what
// Dums would say of the rest; and if there is nothing to say of that either, that the
// dums were kept.
func (c *Carry) Finding(w say.Words) string {
	if text := findLost(*c.Result, w); text != "" {
		return text
	}
	text := c.findSilences(w)
	if lean := findUnmeasured(*c.Drummed, w); lean != "" && text != "" {
		return w.Say("find-both", "first", lean, "then", text)
	}
	switch {
	case text != "":
		return text
	case !c.keeps():
		return Finding(*c.Drummed, w)
	}
	if rest := Finding(*c.Drummed, w); rest != unremarkable(*c.Drummed, w) {
		return rest
	}
	return w.Say("carry-kept")
}

// findSilences says what there is to say of the silences.
func (c *Carry) findSilences(w say.Words) string {
	tapped, asked := c.inSilence()
	switch {
	case tapped == 0:
		return w.Say("carry-nothing")
	case 2*(asked-tapped) >= asked:
		return w.Say("carry-left-out", "out", asked-tapped, "of", asked)
	}
	if text := c.findBack(w); text != "" {
		return text
	}
	if wide(c.Without) {
		return w.Say("carry-spread", "ms", about(say.Millis(c.Without.Value)))
	}
	return ""
}

func (c *Carry) inSilence() (tapped, asked int) {
	for _, s := range c.Silences {
		tapped, asked = tapped+s.Tapped, asked+s.Asked
	}
	return tapped, asked
}

// keeps reports whether three of four dums or more were tapped in the silences, and she
// was there each time when the drums came back.
func (c *Carry) keeps() bool {
	tapped, asked := c.inSilence()
	for _, s := range c.Silences {
		if !s.Back.near() {
			return false
		}
	}
	return 4*tapped >= 3*asked
}

// findBack says where she was when the drums came back: behind or ahead each time, if
// there are silences enough to tell a habit, with her tempo where that explains it; else
// what happened, if it is not how she taps with the drums.
func (c *Carry) findBack(w say.Words) string {
	var back []Landing
	for _, s := range c.Silences {
		back = append(back, s.Back)
	}
	e := elsewhere{c.Between, c.Drummed.offOutput(w)}
	if len(tapped(back)) == 0 {
		return w.Say("carry-back-out")
	}
	if mean, ok := e.habit(back); ok {
		return c.sayHabit(w, mean)
	}
	switch {
	case !e.unlike(back)[0]:
		return ""
	case len(back) == 1:
		return w.Say("carry-was", "list", e.say(w, back, ""))
	case len(back) <= mostListed:
		return w.Say("carry-were", "list", e.say(w, back, w.Say("carry-not-there")))
	}
	low, high := e.ends(back)
	switch {
	case -low >= leastLanding && high >= leastLanding:
		return w.Say("carry-both", "ahead", about(low), "behind", about(high))
	case high > -low:
		return w.Say("carry-once-behind", "ms", about(high))
	}
	return w.Say("carry-once-ahead", "ms", about(low))
}

// mostListed is of how many silences it is told one by one where she was.
const mostListed = 3

// sayHabit says that she is behind or ahead each time, and how far her own tempo is off,
// over all rounds that count together, if that is known to explain it.
func (c *Carry) sayHabit(w say.Words, mean time.Duration) string {
	own := c.Own.Slower
	if tells := own.Excludes(0) && math.Abs(own.Value) >= leastTempo && own.Value > 0 == (mean > 0); tells {
		return either(mean, w.Say("carry-behind-slower", "ms", about(mean), "percent", sayPercent(own.Value)),
			w.Say("carry-ahead-faster", "ms", about(mean), "percent", sayPercent(own.Value)))
	}
	return either(mean, w.Say("carry-behind", "ms", about(mean)), w.Say("carry-ahead", "ms", about(mean)))
}
