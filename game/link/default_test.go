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
	for _, screen := range view.Screens() {
		if a := Default(screen); a.Rhythm != "" {
			require.Contains(t, ids, a.Rhythm, screen)
		}
	}
	require.NotEmpty(t, Default(view.ScreenDums).Rhythm)
}
