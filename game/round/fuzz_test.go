package round_test

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/round"
)

// FuzzRound does things to a round in any order. Each two bytes are one of them:
// what, and a time from −3.2 to 9.5 s. Whatever happens, the round only goes
// forward, its taps ascend, and a result accounts for every dum and every tap.
func FuzzRound(f *testing.F) {
	f.Add([]byte("\x00\x00\x01\x40\x02\x68\x01\x68\x02\x67\x04\xff\x01\xff")) // to the review
	f.Add([]byte("\x00\x00\x02\x68\x03\x00\x01\xff"))                         // cut
	c := supplied(f, "saidi")
	f.Fuzz(func(t *testing.T, script []byte) {
		r := ready(t, c, 120, 1)
		for ; len(script) >= 2; script = script[2:] {
			before := r.Phase()
			at := (time.Duration(script[1]) - 64) * 50 * ms
			do(r, script[0]%5, at)
			require.True(t, forward(before, r.Phase()), "from %v to %v", before, r.Phase())
			requireSound(t, r)
		}
	})
}

func do(r *round.Round, what byte, at time.Duration) {
	switch what {
	case 0:
		r.Begin()
	case 1:
		r.Hear(at, 0)
	case 2:
		r.Tap(round.Tap{At: at}, at/8)
	case 3:
		r.Cut("stop")
	case 4:
		r.Retime(func(tap round.Tap) time.Duration { return at - tap.At })
	}
}

func forward(from, to round.Phase) bool {
	switch from {
	case round.Review, round.Void:
		return to == from
	case round.Ready:
		return to == round.Ready || to == round.CountIn
	}
	return to >= from
}

// requireSound requires what holds at any moment.
func requireSound(t *testing.T, r *round.Round) {
	t.Helper()
	require.True(t, slices.IsSorted(at(r.Taps())))
	require.True(t, r.Turn() >= 0 && r.Turn() < 1)
	require.Equal(t, r.Phase() == round.Void, r.Why() != "")
	if r.Phase() != round.CountIn && r.Phase() != round.Playing {
		require.Empty(t, r.Count())
	}
	result := r.Result()
	if r.Phase() != round.Review {
		require.Zero(t, result)
		return
	}
	require.Len(t, r.Strokes(), len(result.Pairs)+len(result.Out))
	require.Len(t, r.Taps(), len(result.Pairs)+len(result.Added))
	for _, p := range result.Pairs {
		require.Equal(t, r.Taps()[p.Tap].At-r.Strokes()[p.Stroke], p.Offset)
	}
}
