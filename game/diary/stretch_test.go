package diary

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// each day has one trial.
func each(n int) []string {
	var days []string
	for i := range n {
		days = append(days, time.Date(2026, 1, 5+i, 0, 0, 0, 0, time.UTC).Format(time.DateOnly))
	}
	return days
}

func TestStretches(t *testing.T) {
	require.Empty(t, stretches(nil, 3, 9))
	require.Equal(t, []stretch{{0, 2}}, stretches(each(2), 3, 9), "too few are one all the same")
	require.Equal(t, []stretch{{0, 7}, {7, 14}}, stretches(each(14), 3, 9), "Monday to Sunday")
	require.Equal(t, []stretch{{0, 7}, {7, 16}}, stretches(each(16), 3, 9), "what is left joins the last")
	require.Equal(t, []stretch{{0, 14}, {14, 28}}, stretches(each(28), 8, 9), "two weeks where one has too few")
	require.Equal(t, []stretch{{0, 7}, {7, 11}}, stretches([]string{
		"2025-12-29", "2025-12-29", "2025-12-29", "2026-01-01", "2026-01-01", "2026-01-01", "2026-01-04",
		"2026-01-06", "2026-01-06", "2026-01-06", "2026-01-06",
	}, 4, 9), "over the turn of the year")
}

// Where there would be too many, they are longer: all of the same length.
func TestStretchesMany(t *testing.T) {
	days := each(5 * 364)
	all := stretches(days, 3, MostSpans)
	require.LessOrEqual(t, len(all), MostSpans)
	require.Greater(t, len(all), MostSpans/3)
	for i, s := range all[1 : len(all)-1] {
		require.Equal(t, 16*7, s.to-s.from, "%d", i)
	}
	require.Len(t, stretches(days, 3, 1), 1)
	require.Len(t, stretches([]string{"1969-12-28", "1970-01-05"}, 1, 9), 2)
}

// What is old stays as it is while days come on.
func TestStretchesStay(t *testing.T) {
	days := each(100)
	for n := 30; n < 100; n++ {
		before, after := stretches(days[:n], 5, 99), stretches(days[:n+1], 5, 99)
		require.Equal(t, before[:len(before)-1], after[:len(before)-1])
	}
}
