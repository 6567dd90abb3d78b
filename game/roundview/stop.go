package roundview

import (
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring/stat"
)

// Stop is what the screens of the exercise Catch the stop are made from: those of
// Dums, and how the stops were caught. Any is not used.
type Stop struct {
	Dums

	// When Reviewing.
	Caught  []StopResult // in order
	Between stat.Group   // the offsets of the dums between, ms
}

// StopResult is how one stop was caught.
type StopResult struct {
	Eight     int    // in which the stop is, from 1
	Count     string // the stop's: "5"
	Silence   int    // counts from the stop to the 1
	Last      Landing
	InSilence int  // taps: none is as it should be
	Late      bool // the first of these was rather meant for the stop, and came too late for it
	Back      Landing
}

// Screen returns the screen of the round's phase.
func (s *Stop) Screen(w say.Words) view.Screen {
	switch s.Phase {
	case view.Playing:
		return s.playing(w)
	case view.Reviewing:
		return s.reviewing(w)
	case view.Voided:
		return s.voided(w)
	}
	return s.long(w, longLengths)
}

var stopTapping = tapping{
	page:    func(w say.Words, rhythm string) string { return w.Say("stop-page", "rhythm", rhythm) },
	heading: func(w say.Words, rhythm string) string { return w.Say("stop-heading", "rhythm", rhythm) },
	how:     func(w say.Words, _ string, _ bool) string { return w.Say("stop-how") },
	playing: func(w say.Words, rhythm string) string { return w.Say("playing-stop", "rhythm", rhythm) },
	found:   foundDums,
}

// playing is the drumhead and the way out. Elsewhere that is called Stop; where the
// drummer's stop is what is waited for, another word is needed.
func (s *Stop) playing(w say.Words) view.Screen {
	out := s.Dums.playing(w)
	out.Find("stop").Name = w.Say("end")
	return out
}

// reviewing returns the screen after a round: the one sentence, each stop, the
// pictures of the dums between, and what to do next.
func (s *Stop) reviewing(w say.Words) view.Screen {
	items := []view.Item{
		view.Heading("heading", w.Say("stop-review", "rhythm", s.Rhythm.Name)),
		{ID: "finding", Role: view.RoleText, Look: view.LookFinding, Text: s.Finding(w)}, s.Result.remedy(w),
		{ID: "next", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{s.once(w), s.slower(w), s.change(w)}},
		s.table(w), {ID: "figures", Role: view.RoleGroup, Look: view.LookFigures, Children: s.figures(w)}, s.line(w), s.again(w), s.head(w),
	}
	return s.reviewed(w, s.page(w), items)
}

// table has a line for each stop.
func (s *Stop) table(w say.Words) view.Item {
	it := view.Item{ID: "stops", Role: view.RoleTable, Name: w.Say("stops"),
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

func sayLanding(w say.Words, l Landing) string {
	if !l.Tapped {
		return w.Say("left-out")
	}
	return say.Offset(w, l.Offset)
}
