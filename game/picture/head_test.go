package picture

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// turnOf is where a place lies round the drum, in turns, and how far from its middle.
func turnOf(x, y float64) (turn, far float64) {
	return Wrap(math.Atan2(x-Middle, Middle-y) / (2 * math.Pi)), math.Hypot(x-Middle, y-Middle)
}

// requireTurn: two turns are the same but for rounding, also about the top.
func requireTurn(t *testing.T, want, got float64, of ...any) {
	t.Helper()
	apart := math.Abs(Wrap(want) - Wrap(got))
	require.Less(t, min(apart, 1-apart), 1e-6, of...)
}

// Every dum of every rhythm is a disc at its own turn, half way out, and every other
// stroke a mark at the rim about its own; a rest is nothing.
func TestStrokesLieAtTheirTurns(t *testing.T) {
	for _, c := range everyRhythm(t) {
		p := drawn(&Head{Base: c.Skeleton})
		dums, marks := inked(p, InkBass, KindDot), inked(p, InkBass, KindArc)
		for i, s := range c.Skeleton {
			turn := float64(i) / float64(c.Steps())
			switch {
			case s.Low():
				at, far := turnOf(dums[0].X, dums[0].Y)
				requireTurn(t, turn, at, c.ID)
				require.InDelta(t, dumRadius, far, 1e-9)
				dums = dums[1:]
			case s.Sounds():
				requireTurn(t, turn, (marks[0].From+marks[0].To)/2, c.ID)
				require.InDelta(t, tekRadius, marks[0].R, 1e-9)
				marks = marks[1:]
				if s == rhythm.Sak {
					require.Less(t, marks[0].R, tekRadius, "a second one, further in")
					marks = marks[1:]
				}
			}
		}
		require.Empty(t, dums, c.ID)
		require.Empty(t, marks, c.ID)
	}
}

// A light stroke is smaller than a firm one, and dums do not touch one another however
// close they come in any rhythm that is supplied.
func TestStrokesAreTold(t *testing.T) {
	firm := inked(drawn(&Head{Base: pattern(t, "T---")}), InkBass, KindArc)[0]
	light := inked(drawn(&Head{Base: pattern(t, "t---")}), InkBass, KindArc)[0]
	require.Less(t, light.To-light.From, firm.To-firm.From)
	require.Less(t, light.Width, firm.Width)
	for _, c := range everyRhythm(t) {
		dums := inked(drawn(&Head{Base: c.Skeleton}), InkBass, KindDot)
		for i := range dums {
			for j := range i {
				require.Greater(t, math.Hypot(dums[i].X-dums[j].X, dums[i].Y-dums[j].Y), dums[i].R+dums[j].R, c.ID)
			}
		}
	}
}

// While strokes are asked for, the head is the same whatever they are, and whatever the
// lead drum plays: nothing in its shapes can tell.
func TestHiddenHeadTellsNothing(t *testing.T) {
	chance := rand.New(rand.NewPCG(2, 1))
	maqsum := proof.Supplied(t, "maqsum")
	for _, id := range []string{"saidi", "baladi", "ayyub"} {
		other := proof.Supplied(t, id)
		for range 20 {
			seed := chance.Uint64()
			a := headBy(t, maqsum, rand.New(rand.NewPCG(seed, 1)))
			a.Hidden, a.Review = true, nil
			b := *a
			b.Base, b.Riff = other.Skeleton, riffBy(t, other, chance)
			require.Equal(t, drawn(a).Shapes, drawn(&b).Shapes, id)
			require.Equal(t, a.Twin(words(t)), b.Twin(words(t)), id)
		}
	}
}

// Each count that is a figure stands outside the rim at its turn, in order, all others are
// marks; so many beats as there are figures.
func TestCountsStandAtTheirTurns(t *testing.T) {
	for _, c := range everyRhythm(t) {
		h := Head{Counts: CountsOf(c.Base())}
		p := drawn(&h)
		var figures []Shape
		for _, s := range p.Shapes {
			if s.Kind == KindText {
				figures = append(figures, s)
			}
		}
		require.Len(t, figures, c.Beats(), c.ID)
		require.Equal(t, c.Beats(), Beats(h.Counts))
		for beat, s := range figures {
			turn, far := turnOf(s.X, s.Y)
			requireTurn(t, float64(beat)/float64(c.Beats()), turn, c.ID)
			require.Greater(t, far-s.Size/2, rimRadius+rimWidth/2, "outside the rim")
		}
	}
}

