package picture

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

var (
	inFour       = []string{"1", "&", "2", "&", "3", "&", "4", "&"}
	inSixteenths = []string{"1", "e", "&", "a", "2", "e", "&", "a", "3", "e", "&", "a", "4", "e", "&", "a"}
	inEight      = []string{"1", "&", "2", "&", "3", "&", "4", "&", "5", "&", "6", "&", "7", "&", "8", "&"}
)

func pattern(_ testing.TB, s string) rhythm.Pattern {
	return rhythm.Pattern(s)
}

const ms = time.Millisecond

// played is a round of maqsum: eight cycles at 96 beats a minute. The 1 lies
// about 8 ms ahead, the 3 about 40 ms behind; one 3 is left out, two are added.
func played() *Review {
	r := &Review{Steps: 64, StepTime: 312500 * time.Microsecond, On: 25 * ms}
	ones := []time.Duration{-31, -12, 4, -9, -28, 6, -2, 8}
	threes := []time.Duration{52, 47, 30, 61, 12, 44, 0, 38}
	for i := range ones {
		r.Landed = append(r.Landed, Landed{8 * i, ones[i] * ms})
		if i == 6 {
			r.LeftOut = append(r.LeftOut, 8*i+4)
			continue
		}
		r.Landed = append(r.Landed, Landed{8*i + 4, threes[i] * ms})
	}
	r.Added = []float64{14.1, 45.8}
	return r
}

// neverOnThree is a round in which every 3 was left out.
func neverOnThree() *Review {
	r := played()
	r.Landed = nil
	for i := range 8 {
		r.Landed = append(r.Landed, Landed{8 * i, time.Duration(5*i-20) * ms})
	}
	r.LeftOut = []int{4, 12, 20, 28, 36, 44, 52, 60}
	return r
}

var legend = Legend{"ahead", "on the dum", "behind", "left out", "added", "mean", "100 ms either way"}

func heads(t testing.TB) map[string]*Head {
	maqsum := pattern(t, "DT-TD-T-")
	return map[string]*Head{
		"head-ready": {Base: maqsum, Counts: inFour},
		"head-count": {Base: maqsum, Counts: inFour, Hidden: true, Centre: "5"},
		"head-play": {Base: maqsum, Counts: inFour, Hidden: true, Turning: true, Turn: 2.58,
			Taps: []Tap{{0.51, 0}, {0.003, 0}, {0.02, 1}, {0.49, 1}, {0.53, 2}}},
		"head-calm":    {Base: maqsum, Counts: inFour, Turning: true, Turn: 0.53, Calm: true},
		"head-turning": {Base: maqsum, Counts: inFour, Turning: true, Turn: 0.53},
		"head-lead": {Base: pattern(t, "DD-TD-T-"), Riff: filled(t, "baladi"), Counts: inFour,
			Turning: true, Turn: 0.27},
		"head-riff": {Base: maqsum, Riff: RiffOf(riffed(), 8, 1), Counts: inFour, Turning: true, Turn: 0.4},
		"head-roll": {Base: maqsum, Riff: RiffOf(riffed(), 8, 2), Counts: inFour},
		"head-hands": {Base: maqsum, Riff: filled(t, "maqsum"), Counts: inFour, ShowHands: true,
			Hands: [2]Hand{{strongDum.x, strongDum.y, 0}, {otherRim.x, otherRim.y, 1}}},
		"head-blank":    {Hidden: true},
		"head-dum":      {Base: pattern(t, "D")},
		"head-tek":      {Base: pattern(t, "T")},
		"head-review":   {Base: maqsum, Counts: inFour, Review: played()},
		"head-left-out": {Base: maqsum, Counts: inFour, Review: neverOnThree()},
		"head-nine":     {Base: pattern(t, "D-T-D-T-T"), Counts: []string{"1", "2", "3", "4", "5", "6", "7", "8", "9"}, Groups: []int{2, 2, 2, 3}},
	}
}

func lines(t testing.TB) map[string]*Line {
	maqsum, eight := pattern(t, "DT-TD-T-"), pattern(t, "DT-TD-T-DT-TD-T-")
	return map[string]*Line{
		"line-ready":         {Base: maqsum, Counts: inFour},
		"line-eight":         {Base: eight, Counts: inEight},
		"line-wrapped":       {Base: eight, Counts: inEight, Columns: 8},
		"line-light":         {Base: pattern(t, "D-tkT-tkD-tkS---"), Counts: inSixteenths},
		"line-hidden":        {Base: maqsum, Counts: inFour, Hidden: true},
		"line-review":        {Base: maqsum, Counts: inFour, Review: played(), Legend: legend},
		"line-narrow":        {Base: maqsum, Counts: inFour, Columns: 4, Review: played(), Legend: legend},
		"line-left-out":      {Base: maqsum, Counts: inFour, Review: neverOnThree(), Legend: legend},
		"line-filled":        {Base: maqsum, Lead: pattern(t, "D-T-kkT-D-kkT-kk"), Counts: inSixteenths},
		"line-filled-narrow": {Base: maqsum, Lead: pattern(t, "D-T-kkT-D-kkT-kk"), Counts: inSixteenths, Columns: 8},
		"line-filled-alike":  {Base: pattern(t, "D--T-DDT--"), Lead: pattern(t, "Dk-TkDDTk-"), Counts: []string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "10"}},
		"line-letters":       riffLine(t, "maqsum", 1, 537),
		"line-letters-phone": riffLine(t, "maqsum", 1, 358),
		"line-letters-roll":  riffLine(t, "maqsum", 2, 358),
		"line-nine":          {Base: pattern(t, "D-T-D-TT-"), Counts: numbered(9), Groups: []int{2, 2, 2, 3}},
		"line-nine-phone": {Base: pattern(t, "D-T-D-TT-"), Lead: pattern(t, "D-kkT-kkD-kkT-T---"), Counts: numberedAnd(9),
			Groups: []int{2, 2, 2, 3}, Columns: 10, Wide: 358, Names: drums},
		"line-circled":     {Base: pattern(t, "DD-TD-T-"), Counts: inFour, Circled: []int{0, 1, 7}},
		"line-riff":        {Base: maqsum, Riff: RiffOf(riffed(), 8, 1), Counts: inFour, Live: true, Step: 3},
		"line-roll-narrow": {Base: maqsum, Riff: RiffOf(riffed(), 8, 2), Counts: inFour, Columns: 4},
		"line-filled-live": {Base: maqsum, Lead: pattern(t, "D-T-kkT-D-kkT-kk"), Counts: inSixteenths, Columns: 8,
			Live: true, Step: 6},
		"line-near-dums": {Base: pattern(t, "DD-TD-T-"), Counts: inFour, Review: played()},
	}
}

