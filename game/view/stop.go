package view

import (
	"time"
)

// Stop is what the screens of the exercise Catch the stop are made from: those of
// Dums, and how the stops were caught. Any is not used.
type Stop struct {
	Dums
	Caught []StopResult // when Reviewing, in order
}

// StopResult is how one stop was caught.
type StopResult struct {
	Eight     int    // in which the stop is, from 1
	Count     string // the stop's: "5"
	Silence   int    // counts from the stop to the 1
	Last      Landing
	InSilence int // taps: none is as it should be
	Back      Landing
}

// Landing is the tap that belongs to a stop, or to the 1 after it, or that it was
// left out.
type Landing struct {
	Tapped bool
	Offset time.Duration // + behind, − ahead, the set-up's mean taken off
}

// Screen returns the screen of the round's phase.
func (s *Stop) Screen(w Words) Screen {
	switch s.Phase {
	case Playing:
		return s.playing(w)
	case Reviewing:
		return s.reviewing(w)
	case Voided:
		return voided(w, ScreenStop, sayWhy(w, s.Why), s.head(w), s.once(w), s.change(w))
	}
	return s.ready(w)
}

func (s *Stop) page(w Words) string { return w.Say("stop-page", "rhythm", s.Rhythm.Name) }

func (s *Stop) ready(w Words) Screen {
	return s.long(w, ScreenStop, s.page(w), w.Say("stop-heading", "rhythm", s.Rhythm.Name), w.Say("stop-how"), longLengths)
}

// playing is the drumhead and the way out. Elsewhere that is called Stop; where the
// drummer's stop is what is waited for, another word is needed.
func (s *Stop) playing(w Words) Screen {
	out := tapping(page(w, ScreenStop, s.page(w), nil), w, w.Say("playing-stop", "rhythm", plain(s.Rhythm.Name)), s.Round, s.head(w), s.Help.buttons(w, s.Volume)...)
	out.Find("stop").Name = w.Say("end")
	return out
}

// reviewing returns the screen after a round: the one sentence, each stop, the
// pictures of the dums between, and what to do next.
func (s *Stop) reviewing(w Words) Screen {
	items := []Item{
		heading("heading", w.Say("stop-review", "rhythm", s.Rhythm.Name)),
		{ID: "finding", Role: RoleText, Look: LookFinding, Text: s.Finding(w)},
		{ID: "next", Role: RoleGroup, Look: LookRow, Children: []Item{s.once(w), s.slower(w), s.change(w)}},
		s.table(w), {ID: "figures", Role: RoleGroup, Look: LookFigures, Children: s.figures(w)}, s.line(w), s.again(w), s.head(w),
	}
	return s.reviewed(w, ScreenStop, s.page(w), items)
}

// table has a line for each stop.
func (s *Stop) table(w Words) Item {
	it := Item{ID: "stops", Role: RoleTable, Name: w.Say("stops"),
		Columns: []string{w.Say("column-stop"), w.Say("column-last"), w.Say("column-silence"), w.Say("column-back")}}
	for _, c := range s.Caught {
		silence := w.Say("stop-still", "counts", c.Silence)
		if c.InSilence > 0 {
			silence = w.Say("stop-taps", "counts", c.Silence, "n", c.InSilence)
		}
		it.Rows = append(it.Rows, []string{w.Say("stop-place", "count", c.Count, "eight", c.Eight),
			sayLanding(w, c.Last), silence, sayLanding(w, c.Back)})
	}
	return it
}

func sayLanding(w Words, l Landing) string {
	if !l.Tapped {
		return w.Say("left-out")
	}
	return sayOffset(w, l.Offset)
}

// leastLanding is how far a tap must lie from a stop, or from the 1 after it, before
// it is worth a sentence: one tap varies more than a mean does. Own choice.
const leastLanding = 40 * time.Millisecond

// Finding says the single most useful thing: that the hands went on in a silence;
// else that a stop, or the 1 after one, was left out; else where the farthest tap
// on one of them lay; else what Dums would say of the rest; and if there is nothing
// to say of that either, that the stops were caught.
func (s *Stop) Finding(w Words) string {
	if s.Result.Landed+s.Result.Added == 0 {
		return w.Say("find-nothing")
	}
	taps := 0
	var last, back []Landing
	for _, c := range s.Caught {
		taps, last, back = taps+c.InSilence, append(last, c.Last), append(back, c.Back)
	}
	stopsOut, stop := landed(last)
	backsOut, one := landed(back)
	switch n := len(s.Caught); {
	case taps > 0:
		return w.Say("stop-hands", "n", taps)
	case stopsOut > 0:
		return w.Say("stop-left-out", "n", n, "out", stopsOut)
	case backsOut > 0:
		return w.Say("stop-back-left-out", "n", n, "out", backsOut)
	case magnitude(stop) >= leastLanding && magnitude(stop) >= magnitude(one):
		return either(stop, w.Say("stop-behind", "ms", about(stop)), w.Say("stop-ahead", "ms", about(stop)))
	case magnitude(one) >= leastLanding:
		return either(one, w.Say("stop-back-behind", "ms", about(one)), w.Say("stop-back-ahead", "ms", about(one)))
	}
	if rest := Finding(*s.Result, w); rest != steady(*s.Result, w) {
		return rest
	}
	return w.Say("stop-caught", "n", len(s.Caught))
}

// landed is how many were left out, and the farthest offset of the others.
func landed(all []Landing) (out int, farthest time.Duration) {
	for _, l := range all {
		switch {
		case !l.Tapped:
			out++
		case magnitude(l.Offset) > magnitude(farthest):
			farthest = l.Offset
		}
	}
	return out, farthest
}

// either is the sentence for behind or the one for ahead.
func either(d time.Duration, behind, ahead string) string {
	if d > 0 {
		return behind
	}
	return ahead
}
