package picture

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// attr is the value of one attribute of a shape's element.
func attr(s *Shape, name string) string {
	paper := Light()
	_, attrs, _ := s.Element(&paper)
	for _, a := range attrs {
		if a.Name == name {
			return a.Value
		}
	}
	return ""
}

// An arc's path begins and ends where its turns lie, goes clockwise, and takes the longer
// way only if it is more than half a circle (SVG 2, 9.3.8: the flags of an arc).
func TestArcPath(t *testing.T) {
	chance := rand.New(rand.NewPCG(6, 1))
	for range 300 {
		from := chance.Float64()
		s := Shape{Kind: KindArc, X: 0.5, Y: 0.5, R: 0.1 + 0.3*chance.Float64(), From: from, To: from + 0.01 + 0.98*chance.Float64(), Width: 0.01}
		var x1, y1, rx, ry, x2, y2 float64
		var turned, large, sweep int
		_, err := fmt.Sscanf(strings.ReplaceAll(attr(&s, "d"), "A", " "), "M%f %f %f %f %d %d %d %f %f", &x1, &y1, &rx, &ry, &turned, &large, &sweep, &x2, &y2)
		require.NoError(t, err, attr(&s, "d"))
		begin, far := turnOf(x1/Unit, y1/Unit)
		require.InDelta(t, s.R, far, 1e-4)
		require.InDelta(t, 0, math.Remainder(begin-s.From, 1), 1e-3)
		end, far := turnOf(x2/Unit, y2/Unit)
		require.InDelta(t, s.R, far, 1e-4)
		require.InDelta(t, 0, math.Remainder(end-s.To, 1), 1e-3)
		require.Equal(t, [2]float64{rx, rx}, [2]float64{math.Round(s.R*Unit*100) / 100, ry})
		require.Equal(t, s.To-s.From > 0.5, large == 1)
		require.Equal(t, [2]int{0, 1}, [2]int{turned, sweep})
	}
}

// Round the drum a turn goes clockwise from the top, y down.
func TestAround(t *testing.T) {
	for turn, want := range map[float64][2]float64{0: {0.5, 0.3}, 0.25: {0.7, 0.5}, 0.5: {0.5, 0.7}, 0.75: {0.3, 0.5}, -0.25: {0.3, 0.5}} {
		x, y := Around(0.5, 0.5, 0.2, turn)
		require.InDelta(t, want[0], x, 1e-12)
		require.InDelta(t, want[1], y, 1e-12)
	}
}

// A number has at most two decimals and no exponent, and there is no negative nothing.
func TestNumbersAreShort(t *testing.T) {
	for v, want := range map[float64]string{0: "0", math.Copysign(0, -1): "0", -0.001: "0", 1.005: "1", 12.345: "12.35", -2.5: "-2.5", 1e6: "1000000", 0.01: "0.01"} {
		require.Equal(t, want, number(v))
	}
}

// What is stroked has no filling and what is filled no stroke; only what is fainter than
// full says so.
func TestPaint(t *testing.T) {
	for kind := range kinds {
		for _, width := range []float64{0, 0.01} {
			s := Shape{Kind: kind, X: 0.5, Y: 0.5, R: 0.2, To: 0.3, Count: 1, Width: width, Size: 0.1, Opacity: 1, Ink: InkLead, Text: "D"}
			stroked := kind == KindArc || kind == KindLine || kind == KindRing || kind == KindHand && width > 0
			require.Equal(t, stroked, attr(&s, "fill") == "none", kind)
			require.Equal(t, stroked, attr(&s, "stroke") != "", kind)
			require.Equal(t, map[bool]string{true: "line-lead", false: "fill-lead"}[stroked], attr(&s, "class"))
			require.Empty(t, attr(&s, "opacity"))
			s.Fade(0.5)
			require.Equal(t, "0.5", attr(&s, "opacity"))
			paper := Light()
			name, _, text := s.Element(&paper)
			require.NotEmpty(t, name)
			require.Equal(t, kind == KindText, text != "")
		}
	}
}

// A text's baseline lies so far below its middle that its capitals stand about it, and it
// is anchored as it says.
func TestTextElement(t *testing.T) {
	p := &Picture{}
	for anchor, want := range []string{"middle", "start", "end"} {
		s := p.Text(InkBone, 0.25, 0.5, 0.1, "4").At(Anchor(anchor))
		require.Equal(t, want, attr(s, "text-anchor"))
		require.Equal(t, []string{"250", "536", "100", ""}, []string{attr(s, "x"), attr(s, "y"), attr(s, "font-size"), attr(s, "font-weight")})
		require.Equal(t, "700", attr(s.Strong(), "font-weight"))
	}
}

// Teeth stand side by side once round, each with its tip in the middle of its feet.
func TestTeeth(t *testing.T) {
	p := &Picture{}
	s := p.Teeth(InkInlay, 0.5, 0.5, 0.38, 0.4, inlaid)
	for i := range s.Count {
		tooth := s.Tooth(i)
		for k, r := range []float64{s.R, s.R, s.Tip} {
			turn, far := turnOf(tooth[k][0], tooth[k][1])
			require.InDelta(t, r, far, 1e-9)
			requireTurn(t, (float64(i)+[]float64{0, 1, 0.5}[k])/inlaid, turn)
		}
	}
	require.Equal(t, inlaid, strings.Count(attr(s, "d"), "Z"))
	for _, c := range everyRhythm(t) {
		require.NotZero(t, inlaid%c.Beats(), "no tooth of the rim is taken for a count of %s", c.ID)
	}
}
