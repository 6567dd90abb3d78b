//go:build browser && !js

package main

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// picture is the window as it looks now.
func (b *tab) picture() image.Image {
	b.t.Helper()
	data, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
	require.NoError(b.t, err)
	im, err := png.Decode(bytes.NewReader(data))
	require.NoError(b.t, err)
	return im
}

// bright lists the turns (0 = top, clockwise), in steps of 1/720, at which a
// circle about a middle is bright: nearer to the colour of bone than to that of
// the skin.
func bright(im image.Image, x, y, r float64) (turns []float64) {
	for i := range 720 {
		turn := float64(i) / 720
		sin, cos := math.Sincos(2 * math.Pi * turn)
		red, green, blue, _ := im.At(int(x+r*sin), int(y-r*cos)).RGBA()
		if min(red, green, blue)>>8 > 110 {
			turns = append(turns, turn)
		}
	}
	return turns
}

// apartTurns is how far two turns lie apart, 0 to 1/2.
func apartTurns(a, b float64) float64 {
	d := math.Abs(a - b)
	return min(d, 1-d)
}

// marked checks that a picture of the window, taken while a round was played,
// shows a mark where in the cycle a tap was heard, and nothing else but the
// sweep. The circle at 0.261 of the head's width runs through the middle of the
// marks and crosses nothing else that is bright. Marks grow fainter with every
// cycle, and are bright for three.
func marked(t *testing.T, shot image.Image, head [3]float64, turn float64) {
	t.Helper()
	turns := bright(shot, head[0]+head[2]/2, head[1]+head[2]/2, 0.261*head[2])
	t.Logf("tapped at turn %.3f; bright at %.3f", turn, turns)
	there := 0
	for _, at := range turns {
		if apartTurns(at, turn) < 0.015 {
			there++
		}
	}
	require.GreaterOrEqual(t, there, 3, "the mark is where the tap was")
	require.LessOrEqual(t, len(turns), 16, "there is nothing else but the sweep")
}
