package picture

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

var struck = []round.Strike{
	{At: 0, Sound: rhythm.Dum, Strength: 1, Hand: riff.Strong},
	{At: 500 * ms, Sound: rhythm.Ka, Strength: 0.4, Hand: riff.Other},
	{At: 700 * ms, Sound: rhythm.Tek, Strength: 0.8, Hand: riff.Strong},
	{At: 800 * ms, Sound: rhythm.Ka, Strength: 0.4, Hand: riff.Other},
	{At: 900 * ms, Sound: rhythm.Tek, Strength: 0.8, Hand: riff.Strong},
	{At: 1000 * ms, Sound: rhythm.Sak, Strength: 1, Hand: riff.Other},
	{At: 3000 * ms, Sound: rhythm.Sak, Strength: 1, Hand: riff.Strong},
}

// At its stroke each hand lies on the skin where it strikes: the strong one near the
// middle for a dum and at the right rim for a tek, the other one at the left rim.
func TestHandsStrikeWhereTheStrokesFall(t *testing.T) {
	for _, s := range struck {
		h := HandsAt(struck, s.At)[s.Hand]
		at := spotOf(s.Hand, s.Sound)
		require.Equal(t, Hand{at.x, at.y, 0}, h, "at %v", s.At)
	}
	far := func(at spot) float64 { return math.Hypot(at.x-Middle, at.y-Middle) }
	// Within 0.2 to 0.35 of the radius a dum sounds (see package audio); the rim ends at 1.
	require.Less(t, far(strongDum), 0.35*skinEdge)
	for _, rim := range []spot{strongRim, otherRim} {
		require.InDelta(t, tekRadius, far(rim), 0.01)
	}
	require.Greater(t, strongRim.x, Middle)
	require.InDelta(t, 1-strongRim.x, otherRim.x, 1e-9, "each at its own side")
}

// Between two strokes a hand is lifted, the less the sooner the next one follows,
// and far ahead it waits where it was.
func TestHandsRiseBetweenStrokes(t *testing.T) {
	at := func(t time.Duration) Hand { return HandsAt(struck, t)[riff.Strong] }
	require.Equal(t, 1.0, at(350*ms).Lift)
	require.Equal(t, Hand{strongDum.x, strongDum.y, 1}, at(300*ms), "and has not set out yet")
	require.InDelta(t, 200.0/420, at(800*ms).Lift, 1e-9, "between two teks 200 ms apart")
	require.Equal(t, Hand{strongRim.x, strongRim.y, 1}, at(2500*ms))
	require.Equal(t, Hand{strongRim.x, strongRim.y, 1}, HandsAt(struck[1:], -5*time.Second)[riff.Strong], "before its first")
	require.Equal(t, Hand{otherIn.x, otherIn.y, 1}, HandsAt(struck, time.Hour)[riff.Other], "after its last")
	require.Equal(t, [2]Hand{{strongRim.x, strongRim.y, 1}, {otherRim.x, otherRim.y, 1}}, HandsAt(nil, 0))
}

// Nothing jumps: even at the fastest riff a hand needs some 30 ms or more from the
// middle to the rim.
func TestHandsMoveSmoothly(t *testing.T) {
	c := cycle(t, "maqsum")
	p, err := round.NewPassage(c.Tempo.Fast, riff.Solo, 1, true, round.Section{Rhythm: c, Cycles: 16})
	require.NoError(t, err)
	strikes := p.Strikes()
	last, farthest := HandsAt(strikes, 0), 0.0
	for now := time.Duration(0); now < p.End(); now += time.Millisecond {
		next := HandsAt(strikes, now)
		for i := range next {
			farthest = max(farthest, math.Hypot(next[i].X-last[i].X, next[i].Y-last[i].Y))
		}
		last = next
	}
	way := math.Hypot(strongRim.x-strongDum.x, strongRim.y-strongDum.y)
	t.Logf("at most %.4f of the picture in a millisecond", farthest)
	require.Less(t, farthest, way/30)
	require.Zero(t, testing.AllocsPerRun(100, func() { HandsAt(strikes, time.Second) }))
}

// A left hand mirrors a right one, and a hand turns about the tip of its middle finger.
func TestHandOutline(t *testing.T) {
	right := Shape{R: 1, Count: 1}
	left := Shape{R: 1, Count: -1}
	highest := 1.0
	for i := range HandCurves + 1 {
		r, l := right.handPoint(i), left.handPoint(i)
		require.InDelta(t, -r[0], l[0], 1e-12)
		require.InDelta(t, r[1], l[1], 1e-12)
		highest = min(highest, r[1])
	}
	require.InDelta(t, 0, highest, 0.002, "the tip is its place")
	turned := Shape{R: 0.5, X: 0.3, Y: 0.4, From: 0.25, Count: 1}
	wrist := right.handPoint(0)
	at := turned.handPoint(0)
	require.InDelta(t, 0.3-0.5*wrist[1], at[0], 1e-12, "fingers to the right: the wrist to the left")
	require.InDelta(t, 0.4+0.5*wrist[0], at[1], 1e-12)
	for i := range HandCurves - 1 {
		require.Equal(t, right.HandCurve(i)[3], right.HandCurve(i + 1)[0], "curves join")
	}
}
