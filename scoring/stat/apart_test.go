package stat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"groundbeat/scoring"
)

// The critical points: for many values those that S. Siegel and N. J. Castellan,
// Nonparametric Statistics for the Behavioral Sciences, 2nd ed., 1988, table A.II, print for
// so many comparisons, 5 % to both sides; for few values Student's quantiles of gonum.
func TestApartCriticalPoints(t *testing.T) {
	for groups, want := range map[int]float64{2: 1.960, 3: 2.394, 4: 2.498, 5: 2.576, 6: 2.638} {
		require.InDelta(t, want, together(1e9, groups), 6e-4)
		for _, freedom := range []float64{4, 6, 9, 21, 45} {
			parts := float64(groups)
			if groups == 2 {
				parts = 1
			}
			quantile := distuv.StudentsT{Sigma: 1, Nu: freedom}.Quantile(1 - .025/parts)
			require.InDelta(t, quantile, together(freedom, groups), 1e-8)
		}
	}
}

// Worked by hand: two groups are Student's two-sample test, of three each is held
// against the mean of all values of the other two.
func TestApartByHand(t *testing.T) {
	two := Apart([]Group{{4, 10, 2}, {6, 16, 3}})
	// s² = (3·4 + 5·9)/8 = 7.125; √(s² (1/4+1/6)) = 1.7230; t(8) = 2.3060.
	require.InDelta(t, -6, two[0].Value, 1e-12)
	require.InDelta(t, 6, two[1].Value, 1e-12)
	require.InDelta(t, 6-2.3060*1.7230, two[1].Low, 1e-3)
	three := Apart([]Group{{3, 1, 2}, {4, 5, 2}, {5, 9, 2}, {}})
	// The others' means: (20+45)/9, (3+45)/8, (3+20)/7; a group without values is none.
	require.InDelta(t, 1-65./9, three[0].Value, 1e-12)
	require.InDelta(t, 5-6, three[1].Value, 1e-12)
	require.InDelta(t, 9-23./7, three[2].Value, 1e-12)
	half := distuv.StudentsT{Sigma: 1, Nu: 9}.Quantile(1-.025/3) * 2 * math.Sqrt(1./4+1./8)
	require.InDelta(t, half, three[1].High-three[1].Value, 1e-8)
	require.Equal(t, scoring.Unknown(0, LeastApart), three[3])
}

func TestApartUnknown(t *testing.T) {
	for _, groups := range [][]Group{nil, {{8, 3, 1}}, {{2, 3, 1}, {8, 1, 1}}, {{8, 3, 0}, {8, 1, 0}}} {
		for k, e := range Apart(groups) {
			require.False(t, e.Known && groups[k].N < LeastApart, "%v", groups)
		}
	}
	require.False(t, Apart([]Group{{8, 3, 1}})[0].Known, "it has no others")
	require.False(t, Apart([]Group{{2, 3, 1}, {8, 1, 1}})[1].Known, "of the others there are too few")
	require.Panics(t, func() { Apart([]Group{{3, math.NaN(), 1}}) })
}

// All intervals together hold the true differences in 95 of 100 cases or more, whatever
// the groups have in common and however large they are.
func TestApartHoldsTogether(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	const runs = 4000
	for _, sizes := range [][]int{{4, 4}, {3, 9}, {4, 4, 4}, {3, 8, 8}, {6, 6, 6, 6, 6}} {
		wrong := 0
		for range runs {
			groups := make([]Group, len(sizes))
			for k, n := range sizes {
				x := make([]float64, n)
				for i := range x {
					x[i] = 40 + 25*r.NormFloat64()
				}
				groups[k].N = n
				groups[k].Mean, groups[k].Spread = meanDeviation(x)
			}
			for _, e := range Apart(groups) {
				if e.Excludes(0) {
					wrong++
					break
				}
			}
		}
		// 5 %, less what Bonferroni's inequality gives away; 4,000 runs are right to ± 1 %.
		require.InDelta(t, .044, float64(wrong)/runs, .014, "%v", sizes)
	}
}

// Fisher's tasting of eight cups, four of a kind (The design of experiments, 1935,
// §11): all four right is 1 of 70 by chance, three or more 17 of 70.
func TestLeftOutFisher(t *testing.T) {
	require.InDelta(t, 1./70, atLeast(4, 4, 4, 8), 1e-15)
	require.InDelta(t, 17./70, atLeast(3, 4, 4, 8), 1e-15)
}

func TestLeftOut(t *testing.T) {
	for _, c := range []struct {
		out, asked []int
		want       int
	}{
		{[]int{0, 4}, []int{4, 4}, 1},        // 2·1/70 is below 5 %
		{[]int{0, 3}, []int{4, 4}, -1},       // 2·4/56 is above
		{[]int{3, 0, 0}, []int{4, 4, 4}, -1}, // 3·4/220 is above
		{[]int{1, 6}, []int{8, 8}, 1},        // 2·(8·28 + 8)/11440 is below
		{[]int{2, 3}, []int{8, 8}, -1},       // by chance
		{[]int{4}, []int{4}, -1},             // it has no others
		{[]int{0, 0}, []int{4, 4}, -1},       // nothing is left out
		{[]int{4, 4}, []int{4, 4}, -1},       // all are
		{[]int{0, 4, 0}, []int{4, 4, 0}, 1},  // of a kind that is not asked for nothing is told
		{[]int{2, 0, 0}, []int{16, 16, 16}, -1},
	} {
		require.Equal(t, c.want, LeftOut(c.out, c.asked), "%v of %v", c.out, c.asked)
	}
	require.Panics(t, func() { LeftOut([]int{1}, nil) })
	require.Panics(t, func() { LeftOut([]int{3}, []int{2}) })
}