// The groups of an odd metre are tied from their first beat to their last; together they
// are as long as the cycle, without the gaps between them.
func TestGroupsAreTied(t *testing.T) {
	for _, c := range everyRhythm(t) {
		if len(c.Grouping) == 0 {
			continue
		}
		var arcs []Shape
		for _, s := range inked(drawn(&Head{Groups: c.Grouping}), InkBone, KindArc) {
			if s.R == groupRadius {
				arcs = append(arcs, s)
			}
		}
		require.Len(t, arcs, len(c.Grouping), c.ID)
		beat := 0
		for i, g := range c.Grouping {
			requireTurn(t, float64(beat)/float64(c.Beats()), arcs[i].From+0.006)
			beat += g
			requireTurn(t, float64(beat-1)/float64(c.Beats()), arcs[i].To-0.006)
			if i > 0 {
				require.Less(t, arcs[i-1].To, arcs[i].From, "they do not touch")
			}
		}
		require.Equal(t, c.Beats(), beat)
	}
}

// One bead for each eight, full once it is over; none touches another, and all lie within
// the ring of the lead drum.
func TestBeads(t *testing.T) {
	for n := range 33 {
		for _, gone := range []int{0, n / 2, n} {
			p := drawn(&Head{Hidden: true, Beads: n, Gone: gone})
			full, empty := inked(p, InkBass, KindDot), inked(p, InkDim, KindRing)
			require.Len(t, full, gone)
			require.Len(t, empty, n-gone)
			all := append(full, empty...)
			x := 0.0
			for i, s := range all {
				x += s.X
				for _, other := range all[:i] {
					require.Greater(t, math.Hypot(s.X-other.X, s.Y-other.Y), s.R+other.R)
				}
				_, far := turnOf(s.X, s.Y)
				require.Less(t, far, dumRadius)
			}
			if n > 0 {
				require.InDelta(t, Middle, x/float64(n), 1e-9, "about the middle")
			}
		}
	}
}

// Whole turns of the sweep do not matter, and the pearl runs at its turn round the rim.
func TestSweepRunsRound(t *testing.T) {
	for turn := -1.9; turn < 3; turn += 0.07 {
		h := Head{Base: pattern(t, "DT-TD-T-"), Turning: true, Turn: turn}
		p := drawn(&h)
		pearl := inked(p, InkSweep, KindDot)
		require.Len(t, pearl, 1)
		at, far := turnOf(pearl[0].X, pearl[0].Y)
		requireTurn(t, turn, at)
		require.InDelta(t, rimRadius, far, 1e-9)
		h.Turning = false
		require.Empty(t, inked(drawn(&h), InkSweep, KindDot))
	}
}

// A dum shines just after the sweep has passed it, the less the longer that is ago, and
// never before.
func TestDumsGlowOnceTheyArePassed(t *testing.T) {
	glows := func(turn float64) []Shape {
		var all []Shape
		for _, s := range inked(drawn(&Head{Base: pattern(t, "--D-"), Turning: true, Turn: turn}), InkBass, KindDot) {
			if s.R > dumSize {
				all = append(all, s)
			}
		}
		return all
	}
	require.Empty(t, glows(0.49))
	require.Len(t, glows(0.5), 1)
	require.Greater(t, glows(0.5)[0].Opacity, glows(0.55)[0].Opacity)
	require.Empty(t, glows(0.6))
}

// Marks of taps lie where they came and pale with the cycles, but stay to be seen.
func TestTapsPale(t *testing.T) {
	last := float32(1)
	for age := range 8 {
		p := drawn(&Head{Hidden: true, Taps: []Tap{{Turn: 2.3, Age: age}}})
		mark := inked(p, InkMark, KindLine)
		require.Len(t, mark, 1)
		at, _ := turnOf(mark[0].X, mark[0].Y)
		requireTurn(t, 0.3, at)
		require.LessOrEqual(t, mark[0].Opacity, last)
		require.GreaterOrEqual(t, mark[0].Opacity, float32(0.25))
		last = mark[0].Opacity
	}
}