var drums = [2]string{"bass drum", "lead drum"}

// riffLine is the line that Listen shows of a cycle of [riffed], so many pixels wide.
func riffLine(t testing.TB, id string, nth int, wide float64) *Line {
	l := listened{Rhythm: cycle(t, id), Level: levelRiffing, Riff: RiffOf(riffed(), 8, nth), Board: wide}
	line := l.Line(words(t))
	return &line
}

func numbered(n int) (counts []string) {
	for i := range n {
		counts = append(counts, strconv.Itoa(i+1))
	}
	return counts
}

func numberedAnd(n int) (counts []string) {
	for _, c := range numbered(n) {
		counts = append(counts, c, "&")
	}
	return counts
}

// filled is the filled form of a rhythm as the second ring has it.
func filled(t testing.TB, id string) RiffCycle {
	c := cycle(t, id)
	part, err := riff.Play(c, riff.Filled, 1, 0)
	require.NoError(t, err)
	return RiffOf(part, c.Steps(), 0)
}

func pictures(t testing.TB) map[string]*Picture {
	all := map[string]*Picture{}
	for name, h := range heads(t) {
		all[name] = &Picture{}
		h.Draw(all[name])
	}
	for name, l := range lines(t) {
		all[name] = &Picture{}
		l.Draw(all[name])
	}
	return all
}

func TestPicturesAsSVG(t *testing.T) {
	for name, p := range pictures(t) {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			require.NoError(t, WriteSVG(&b, p, name, p.Twin))
			requireXML(t, b.Bytes())
			require.NotContains(t, b.String(), "style=")
			golden(t, name+".svg", b.Bytes())
		})
	}
}

func requireXML(t *testing.T, text []byte) {
	d := xml.NewDecoder(bytes.NewReader(text))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err)
	}
}

// The page's own style sheet is the golden, so that the page and the painter
// have the same colours.
func TestStyleSheet(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteCSS(&b))
	golden(t, "../../../wasm/page/palette.css", b.Bytes())
}

func TestGoldensAreUsed(t *testing.T) {
	var files []string
	for name := range pictures(t) {
		files = append(files, name+".svg")
	}
	proof.GoldensAreUsed(t, files...)
}

func TestSVGEscapesText(t *testing.T) {
	p := &Picture{Height: 1}
	p.Text(InkBone, 0.5, 0.5, 0.1, `<&">`)
	var b bytes.Buffer
	require.NoError(t, WriteSVG(&b, p, "a < b", `"c" & d`))
	requireXML(t, b.Bytes())
	require.NotContains(t, b.String(), "<&")
	require.Error(t, WriteSVG(brokenWriter{}, p, "", ""))
}

// Nothing reaches over the picture's edge, where it would be cut off.
func TestShapesStayInside(t *testing.T) {
	for name, p := range pictures(t) {
		for i, s := range p.Shapes {
			x0, y0, x1, y1 := extent(&s)
			require.GreaterOrEqual(t, x0, -1e-9, "%s, shape %d %+v", name, i, s)
			require.GreaterOrEqual(t, y0, -1e-9, "%s, shape %d %+v", name, i, s)
			require.LessOrEqual(t, x1, 1+1e-9, "%s, shape %d %+v", name, i, s)
			require.LessOrEqual(t, y1, p.Height+1e-9, "%s, shape %d %+v", name, i, s)
		}
	}
}

// extent returns the box of a shape; a text's width is taken as 0.62 em a letter,
// a little more than a sans serif's mean.
func extent(s *Shape) (x0, y0, x1, y1 float64) {
	switch s.Kind {
	case KindLine:
		h := s.Width / 2
		return math.Min(s.X, s.X2) - h, math.Min(s.Y, s.Y2) - h, math.Max(s.X, s.X2) + h, math.Max(s.Y, s.Y2) + h
	case KindText:
		wide := 0.62 * s.Size * float64(len([]rune(s.Text)))
		left := s.X - wide*[...]float64{0.5, 0, 1}[s.Anchor]
		return left, s.Y - Baseline*s.Size, left + wide, s.Y + Baseline*s.Size
	}
	if s.Kind == KindHand {
		x0, y0, x1, y1 = s.X, s.Y, s.X, s.Y
		for i := range HandCurves + 1 {
			p := s.handPoint(i)
			x0, y0, x1, y1 = min(x0, p[0]), min(y0, p[1]), max(x1, p[0]), max(y1, p[1])
		}
		return x0, y0, x1, y1
	}
	r := s.R + s.Width/2
	return s.X - r, s.Y - r, s.X + r, s.Y + r
}
