package picture

import "unicode/utf8"

// Kind is what a shape is.
type Kind uint8

// The kinds of shape. Lines and arcs end round; angles are turns clockwise from
// the top; every length is in units of the picture's width.
const (
	KindArc   Kind = iota // part of a circle, stroked: X, Y, R, From, To, Width
	KindLine              // X, Y to X2, Y2, Width
	KindDot               // filled circle: X, Y, R
	KindRing              // stroked circle: X, Y, R, Width
	KindWedge             // filled sector from the centre: X, Y, R, From, To
	KindText              // Text at X, Y: see Shape.Size
	KindTeeth             // a row of triangles on a circle: X, Y, R (their feet), Tip (where they end), Count
	KindHand              // a hand: X, Y, R, From, Count, Width; see Picture.Hand
	kinds
)

// Anchor says which part of a text lies at its x.
type Anchor uint8

// The anchors; text in pictures always reads from left to right.
const (
	AnchorMiddle Anchor = iota
	AnchorStart
	AnchorEnd
)

// Baseline is how far below a text's y its baseline lies, in parts of its size:
// half the height of a capital, so that capitals and digits stand centred on y.
const Baseline = 0.36

// Shape is one mark of a picture. Which fields count depends on its kind.
type Shape struct {
	Kind     Kind
	Ink      Ink
	Anchor   Anchor
	Bold     bool    // of a text
	Opacity  float32 // 0 (not there) to 1
	X, Y     float64 // centre, start, or the place of a text
	X2, Y2   float64 // end of a line
	R        float64 // radius
	Tip      float64 // radius of the tips of teeth
	Count    int     // how many teeth stand side by side once round; 1 for a right hand, −1 for a left
	From, To float64 // turns; From < To < From + 1 (a whole circle is a ring or a dot)
	Width    float64 // of the stroke
	Size     float64 // of a text: one em. Y is the middle of its capitals, see Baseline
	Text     string  // counts, stroke letters, a few words at most
}

// Picture is a list of shapes, drawn in order. x runs from 0 to 1 and y down
// from 0 to Height. Nothing is cut off at its edges, and nothing should reach
// over them.
type Picture struct {
	Height float64 // in units of the width; 1 is a square
	Shapes []Shape
	Twin   string // what the picture shows, in words
}

// Aspect returns width over height.
func (p *Picture) Aspect() float64 { return 1 / p.Height }

// Reset empties the picture and keeps its memory, so that drawing it again each
// frame allocates nothing.
func (p *Picture) Reset() {
	p.Shapes = p.Shapes[:0]
	p.Twin = ""
}

func (p *Picture) add(s Shape) *Shape {
	s.Opacity = 1
	p.Shapes = append(p.Shapes, s)
	return &p.Shapes[len(p.Shapes)-1]
}

// Arc adds a part of a circle about (x, y), stroked from turn from to turn to.
// The returned shape can be changed until the next one is added.
func (p *Picture) Arc(ink Ink, x, y, r, from, to, width float64) *Shape {
	return p.add(Shape{Kind: KindArc, Ink: ink, X: x, Y: y, R: r, From: from, To: to, Width: width})
}

// Line adds a straight stroke with round ends.
func (p *Picture) Line(ink Ink, x, y, x2, y2, width float64) *Shape {
	return p.add(Shape{Kind: KindLine, Ink: ink, X: x, Y: y, X2: x2, Y2: y2, Width: width})
}

// Dot adds a filled circle.
func (p *Picture) Dot(ink Ink, x, y, r float64) *Shape {
	return p.add(Shape{Kind: KindDot, Ink: ink, X: x, Y: y, R: r})
}

// Ring adds a stroked circle; half of width lies on either side of r.
func (p *Picture) Ring(ink Ink, x, y, r, width float64) *Shape {
	return p.add(Shape{Kind: KindRing, Ink: ink, X: x, Y: y, R: r, Width: width})
}

// Wedge adds a filled sector from the centre out to r.
func (p *Picture) Wedge(ink Ink, x, y, r, from, to float64) *Shape {
	return p.add(Shape{Kind: KindWedge, Ink: ink, X: x, Y: y, R: r, From: from, To: to})
}

// Teeth adds a row of filled triangles side by side once round (x, y), their feet
// at radius r and their tips at tip.
func (p *Picture) Teeth(ink Ink, x, y, r, tip float64, count int) *Shape {
	return p.add(Shape{Kind: KindTeeth, Ink: ink, X: x, Y: y, R: r, Tip: tip, Count: count})
}

// Tooth returns the corners of one of a row of teeth, the tip last.
func (s *Shape) Tooth(i int) [3][2]float64 {
	return [3][2]float64{s.corner(s.R, float64(i)), s.corner(s.R, float64(i)+1), s.corner(s.Tip, float64(i)+0.5)}
}

func (s *Shape) corner(r, i float64) [2]float64 {
	x, y := Around(s.X, s.Y, r, i/float64(s.Count))
	return [2]float64{x, y}
}

// Text adds a short text whose capitals are centred on (x, y).
func (p *Picture) Text(ink Ink, x, y, size float64, text string) *Shape {
	return p.add(Shape{Kind: KindText, Ink: ink, X: x, Y: y, Size: size, Text: text})
}

// Fade sets the opacity, 0 to 1, and returns the shape.
func (s *Shape) Fade(opacity float64) *Shape {
	s.Opacity = float32(opacity)
	return s
}

// At sets the anchor of a text and returns the shape.
func (s *Shape) At(a Anchor) *Shape {
	s.Anchor = a
	return s
}

// Strong makes a text bold and returns the shape.
func (s *Shape) Strong() *Shape {
	s.Bold = true
	return s
}

// wideOf is about how wide a text is; a letter of a sans serif is 0.56 em in the mean.
func WideOf(text string, size float64) float64 {
	return 0.56 * size * float64(utf8.RuneCountInString(text))
}
