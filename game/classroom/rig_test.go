package classroom

import (
	"testing"

	"groundbeat/game/control"
	"groundbeat/game/paper"
	"groundbeat/game/rig"
	"groundbeat/game/view"
)

// testGame is a screen in a browser on paper.
type testGame struct{ *rig.Rig }

func newTestGame(t *testing.T, query string) (*testGame, *paper.Page, *paper.Wall) {
	t.Helper()
	r := rig.New(query, func(s *control.Shared) rig.Controllers {
		return rig.Controllers{
			view.ScreenClass: NewClass(s),
		}
	})
	return &testGame{r}, r.Page, r.Wall
}
