package picture

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// Only what was asked for can be left out: in a round that asks for teks no dum.
func TestLeftOutIsWhatWasAsked(t *testing.T) {
	base := rhythm.Pattern{rhythm.Dum, rhythm.Tek, rhythm.Rest, rhythm.Tek}
	v := &Review{Asks: rhythm.Stroke.High, Steps: 8, Landed: []Landed{{Step: 1}}, LeftOut: []int{3, 5, 7}}
	h, b := Head{Base: base, Review: v}, board{Line: &Line{Base: base, Review: v}}
	for i, out := range []bool{false, false, false, true} {
		require.Equal(t, out, h.leftOut(i), i)
		require.Equal(t, out, b.leftOut(i), i)
	}
	v.Asks = nil // the dums
	for i, out := range []bool{true, false, false, false} {
		require.Equal(t, out, h.leftOut(i), i)
		require.Equal(t, out, b.leftOut(i), i)
	}
}
