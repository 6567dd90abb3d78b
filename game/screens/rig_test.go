package screens

import (
	"testing"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/rig"
)

// testGame is a screen in a browser on paper.
type testGame struct{ *rig.Rig }

func newTestGame(t *testing.T, query string) (*testGame, *paper.Page, *paper.Wall) {
	t.Helper()
	r := rig.New(query, func(s *control.Shared) rig.Controllers {
		return All(s)
	})
	return &testGame{r}, r.Page, r.Wall
}

const readyLink = "?screen=dums&rhythm=maqsum&bpm=120&eights=1&riff=bare&seed=7"

var someDay = time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC)

// outputOf is an output of a name, measured to be so many ms behind.
func outputOf(name string, mean float64) host.Output {
	return host.Output{Name: name, Mean: mean, When: someDay}
}
