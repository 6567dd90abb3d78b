package quiz

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// FuzzNext: whatever is asked for, there is a sound question or an error, and
// the same again.
func FuzzNext(f *testing.F) {
	f.Add("which", uint32(0xffffffff), 4, 0, byte(0), uint64(1))
	f.Add("same", uint32(3), 2, 100, byte(1), uint64(1<<53))
	f.Add("stroke", uint32(0), 3, 200, byte(2), uint64(0))
	f.Fuzz(func(t *testing.T, ask string, which uint32, answers, bpm int, level byte, seed uint64) {
		all := supplied(t)
		var some []*rhythm.Cycle
		for i, id := range all.IDs() {
			if which>>i&1 == 1 {
				some = append(some, get(t, id))
			}
		}
		q, err := Next(Ask(ask), some, answers, bpm, riff.Level(level), seed)
		again, twice := Next(Ask(ask), some, answers, bpm, riff.Level(level), seed)
		require.Equal(t, err, twice)
		require.Equal(t, q, again)
		if err != nil {
			require.Zero(t, q)
			return
		}
		sound(t, q)
		for _, c := range append(q.Choices, Choice{ID: "none"}) {
			Differences(q, c.ID)
		}
	})
}
