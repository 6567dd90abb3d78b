package picture

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// The result of each stroke is what counting tap by tap makes it.
func TestTallyCountsTaps(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 1))
	for _, c := range everyRhythm(t) {
		r := reviewBy(c, chance)
		tally := r.Tally(c.Skeleton, CountsOf(c.Base()))
		require.Len(t, tally, len(c.Dums()), c.ID)
		tapped := 0
		for i, step := range c.Dums() {
			var offsets []float64
			for _, l := range r.Landed {
				if l.Step%c.Steps() == step {
					offsets = append(offsets, float64(l.Offset))
				}
			}
			mean, spread := meanAndSpread(offsets)
			require.Equal(t, r.Steps/c.Steps(), tally[i].Asked)
			require.Equal(t, len(offsets), tally[i].Tapped)
			require.InDelta(t, mean, float64(tally[i].Mean), 1)
			require.InDelta(t, spread, float64(tally[i].Spread), 2)
			require.Equal(t, CountName(CountsOf(c.Base()), step), tally[i].Count)
			tapped += len(offsets)
		}
		require.Equal(t, len(r.Landed), tapped, "each tap is told once")
	}
}

// meanAndSpread are by their definition: the sum over n, and the square root of the sum of
// squares about it over n − 1.
func meanAndSpread(all []float64) (mean, spread float64) {
	if len(all) == 0 {
		return 0, 0
	}
	for _, v := range all {
		mean += v / float64(len(all))
	}
	if len(all) < 2 {
		return mean, 0
	}
	for _, v := range all {
		spread += (v - mean) * (v - mean) / float64(len(all)-1)
	}
	return mean, math.Sqrt(spread)
}

// Where a break or a roll is open no stroke is asked for.
func TestTallyLeavesOutOpenSteps(t *testing.T) {
	base := pattern(t, "D---D---")
	r := &Review{Steps: 32, Open: []OpenSteps{{From: 4, To: 8}, {From: 16, To: 21}}}
	tally := r.Tally(base, inFour)
	require.Equal(t, [2]int{3, 2}, [2]int{tally[0].Asked, tally[1].Asked})
	r.Open = append(r.Open, OpenSteps{From: 0, To: 32})
	tally = r.Tally(base, inFour)
	require.Equal(t, [2]int{0, 0}, [2]int{tally[0].Asked, tally[1].Asked})
}

// What is asked for may be other strokes than the dums.
func TestReviewOfOtherStrokes(t *testing.T) {
	r := &Review{Steps: 8, Asks: rhythm.Stroke.Sounds, Landed: []Landed{{1, 10 * ms}, {3, -10 * ms}}}
	base := pattern(t, "DT-TD-T-")
	tally := r.Tally(base, inFour)
	require.Len(t, tally, 5)
	require.Equal(t, []int{0, 1, 1, 0, 0}, []int{tally[0].Tapped, tally[1].Tapped, tally[2].Tapped, tally[3].Tapped, tally[4].Tapped})
	require.Equal(t, 1, r.gap(base, 0))
	r.Asks = nil
	require.Len(t, r.Tally(base, inFour), 2)
	require.Equal(t, 4, r.gap(base, 0))
}

// Of some stretches of a round, one after the other, everything that lies in them is kept
// at its place within them, and nothing else.
func TestOnlyKeepsWhatLiesInIt(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 2))
	for _, c := range everyRhythm(t) {
		r := reviewBy(c, chance)
		n := c.Steps()
		var from []int
		for first := 0; first+n <= r.Steps; first += n * (1 + chance.IntN(2)) {
			from = append(from, first)
		}
		only := r.Only(from, n)
		require.Equal(t, len(from)*n, only.Steps)
		require.Equal(t, r.On, only.On)
		require.Equal(t, r.StepTime, only.StepTime)
		landed, out, added := 0, 0, 0
		for i, first := range from {
			in := func(step float64) bool { return step >= float64(first) && step < float64(first+n) }
			for _, l := range r.Landed {
				if in(float64(l.Step)) {
					require.Contains(t, only.Landed, Landed{l.Step - first + i*n, l.Offset})
					landed++
				}
			}
			for _, step := range r.LeftOut {
				if in(float64(step)) {
					require.Contains(t, only.LeftOut, step-first+i*n)
					out++
				}
			}
			for _, at := range r.Added {
				if in(at) {
					require.Contains(t, only.Added, at+float64(i*n-first))
					added++
				}
			}
		}
		require.Equal(t, [3]int{landed, out, added}, [3]int{len(only.Landed), len(only.LeftOut), len(only.Added)}, c.ID)
	}
	require.Equal(t, &Review{}, (&Review{Landed: []Landed{{1, 0}}}).Only(nil, 8))
}

// The whole of a round is all of it.
func TestOnlyAllIsAll(t *testing.T) {
	r := played()
	require.Equal(t, r, r.Only([]int{0}, r.Steps))
}

