package picture

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// lettersOf are the letters of a pattern, as they are written on a board.
func lettersOf(p rhythm.Pattern) string {
	return strings.ReplaceAll(p.String(), "-", "")
}

// strokesOn are the letters on a picture, in the order in which they were drawn.
func strokesOn(p *Picture) string {
	var b strings.Builder
	for _, text := range written(p) {
		if strings.Contains("DTStk", text) {
			b.WriteString(text)
		}
	}
	return b.String()
}

// Each stroke of every rhythm stands on the line once, by its letter, in order, however
// the line is wrapped; and each count above it.
func TestLineHasEveryStroke(t *testing.T) {
	for _, c := range everyRhythm(t) {
		for _, wide := range []float64{0, 288, 358, 576} {
			l := LineOf(c, c.Base(), nil, wide)
			p := drawn(&l)
			require.Equal(t, lettersOf(c.Skeleton), strokesOn(p), c.ID)
			counts := 0
			for _, text := range written(p) {
				if slices.Contains(l.Counts, text) && !strings.Contains("DTStk", text) {
					counts++
				}
			}
			require.Equal(t, c.Steps(), counts, c.ID)
		}
	}
}

// Rows end where the next begin: together they are all steps, none is longer than what
// there is room for, and in a metre of groups none ends within one.
func TestRowsAreAllSteps(t *testing.T) {
	for _, c := range everyRhythm(t) {
		for columns := 1; columns <= c.Steps()+1; columns++ {
			b := &board{Line: &Line{Groups: c.Grouping}, steps: c.Steps(), columns: columns}
			begins := map[int]bool{}
			at := 0
			for _, g := range c.Grouping {
				begins[at] = true
				at += g * c.StepsPerBeat()
			}
			rows := 0
			for first := 0; first < b.steps; rows++ {
				end := b.rowEnd(first)
				require.Greater(t, end, first)
				require.LessOrEqual(t, end, b.steps)
				require.LessOrEqual(t, end-first, b.longest())
				if len(c.Grouping) > 0 {
					require.True(t, end == b.steps || begins[end], "%s: a row ends at %d", c.ID, end)
				} else {
					require.LessOrEqual(t, end-first, columns)
				}
				first = end
			}
			require.LessOrEqual(t, rows, c.Steps())
		}
	}
}

// While strokes are asked for the line has its counts and nothing of them.
func TestHiddenLineTellsNothing(t *testing.T) {
	w := words(t)
	maqsum, saidi := supplied(t, "maqsum"), supplied(t, "saidi")
	for _, wide := range []float64{0, 358} {
		a, b := LineOf(maqsum, maqsum.Base(), nil, wide), LineOf(saidi, saidi.Base(), nil, wide)
		a.Hidden, b.Hidden = true, true
		require.Equal(t, drawn(&a).Shapes, drawn(&b).Shapes)
		require.Equal(t, a.Twin(w), b.Twin(w))
		require.Empty(t, strokesOn(drawn(&a)))
		require.Empty(t, inked(drawn(&a), InkBass, KindDot))
	}
}

// A dum that was never tapped in a review is open, all others are full.
func TestLeftOutIsOpen(t *testing.T) {
	chance := rand.New(rand.NewPCG(4, 1))
	for _, c := range everyRhythm(t) {
		l := LineOf(c, c.Base(), nil, 0)
		l.Review = reviewBy(c, chance)
		open := 0
		for _, step := range c.Dums() {
			if !slices.ContainsFunc(l.Review.Landed, func(a Landed) bool { return a.Step%c.Steps() == step }) {
				open++
			}
		}
		p := drawn(&l)
		big := 0
		for _, s := range inked(p, InkBass, KindRing) {
			if s.R > 0.005 {
				big++
			}
		}
		require.Equal(t, open, big, c.ID)
		require.Len(t, inked(p, InkBass, KindDot), len(c.Dums())-open, c.ID)
	}
}

