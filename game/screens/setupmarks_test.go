package screens

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// A tap counts from as early to as late as an output and a hand can be, before the first dum
// and after the last; one in the count-in does not.
func TestWhichTapsSetUpTakes(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=set-up")
	g.Use(view.ActBegin, "")
	x := g.setUp()
	dums := x.round.Strokes(rhythm.Stroke.Low)
	last := x.round.End() + scoring.MaxSetUp - 30*time.Millisecond
	g.pressed(t, g.Page, g.Wall, x.number,
		x.round.Start()+scoring.MinSetUp-50*time.Millisecond, x.round.Start()+scoring.MinSetUp+20*time.Millisecond,
		dums[1], last, last+10*time.Millisecond)
	require.Len(t, x.taps, 3)
	require.Equal(t, view.Playing, x.Phase(), "it listens on")
	g.Ticks(100)
	require.NotEqual(t, view.Playing, x.Phase())
}

// Marks grow older by one in a cycle of four seconds, and an output that only the sound check
// knows is none that was measured.
func TestWhatSetUpShows(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=set-up")
	g.Shared.Outputs.List = []host.Output{{Name: "only checked"}, outputOf("studio", 30)}
	said := texts(g.Screen())
	require.Contains(t, said, "studio")
	require.NotContains(t, said, "only checked")

	g.Use(view.ActBegin, "")
	x := g.setUp()
	at := x.round.Start() + 200*time.Millisecond
	g.pressed(t, g.Page, g.Wall, x.number, at, at+100*time.Millisecond)
	for _, age := range []int{0, 0, 0, 0, 1, 1, 1, 1, 2} {
		x.Draw(view.PlaceHead)
		require.Len(t, x.head.Shown.Taps, 1)
		require.Equal(t, age, x.head.Shown.Taps[0].Age, "%v after", x.round.Heard()-at)
		g.Ticks(1000)
	}
}
