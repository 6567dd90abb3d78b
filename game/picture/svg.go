package picture

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// Unit is how many units of an SVG's own square the picture's width becomes.
const Unit = 1000

// Attr is one attribute of an SVG element.
type Attr struct{ Name, Value string }

// Element returns the SVG element of a shape: its name, its attributes and its
// text. The class names the ink, for a style sheet; fill and stroke are the
// fallback from the palette. No style attribute is used, which a strict content
// security policy would forbid.
func (s *Shape) Element(p *Palette) (name string, attrs []Attr, text string) {
	switch s.Kind {
	case KindDot:
		name, attrs = "circle", []Attr{{"cx", units(s.X)}, {"cy", units(s.Y)}, {"r", units(s.R)}}
	case KindRing:
		name, attrs = "circle", []Attr{{"cx", units(s.X)}, {"cy", units(s.Y)}, {"r", units(s.R)}}
	case KindLine:
		name, attrs = "line", []Attr{{"x1", units(s.X)}, {"y1", units(s.Y)}, {"x2", units(s.X2)}, {"y2", units(s.Y2)}}
	case KindArc:
		name, attrs = "path", []Attr{{"d", s.arc("M")}}
	case KindWedge:
		name, attrs = "path", []Attr{{"d", fmt.Sprintf("M%s %s%sZ", units(s.X), units(s.Y), s.arc("L"))}}
	case KindTeeth:
		name, attrs = "path", []Attr{{"d", s.teeth()}}
	case KindHand:
		name, attrs = "path", []Attr{{"d", s.hand()}}
	case KindText:
		name, text = "text", s.Text
		attrs = []Attr{{"x", units(s.X)}, {"y", units(s.Y + Baseline*s.Size)}, {"font-size", units(s.Size)},
			{"text-anchor", [...]string{"middle", "start", "end"}[s.Anchor]}}
		if s.Bold {
			attrs = append(attrs, Attr{"font-weight", "700"})
		}
	}
	return name, append(attrs, s.paint(p)...), text
}

func (s *Shape) paint(p *Palette) []Attr {
	var attrs []Attr
	switch {
	case s.Kind == KindArc, s.Kind == KindLine, s.Kind == KindRing, s.Kind == KindHand && s.Width > 0:
		attrs = []Attr{{"class", "line-" + s.Ink.String()}, {"fill", "none"},
			{"stroke", p[s.Ink].String()}, {"stroke-width", units(s.Width)}, {"stroke-linecap", "round"}}
	default:
		attrs = []Attr{{"class", "fill-" + s.Ink.String()}, {"fill", p[s.Ink].String()}}
	}
	if s.Opacity < 1 {
		attrs = append(attrs, Attr{"opacity", number(float64(s.Opacity))})
	}
	return attrs
}

// arc writes the path of an arc, its start reached by the letter: M or L.
func (s *Shape) arc(start string) string {
	x1, y1 := Around(s.X, s.Y, s.R, s.From)
	x2, y2 := Around(s.X, s.Y, s.R, s.To)
	large := 0
	if s.To-s.From > 0.5 {
		large = 1
	}
	r := units(s.R)
	return fmt.Sprintf("%s%s %sA%s %s 0 %d 1 %s %s", start, units(x1), units(y1), r, r, large, units(x2), units(y2))
}

// teeth writes the path of a row of teeth.
func (s *Shape) teeth() string {
	var d strings.Builder
	for i := range s.Count {
		for k, at := range s.Tooth(i) {
			fmt.Fprintf(&d, "%c%s %s", "MLL"[k], units(at[0]), units(at[1]))
		}
		d.WriteByte('Z')
	}
	return d.String()
}

// hand writes the path of a hand.
func (s *Shape) hand() string {
	var d strings.Builder
	start := s.handPoint(0)
	fmt.Fprintf(&d, "M%s %s", units(start[0]), units(start[1]))
	for i := range HandCurves {
		c := s.HandCurve(i)
		fmt.Fprintf(&d, "C%s %s %s %s %s %s", units(c[1][0]), units(c[1][1]), units(c[2][0]), units(c[2][1]), units(c[3][0]), units(c[3][1]))
	}
	return d.String()
}

// around returns the point at radius r and turn t about (x, y).
func Around(x, y, r, t float64) (float64, float64) {
	sin, cos := math.Sincos(2 * math.Pi * t)
	return x + r*sin, y - r*cos
}

func units(v float64) string { return number(v * Unit) }

// number writes at most two decimals: a hundred-thousandth of the width.
func number(v float64) string {
	s := strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

// WriteSVG writes a still picture as one svg element. The title is its name, the
// description its text twin. Colours follow the page's style sheet (see WriteCSS)
// and, without one, the light palette, as on paper.
func WriteSVG(w io.Writer, p *Picture, title, desc string) error {
	out, paper := &printer{w: w}, Light()
	out.print(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %s" role="img" font-family="sans-serif">`+"\n",
		Unit, units(p.Height))
	out.print("<title>%s</title>\n<desc>%s</desc>\n", escape(title), escape(desc))
	for i := range p.Shapes {
		out.element(p.Shapes[i].Element(&paper))
	}
	out.print("</svg>\n")
	return out.err
}

func (p *printer) element(name string, attrs []Attr, text string) {
	p.print("<%s", name)
	for _, a := range attrs {
		p.print(` %s="%s"`, a.Name, escape(a.Value))
	}
	if text == "" {
		p.print("/>\n")
		return
	}
	p.print(">%s</%s>\n", escape(text), name)
}

func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a strings.Builder cannot fail
	return b.String()
}
