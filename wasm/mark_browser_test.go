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

// A tap leaves a mark on the drumhead, where in the cycle it was heard. The
// circle at 0.261 of the head's width runs through the middle of the marks, and
// crosses nothing else that is bright but the sweep. Marks grow fainter with
// every cycle, and are bright for three.
func TestTapLeavesAMark(t *testing.T) {
	s := serve(t)
	b := open(t)
	b.dark(true)
	b.visit(s.URL + double)
	var shots []image.Image // a busy machine may draw late
	var head [3]float64
	b.play(func() {
		head = get[[3]float64](b, `(({ x, y, width }) => [x, y, width])(document.querySelector("#head").getBoundingClientRect())`)
		b.keys("j")
		b.rest(250)
		shots = []image.Image{b.picture(), b.picture()}
	})
	turn := get[float64](b, `groundbeat.log().then((l) => {
		const round = l.at(-1);
		const cycle = 4 * 60 / round.bpm; // seconds
		return (round.taps[0].frame / round.rate - round.strokes[0]) / cycle % 1;
	})`)
	marked := 0
	for _, shot := range shots {
		turns := bright(shot, head[0]+head[2]/2, head[1]+head[2]/2, 0.261*head[2])
		t.Logf("tapped at turn %.3f; bright at %.3f", turn, turns)
		require.LessOrEqual(t, len(turns), 16, "there is nothing else but the sweep")
		for _, at := range turns {
			if apartTurns(at, turn) < 0.015 {
				marked++
			}
		}
	}
	require.GreaterOrEqual(t, marked, 3, "the mark is where the tap was")
}
