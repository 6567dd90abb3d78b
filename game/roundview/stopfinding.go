package roundview

import (
	"groundbeat/game/say"
	"slices"
)

// Finding says the single most useful thing: on an output without a set-up that all taps
// lean; else that the hands went on in a silence; else that a stop, or the 1 after one,
// was left out; else where the taps on them lay, if that is not how she taps; else what
// Dums would say of the rest; and if there is nothing to say of that either, that the
// stops were caught.
func (s *Stop) Finding(w say.Words) string {
	if text := findLost(*s.Result, w); text != "" {
		return text
	}
	text := s.findHands(w)
	if text == "" {
		text = s.findLandings(w)
	}
	if lean := findUnmeasured(*s.Result, w); lean != "" && text != "" {
		return w.Say("find-both", "first", lean, "then", text)
	}
	switch {
	case text != "":
		return text
	case !s.caught():
		return Finding(*s.Result, w)
	}
	if rest := Finding(*s.Result, w); rest != unremarkable(*s.Result, w) {
		return rest
	}
	return w.Say("stop-caught", "n", len(s.Caught))
}

// findHands says that the hands went on, or that stops or the 1 after them were left out.
func (s *Stop) findHands(w say.Words) string {
	taps, stopsOut, backsOut := 0, 0, 0
	for _, c := range s.Caught {
		taps += c.InSilence
		if c.Late && c.InSilence > 0 {
			taps--
		}
		if !c.Last.Tapped {
			stopsOut++
		}
		if !c.Back.Tapped {
			backsOut++
		}
	}
	switch n := len(s.Caught); {
	case taps > 0:
		return w.Say("stop-hands", "n", taps)
	case stopsOut > 0:
		return w.Say("stop-left-out", "n", n, "out", stopsOut)
	case backsOut > 0:
		return w.Say("stop-back-left-out", "n", n, "out", backsOut)
	}
	return ""
}

// findLandings says where the taps on the stops, or on the 1 after them, lay: a habit
// where there are taps enough to tell one, and otherwise what happened, if that is not how
// she taps elsewhere; first of those that lie farther out.
func (s *Stop) findLandings(w say.Words) string {
	var last, back []Landing
	for _, c := range s.Caught {
		last, back = append(last, c.Last), append(back, c.Back)
	}
	e := elsewhere{s.Between, s.Result.offOutput(w)}
	unlike := e.unlike(last, back)
	first, second := e.findLast(w, last, unlike[0]), e.findBack(w, back, unlike[1])
	if second != "" && (first == "" || e.farthest(back) > e.farthest(last)) {
		return second
	}
	return first
}

// findLast says where the taps on the stops lay.
func (e elsewhere) findLast(w say.Words, last []Landing, unlike bool) string {
	mean, habit := e.habit(last)
	switch {
	case habit:
		return either(mean, w.Say("stop-behind", "ms", about(mean)), w.Say("stop-ahead", "ms", about(mean)))
	case !unlike:
		return ""
	case len(last) == 1:
		return w.Say("stop-last-was", "list", e.say(w, last, ""))
	}
	return w.Say("stop-last-were", "n", len(last), "list", e.say(w, last, ""))
}

// findBack says where the taps on the 1 after the stops lay.
func (e elsewhere) findBack(w say.Words, back []Landing, unlike bool) string {
	mean, habit := e.habit(back)
	switch {
	case habit:
		return either(mean, w.Say("stop-back-behind", "ms", about(mean)), w.Say("stop-back-ahead", "ms", about(mean)))
	case !unlike:
		return ""
	case len(back) == 1:
		return w.Say("stop-back-was", "list", e.say(w, back, ""))
	}
	return w.Say("stop-back-were", "n", len(back), "list", e.say(w, back, ""))
}

// caught reports whether all stops, and the 1 after each, were landed on.
func (s *Stop) caught() bool {
	return !slices.ContainsFunc(s.Caught, func(c StopResult) bool { return !c.Last.near() || !c.Back.near() })
}
