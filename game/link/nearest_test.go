package link

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
)

// A word that is nearly one is taken for the nearest, however it is written; what is not
// nearly one, for none.
func TestNearest(t *testing.T) {
	screens := view.Screens()
	for _, id := range screens {
		for _, slip := range []string{id, strings.ToUpper(id), id + "s", id[:len(id)-1]} {
			got, near := nearest(slip, screens)
			require.True(t, near, slip)
			require.LessOrEqual(t, changes(strings.ToLower(slip), got), changes(strings.ToLower(slip), id), slip)
		}
	}
	for _, far := range []string{"", "x", "zoo", "timetable", strings.Repeat("dums", 9)} {
		_, near := nearest(far, screens)
		require.False(t, near, far)
	}
}
