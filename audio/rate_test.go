package audio

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestSampleRateFrame(t *testing.T) {
	for _, c := range []struct {
		rate SampleRate
		d    time.Duration
		want int64
	}{
		{48000, 0, 0},
		{48000, time.Second, 48000},
		{48000, time.Millisecond, 48},
		{48000, 312500 * time.Microsecond, 15000},                          // an eighth at 96 a minute
		{48000, 20833 * time.Nanosecond, 1},                                // 0.99998
		{48000, 10416 * time.Nanosecond, 0},                                // 0.49997
		{48000, 10417 * time.Nanosecond, 1},                                // 0.50002
		{8000, 62500 * time.Nanosecond, 1},                                 // exactly one half
		{8000, -62500 * time.Nanosecond, -1},                               // away from zero
		{48000, -time.Second, -48000},                                      //
		{44100, 100 * time.Millisecond, 4410},                              //
		{44100, time.Second / 3, 14700},                                    // 14699.99998
		{48000, 200 * 365 * 24 * time.Hour, 48000 * 200 * 365 * 24 * 3600}, // d·rate is no int64
	} {
		require.Equal(t, c.want, c.rate.Frame(c.d), "%v at %d", c.d, c.rate)
	}
}

func TestSampleRateDuration(t *testing.T) {
	require.Equal(t, time.Second, Rate.Duration(48000))
	require.Equal(t, 20833*time.Nanosecond, Rate.Duration(1))
	require.Equal(t, 41667*time.Nanosecond, Rate.Duration(2)) // 41666.7
	require.Equal(t, -time.Millisecond, Rate.Duration(-48))
}

func TestSampleRateThereAndBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for _, r := range []SampleRate{8000, 44100, 48000, 96000, 192000} {
		for range 10000 {
			f := rng.Int64N(1<<42) - 1<<41
			require.Equal(t, f, r.Frame(r.Duration(f)))
		}
	}
}

func TestSampleRateMustBePositive(t *testing.T) {
	require.Panics(t, func() { SampleRate(0).Frame(time.Second) })
	require.Panics(t, func() { SampleRate(0).Duration(1) })
	require.Panics(t, func() { NewStream(0) })
	require.Panics(t, func() { NewStream(math.MaxInt32) })
}
