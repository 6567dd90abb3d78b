package say

import (
	"strconv"
	"strings"
	"time"
)

// dayNumber counts days: of two, how many lie between is their difference. A text
// that is no day, 2006-01-02, is day 0.
func DayNumber(day string) int {
	t, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return 0
	}
	return int(t.Unix() / (24 * 60 * 60))
}

// sayDay says a day in plain words: "today", "yesterday", "3 November", and with
// its year if that is not today's.
func Day(w Words, day, today string) string {
	t, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return day
	}
	switch apart := DayNumber(today) - DayNumber(day); {
	case apart == 0:
		return w.Say("today")
	case apart == 1:
		return w.Say("yesterday")
	case !strings.HasPrefix(today, day[:4]):
		return w.Say("day-year", "day", t.Day(), "month", sayMonth(w, t), "year", t.Year())
	}
	return w.Say("day", "day", t.Day(), "month", sayMonth(w, t))
}

func sayMonth(w Words, t time.Time) string {
	return strings.Fields(w.Say("months"))[t.Month()-1]
}

// sayDays says a stretch of days: one day, or the first and the last, the month only
// once if it is the same.
func Days(w Words, from, to, today string) string {
	first, last := Day(w, from, today), Day(w, to, today)
	if from == to {
		return last
	}
	t, err := time.Parse(time.DateOnly, from)
	if err == nil && strings.HasPrefix(to, from[:7]) && DayNumber(today)-DayNumber(to) > 1 {
		first = strconv.Itoa(t.Day())
	}
	return w.Say("from-to", "from", first, "to", last)
}
