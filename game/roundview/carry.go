package roundview

import (
	"fmt"
	"math"
	"slices"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// Carry is what the screens of the exercise Carry on are made from: those of Dums, and
// how the dums were kept through the silences. Any is not used.
type Carry struct {
	Dums

	// When Reviewing.
	Silences []SilenceResult  // in order
	Eight    rhythm.Pattern   // one eight
	InEight  []string         // the count of each of its steps
	Alone    *picture.Review  // how the taps of the silences lay, one eight after the other
	With     scoring.Estimate // standard deviation of the offsets with the drums, ms
	Without  scoring.Estimate // and in the silences, about her own tempo
	Between  stat.Group       // the offsets with the drums, ms
	Drummed  *Result          // the figures of the dums that the drums played
	Own      OwnTime
}

// SilenceResult is how the dums were kept through one silence.
type SilenceResult struct {
	Eight         int // which was silent, from 1
	Tapped, Asked int // dums in it
	Back          Landing
	Slower        *float64 // her own tempo: 0.02 is 2 % slower, below 0 faster; nil: not known
}

// carryLengths are the lengths offered, in eights.
var carryLengths = []int{4, 8, 16, 32}

// Screen returns the screen of the round's phase.
func (c *Carry) Screen(w say.Words) view.Screen {
	switch c.Phase {
	case view.Playing:
		return c.playing(w)
	case view.Reviewing:
		return c.reviewing(w)
	case view.Voided:
		return c.voided(w)
	}
	return c.long(w, carryLengths)
}

var carryTapping = tapping{
	page:    func(w say.Words, rhythm string) string { return w.Say("carry-page", "rhythm", rhythm) },
	heading: func(w say.Words, rhythm string) string { return w.Say("carry-heading", "rhythm", rhythm) },
	how:     func(w say.Words, _ string, _ bool) string { return w.Say("carry-how") },
	playing: func(w say.Words, rhythm string) string { return w.Say("playing-carry", "rhythm", rhythm) },
	found:   foundDums,
}

// reviewing returns the screen after a round: the one sentence, what to do next, the
// taps in the silences, all figures in one place, and clock and hand.
func (c *Carry) reviewing(w say.Words) view.Screen {
	items := []view.Item{
		view.Heading("heading", w.Say("carry-review", "rhythm", c.Rhythm.Name)),
		{ID: "finding", Role: view.RoleText, Look: view.LookFinding, Text: c.Finding(w)}, c.Drummed.remedy(w),
		{ID: "next", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{c.once(w), c.slower(w), c.change(w)}},
		view.Subheading("alone", w.Say("carry-line")), c.alone(w),
		{ID: "figures", Role: view.RoleGroup, Look: view.LookFigures, Children: c.figures(w)}, c.table(w),
		{ID: "own", Role: view.RoleText, Text: c.Own.say(w, c.Rhythm.Name)}, c.again(w), c.head(w),
	}
	return c.reviewed(w, c.page(w), append(items, view.Item{ID: "all", Role: view.RoleText, Look: view.LookNote, Text: w.Say("carry-head")}))
}

// table has a line for each silence.
func (c *Carry) table(w say.Words) view.Item {
	it := view.Item{ID: "silences", Role: view.RoleTable, Name: w.Say("silences"),
		Columns: []string{w.Say("column-eight"), w.Say("column-tapped"), w.Say("column-back"), w.Say("tempo-name")}}
	for _, s := range c.Silences {
		own := view.None
		if s.Slower != nil {
			own = sayTempo(w, *s.Slower)
		}
		it.Rows = append(it.Rows, []string{fmt.Sprint(s.Eight), w.Say("of", "n", s.Tapped, "of", s.Asked), sayLanding(w, s.Back), own})
	}
	return it
}

// sayTempo says how much slower or faster than the drums somebody was, in hundredths.
func sayTempo(w say.Words, slower float64) string {
	percent := sayPercent(slower)
	switch {
	case percent == sayPercent(0):
		return w.Say("carry-same")
	case slower > 0:
		return w.Say("carry-slower", "percent", percent)
	}
	return w.Say("carry-faster", "percent", percent)
}

// sayPercent is the size of a share in hundredths, to a tenth.
func sayPercent(share float64) string { return fmt.Sprintf("%.1f", 100*math.Abs(share)) }

// alone is the line of the silences: the dums that nobody played but the player, and
// her taps, the first silence on top.
func (c *Carry) alone(w say.Words) view.Item {
	l := picture.Line{Base: c.Eight, Counts: c.InEight, Groups: slices.Repeat(c.Groups, len(c.Eight)/max(1, len(c.Base))), Columns: c.Columns, Review: c.Alone, Legend: c.legend(w)}
	return view.Still(w, "line", &l)
}

// figures are those of the round; of what is as it should be there are none.
func (c *Carry) figures(w say.Words) []view.Item {
	r := c.Result
	items := []view.Item{view.Figure("on", tappingOf(c.Kind).found(w, foundOn), w.Say("of", "n", r.On, "of", r.Asked))}
	for _, s := range []struct {
		id, name string
		spread   scoring.Estimate
	}{{"with", w.Say("spread-with"), c.With}, {"without", w.Say("spread-without"), c.Without}} {
		if s.spread.Known {
			items = append(items, view.Figure(s.id, s.name, w.Say("ms", "ms", say.WholeMs(say.Millis(s.spread.Value)))))
		}
	}
	if c.Own.Slower.Known {
		items = append(items, view.Figure("own-tempo", w.Say("carry-tempo"), sayTempo(w, c.Own.Slower.Value)))
	}
	if r.LeftOut > 0 {
		items = append(items, view.Figure("left-out", w.Say("left-out"), fmt.Sprint(r.LeftOut)))
	}
	if r.Added > 0 {
		items = append(items, view.Figure("added", w.Say("added"), fmt.Sprint(r.Added)))
	}
	return items
}

// OwnTime is what can be told of how a player keeps time by herself, over the rounds
// that count together.
type OwnTime struct {
	Clock, Hand scoring.Estimate // standard deviations, ms
	Slower      scoring.Estimate // her own tempo: 0.02 is 2 % slower
	Why         Untold           // Clock and Hand are not known
}

// Untold says why clock and hand cannot be told.
type Untold uint8

// The reasons.
const (
	CanTell        Untold = iota // they can
	UntoldShort                  // an eight of the rhythm has too few dums
	UntoldFew                    // too few intervals
	UntoldUnclear                // one of them hardly varies, or the intervals are too few for these two
	UntoldDrifts                 // the tempo wandered
	UntoldCorrects               // each tap was corrected for the one before
)

// say tells clock and hand, or why not.
func (o OwnTime) say(w say.Words, rhythm string) string {
	switch o.Why {
	case UntoldShort:
		return w.Say("carry-short", "rhythm", rhythm)
	case UntoldFew:
		return w.Say("carry-few", "have", o.Clock.N, "of", o.Clock.Least, "rhythm", rhythm)
	case UntoldUnclear:
		return w.Say("carry-unclear")
	case UntoldDrifts:
		return w.Say("carry-drifts")
	case UntoldCorrects:
		return w.Say("carry-corrects")
	}
	whole := func(ms float64) int { return int(math.Round(ms)) }
	return w.Say("carry-told", "have", o.Clock.N,
		"clock", whole(o.Clock.Value), "clock-low", whole(o.Clock.Low), "clock-high", whole(o.Clock.High),
		"hand", whole(o.Hand.Value), "hand-low", whole(o.Hand.Low), "hand-high", whole(o.Hand.High))
}
