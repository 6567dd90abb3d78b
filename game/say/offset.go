package say

import (
	"math"
	"time"
)

// sayOffset says an offset: "12 ms ahead", "40 ms behind", "0 ms".
func Offset(w Words, d time.Duration) string {
	switch n := WholeMs(d); {
	case n < 0:
		return w.Say("ms-ahead", "ms", -n)
	case n > 0:
		return w.Say("ms-behind", "ms", n)
	}
	return w.Say("ms-none")
}

// wholeMs returns the nearest whole number of milliseconds, halves away from 0.
func WholeMs(d time.Duration) int {
	return int(math.Round(float64(d) / float64(time.Millisecond)))
}

// millis is a number of milliseconds as a time.
func Millis(ms float64) time.Duration {
	return time.Duration(math.Round(ms * float64(time.Millisecond)))
}

func Magnitude(d time.Duration) time.Duration { return max(d, -d) }

func InMs(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }
