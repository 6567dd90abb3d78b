package picture

import (
	"fmt"
	"io"
	"math"
)

// Ink is a colour by what it means. What it looks like is a palette's.
type Ink uint8

// The inks.
const (
	InkGround  Ink = iota // behind everything
	InkPanel              // behind a group that stands off the ground
	InkBone               // text and what matters most
	InkDim                // text and marks that matter less; still readable
	InkEdge               // borders of controls
	InkBrass              // the primary button, links
	InkOnBrass            // text on brass
	InkFocus              // the ring round what has the focus
	InkSkin               // the drum's skin
	InkGrain              // fine rings on the skin and rules on the whiteboard: ornament only
	InkRim                // the drum's metal
	InkWood               // the wood of the rim: ornament only
	InkInlay              // the mother-of-pearl in it: ornament only
	InkShine              // light on the metal: ornament only
	InkBass               // strokes of the bass drum, the base
	InkOnBass             // a letter on a stroke of the bass drum
	InkLead               // strokes of the lead drum
	InkSweep              // the pearl that runs round with the sound
	InkMark               // a tap, before any judgement
	InkGood               // on the dum
	InkAhead              // before the dum: cool, before dawn
	InkBehind             // after the dum: warm, after sunset
	InkWarn               // something is wrong
	inks
)

var inkNames = [inks]string{"ground", "panel", "bone", "dim", "edge", "brass", "on-brass", "focus",
	"skin", "grain", "rim", "wood", "inlay", "shine", "bass", "on-bass", "lead", "sweep", "mark", "good", "ahead",
	"behind", "warn"}

// String returns the ink's name as style sheets use it, such as "on-brass".
func (i Ink) String() string {
	if i >= inks {
		return "unknown"
	}
	return inkNames[i]
}

// Inks returns all inks in order.
func Inks() []Ink {
	all := make([]Ink, inks)
	for i := range all {
		all[i] = Ink(i)
	}
	return all
}

// Colour is sRGB, 0xRRGGBB.
type Colour uint32

// String returns the colour as style sheets write it, such as "#1c1019".
func (c Colour) String() string { return fmt.Sprintf("#%06x", uint32(c)) }

// RGB returns the three parts, 0 to 255.
func (c Colour) RGB() (r, g, b uint8) { return uint8(c >> 16), uint8(c >> 8), uint8(c) }

// Luminance returns the relative luminance, 0 to 1, as WCAG 2.2 defines it, with
// the cut of IEC 61966-2-1 at 0.04045.
func (c Colour) Luminance() float64 {
	r, g, b := c.RGB()
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

func linear(v uint8) float64 {
	c := float64(v) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

// Contrast returns the WCAG 2.2 contrast ratio of two colours, 1 to 21.
func Contrast(a, b Colour) float64 {
	x, y := a.Luminance(), b.Luminance()
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Palette gives every ink its colour.
type Palette [inks]Colour

// Dark is for a dim studio: deep aubergine, bone and warm brass.
func Dark() Palette {
	return Palette{
		InkGround: 0x1b1019, InkPanel: 0x271925, InkBone: 0xf4eadb, InkDim: 0xbfaeb2,
		InkEdge: 0x8d7783, InkBrass: 0xe3b158, InkOnBrass: 0x1b1019, InkFocus: 0xffe3a3,
		InkSkin: 0x36232f, InkGrain: 0x5a4250, InkRim: 0xb08a4a, InkWood: 0x3a2119, InkInlay: 0xcdb68f, InkShine: 0xffefcf,
		InkBass: 0xe3b158, InkOnBass: 0x1b1019, InkLead: 0xf4eadb, InkSweep: 0xf4eadb,
		InkMark: 0xf4eadb, InkGood: 0xf4eadb, InkAhead: 0xa9c3ff, InkBehind: 0xe8743f,
		InkWarn: 0xffb08f,
	}
}

// Light is for a bright room with a projector: bone paper, aubergine ink.
func Light() Palette {
	return Palette{
		InkGround: 0xf8f2e7, InkPanel: 0xf1e8d8, InkBone: 0x2a1526, InkDim: 0x5e4a57,
		InkEdge: 0x846f7a, InkBrass: 0x6f4a0c, InkOnBrass: 0xfffaf0, InkFocus: 0x2a1526,
		InkSkin: 0xf1e4cb, InkGrain: 0xcdb994, InkRim: 0x8f6a26, InkWood: 0x55331f, InkInlay: 0xecd7ae, InkShine: 0xfffaf0,
		InkBass: 0x7a4a0a, InkOnBass: 0xfffaf0, InkLead: 0x4b2346, InkSweep: 0x2a1526,
		InkMark: 0x2a1526, InkGood: 0x2a1526, InkAhead: 0x1f3a8c, InkBehind: 0xac4716,
		InkWarn: 0x822409,
	}
}

// WriteCSS writes both palettes as custom properties, --ground and so on, and the
// classes that still pictures use. Dark is the default; light is used where the
// person's system asks for it; data-theme on the root element overrides both.
func WriteCSS(w io.Writer) error {
	out := &printer{w: w}
	out.rule(":root", "dark", Dark())
	out.print("@media (prefers-color-scheme: light) {\n")
	out.rule(":root", "light", Light())
	out.print("}\n")
	out.rule(":root[data-theme=dark]", "dark", Dark())
	out.rule(":root[data-theme=light]", "light", Light())
	for _, ink := range Inks() {
		out.print(".fill-%[1]s { fill: var(--%[1]s) }\n.line-%[1]s { stroke: var(--%[1]s) }\n", ink)
	}
	return out.err
}

func (p *printer) rule(selector, scheme string, colours Palette) {
	p.print("%s {\n  color-scheme: %s;\n", selector, scheme)
	for _, ink := range Inks() {
		p.print("  --%s: %s;\n", ink, colours[ink])
	}
	p.print("}\n")
}

// printer keeps the first error of many prints.
type printer struct {
	w   io.Writer
	err error
}

func (p *printer) print(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format, args...)
	}
}
