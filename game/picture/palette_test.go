package picture

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Computed from the formula of WCAG 2.2 (W3C, 2023), "relative luminance" and
// "contrast ratio"; black on white is 21 by definition there.
func TestContrastVectors(t *testing.T) {
	for _, c := range []struct {
		a, b Colour
		want float64
	}{
		{0x000000, 0xffffff, 21},
		{0x777777, 0xffffff, 4.4781},
		{0x767676, 0xffffff, 4.5422},
		{0x949494, 0xffffff, 3.0335},
		{0x959595, 0xffffff, 2.9953},
		{0xff0000, 0xffffff, 3.9985},
		{0x0000ff, 0xffffff, 8.5925},
		{0xffff00, 0xffffff, 1.0738},
		{0x595959, 0xffffff, 7.0047},
	} {
		t.Run(c.a.String(), func(t *testing.T) {
			require.InDelta(t, c.want, Contrast(c.a, c.b), 0.00005)
			require.InDelta(t, c.want, Contrast(c.b, c.a), 0.00005, "contrast has no order")
		})
	}
}

type need struct {
	ink   Ink
	on    []Ink
	least float64
	why   string
}

// The least ratios are those of WCAG 2.2: 1.4.3 (4.5:1) and 1.4.6 (7:1) for
// text, 1.4.11 (3:1) for controls and graphics that are needed.
var needs = []need{
	{InkBone, []Ink{InkGround, InkPanel, InkSkin}, 7, "running text, counts"},
	{InkDim, []Ink{InkGround, InkPanel, InkSkin}, 4.5, "quiet text, small labels"},
	{InkWarn, []Ink{InkGround, InkPanel}, 7, "a warning is text"},
	{InkBrass, []Ink{InkGround, InkPanel}, 4.5, "links are text"},
	{InkOnBrass, []Ink{InkBrass}, 7, "the primary button's name"},
	{InkOnBass, []Ink{InkBass}, 7, "a stroke's letter"},
	{InkAhead, []Ink{InkGround, InkPanel, InkSkin}, 4.5, "marks, and the word at the scale"},
	{InkBehind, []Ink{InkGround, InkPanel}, 4.5, "marks, and the word at the scale"},
	{InkBehind, []Ink{InkSkin}, 3, "marks"},
	{InkGood, []Ink{InkGround, InkPanel, InkSkin}, 4.5, "marks, and words"},
	{InkEdge, []Ink{InkGround, InkPanel}, 3, "where a control ends"},
	{InkFocus, []Ink{InkGround, InkPanel}, 3, "where the focus is"},
	{InkBass, []Ink{InkGround, InkPanel, InkSkin}, 4.5, "strokes"},
	{InkLead, []Ink{InkGround, InkPanel, InkSkin}, 4.5, "strokes"},
	{InkMark, []Ink{InkGround, InkPanel, InkSkin}, 4.5, "taps"},
	{InkSweep, []Ink{InkGround, InkSkin}, 4.5, "the sweep"},
	{InkRim, []Ink{InkGround, InkSkin}, 3, "where the head ends"},
}

func TestContrastOfPalettes(t *testing.T) {
	for name, p := range map[string]Palette{"dark": Dark(), "light": Light()} {
		for _, n := range needs {
			for _, on := range n.on {
				t.Run(fmt.Sprintf("%s/%s on %s", name, n.ink, on), func(t *testing.T) {
					require.GreaterOrEqual(t, Contrast(p[n.ink], p[on]), n.least, n.why)
				})
			}
		}
	}
}

// Dichromacy, severity 1, in linear RGB: Machado, Oliveira and Fernandes, "A
// Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE
// TVCG 15(6), 2009; matrices from memory (each row sums to 1, which is checked).
var dichromats = map[string][3][3]float64{
	"protanopia":   {{.152286, 1.052583, -.204868}, {.114503, .786281, .099216}, {-.003882, -.048116, 1.051998}},
	"deuteranopia": {{.367322, .860646, -.227968}, {.280085, .672501, .047413}, {-.011820, .042940, .968881}},
	"tritanopia":   {{1.255528, -.076749, -.178779}, {-.078411, .930809, .147602}, {.004733, .691367, .303900}},
}

func seen(m [3][3]float64, c Colour) (out [3]float64) {
	r, g, b := c.RGB()
	in := [3]float64{linear(r), linear(g), linear(b)}
	for i := range m {
		for j := range in {
			out[i] += m[i][j] * in[j]
		}
		out[i] = math.Pow(max(0, min(1, out[i])), 1/2.2) // near enough to even steps for the eye
	}
	return out
}

func TestAheadAndBehindDifferForEveryEye(t *testing.T) {
	for name, p := range map[string]Palette{"dark": Dark(), "light": Light()} {
		require.GreaterOrEqual(t, Contrast(p[InkAhead], p[InkBehind]), 1.5, "%s, in grey; own choice", name)
		for eye, m := range dichromats {
			for _, row := range m {
				require.InDelta(t, 1, row[0]+row[1]+row[2], 2e-6)
			}
			a, b := seen(m, p[InkAhead]), seen(m, p[InkBehind])
			apart := math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
			require.Greater(t, apart, 0.3, "%s, %s, of at most 1.73; own choice", name, eye)
		}
	}
}

func TestPalettesAreWhole(t *testing.T) {
	names := map[string]bool{}
	for _, ink := range Inks() {
		require.NotZero(t, Dark()[ink], ink)
		require.NotZero(t, Light()[ink], ink)
		require.NotEmpty(t, ink.String())
		require.False(t, names[ink.String()], "two inks named %s", ink)
		names[ink.String()] = true
	}
	require.Equal(t, "unknown", Ink(200).String())
}

func TestWriteCSS(t *testing.T) {
	var b strings.Builder
	require.NoError(t, WriteCSS(&b))
	require.Equal(t, 2, strings.Count(b.String(), "--ground: "+Dark()[InkGround].String()))
	require.Equal(t, 2, strings.Count(b.String(), "--ground: "+Light()[InkGround].String()))
	require.Contains(t, b.String(), ".fill-on-bass { fill: var(--on-bass) }")
	require.Equal(t, strings.Count(b.String(), "{"), strings.Count(b.String(), "}"))
	require.Error(t, WriteCSS(brokenWriter{}))
}

type brokenWriter struct{}

func (brokenWriter) Write([]byte) (int, error) { return 0, fmt.Errorf("disk full") }
