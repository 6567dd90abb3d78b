package picture

import (
	"math"
	"strconv"
	"strings"

	"groundbeat/game/rhythm"
	"groundbeat/game/say"
)

// Twin says in words what the drumhead shows.
func (h *Head) Twin(w say.Words) string {
	n := Beats(h.Counts)
	if h.Hidden && n == 0 {
		return w.Say("head-blank")
	}
	if h.Hidden {
		return w.Say("head-hidden", "beats", n) + sayGroups(w, h.Groups)
	}
	text := w.Say("head-strokes", "beats", n, "strokes", SayStrokes(w, h.Base, h.Counts)) + sayGroups(w, h.Groups)
	if len(h.Riff.Strokes) > 0 {
		text += " " + w.Say("head-lead")
	}
	for _, o := range h.Riff.Open {
		text += " " + sayOpen(w, o, h.Counts)
	}
	if h.Review == nil {
		return text
	}
	text += " " + h.Review.say(w, h.Base, h.Counts)
	if times := h.Enlarged(); times > 1 {
		text += " " + w.Say("enlarged", "times", times)
	}
	return text
}

// Twin says in words what the whiteboard line shows.
func (l *Line) Twin(w say.Words) string {
	if l.Hidden {
		return w.Say("line-hidden", "counts", strings.Join(l.Counts, " ")) + sayGroups(w, l.Groups)
	}
	text := SayStrokes(w, l.Base, l.baseCounts()) + sayGroups(w, l.Groups) + l.light(w)
	if len(l.Riff.Strokes) > 0 {
		text += " " + l.riffed(w)
	}
	if l.Review != nil {
		text += " " + l.Review.say(w, l.Base, l.Counts)
	}
	return text
}

// baseCounts returns the counts of the base's own steps.
func (l *Line) baseCounts() []string {
	apart := max(1, len(l.Counts)/max(1, len(l.Base)))
	if apart == 1 {
		return l.Counts
	}
	var counts []string
	for i := 0; i < len(l.Counts); i += apart {
		counts = append(counts, l.Counts[i])
	}
	return counts
}

// light says where the lead drum adds light strokes.
func (l *Line) light(w say.Words) string {
	var all []string
	for i, s := range l.Lead {
		if s.Light() {
			all = append(all, CountName(l.Counts, i))
		}
	}
	if len(all) == 0 {
		return ""
	}
	return " " + w.Say("strokes-light", "counts", say.List(w, all))
}

// sayGroups says how the beats of an odd metre go in groups; nothing without any.
func sayGroups(w say.Words, groups []int) string {
	if len(groups) == 0 {
		return ""
	}
	var all []string
	for _, g := range groups {
		all = append(all, strconv.Itoa(g))
	}
	return " " + w.Say("groups", "groups", say.List(w, all))
}

// riffed says what the lead drum plays, sound by sound, on which counts: what lies
// between two of them comes just after the one before.
func (l *Line) riffed(w say.Words) string {
	on := map[rhythm.Stroke][]string{}
	var said []string
	for _, s := range l.Riff.Strokes {
		at := s.Turn * float64(len(l.Counts))
		count := CountName(l.Counts, int(at+0.001))
		if at-math.Floor(at+0.001) > 0.001 {
			count = w.Say("just-after", "count", count)
		}
		if s.Long > 0 {
			said = append(said, w.Say("riff-rolls", "count", count))
			continue
		}
		on[s.Sound] = append(on[s.Sound], count)
	}
	var all []string
	for _, s := range Explained {
		if len(on[s]) > 0 {
			all = append(all, w.Say("riff-on", "stroke", SayStroke(w, s), "counts", say.List(w, on[s])))
		}
	}
	return w.Say("line-riff", "strokes", strings.Join(append(all, said...), "; "))
}

func SayStrokes(w say.Words, base rhythm.Pattern, counts []string) string {
	var dums, teks []string
	for i, s := range base {
		switch {
		case s.Low():
			dums = append(dums, CountName(counts, i))
		case s.Sounds():
			teks = append(teks, CountName(counts, i))
		}
	}
	switch {
	case len(teks) == 0:
		return w.Say("strokes-dums", "dums", say.List(w, dums))
	case len(dums) == 0:
		return w.Say("strokes-teks", "teks", say.List(w, teks))
	}
	return w.Say("strokes", "dums", say.List(w, dums), "teks", say.List(w, teks))
}

func (r *Review) say(w say.Words, base rhythm.Pattern, counts []string) string {
	var parts []string
	for _, c := range r.Tally(base, counts) {
		if c.Tapped == 0 {
			parts = append(parts, w.Say("taps-none", "count", c.Count))
			continue
		}
		parts = append(parts, w.Say("taps-on", "count", c.Count, "tapped", c.Tapped,
			"asked", c.Asked, "mean", say.Offset(w, c.Mean)))
	}
	if n := len(r.Added); n > 0 {
		parts = append(parts, w.Say("taps-added", "n", n))
	}
	return strings.Join(parts, " ")
}

func SayStroke(w say.Words, s rhythm.Stroke) string {
	switch s {
	case rhythm.Dum:
		return w.Say("dum")
	case rhythm.Tek:
		return w.Say("tek")
	case rhythm.Sak:
		return w.Say("sak")
	case rhythm.LightTek:
		return w.Say("light-tek")
	case rhythm.Ka:
		return w.Say("ka")
	}
	return w.Say("no-stroke")
}
