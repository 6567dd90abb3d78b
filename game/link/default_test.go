package link

import (
	"groundbeat/game/proof"
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

// The default rhythm of a link is there.
func TestDefaultRhythmIsThere(t *testing.T) {
	var ids []string
	for _, c := range proof.EveryRhythm(t) {
		ids = append(ids, c.ID)
	}
	for _, screen := range []string{view.ScreenDums, view.ScreenListen, view.ScreenChange, view.ScreenStop, view.ScreenCarry} {
		require.Contains(t, ids, Default(screen).Rhythm)
	}
}