// Each tap of a review has its mark below its dum, to its own side, cycle below cycle.
func TestMarksHangBelowTheirDums(t *testing.T) {
	l := &Line{Base: pattern(t, "D---D---"), Counts: inFour, Review: &Review{Steps: 24, StepTime: 250 * ms, On: 25 * ms,
		Landed: []Landed{{0, -60 * ms}, {8, 60 * ms}, {12, -90 * ms}, {20, 90 * ms}}, LeftOut: []int{4, 16}}}
	p := drawn(l)
	dums := inked(p, InkBass, KindDot)
	require.Len(t, dums, 2)
	ahead, behind := inked(p, InkAhead, KindRing), inked(p, InkBehind, KindDot)
	for i := range 2 {
		require.Less(t, ahead[i].X, dums[i].X)
		require.Greater(t, behind[i].X, dums[i].X)
		require.Greater(t, ahead[i].Y, dums[i].Y)
		require.Greater(t, behind[i].Y, ahead[i].Y, "the later cycle lies lower")
	}
	require.InDelta(t, dums[0].X-ahead[0].X, behind[0].X-dums[0].X, 1e-9, "as far to either side")
}

// A whole legend is written under a review, word by word in order, at every width of a
// step; an empty one is not there.
func TestLegendIsWritten(t *testing.T) {
	for _, id := range []string{"maqsum", "masmudi-kabir", "karsilama"} {
		c := supplied(t, id)
		l := LineOf(c, c.Base(), nil, 0)
		l.Review = reviewBy(c, rand.New(rand.NewPCG(4, 2)))
		bare := drawn(&l)
		l.Legend = legend
		p := drawn(&l)
		all := written(p)
		require.Equal(t, []string{"ahead", "on the dum", "behind", "left out", "added", "mean", "100 ms either way"}, all[len(all)-7:])
		require.Greater(t, p.Height, bare.Height)
		requireSound(t, p, id)
		l.Legend = Legend{Ahead: "ahead"}
		require.Equal(t, "ahead", written(drawn(&l))[len(written(bare))])
	}
}

// The filled form stands in a row below the base, and the base's strokes on every step
// that is its own.
func TestFilledStandsBelow(t *testing.T) {
	for _, c := range everyRhythm(t) {
		if len(c.Filled) == 0 {
			continue
		}
		l := LineOf(c, c.Base(), c.Filled, 0)
		require.Len(t, l.Counts, max(len(c.Filled), c.Steps()), c.ID)
		p := drawn(&l)
		require.Len(t, strokesOn(p), len(lettersOf(c.Skeleton))+len(lettersOf(c.Filled)), c.ID)
		base, lead := inked(p, InkBass, KindDot), inked(p, InkLead, KindDot)
		require.Len(t, base, len(c.Dums()))
		require.Len(t, lead, len(c.Filled.Dums()))
		for i := range base {
			require.InDelta(t, base[i].X, lead[i].X, 1e-9, "%s: dum over dum", c.ID)
			require.Less(t, base[i].Y, lead[i].Y)
		}
	}
}

// Three strokes in the time of two stand under a bracket with a 3; two, or three that are
// not even, do not.
func TestTriplets(t *testing.T) {
	line := func(turns ...float64) *Line {
		l := &Line{Base: pattern(t, "D---"), Counts: []string{"1", "2", "3", "4"}}
		for _, at := range turns {
			l.Riff.Strokes = append(l.Riff.Strokes, RiffStroke{Sound: rhythm.Tek, Turn: at / 4, Strength: 0.8})
		}
		return l
	}
	threes := func(l *Line) int {
		return strings.Count(strings.Join(written(drawn(l)), ""), "3") - 1 // that of the counts
	}
	require.Equal(t, 1, threes(line(0, 1.0/3, 2.0/3)))
	require.Equal(t, 1, threes(line(1, 1+2.0/3, 1+4.0/3)), "over two steps")
	require.Equal(t, 0, threes(line(0, 1.0/3)))
	require.Equal(t, 0, threes(line(0, 0.5, 1)))
	require.Equal(t, 0, threes(line(0, 1.0/3, 1)))
	require.Equal(t, 0, threes(line(0.25, 0.25+1.0/3, 0.25+2.0/3)), "off every half")
}

// What a lead drum plays is told sound by sound, each once, in the legend's order.
func TestSoundsOf(t *testing.T) {
	sounds, rolls := SoundsOf(riffed())
	require.Equal(t, []rhythm.Stroke{rhythm.Dum, rhythm.Tek, rhythm.Sak, rhythm.LightTek, rhythm.Ka}, sounds)
	require.True(t, rolls)
	part := riffed()
	part.Lead = part.Lead[:2]
	sounds, rolls = SoundsOf(part)
	require.Equal(t, []rhythm.Stroke{rhythm.Dum, rhythm.Tek}, sounds)
	require.False(t, rolls)
}
