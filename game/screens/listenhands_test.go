package screens

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
)

// The drummer's hands are drawn where they are asked for, and move: the one that strikes is
// down when its stroke is heard.
func TestHandsStrikeWhatIsHeard(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=listen&rhythm=maqsum&bpm=100&riff=filled&seed=3")
	g.Use(view.ActPlay, "")
	g.Ticks(1000)
	x := g.listen()
	g.Draw()
	require.False(t, x.head.Shown.ShowHands)
	g.Use(view.ActHands, "yes")
	since, down, up := g.Wall.Now(), 0, 0
	for range 300 {
		g.Ticks(10)
		g.Draw()
		require.True(t, x.head.Shown.ShowHands)
		h := x.head.Shown.Hands
		lift := min(h[0].Lift, h[1].Lift)
		if len(g.Sound.Strikes(since, g.Wall.Now())) > 0 {
			require.Less(t, lift, 0.35)
			down++
		}
		if max(h[0].Lift, h[1].Lift) > 0.5 {
			up++
		}
		since = g.Wall.Now()
	}
	require.GreaterOrEqual(t, down, 8)
	require.Positive(t, up)
	g.Use(view.ActHands, "")
	g.Draw()
	require.False(t, x.head.Shown.ShowHands)
}

// More or less of the riff is the same riff, though the next round of the address would have
// another.
func TestALevelIsOfTheSameRiff(t *testing.T) {
	g, _, _ := newTestGame(t, listenLink)
	g.Wall.Fixed = 0
	g.Use(view.ActPlay, "")
	seed := g.listen().seed
	for _, level := range []string{view.LevelFilled, "solo", "riffing"} {
		g.Use(view.ActLevel, level)
		require.Equal(t, seed, g.listen().seed, level)
	}
}
