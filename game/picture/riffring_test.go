package picture

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// The second ring has each stroke at its true turn, triplets and all, and only those
// of its own cycle.
func TestRiffOf(t *testing.T) {
	part := riffed()
	require.Empty(t, RiffOf(part, 8, 0).Strokes)
	c := RiffOf(part, 8, 1)
	require.Len(t, c.Strokes, 13)
	require.Equal(t, RiffStroke{Sound: rhythm.Dum, Strength: 1}, c.Strokes[0])
	require.InDelta(t, (2+8.0/12)/8, c.Strokes[4].Turn, 1e-12, "two thirds of a step after the 2")
	require.Empty(t, c.Open)

	c = RiffOf(part, 8, 2)
	roll := c.Strokes[2]
	require.Equal(t, RiffStroke{Sound: rhythm.Tek, Turn: 0.5, Strength: 0.35, Long: 0.5, Swell: 0.95}, roll)
	require.Equal(t, []RiffOpen{{0.5, 1, true}}, c.Open)
	require.True(t, c.open(0.5))
	require.True(t, c.open(0.99))
	require.False(t, c.open(0.49))
	require.Empty(t, RiffOf(part, 8, 3))
}

// Every stroke of every riff lies in one cycle's ring.
func TestRiffOfEveryCycle(t *testing.T) {
	c := cycle(t, "samai-thaqil")
	for level := riff.Bare; level <= riff.Solo; level++ {
		part, err := riff.Play(c, level, 12, 3)
		require.NoError(t, err)
		n, open := 0, 0
		for i := range 12 {
			ring := RiffOf(part, c.Steps(), i)
			n, open = n+len(ring.Strokes), open+len(ring.Open)
			for _, s := range ring.Strokes {
				require.GreaterOrEqual(t, s.Turn, 0.0)
				require.Less(t, s.Turn, 1.0)
				require.LessOrEqual(t, s.Turn+s.Long, 1.0+1e-9)
			}
		}
		require.Equal(t, len(part.Lead), n)
		require.Equal(t, len(part.Open), open)
	}
}

// A firm stroke is longer than a light one, on the head and on the line.
func TestFirmIsLonger(t *testing.T) {
	marks := func(d interface{ Draw(*Picture) }) (long []float64) {
		p := Picture{}
		d.Draw(&p)
		for _, s := range p.Shapes {
			if s.Ink == InkLead && s.Kind == KindLine {
				long = append(long, (s.X-s.X2)*(s.X-s.X2)+(s.Y-s.Y2)*(s.Y-s.Y2))
			}
		}
		return long
	}
	two := RiffCycle{Strokes: []RiffStroke{{Sound: rhythm.Tek, Turn: 0.3, Strength: 0.9}, {Sound: rhythm.Ka, Turn: 0.4, Strength: 0.3}}}
	for _, long := range [][]float64{
		marks(&Head{Base: pattern(t, "D---"), Riff: two}),
		marks(&Line{Base: pattern(t, "D---"), Riff: two}),
	} {
		require.Len(t, long, 2)
		require.Greater(t, long[0], 1.5*long[1])
	}
}

// In a break or a roll the bass drum leaves the base: its strokes are faint there,
// and the words say where.
func TestOpenIsShown(t *testing.T) {
	h := Head{Base: pattern(t, "DT-TD-T-"), Counts: inFour, Riff: RiffOf(riffed(), 8, 2)}
	p := Picture{}
	h.Draw(&p)
	faint, full := 0, 0
	for _, s := range p.Shapes {
		if s.Ink == InkBass && s.Opacity < 1 {
			faint++
		} else if s.Ink == InkBass {
			full++
		}
	}
	require.Equal(t, []int{2, 3}, []int{faint, full})
	require.Contains(t, h.Twin(words(t)), "From 3 on the drummer rolls.")
	h.Riff.Open[0].Roll = false
	require.Contains(t, h.Twin(words(t)), "From 3 on the drummer breaks off.")
}

// The line marks one step of the base, wherever it is wrapped.
func TestLiveStep(t *testing.T) {
	for step := range 8 {
		l := Line{Base: pattern(t, "DT-TD-T-"), Lead: pattern(t, "D-T-kkT-D-kkT-kk"), Counts: inSixteenths, Columns: 8, Live: true, Step: step}
		p := Picture{}
		l.Draw(&p)
		var bars []Shape
		for _, s := range p.Shapes {
			if s.Ink == InkBrass {
				bars = append(bars, s)
			}
		}
		require.Len(t, bars, 1, step)
	}
}
