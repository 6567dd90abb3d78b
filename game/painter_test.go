//go:build js

package game

import (
	"image"
	"math"
	"testing"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/host"
	"groundbeat/game/picture"
)

// canvas is an image of 200 by 200 pixels, on which a picture lies at 40, 20
// with a width of 100.
const (
	canvasSize = 200
	atX, atY   = 40, 20
	unit       = 100
)

func newTestPainter(t *testing.T) *painter {
	t.Helper()
	return newPainter(assets.Regular, assets.Bold)
}

// painted draws a picture and returns its pixels.
func paintedPixels(t *testing.T, palette picture.Palette, scale float64, draw func(*picture.Picture)) *image.RGBA {
	t.Helper()
	p := newTestPainter(t)
	picture := &picture.Picture{Height: 1}
	draw(picture)
	screen := ebiten.NewImage(canvasSize, canvasSize)
	place := host.Place{X: atX / scale, Y: atY / scale, W: unit / scale, H: unit / scale}
	p.draw(screen, []job{{place, picture}}, &palette, scale)
	out := image.NewRGBA(screen.Bounds())
	screen.ReadPixels(out.Pix)
	return out
}

// isColour checks the pixel that holds a point of the picture, in units. The
// engine computes colours with floats: one step of 255 may be lost.
func isColour(t *testing.T, im *image.RGBA, x, y float64, want picture.Colour, what string) {
	t.Helper()
	px, py := int(atX+x*unit), int(atY+y*unit)
	c := im.RGBAAt(px, py)
	r, g, b := want.RGB()
	for _, d := range [...]int{int(c.R) - int(r), int(c.G) - int(g), int(c.B) - int(b), int(c.A) - 255} {
		require.LessOrEqual(t, max(d, -d), 1, "%s: at %d, %d: %v in place of %v", what, px, py, c, want)
	}
}

func TestShapes(t *testing.T) {
	type point struct{ x, y float64 }
	for _, c := range []struct {
		name    string
		draw    func(*picture.Picture)
		on, off []point
	}{
		{"dot", func(p *picture.Picture) { p.Dot(picture.InkBrass, 0.5, 0.5, 0.2) },
			[]point{{0.5, 0.5}, {0.68, 0.5}, {0.5, 0.32}}, []point{{0.72, 0.5}, {0.65, 0.65}, {0.05, 0.05}}},
		{"ring", func(p *picture.Picture) { p.Ring(picture.InkBrass, 0.5, 0.5, 0.3, 0.06) },
			[]point{{0.8, 0.5}, {0.5, 0.2}, {0.2, 0.5}}, []point{{0.5, 0.5}, {0.75, 0.5}, {0.85, 0.5}}},
		{"line", func(p *picture.Picture) { p.Line(picture.InkBrass, 0.2, 0.5, 0.8, 0.5, 0.06) },
			[]point{{0.2, 0.5}, {0.5, 0.52}, {0.79, 0.5}}, []point{{0.5, 0.56}, {0.9, 0.5}, {0.1, 0.5}}},
		{"arc of the first quarter", func(p *picture.Picture) { p.Arc(picture.InkBrass, 0.5, 0.5, 0.3, 0, 0.25, 0.06) },
			[]point{{0.5 + 0.3*math.Sqrt2/2, 0.5 - 0.3*math.Sqrt2/2}, {0.51, 0.2}, {0.8, 0.49}},
			[]point{{0.4, 0.21}, {0.79, 0.6}, {0.5, 0.8}, {0.2, 0.5}}},
		{"arc across the top", func(p *picture.Picture) { p.Arc(picture.InkBrass, 0.5, 0.5, 0.3, -0.125, 0.125, 0.06) },
			[]point{{0.5, 0.2}, {0.4, 0.215}, {0.6, 0.215}}, []point{{0.8, 0.5}, {0.2, 0.5}, {0.5, 0.8}}},
		{"wedge of the third quarter", func(p *picture.Picture) { p.Wedge(picture.InkBrass, 0.5, 0.5, 0.3, 0.5, 0.75) },
			[]point{{0.4, 0.6}, {0.48, 0.75}, {0.25, 0.52}}, []point{{0.6, 0.6}, {0.4, 0.4}, {0.2, 0.7}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, scale := range []float64{1, 2} {
				im := paintedPixels(t, picture.Dark(), scale, c.draw)
				for _, at := range c.on {
					isColour(t, im, at.x, at.y, picture.Dark()[picture.InkBrass], "on the shape")
				}
				for _, at := range c.off {
					isColour(t, im, at.x, at.y, picture.Dark()[picture.InkGround], "beside the shape")
				}
			}
		})
	}
}

