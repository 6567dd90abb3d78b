package host_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
)

// Times are kept in ms of as many places as it takes: to the nanosecond and back, whichever
// sign, for as long as a practice may last.
func TestTimesInMilliseconds(t *testing.T) {
	for ms, want := range map[float64]time.Duration{
		0: 0, 1: time.Millisecond, -38.5: -38500 * time.Microsecond, 1500: 1500 * time.Millisecond, 0.001: time.Microsecond,
	} {
		require.Equal(t, want, host.Duration(ms), ms)
		require.Equal(t, ms, host.Milliseconds(want))
	}
	chance := rand.New(rand.NewPCG(1, 1))
	for range 10_000 {
		d := time.Duration(chance.Int64N(int64(2*time.Hour))) - time.Hour
		require.Equal(t, d, host.Duration(host.Milliseconds(d)))
	}
}
