package picture

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// calmShapes is what is drawn of a head in a moment, as text.
func calmShapes(d interface{ Draw(*Picture) }) string {
	p := Picture{}
	d.Draw(&p)
	return fmt.Sprint(p.Shapes)
}

// Where less motion was asked for, nothing on drumhead and line changes between two
// strokes of the base, and both change with each stroke, in the very moment in which it
// sounds: in every rhythm there is, at any tempo.
func TestCalmChangesWithTheStrokesAlone(t *testing.T) {
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	for _, id := range all.IDs() {
		c, _ := all.Get(id)
		for _, bpm := range []int{61, c.Tempo.Usual, 199} {
			p, err := round.NewPassage(bpm, riff.Bare, 1, false, round.Section{Rhythm: c, Cycles: 2})
			require.NoError(t, err)
			h := Head{Base: c.Skeleton, Counts: CountsOf(c.Base()), Turning: true, Calm: true}
			l := Line{Base: c.Skeleton, Counts: CountsOf(c.Base()), Live: true, Calm: true}
			shown := func(at time.Duration) string {
				h.Turn = p.TurnAt(at)
				l.Step = int(h.Turn*float64(c.Steps())+1e-6) % c.Steps()
				return calmShapes(&h) + calmShapes(&l)
			}
			before := ""
			for step := range 2 * c.Steps() {
				from, to := p.Start()+c.At(step, bpm), p.Start()+c.At(step+1, bpm)
				now := shown(from)
				if c.Skeleton[step%c.Steps()].Sounds() {
					require.NotEqual(t, before, now, "%s, step %d", id, step)
				} else {
					require.Equal(t, before, now, "%s, step %d", id, step)
				}
				for part := range 7 {
					require.Equal(t, now, shown(from+(to-from-time.Microsecond)*time.Duration(part)/7), "%s between steps %d and the next", id, step)
				}
				before = now
			}
		}
	}
}

// Strokes that are asked by ear are not told by the sweep: it stands on the counts, and
// looks alike over any two rhythms of one metre.
func TestCalmTellsNothingThatIsAsked(t *testing.T) {
	a, b := supplied(t, "maqsum"), supplied(t, "zaffa")
	require.NotEqual(t, a.Skeleton, b.Skeleton)
	seen := map[string]bool{}
	for i := range 80 {
		turn := float64(i) / 80
		one := Head{Base: a.Skeleton, Counts: inFour, Hidden: true, Turning: true, Turn: turn, Calm: true}
		other := one
		other.Base = b.Skeleton
		require.Equal(t, calmShapes(&one), calmShapes(&other), turn)
		require.InDelta(t, math.Floor(4*turn+1e-9)/4, one.Stands(), 1e-12, turn)
		seen[calmShapes(&one)] = true
	}
	require.Len(t, seen, 4, "one for each count")
}

// Without a wish for less motion everything moves as ever.
func TestSweepRunsUnlessCalm(t *testing.T) {
	seen := map[string]bool{}
	for i := range 60 {
		h := Head{Base: pattern(t, "DT-TD-T-"), Counts: inFour, Turning: true, Turn: float64(i) / 60}
		require.Equal(t, h.Turn, h.Stands())
		seen[calmShapes(&h)] = true
	}
	require.Len(t, seen, 60)
}

// Hands that stand change with their strikes alone: the one that struck last is down,
// where it struck.
func TestCalmHands(t *testing.T) {
	c := supplied(t, "maqsum")
	p, err := round.NewPassage(c.Tempo.Usual, riff.Filled, 1, false, round.Section{Rhythm: c, Cycles: 2})
	require.NoError(t, err)
	strikes := p.Strikes()
	require.Greater(t, len(strikes), 10)
	for i, s := range strikes {
		until := p.End()
		if i+1 < len(strikes) {
			until = strikes[i+1].At
		}
		now := HandsStanding(strikes, s.At)
		for part := range 5 {
			require.Equal(t, now, HandsStanding(strikes, s.At+(until-s.At-1)*time.Duration(part)/5))
		}
		hand := now[0]
		if s.Hand == riff.Other {
			hand = now[1]
		}
		at := spotOf(s.Hand, s.Sound)
		require.Equal(t, Hand{at.x, at.y, 0}, hand, i)
	}
	for _, hand := range HandsStanding(strikes, strikes[0].At-1) {
		require.Equal(t, 1.0, hand.Lift, "none has struck yet")
	}
}
