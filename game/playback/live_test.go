package playback_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

// counted is a drawing of one shape that counts how often it is drawn.
type counted struct {
	draws *int
	calm  bool
}

func (c *counted) SetCalm(calm bool) { c.calm = calm }

func (c *counted) Draw(p *picture.Picture) {
	*c.draws++
	p.Shapes = append(p.Shapes, picture.Shape{})
}

func TestWhatStandsIsDrawnOnce(t *testing.T) {
	n := 0
	var l playback.Live[counted, *counted]
	l.Set(counted{draws: &n})
	for range 5 {
		require.Len(t, l.Draw(false).Shapes, 1, "into an empty picture")
	}
	require.Equal(t, 1, n)
	l.Changed()
	l.Draw(false)
	l.Draw(false)
	require.Equal(t, 2, n)
	l.Set(l.Shown)
	l.Draw(false)
	require.Equal(t, 3, n, "another drawing")
	l.Moves = true
	for range 5 {
		require.Len(t, l.Draw(false).Shapes, 1)
	}
	require.Equal(t, 8, n, "in every frame")
}

func TestCalmReachesEachDrawing(t *testing.T) {
	n := 0
	var l playback.Live[counted, *counted]
	l.Set(counted{draws: &n})
	l.Draw(false)
	l.Draw(true)
	require.Equal(t, 2, n, "asked for less motion, it is drawn anew")
	require.True(t, l.Shown.calm)
	l.Draw(true)
	require.Equal(t, 2, n)
	l.Set(counted{draws: &n})
	require.True(t, l.Shown.calm, "a drawing that comes later is as calm")
	l.Draw(false)
	require.False(t, l.Shown.calm)
}

// A sweep that is taken off is still there in the picture of the frame before: the picture
// moves once more, and then no more.
func TestAHeadMovesOnceMoreWhenItsSweepStops(t *testing.T) {
	h := &playback.Head{}
	playback.Turn(h, false, 0)
	require.False(t, h.Moves)
	playback.Turn(h, true, 0.25)
	require.True(t, h.Moves)
	with := len(h.Draw(false).Shapes)
	playback.Turn(h, false, 0)
	require.True(t, h.Moves)
	require.Less(t, len(h.Draw(false).Shapes), with, "the sweep is gone")
	playback.Turn(h, false, 0)
	require.False(t, h.Moves)
}

func TestAReplayCanBeSlow(t *testing.T) {
	var a playback.Replay
	require.Equal(t, 100, a.Tempo(100))
	require.True(t, a.Set(view.ActSlowly, "yes"), "that needs new sound")
	for bpm, want := range map[int]int{90: 60, 100: 66, 60: 40, 45: 40} { // two thirds, and 40 at the least
		require.Equal(t, want, a.Tempo(bpm))
	}
	require.False(t, a.Set(view.ActDrums, roundview.DrumsBass))
	require.Equal(t, 60, a.Tempo(90), "the drums leave the tempo as it is")
	require.True(t, a.Set(view.ActSlowly, ""))
	require.Equal(t, 90, a.Tempo(90))
	require.Equal(t, roundview.DrumsBass, a.Drums, "and the tempo the drums")
}
