//go:build js

package game

import (
	"image/color"
	"testing"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/host"
	"groundbeat/game/paper"
)

// newTestGame is the game at a link, on a page with one drumhead of 100 pixels at 10, 10.
func newTestGame(query string) (*Game, *paper.Browser) {
	b := paper.New(paper.Ideal, 1)
	b.Page.Across = 120
	var g *Game
	b.Open(query, func(o *host.Host) paper.Game {
		g = New(*o, assets.Regular, assets.Bold)
		return nil // it asks for what happened by itself
	})
	return g, b
}

// pass lets some ms pass outside the game.
func pass(b *paper.Browser, ms float64) {
	for until := b.Wall.Now() + ms; b.Wall.Now() < until; {
		b.Advance()
	}
}

// frame lets the game tick and draw once, and reports whether it drew: the
// screen is painted over before, with a colour that no palette has.
func (g *Game) testFrame(t *testing.T, screen *ebiten.Image) bool {
	t.Helper()
	over := color.RGBA{255, 0, 255, 255}
	screen.Fill(over)
	require.NoError(t, g.Update())
	g.Draw(screen)
	return color.RGBAModel.Convert(screen.At(1, 1)) != over
}

const readyLink = "?screen=dums&rhythm=maqsum&bpm=120&eights=1&riff=bare&seed=7"

func TestIdleFrameDrawsNothing(t *testing.T) {
	g, b := newTestGame(readyLink)
	screen := ebiten.NewImage(120, 120)
	drew := func() bool {
		b.Advance()
		return g.testFrame(t, screen)
	}
	require.True(t, drew(), "the first frame: the ground")
	require.True(t, drew(), "and the drumhead")
	require.Equal(t, 1, b.Page.Shows)
	require.False(t, drew())
	require.Equal(t, 1, b.Page.Shows, "the page is shown only what is new")

	b.Page.Bright = true
	require.True(t, drew(), "the other palette")
	require.False(t, drew())
	b.Page.Scrolled = 5
	require.True(t, drew(), "scrolled")
	require.False(t, drew())

	require.NoError(t, b.Queue("begin"))
	require.True(t, drew(), "the round begins")
	pass(b, 40)
	require.True(t, drew(), "a 5 in the middle")
	require.False(t, drew(), "and it stands until the 6")
	pass(b, 2000) // four counts at 120 a minute
	for range 10 {
		require.True(t, drew(), "the sweep turns")
	}
	require.NoError(t, b.Queue("stop"))
	require.True(t, drew(), "stopped")
	require.False(t, drew())
}

func TestIdleFrameAllocatesNothing(t *testing.T) {
	for _, query := range []string{"", readyLink, "?screen=listen", "?screen=which", "?screen=change", "?screen=stop", "?screen=carry", "?screen=sound-check", "?screen=diary", "?bpm=9000"} {
		g, b := newTestGame(query)
		screen := ebiten.NewImage(120, 120)
		frame := func() {
			b.Advance()
			_ = g.Update()
			g.Draw(screen)
		}
		for range 20 { // what was kept is read, and told, a part in a frame
			frame()
		}
		require.Zero(t, testing.AllocsPerRun(200, frame), query)
	}
}
