package scoring

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestCloseAt: worked by hand.
func TestCloseAt(t *testing.T) {
	for _, c := range []struct {
		beat, gap, want float64 // ms
	}{
		{1000, 500, 40},     // 60 beats a minute: 4 %
		{625, 312.5, 25},    // 96: where the two meet
		{400, 200, 25},      // 150: never less
		{200, 100, 25},      // half way to the middle, just
		{200, 96, 24},       // and nearer
		{2000, 200, 50},     // slow, but the strokes crowd
		{2000, 10000, 80},   // one stroke in a slow cycle
		{1000, 159.999, 40}, // 39.99975
	} {
		got := CloseAt(millis(c.beat)[0], millis(c.gap)[0])
		require.InDelta(t, c.want, float64(got)/1e6, 1, "%+v", c)
		require.LessOrEqual(t, 4*got, millis(c.gap)[0])
	}
	require.Equal(t, 40*millisecond, CloseAt(time.Second, time.Second))
	require.Equal(t, Close, CloseAt(400*millisecond, time.Second))
}

// Whoever taps with a spread of 5 % of the beat is on the stroke about as often at one
// tempo as at another: shares of the normal distribution, which with one width for all
// tempi lie twice as far apart.
func TestCloseIsAlikeFair(t *testing.T) {
	on := func(width, beat time.Duration) float64 {
		return math.Erf(float64(width) / (0.05 * float64(beat)) / math.Sqrt2)
	}
	slow, fast := time.Minute/60, time.Minute/150
	fixed := on(Close, fast) - on(Close, slow)
	fair := on(CloseAt(fast, fast), fast) - on(CloseAt(slow, slow), slow)
	require.InDelta(t, .406, fixed, .001, "38.3 % and 78.9 %") // Abramowitz and Stegun, Table 26.1: z = .5 and 1.25
	require.InDelta(t, .212, fair, .001, "57.6 % and 78.9 %")  // z = .8 and 1.25
}
