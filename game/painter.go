//go:build js

package game

import (
	"image/color"
	"math"
	"slices"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/vector"

	"groundbeat/game/host"
	"groundbeat/game/picture"
)

// painter draws pictures where the page has left room for them. A frame in
// which nothing has changed draws nothing.
type painter struct {
	regular, bold *glyphs

	path, stroke vector.Path
	drawn        []painted
}

// painted is a picture as it was drawn last, to know whether it has changed.
type painted struct {
	place  host.Place
	shapes []picture.Shape
}

// job is one picture to be drawn at one place, in device pixels.
type job struct {
	place   host.Place
	picture *picture.Picture
}

func newPainter(regular, bold []byte) *painter {
	return &painter{regular: newGlyphs(regular), bold: newGlyphs(bold)}
}

// same reports whether the jobs are what was drawn last, and remembers them.
func (p *painter) same(jobs []job) bool {
	equal := len(jobs) == len(p.drawn)
	for len(p.drawn) < len(jobs) {
		p.drawn = append(p.drawn, painted{})
	}
	p.drawn = p.drawn[:len(jobs)]
	for i, j := range jobs {
		d := &p.drawn[i]
		if d.place == j.place && slices.Equal(d.shapes, j.picture.Shapes) {
			continue
		}
		equal = false
		d.place = j.place
		d.shapes = append(d.shapes[:0], j.picture.Shapes...)
	}
	return equal
}

// draw paints the ground and all pictures. scale is device pixels per CSS pixel.
func (p *painter) draw(screen *ebiten.Image, jobs []job, palette *picture.Palette, scale float64) {
	screen.Fill(rgb(palette[picture.InkGround], 1))
	for _, j := range jobs {
		at := frame{x: j.place.X * scale, y: j.place.Y * scale, unit: j.place.W * scale}
		for i := range j.picture.Shapes {
			p.shape(screen, &j.picture.Shapes[i], at, palette)
		}
	}
}

// frame is where a picture's unit lies on the screen, in device pixels.
type frame struct{ x, y, unit float64 }

func (f frame) point(x, y float64) (float32, float32) {
	return float32(f.x + x*f.unit), float32(f.y + y*f.unit)
}

func (f frame) length(v float64) float32 { return float32(v * f.unit) }

func (p *painter) shape(screen *ebiten.Image, s *picture.Shape, at frame, palette *picture.Palette) {
	p.path.Reset()
	x, y := at.point(s.X, s.Y)
	switch s.Kind {
	case picture.KindDot:
		p.path.Arc(x, y, at.length(s.R), 0, 2*math.Pi, vector.Clockwise)
		p.path.Close()
	case picture.KindRing:
		p.path.Arc(x, y, at.length(s.R), 0, 2*math.Pi, vector.Clockwise)
		p.path.Close()
		p.line(at.length(s.Width))
	case picture.KindArc:
		p.path.Arc(x, y, at.length(s.R), angle(s.From), angle(s.To), vector.Clockwise)
		p.line(at.length(s.Width))
	case picture.KindWedge:
		p.path.MoveTo(x, y)
		p.path.Arc(x, y, at.length(s.R), angle(s.From), angle(s.To), vector.Clockwise)
		p.path.Close()
	case picture.KindTeeth:
		for i := range s.Count {
			c := s.Tooth(i)
			p.path.MoveTo(at.point(c[0][0], c[0][1]))
			p.path.LineTo(at.point(c[1][0], c[1][1]))
			p.path.LineTo(at.point(c[2][0], c[2][1]))
			p.path.Close()
		}
	case picture.KindHand:
		p.hand(s, at)
	case picture.KindLine:
		p.path.MoveTo(x, y)
		p.path.LineTo(at.point(s.X2, s.Y2))
		p.line(at.length(s.Width))
	case picture.KindText:
		p.text(s, at)
	}
	op := &vector.DrawPathOptions{AntiAlias: true}
	op.ColorScale.ScaleWithColor(rgb(palette[s.Ink], s.Opacity))
	vector.FillPath(screen, &p.path, nil, op)
}

// hand adds the outline of a hand to the path.
func (p *painter) hand(s *picture.Shape, at frame) {
	for i := range picture.HandCurves {
		c := s.HandCurve(i)
		if i == 0 {
			p.path.MoveTo(at.point(c[0][0], c[0][1]))
		}
		x1, y1 := at.point(c[1][0], c[1][1])
		x2, y2 := at.point(c[2][0], c[2][1])
		x3, y3 := at.point(c[3][0], c[3][1])
		p.path.CubicTo(x1, y1, x2, y2, x3, y3)
	}
	if s.Width > 0 {
		p.line(at.length(s.Width))
	}
}

// line turns the path into its own stroke.
func (p *painter) line(width float32) {
	p.stroke.Reset()
	p.stroke.AddStroke(&p.path, &vector.AddStrokeOptions{StrokeOptions: vector.StrokeOptions{
		Width: width, LineCap: vector.LineCapRound, LineJoin: vector.LineJoinRound,
	}})
	p.path, p.stroke = p.stroke, p.path
}

// text adds the outlines of a text to the path.
func (p *painter) text(s *picture.Shape, at frame) {
	g := p.regular
	if s.Bold {
		g = p.bold
	}
	size := at.length(s.Size)
	x, y := at.point(s.X, s.Y+picture.Baseline*s.Size)
	switch s.Anchor {
	case picture.AnchorMiddle:
		x -= g.width(s.Text) * size / 2
	case picture.AnchorEnd:
		x -= g.width(s.Text) * size
	}
	var op vector.AddPathOptions
	for _, r := range s.Text {
		letter := g.get(r)
		op.GeoM.Reset()
		op.GeoM.Scale(float64(size), float64(size))
		op.GeoM.Translate(float64(x), float64(y))
		p.path.AddPath(&letter.path, &op)
		x += letter.advance * size
	}
}

// angle turns a turn (0 = top, clockwise) into the engine's angle (0 = right).
func angle(turn float64) float32 { return float32(2 * math.Pi * (turn - 0.25)) }

func rgb(c picture.Colour, opacity float32) color.Color {
	r, g, b := c.RGB()
	return color.NRGBA{r, g, b, uint8(opacity*255 + 0.5)}
}
