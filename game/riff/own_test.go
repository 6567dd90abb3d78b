package riff_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// own makes a rhythm as a player might write it, or nil where that is no rhythm.
func own(metre, grouping byte, skeleton, filled string, fast uint16) *rhythm.Cycle {
	metres := []string{"1/4", "2/4", "3/4", "4/4", "5/4", "5/8", "6/8", "7/8", "8/8", "8/4", "9/8", "10/8", "16/8", "32/16"}
	groups := []string{"", "3+2", "2+3", "3+3", "3+2+2", "3+3+2", "2+2+3+2", "3+3+2+2", "1+1+1+1", "1+1+3+2+2"}
	text := fmt.Sprintf("name: x\nmetre: %s\nskeleton: %s\ntempo: 20 20 %d %s\nmemory: all\n",
		metres[int(metre)%len(metres)], skeleton, 20+fast%381,
		map[byte]string{'4': "quarter", '8': "eighth", '6': "sixteenth"}[metres[int(metre)%len(metres)][len(metres[int(metre)%len(metres)])-1]])
	if g := groups[int(grouping)%len(groups)]; g != "" {
		text += "grouping: " + g + "\n"
	}
	if filled != "" {
		text += "filled: " + filled + "\n"
	}
	c, err := rhythm.Parse("x.txt", strings.NewReader(text))
	if err != nil {
		return nil
	}
	return c
}

// A rhythm of the player's own is played at every level, whatever its metre, groups
// and speed: the base and the level's word are kept, and where two hands can play
// the rhythm itself at its fastest, they can play the riff.
func FuzzOwnRhythm(f *testing.F) {
	f.Add(byte(3), byte(0), "DT-TD-T-", "D-T-kkT-D-kkT-kk", uint16(110), uint64(1))
	f.Add(byte(2), byte(0), "D-TTD-", "", uint16(40), uint64(2))
	f.Add(byte(4), byte(1), "-SD-SDTSDT", "", uint16(100), uint64(3))
	f.Add(byte(5), byte(2), "DDTDT", "", uint16(380), uint64(4))
	f.Add(byte(8), byte(5), "D--D--T-", "", uint16(300), uint64(5))
	f.Add(byte(0), byte(0), "D", "", uint16(380), uint64(6))
	f.Add(byte(0), byte(0), "DDDD", "", uint16(380), uint64(7))
	f.Add(byte(9), byte(0), "D---TDT-D-T-T-T-D---T---D-T-DDD-", "", uint16(100), uint64(8))
	f.Add(byte(12), byte(0), "D--D--T-D--D--T-", "DkkDkkTkDkkDkkTk", uint16(200), uint64(9))
	f.Add(byte(13), byte(0), "D--D--T-D--D--T-D--D--T-D--D--TT", "", uint16(380), uint64(10))
	f.Add(byte(11), byte(7), "D-T-DDT--T", "", uint16(120), uint64(11))
	f.Fuzz(func(t *testing.T, metre, grouping byte, skeleton, filled string, fast uint16, seed uint64) {
		c := own(metre, grouping, skeleton, filled, fast)
		if c == nil {
			return
		}
		bare, err := riff.Play(c, riff.Bare, 16, seed)
		require.NoError(t, err)
		_, playable := riff.Hands(c, bare.Lead, c.Tempo.Fast)
		for level := range levels {
			p, err := riff.Play(c, level, 16, seed)
			require.NoError(t, err)
			requireStrokes(t, c, p, 16)
			requireBase(t, c, p, 16)
			requireDums(t, c, level, p, 16)
			if _, ok := riff.Hands(c, p.Lead, c.Tempo.Fast); level > riff.Filled && playable {
				require.True(t, ok, "%v", level)
			}
			_, err = riff.Hidden(c, level, 2, seed, 0.4, c.Tempo.Usual)
			require.NoError(t, err)
		}
	})
}