// How far an offset goes of what there is room for: linear, and held at both ends.
func TestPart(t *testing.T) {
	for d := -200 * ms; d <= 200*ms; d += 7 * ms {
		require.InDelta(t, max(-1, min(1, float64(d/ms)/100)), part(d), 1e-12)
	}
	require.Equal(t, []float64{-1, 0, 1}, []float64{part(-Reach), part(0), part(time.Hour)})
}

// How many cycles a round has: also a last one that is cut short, and one at least.
func TestCyclesOfARound(t *testing.T) {
	for steps, want := range map[int]int{0: 1, 1: 1, 8: 1, 9: 2, 16: 2, 64: 8} {
		require.Equal(t, want, (&Review{Steps: steps}).cycles(8), steps)
	}
}

// A tap is on its stroke up to the limit and at it; ahead and behind beyond, each by a
// mark and an ink of its own, so that no eye needs the colour.
func TestTapMarks(t *testing.T) {
	for _, c := range []struct {
		offset time.Duration
		ink    Ink
		kind   Kind
	}{{-26 * ms, InkAhead, KindRing}, {-25 * ms, InkGood, KindLine}, {0, InkGood, KindLine}, {25 * ms, InkGood, KindLine}, {25*ms + 1, InkBehind, KindDot}} {
		p := &Picture{}
		p.TapMark(0.5, 0.4, 0.1, 1, 0, c.offset, 25*ms)
		require.Len(t, p.Shapes, 1)
		require.Equal(t, []any{c.ink, c.kind}, []any{p.Shapes[0].Ink, p.Shapes[0].Kind}, c.offset)
	}
}

// A tap on its stroke is a bar across the direction of time, a stroke left out a dash
// along it, and an added tap is a plus.
func TestMarksByDirection(t *testing.T) {
	for _, along := range [][2]float64{{1, 0}, {0, 1}, {0.6, 0.8}} {
		p := &Picture{}
		p.TapMark(0.5, 0.4, 0.1, along[0], along[1], 0, 25*ms)
		p.leftOutMark(place{0.5, 0.4, 0.1, along[0], along[1]})
		across, dash := p.Shapes[0], p.Shapes[1]
		require.InDelta(t, 0, (across.X2-across.X)*along[0]+(across.Y2-across.Y)*along[1], 1e-12)
		require.InDelta(t, 0.2, math.Hypot(across.X2-across.X, across.Y2-across.Y), 1e-12)
		require.InDelta(t, 0.2, (dash.X2-dash.X)*along[0]+(dash.Y2-dash.Y)*along[1], 1e-12)
		for _, s := range p.Shapes {
			require.InDelta(t, 0.5, (s.X+s.X2)/2, 1e-12)
			require.InDelta(t, 0.4, (s.Y+s.Y2)/2, 1e-12)
		}
	}
	p := &Picture{}
	p.addedMark(0.5, 0.4, 0.1)
	require.Len(t, p.Shapes, 2)
	require.InDelta(t, 0, (p.Shapes[0].X2-p.Shapes[0].X)*(p.Shapes[1].X2-p.Shapes[1].X), 1e-12, "one lies, one stands")
}

// Whole milliseconds have a sign but for none, and a true minus.
func TestMilliseconds(t *testing.T) {
	for d, want := range map[time.Duration]string{38 * ms: "+38", -12 * ms: "−12", 0: "0", 499 * time.Microsecond: "0", -499 * time.Microsecond: "0",
		500 * time.Microsecond: "+1", -500 * time.Microsecond: "−1"} {
		require.Equal(t, want, Milliseconds(d))
	}
}

// The nearest stroke of some sort, going round, by looking at every other step.
func TestGapGoesRound(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 3))
	for range 300 {
		base := make(rhythm.Pattern, 1+chance.IntN(16))
		for i := range base {
			base[i] = []rhythm.Stroke{rhythm.Dum, rhythm.Tek, rhythm.Rest}[chance.IntN(3)]
		}
		for step := range base {
			least := len(base)
			for i, s := range base {
				if apart := max(i-step, step-i); i != step && s.Low() {
					least = min(least, apart, len(base)-apart)
				}
			}
			require.Equal(t, least, Gap(base, step, rhythm.Stroke.Low), "%s %d", base, step)
		}
	}
}

// Every step of every rhythm has a count that is said by itself, no two of one cycle
// alike, and a beat is said as its figure.
func TestCountNamesDiffer(t *testing.T) {
	for _, c := range everyRhythm(t) {
		counts := CountsOf(c.Base())
		var names []string
		for i := range counts {
			name := CountName(counts, i)
			require.NotContains(t, names, name, c.ID)
			names = append(names, name)
			if i%c.StepsPerBeat() == 0 {
				require.Equal(t, strconv.Itoa(i/c.StepsPerBeat()+1), name, c.ID)
			}
		}
	}
	require.False(t, slices.ContainsFunc([]string{"", "&", "e", "a"}, IsBeat))
	require.True(t, IsBeat("12"))
}
