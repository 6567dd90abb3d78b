package say

import (
	"strings"
	"testing"
	"time"
	"unicode"

	"github.com/stretchr/testify/require"
)

// Days are counted as the calendar has them, leap days too.
func TestDayNumber(t *testing.T) {
	for _, c := range []struct {
		from, to string
		apart    int
	}{
		{"2026-02-28", "2026-03-01", 1}, {"2028-02-28", "2028-03-01", 2}, {"2025-12-31", "2026-01-01", 1},
		{"2026-03-03", "2026-03-03", 0}, {"2026-03-03", "2026-03-02", -1}, {"2024-03-01", "2026-03-01", 730},
	} {
		require.Equal(t, c.apart, DayNumber(c.to)-DayNumber(c.from), "%s to %s", c.from, c.to)
	}
	for _, no := range []string{"", "yesterday", "2026-02-30", "2026-3-3"} {
		require.Zero(t, DayNumber(no), no)
	}
}

// A day is said as shortly as it is clear.
func TestDay(t *testing.T) {
	w := words(t)
	for day, want := range map[string]string{
		"2026-03-03": "today", "2026-03-02": "yesterday", "2026-03-01": "1 March", "2026-03-04": "4 March",
		"2026-01-01": "1 January", "2025-12-31": "31 December 2025", "2027-01-01": "1 January 2027", "soon": "soon", "": "",
	} {
		require.Equal(t, want, plain(Day(w, day, "2026-03-03")), day)
	}
	require.Equal(t, "yesterday", Day(w, "2025-12-31", "2026-01-01"), "also of another year")
}

func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// Each month has a name of its own.
func TestMonths(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	for month := time.January; month <= time.December; month++ {
		name := sayMonth(w, time.Date(2026, month, 1, 0, 0, 0, 0, time.UTC))
		require.Equal(t, month.String(), name)
		require.False(t, seen[name])
		seen[name] = true
	}
}

// A stretch of days has its month once if it is the same, and its year where it needs one.
func TestDays(t *testing.T) {
	w := words(t)
	for _, c := range []struct{ from, to, want string }{
		{"2026-03-03", "2026-03-03", "today"},
		{"2026-02-10", "2026-02-10", "10 February"},
		{"2026-02-10", "2026-02-14", "10 to 14 February"},
		{"2026-01-30", "2026-02-02", "30 January to 2 February"},
		{"2026-03-01", "2026-03-02", "1 March to yesterday"},
		{"2026-03-01", "2026-03-03", "1 March to today"},
		{"2026-03-02", "2026-03-03", "yesterday to today"},
		{"2025-11-03", "2025-11-05", "3 to 5 November 2025"},
		{"2025-12-30", "2026-01-02", "30 December 2025 to 2 January"},
		{"2026-02-10", "soon", "10 February to soon"},
		{"long ago", "2026-02-10", "long ago to 10 February"},
		{"2026-02-10", "", "10 February to "},
	} {
		require.Equal(t, c.want, plain(Days(w, c.from, c.to, "2026-03-03")), "%s to %s", c.from, c.to)
	}
}

// An offset says to which side it lies, and a half is rounded away from none.
func TestOffset(t *testing.T) {
	w := words(t)
	const ms = time.Millisecond
	for d, want := range map[time.Duration]string{
		0: "0 ms", 12 * ms: "12 ms behind", -40 * ms: "40 ms ahead", ms / 2: "1 ms behind", -ms / 2: "1 ms ahead",
		ms/2 - 1: "0 ms", 1 - ms/2: "0 ms", 1499 * time.Microsecond: "1 ms behind",
	} {
		require.Equal(t, want, plain(Offset(w, d)), d)
	}
}

// Milliseconds become a time and a time milliseconds, to the nanosecond.
func TestMillis(t *testing.T) {
	for _, d := range []time.Duration{0, 1, -1, 1234567, -987654321, time.Hour} {
		require.Equal(t, d, Millis(InMs(d)))
		require.Equal(t, Magnitude(d), Magnitude(-d))
		require.GreaterOrEqual(t, Magnitude(d), time.Duration(0))
	}
	require.Equal(t, 2500*time.Microsecond, Millis(2.5))
	require.Equal(t, -12.25, InMs(-12250*time.Microsecond))
}

// A list has commas, and an "and" before its last.
func TestList(t *testing.T) {
	w := words(t)
	for _, c := range []struct {
		all  []string
		want string
	}{{nil, ""}, {[]string{"1"}, "1"}, {[]string{"1", "2"}, "1 and 2"}, {[]string{"1", "2", "{last}"}, "1, 2 and {last}"}} {
		require.Equal(t, c.want, List(w, c.all))
	}
}

// A sentence begins with a capital, whatever its script, and ends with one full stop; of
// nothing there is no sentence.
func TestSentence(t *testing.T) {
	for text, want := range map[string]string{"entrances": "Entrances.", "éa": "Éa.", "مقسوم": "مقسوم.", "1 & 2": "1 & 2.", "": ""} {
		require.Equal(t, want, Sentence(text))
	}
	for _, r := range Sentence("ünder") {
		require.True(t, unicode.IsUpper(r))
		break
	}
}

// A key has one ending at most, and a name to be filled in none.
func TestKeys(t *testing.T) {
	for _, key := range []string{"a", "a-1", "a.one", "a.other"} {
		require.True(t, isKey(key), key)
	}
	for _, key := range []string{"", ".one", "a.two", "a.one.other", "a.other.one", "a.one.one", "A", "a b", "é"} {
		require.False(t, isKey(key), key)
	}
}

// Words said for touch and for keys leave those that they were made from as they were.
func TestForTouchCopies(t *testing.T) {
	w := words(t)
	before := len(w)
	require.NotEqual(t, w.ForTouch(true).where(), w.ForTouch(false).where())
	require.Len(t, w, before)
}