// However offsets are enlarged in a review, no dum's scale reaches into its neighbour's.
func TestEnlargedLeavesRoom(t *testing.T) {
	chance := rand.New(rand.NewPCG(2, 2))
	for _, c := range everyRhythm(t) {
		for range 10 {
			h := Head{Base: c.Skeleton, Review: reviewBy(c, chance)}
			times := h.Enlarged()
			require.GreaterOrEqual(t, times, 1)
			require.LessOrEqual(t, times, 8)
			if times == 1 {
				continue // at its true angle, whatever there is room for
			}
			dums := c.Skeleton.Dums()
			for i := range dums {
				next := dums[(i+1)%len(dums)]
				apart := Wrap(float64(next-dums[i]) / float64(c.Steps()))
				if apart > 0 {
					require.Less(t, 2*h.turns(Reach)*float64(times), apart, c.ID)
				}
			}
			require.Contains(t, written(drawn(&h)), enlargements[times])
		}
	}
}

// In a review each tap lies to its side of the dum, the first cycle innermost; and a dum
// that was never tapped is open.
func TestReviewedTaps(t *testing.T) {
	h := &Head{Base: pattern(t, "D---D---"), Review: &Review{Steps: 32, StepTime: 250 * ms, On: 25 * ms,
		Landed:  []Landed{{0, -60 * ms}, {8, 60 * ms}, {16, 0}, {24, 500 * ms}},
		LeftOut: []int{4, 12, 20, 28}, Added: []float64{6.5}}}
	p := drawn(h)
	ahead, behind := inked(p, InkAhead, KindRing), inked(p, InkBehind, KindDot)
	require.Len(t, ahead, 1)
	require.Len(t, behind, 2)
	turn, inner := turnOf(ahead[0].X, ahead[0].Y)
	require.Greater(t, turn, 0.5, "before the top")
	turn, outer := turnOf(behind[0].X, behind[0].Y)
	require.Less(t, turn, 0.5, "after it")
	require.Less(t, inner, outer)
	far, _ := turnOf(behind[1].X, behind[1].Y)
	requireTurn(t, h.turns(Reach)*float64(h.Enlarged()), far, "what lies farther is drawn at the edge")
	require.Len(t, inked(p, InkBass, KindRing), 1, "the 3 was left out each time")
	require.Len(t, inked(p, InkBass, KindDot), 1)
	require.Len(t, inked(p, InkGood, KindLine), 1)
}

// A break that takes a whole cycle is a whole circle, and a part of one an arc.
func TestOpenCycles(t *testing.T) {
	for _, to := range []float64{0.5, 0.9, 1} {
		p := drawn(&Head{Base: pattern(t, "D-T-"), Riff: RiffCycle{Open: []RiffOpen{{0, to, false}}}})
		arcs, rings := 0, 0
		for _, s := range p.Shapes {
			if s.R == openRadius {
				arcs, rings = arcs+map[Kind]int{KindArc: 1}[s.Kind], rings+map[Kind]int{KindRing: 1}[s.Kind]
			}
		}
		require.Equal(t, [2]bool{to < 1, to == 1}, [2]bool{arcs == 1, rings == 1})
	}
}

// A roll goes from its stroke to its end without a gap, and grows as it swells.
func TestRollOnTheHead(t *testing.T) {
	part := riff.Part{Lead: []riff.Stroke{{Step: 4, Sound: rhythm.Tek, Strength: 0.2, Roll: 4 * riff.TicksPerStep, Swell: 1}}}
	p := drawn(&Head{Base: pattern(t, "DT-TD-T-"), Riff: RiffOf(part, 8, 0)})
	pieces := inked(p, InkLead, KindArc)
	require.Len(t, pieces, rollParts)
	require.InDelta(t, 0.5, pieces[0].From, 1e-9)
	require.InDelta(t, 1, pieces[rollParts-1].To, 0.001)
	for i := range pieces[1:] {
		require.Greater(t, pieces[i+1].Width, pieces[i].Width)
		require.InDelta(t, pieces[i].To, pieces[i+1].From, 0.001)
	}
}

// A turn comes between 0 and 1, whatever it is.
func TestWrap(t *testing.T) {
	for _, turn := range []float64{0, 0.25, -0.25, 1, -1, 17.75, -3.5, math.Nextafter(1, 0)} {
		got := Wrap(turn)
		require.True(t, got >= 0 && got < 1, turn)
		require.InDelta(t, 0, math.Mod(turn-got, 1), 1e-12)
	}
}

// How long an offset is on the head follows from the cycle's own time.
func TestTurnsOfTimes(t *testing.T) {
	h := Head{Base: pattern(t, "DT-TD-T-"), Review: &Review{StepTime: 250 * ms}}
	require.InDelta(t, 0.5, h.turns(time.Second), 1e-12)
	require.InDelta(t, -0.05, h.turns(-100*ms), 1e-12)
}
