package roundview

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// Each stroke and each added tap is listed once, in the order of time, with its count and
// what became of it.
func TestOneByOneListsAll(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 1))
	for _, c := range everyRhythm(t) {
		for range 3 {
			v := ReviewOf(playedBy(t, c, chance))
			perEight := c.CyclesIn(1) * c.Steps()
			all := OneByOne(v, c.CountInEight, perEight)
			require.Len(t, all, len(v.Landed)+len(v.LeftOut)+len(v.Added), c.ID)
			n := map[TapState]int{}
			for i, r := range all {
				n[r.State]++
				require.GreaterOrEqual(t, r.Eight, 1)
				require.LessOrEqual(t, r.Eight, v.Steps/perEight+1)
				require.NotEmpty(t, r.Count)
				require.True(t, picture.IsBeat(r.Count), "%q is said with its beat", r.Count)
				if i > 0 {
					require.GreaterOrEqual(t, r.Eight, all[i-1].Eight, "in the order of time")
				}
				switch r.State {
				case TapOn:
					require.LessOrEqual(t, r.Offset.Abs(), v.On)
				case TapAhead:
					require.Less(t, r.Offset, -v.On)
				case TapBehind:
					require.Greater(t, r.Offset, v.On)
				default:
					require.Zero(t, r.Offset)
				}
			}
			require.Equal(t, len(v.LeftOut), n[TapLeftOut])
			require.Equal(t, len(v.Added), n[TapAdded])
		}
	}
}

// A tap before the first stroke is in the first eight.
func TestTapBeforeTheFirst(t *testing.T) {
	c := supplied(t, "maqsum")
	all := OneByOne(&picture.Review{Steps: 16, On: 25 * ms, Added: []float64{-2.2}, LeftOut: []int{0}}, c.CountInEight, 16)
	require.Equal(t, TapAdded, all[0].State)
	require.Equal(t, 1, all[0].Eight)
	require.Equal(t, TapResult{Eight: 1, Count: "1", State: TapLeftOut}, all[1])
}

// What is told of a round in figures is what its taps make it.
func TestResultFollowsFromTaps(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 2))
	for _, c := range everyRhythm(t) {
		for range 4 {
			r := playedBy(t, c, chance)
			v := ReviewOf(r)
			out := ResultOf(r, v)
			require.Equal(t, len(r.Strokes()), out.Asked, c.ID)
			require.Equal(t, out.Asked, out.Landed+out.LeftOut)
			require.Equal(t, len(r.Taps()), out.Landed+out.Added)
			on, tapped, asked := 0, 0, 0
			for _, l := range v.Landed {
				require.True(t, c.Skeleton[l.Step%c.Steps()].Low(), "a tap belongs to a dum")
				if l.Offset.Abs() <= v.On {
					on++
				}
			}
			for _, k := range out.Counts {
				tapped, asked = tapped+k.Tapped, asked+k.Asked
				require.LessOrEqual(t, k.Tapped, k.Asked)
			}
			require.Equal(t, on, out.On)
			require.Equal(t, [2]int{out.Landed, out.Asked}, [2]int{tapped, asked}, "count by count it is the whole: %s", c.ID)
			require.Len(t, out.Open, len(v.Open))
		}
	}
}

// The lean of a round is the mean of its offsets, but for strokes that are left aside;
// without any nothing is known.
func TestLeanOf(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 3))
	for range 20 {
		r := playedBy(t, supplied(t, "maqsum"), chance)
		sum, n := 0., 0
		for _, p := range r.Result().Pairs {
			if p.Stroke%2 == 0 {
				sum, n = sum+float64(p.Offset-r.Result().Setup)/float64(time.Millisecond), n+1
			}
		}
		lean := leanOf(r, func(stroke int) bool { return stroke%2 == 1 })
		require.Equal(t, n, lean.N)
		require.False(t, lean.Known && n == 0)
		if lean.Known {
			require.InDelta(t, sum/float64(n), lean.Value, 1e-6)
		}
		require.False(t, leanOf(r, func(int) bool { return true }).Known)
	}
}

// Whatever was tapped there is one finding, and praise only where three of four dums or
// more are on them; to Set-up it leads only where that can help.
func TestFindingOfAnything(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(3, 4))
	steady := 0
	for _, c := range everyRhythm(t) {
		for range 6 {
			r := playedBy(t, c, chance)
			out := ResultOf(r, ReviewOf(r))
			for _, out.Measured = range []bool{false, true} {
				text := Finding(*out, w)
				require.NotEmpty(t, text)
				require.NotContains(t, text, "{")
				if text == out.says(w, foundSteady, "n", out.On, "of", out.Asked) {
					steady++
					require.GreaterOrEqual(t, 4*out.On, 3*out.Asked)
				}
				if out.Measured && out.Far == nil {
					require.Equal(t, view.RoleNone, out.remedy(w).Role, "a set-up is kept")
				}
			}
		}
	}
	require.Positive(t, steady)
}

// A spread is wide from where it is told, and only if by more than chance it is wider than
// usual.
func TestWide(t *testing.T) {
	for _, c := range []struct {
		value, low float64
		want       bool
	}{{40, 31, true}, {39.9, 31, false}, {40, 30, false}, {80, 29, false}, {80, 60, true}} {
		require.Equal(t, c.want, wide(scoring.Estimated(c.value, c.low, 2*c.value, 10, 6)), "%+v", c)
	}
	require.False(t, wide(scoring.Unknown(3, 6)))
}

// The tempo of somebody's own is said to a tenth of a hundredth, to its side; what rounds
// to none is the same.
func TestSayTempo(t *testing.T) {
	w := words(t)
	for share := -0.05; share <= 0.05; share += 0.00037 {
		said := sayTempo(w, share)
		same := math.Abs(share) < 0.0005
		require.Equal(t, same, said == w.Say("carry-same"), "%v: %s", share, said)
		if !same {
			side := w.Say("carry-slower", "percent", sayPercent(share))
			if share < 0 {
				side = w.Say("carry-faster", "percent", sayPercent(share))
			}
			require.Equal(t, side, said)
			require.NotContains(t, said, "-")
		}
	}
}
