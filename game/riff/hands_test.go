package riff_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// Which hand takes which stroke, worked out by hand: S strong, O other. Written in
// thirty-seconds of maqsum: 75 ms each at 100 a minute, 58 ms at 130.
func TestHands(t *testing.T) {
	maqsum := cycle(t, "4/4", "DT-TD-T-")
	for _, tt := range []struct {
		name, strokes string
		bpm           int
		hands         string
		ok            bool
	}{
		{"each with its own", "D-t-k-T-S-k-k-T-", 100, "SSOSSOOS", true},
		{"taking turns", "TTTTT", 100, "SOSOS", true},
		{"a ka for the strong hand", "D-kkkD", 100, "SOSOS", true},
		{"a tek for the other hand", "DTD", 100, "SOS", true},
		{"a dum as soon as that hand can", "D-D", 100, "SS", true},
		{"two dums too close", "DD", 100, "", false},
		{"out of step between two dums", "DTTD", 100, "", false},
		{"room after it", "DTT-D", 100, "SOSS", true},
		{"too fast for two", "DT", 130, "", false},
		{"fast enough", "D-T", 130, "SS", true},
		{"nothing", "----", 100, "", true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var lead []riff.Stroke
			for i, letter := range tt.strokes {
				if s := rhythm.Stroke(letter); s.Sounds() {
					lead = append(lead, riff.Stroke{Step: i / 4, Sub: i % 4 * 3, Sound: s, Strength: 1})
				}
			}
			hands, ok := riff.Hands(maqsum, lead, tt.bpm)
			require.Equal(t, tt.ok, ok)
			require.Len(t, hands, len(lead))
			var got string
			for _, h := range hands {
				got += map[riff.Hand]string{riff.Strong: "S", riff.Other: "O"}[h]
			}
			if ok {
				require.Equal(t, tt.hands, got)
			}
		})
	}
	// What cannot be played spoils nothing else.
	part, err := riff.Play(maqsum, riff.Bare, 2, 0)
	require.NoError(t, err)
	lead := append([]riff.Stroke{{Step: 0, Sound: rhythm.Dum, Strength: 1}, {Step: 0, Sub: 1, Sound: rhythm.Dum, Strength: 1},
		{Step: 0, Sub: 6, Sound: rhythm.Ka, Strength: 1}}, part.Lead[1:]...)
	hands, ok := riff.Hands(maqsum, lead, 60)
	require.False(t, ok)
	require.Equal(t, riff.Other, hands[2])
	require.NotContains(t, hands[3:], riff.Other)
	require.Equal(t, "strong", riff.Strong.String())
	require.Equal(t, "other", riff.Other.String())
}
