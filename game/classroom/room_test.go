package classroom

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/classview"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// room is a warm-up on an evening, with the controller that a test looks into.
type room struct {
	*testGame
	*testing.T
}

var evening = time.Date(2026, 3, 3, 18, 0, 0, 0, time.UTC)

// newRoom is a class where a set of a link is got ready.
func newRoom(t *testing.T, set string) *room {
	t.Helper()
	g, _, wall := newTestGame(t, "?screen=class&set="+set)
	wall.Set(evening)
	return &room{g, t}
}

// begun is one whose walk-in has been begun.
func begun(t *testing.T, set string) *room {
	t.Helper()
	r := newRoom(t, set)
	r.Use(view.ActClassBegin, classview.PutSet)
	require.Equal(t, warmup.WalkIn, r.stage())
	return r
}

// class is the controller; another one once the page has been loaded anew.
func (r *room) class() *Class { return r.Controllers[view.ScreenClass].(*Class) }

func (r *room) stage() warmup.Stage { return r.class().run.Stage() }

// next presses on.
func (r *room) next() { r.Use(view.ActClassNext, "") }

// until presses on until a stage is reached, and not past the end.
func (r *room) until(stage warmup.Stage) {
	for range 200 {
		if r.stage() == stage {
			return
		}
		r.next()
	}
	require.Fail(r, "never reached", stage)
}

// ends lets what sounds be heard to its end.
func (r *room) ends() {
	for range 3000 {
		if !r.class().one {
			return
		}
		r.Ticks(50)
	}
	require.Fail(r, "it never ends")
}

// hands is a set that counts hands, at the same questions each time.
const hands = "five_bare_hands-up_2_5"
