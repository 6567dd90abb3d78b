//go:build js

package game

import (
	"github.com/hajimehoshi/ebiten/v2/vector"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// glyphs are the outlines of one font, one em high, so that a picture's text
// is sharp at every size. Short texts in Latin letters only: nothing is shaped
// and nothing kerned.
type glyphs struct {
	ttf  []byte
	font *sfnt.Font // nil until a text is drawn
	seen map[rune]*glyph
	buf  sfnt.Buffer
}

// glyph is a letter's outline with its baseline at y = 0, and its advance in em.
type glyph struct {
	path    vector.Path
	advance float32
}

func newGlyphs(ttf []byte) *glyphs { return &glyphs{ttf: ttf, seen: map[rune]*glyph{}} }

// parse reads the font, which the first frame need not wait for.
func (g *glyphs) parse() {
	f, err := sfnt.Parse(g.ttf)
	if err != nil {
		panic(err) // it is supplied
	}
	g.font = f
}

// get returns a letter's glyph, or that of the font's own mark for a missing
// letter.
func (g *glyphs) get(r rune) *glyph {
	if have := g.seen[r]; have != nil {
		return have
	}
	if g.font == nil {
		g.parse()
	}
	const em = 1024 // pixels to the em while loading
	out := &glyph{}
	ppem := fixed.I(em)
	index, _ := g.font.GlyphIndex(&g.buf, r)
	if a, err := g.font.GlyphAdvance(&g.buf, index, ppem, font.HintingNone); err == nil {
		out.advance = float32(a) / 64 / em
	}
	if segments, err := g.font.LoadGlyph(&g.buf, index, ppem, nil); err == nil {
		out.trace(segments, 64*em)
	}
	g.seen[r] = out
	return out
}

func (o *glyph) trace(segments sfnt.Segments, unit float32) {
	x := func(s *sfnt.Segment, i int) (float32, float32) {
		return float32(s.Args[i].X) / unit, float32(s.Args[i].Y) / unit
	}
	for i := range segments {
		s := &segments[i]
		x0, y0 := x(s, 0)
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			o.path.Close()
			o.path.MoveTo(x0, y0)
		case sfnt.SegmentOpLineTo:
			o.path.LineTo(x0, y0)
		case sfnt.SegmentOpQuadTo:
			x1, y1 := x(s, 1)
			o.path.QuadTo(x0, y0, x1, y1)
		case sfnt.SegmentOpCubeTo:
			x1, y1 := x(s, 1)
			x2, y2 := x(s, 2)
			o.path.CubicTo(x0, y0, x1, y1, x2, y2)
		}
	}
	o.path.Close()
}

// width is the length of a text in em.
func (g *glyphs) width(text string) float32 {
	var w float32
	for _, r := range text {
		w += g.get(r).advance
	}
	return w
}
