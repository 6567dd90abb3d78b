package view

import (
	"math"
	"strings"
	"time"

	"groundbeat/game/rhythm"
)

// Twin says in words what the drumhead shows.
func (h *Head) Twin(w Words) string {
	n := beats(h.Counts)
	if h.Hidden && n == 0 {
		return w.Say("head-blank")
	}
	if h.Hidden {
		return w.Say("head-hidden", "beats", n)
	}
	text := w.Say("head-strokes", "beats", n, "strokes", sayStrokes(w, h.Base, h.Counts))
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
func (l *Line) Twin(w Words) string {
	if l.Hidden {
		return w.Say("line-hidden", "counts", strings.Join(l.Counts, " "))
	}
	text := sayStrokes(w, l.Base, l.baseCounts()) + l.light(w)
	if len(l.Riff.Strokes) > 0 {
		text += " " + w.Say("line-riff")
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
func (l *Line) light(w Words) string {
	var all []string
	for i, s := range l.Lead {
		if s.Light() {
			all = append(all, countName(l.Counts, i))
		}
	}
	if len(all) == 0 {
		return ""
	}
	return " " + w.Say("strokes-light", "counts", sayList(w, all))
}

func sayStrokes(w Words, base rhythm.Pattern, counts []string) string {
	var dums, teks []string
	for i, s := range base {
		switch {
		case s.Low():
			dums = append(dums, countName(counts, i))
		case s.Sounds():
			teks = append(teks, countName(counts, i))
		}
	}
	switch {
	case len(teks) == 0:
		return w.Say("strokes-dums", "dums", sayList(w, dums))
	case len(dums) == 0:
		return w.Say("strokes-teks", "teks", sayList(w, teks))
	}
	return w.Say("strokes", "dums", sayList(w, dums), "teks", sayList(w, teks))
}

func sayList(w Words, all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	last := len(all) - 1
	return w.Say("list-and", "first", strings.Join(all[:last], ", "), "last", all[last])
}

func (r *Review) say(w Words, base rhythm.Pattern, counts []string) string {
	var parts []string
	for _, c := range r.Tally(base, counts) {
		if c.Tapped == 0 {
			parts = append(parts, w.Say("taps-none", "count", c.Count))
			continue
		}
		parts = append(parts, w.Say("taps-on", "count", c.Count, "tapped", c.Tapped,
			"asked", c.Asked, "mean", sayOffset(w, c.Mean)))
	}
	if n := len(r.Added); n > 0 {
		parts = append(parts, w.Say("taps-added", "n", n))
	}
	return strings.Join(parts, " ")
}

// sayOffset says an offset: "12 ms ahead", "40 ms behind", "0 ms".
func sayOffset(w Words, d time.Duration) string {
	switch n := wholeMs(d); {
	case n < 0:
		return w.Say("ms-ahead", "ms", -n)
	case n > 0:
		return w.Say("ms-behind", "ms", n)
	}
	return w.Say("ms-none")
}

// wholeMs returns the nearest whole number of milliseconds, halves away from 0.
func wholeMs(d time.Duration) int {
	return int(math.Round(float64(d) / float64(time.Millisecond)))
}