func TestInksOfBothPalettes(t *testing.T) {
	for name, palette := range map[string]picture.Palette{"dark": picture.Dark(), "light": picture.Light()} {
		inks := picture.Inks()
		place := func(i int) (x, y float64) { return 0.1 + 0.2*float64(i%5), 0.1 + 0.2*float64(i/5) }
		im := paintedPixels(t, palette, 1, func(p *picture.Picture) {
			for i, ink := range inks {
				x, y := place(i)
				p.Dot(ink, x, y, 0.08)
			}
		})
		for i, ink := range inks {
			x, y := place(i)
			isColour(t, im, x, y, palette[ink], name+" "+ink.String())
		}
		isColour(t, im, -0.3, -0.1, palette[picture.InkGround], "beside the picture")
	}
}

// Half of an opacity lies half way to what is below.
func TestOpacity(t *testing.T) {
	palette := picture.Dark()
	im := paintedPixels(t, palette, 1, func(p *picture.Picture) {
		p.Dot(picture.InkBone, 0.5, 0.5, 0.4)
		p.Dot(picture.InkGround, 0.5, 0.5, 0.2).Fade(0.5)
	})
	r, g, b := palette[picture.InkBone].RGB()
	gr, gg, gb := palette[picture.InkGround].RGB()
	mid := func(a, b uint8) picture.Colour { return picture.Colour((int(a) + int(b)) / 2) }
	isColour(t, im, 0.5, 0.5, mid(r, gr)<<16|mid(g, gg)<<8|mid(b, gb), "half way")
	isColour(t, im, 0.5, 0.2, palette[picture.InkBone], "the dot below")
}

// A capital's ink is centred on y, and the anchor tells what lies at x.
func TestText(t *testing.T) {
	for name, c := range map[string]struct {
		anchor         picture.Anchor
		left, right, x float64 // in units; -1: anywhere
	}{
		"middle": {anchor: picture.AnchorMiddle, x: 0.5, left: 0.35, right: 0.65},
		"start":  {anchor: picture.AnchorStart, x: 0.2, left: 0.2, right: -1},
		"end":    {anchor: picture.AnchorEnd, x: 0.8, left: -1, right: 0.8},
	} {
		t.Run(name, func(t *testing.T) {
			im := paintedPixels(t, picture.Dark(), 1, func(p *picture.Picture) {
				p.Text(picture.InkBone, c.x, 0.5, 0.4, "H").At(c.anchor).Strong()
			})
			ink := image.Rectangle{}
			for y := range canvasSize {
				for x := range canvasSize {
					if im.RGBAAt(x, y).R > 128 {
						ink = ink.Union(image.Rect(x, y, x+1, y+1))
					}
				}
			}
			require.False(t, ink.Empty())
			require.InDelta(t, atY+0.5*unit, float64(ink.Min.Y+ink.Max.Y)/2, 1.5, "centred on y")
			require.InDelta(t, 0.4*unit*2*picture.Baseline, ink.Dy(), 2, "as high as a capital")
			// The letter keeps some room at its sides: up to a tenth of its size.
			const room = 0.1 * 0.4 * unit
			if c.left >= 0 && c.right >= 0 {
				require.InDelta(t, atX+c.x*unit, float64(ink.Min.X+ink.Max.X)/2, 1.5)
			} else if c.left >= 0 {
				require.InDelta(t, atX+c.left*unit+room/2, ink.Min.X, room)
			} else {
				require.InDelta(t, atX+c.right*unit-room/2, ink.Max.X, room)
			}
		})
	}
}

func TestSameJobs(t *testing.T) {
	p := newTestPainter(t)
	head := func() *picture.Picture {
		drawn := &picture.Picture{}
		h := picture.Head{Counts: []string{"1", "&", "2", "&"}}
		h.Draw(drawn)
		return drawn
	}
	jobs := []job{{host.Place{Picture: "head", X: 1, Y: 2, W: 300, H: 300}, head()}}
	require.False(t, p.same(jobs), "the first time")
	require.True(t, p.same(jobs))
	require.True(t, p.same([]job{{jobs[0].place, head()}}), "equal, though drawn anew")
	require.Zero(t, testing.AllocsPerRun(100, func() { p.same(jobs) }))

	jobs[0].place.X++
	require.False(t, p.same(jobs), "moved")
	require.True(t, p.same(jobs))
	jobs[0].picture.Shapes[3].Opacity /= 2
	require.False(t, p.same(jobs), "a shape changed in place")
	require.True(t, p.same(jobs))
	jobs = append(jobs, job{host.Place{Picture: "other"}, &picture.Picture{}})
	require.False(t, p.same(jobs), "another picture")
	require.False(t, p.same(jobs[:1]), "and gone again")
	require.False(t, p.same(nil))
	require.True(t, p.same(nil))
}
