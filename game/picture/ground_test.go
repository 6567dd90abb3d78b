package picture

import (
	"math"
	"slices"
)

// flashCells is how many cells a ground has on each side.
const flashCells = 96

// A ground is a square picture as a grid of colours, coarse: what lies on the
// middle of a cell fills it. Only shapes that changed are laid anew.
type ground struct {
	palette *Palette
	cells   [flashCells * flashCells][3]float64 // red, green, blue, 0 to 1
	below   [flashCells * flashCells][3]float64 // the same without what changes
	same    []Shape                             // what lies below
	lit     [flashCells * flashCells]luminous
}

// luminous is a colour with its luminance.
type luminous struct {
	colour    [3]float64
	luminance float64
}

func newGround(p *Palette) *ground {
	g := &ground{palette: p}
	g.draw(nil)
	return g
}

// draw lays the shapes.
func (g *ground) draw(shapes []Shape) {
	n := 0
	for n < min(len(g.same), len(shapes)) && g.same[n] == shapes[n] {
		n++
	}
	if g.same == nil || n < len(g.same) {
		if g.same == nil {
			n = len(shapes) // the first frame: as if nothing would change
		}
		g.same = slices.Clone(shapes[:n])
		for i := range g.cells {
			g.cells[i] = parts(g.palette[InkGround])
		}
		g.lay(g.same)
		g.below = g.cells
	}
	g.cells = g.below
	g.lay(shapes[n:])
}

func parts(c Colour) [3]float64 {
	r, g, b := c.RGB()
	return [3]float64{float64(r) / 255, float64(g) / 255, float64(b) / 255}
}

// luminance is the relative luminance of a cell, see [Colour.Luminance].
func (g *ground) luminance(cell int) float64 {
	known, now := &g.lit[cell], g.cells[cell]
	if known.colour != now {
		var c Colour
		for _, part := range now {
			c = c<<8 | Colour(part*255+0.5)
		}
		*known = luminous{now, c.Luminance()}
	}
	return known.luminance
}

func (g *ground) lay(shapes []Shape) {
	for i := range shapes {
		s := &shapes[i]
		ink := parts(g.palette[s.Ink])
		left, top, right, bottom := s.bounds()
		covers := s.cover()
		for y := cellOf(top); y <= cellOf(bottom); y++ {
			for x := cellOf(left); x <= cellOf(right); x++ {
				if !covers((float64(x)+0.5)/flashCells, (float64(y)+0.5)/flashCells) {
					continue
				}
				at := &g.cells[y*flashCells+x]
				for k := range at {
					at[k] += float64(s.Opacity) * (ink[k] - at[k])
				}
			}
		}
	}
}

func cellOf(v float64) int { return max(0, min(flashCells-1, int(v*flashCells))) }

// bounds is a rectangle that the shape does not reach over.
func (s *Shape) bounds() (left, top, right, bottom float64) {
	switch s.Kind {
	case KindLine:
		w := s.Width / 2
		return min(s.X, s.X2) - w, min(s.Y, s.Y2) - w, max(s.X, s.X2) + w, max(s.Y, s.Y2) + w
	case KindArc:
		if s.To-s.From < 0.25 {
			return s.sector(s.R-s.Width/2, s.R+s.Width/2)
		}
	case KindWedge:
		if s.To-s.From < 0.25 {
			return s.sector(0, s.R)
		}
	case KindHand:
		left, top, right, bottom = s.X, s.Y, s.X, s.Y
		for i := range handOutline {
			at := s.handPoint(i)
			left, right = min(left, at[0]-s.Width), max(right, at[0]+s.Width)
			top, bottom = min(top, at[1]-s.Width), max(bottom, at[1]+s.Width)
		}
		return left, top, right, bottom
	case KindText:
		wide := 0.35 * s.Size * float64(len([]rune(s.Text)))
		return s.X - wide, s.Y - s.Size/2, s.X + wide, s.Y + s.Size/2
	}
	r := s.R + s.Width
	return s.X - r, s.Y - r, s.X + r, s.Y + r
}

// sector is the rectangle about a narrow part of a ring.
func (s *Shape) sector(inner, outer float64) (left, top, right, bottom float64) {
	left, top, right, bottom = 1, 1, 0, 0
	bulge := (1 - math.Cos(math.Pi*(s.To-s.From))) * outer
	for _, turn := range [...]float64{s.From, s.To} {
		for _, r := range [...]float64{inner, outer} {
			x, y := Around(s.X, s.Y, r, turn)
			left, right = min(left, x-bulge), max(right, x+bulge)
			top, bottom = min(top, y-bulge), max(bottom, y+bulge)
		}
	}
	return left, top, right, bottom
}

// cover returns which points lie on the shape. A text covers the rectangle of its
// capitals, round ends are cut off, and teeth are left out.
func (s *Shape) cover() func(x, y float64) bool {
	switch s.Kind {
	case KindDot:
		return func(x, y float64) bool { return math.Hypot(x-s.X, y-s.Y) <= s.R }
	case KindRing:
		return func(x, y float64) bool { return math.Abs(math.Hypot(x-s.X, y-s.Y)-s.R) <= s.Width/2 }
	case KindArc:
		return func(x, y float64) bool {
			return math.Abs(math.Hypot(x-s.X, y-s.Y)-s.R) <= s.Width/2 && s.turnsOver(x-s.X, y-s.Y)
		}
	case KindWedge:
		return func(x, y float64) bool { return math.Hypot(x-s.X, y-s.Y) <= s.R && s.turnsOver(x-s.X, y-s.Y) }
	case KindLine:
		return func(x, y float64) bool {
			return fromLine(x, y, [2]float64{s.X, s.Y}, [2]float64{s.X2, s.Y2}) <= s.Width/2
		}
	case KindText:
		return func(_, y float64) bool { return math.Abs(y-s.Y) <= Baseline*s.Size }
	case KindHand:
		return s.coverHand()
	}
	return func(float64, float64) bool { return false }
}

func (s *Shape) turnsOver(dx, dy float64) bool {
	return Wrap(math.Atan2(dx, -dy)/(2*math.Pi)-s.From) <= s.To-s.From
}

// fromLine is how far a point lies from a line between two others.
func fromLine(x, y float64, a, b [2]float64) float64 {
	ux, uy := b[0]-a[0], b[1]-a[1]
	along := 0.0
	if long := ux*ux + uy*uy; long > 0 {
		along = max(0, min(1, ((x-a[0])*ux+(y-a[1])*uy)/long))
	}
	return math.Hypot(x-a[0]-along*ux, y-a[1]-along*uy)
}

// coverHand takes the hand's curves for straight.
func (s *Shape) coverHand() func(x, y float64) bool {
	var at [len(handOutline)][2]float64
	for i := range at {
		at[i] = s.handPoint(i)
	}
	return func(x, y float64) bool {
		inside := false
		for i := range HandCurves {
			a, b := at[i], at[i+1]
			if s.Width > 0 && fromLine(x, y, a, b) <= s.Width/2 {
				return true
			}
			if (a[1] > y) != (b[1] > y) && x < a[0]+(y-a[1])/(b[1]-a[1])*(b[0]-a[0]) {
				inside = !inside
			}
		}
		return inside && s.Width == 0 // the wrist is level enough to be taken for closed
	}
}
