package rhythm_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// pulses reads "x..x" or "1001".
func pulses(s string) rhythm.Pulses {
	var p rhythm.Pulses
	for _, r := range s {
		p = append(p, r == 'x' || r == '1')
	}
	return p
}

// A rhythm set is named strings, in the order of the rows of its matrices.
type rhythmSet []struct{ name, text string }

// Toussaint's standard test set (Gómez, Melvin, Rappaport & Toussaint 2005,
// Mathematical measures of syncopation).
var timelines = rhythmSet{
	{"shiko", "x...x.x...x.x..."}, {"son", "x..x..x...x.x..."}, {"soukous", "x..x..x...xx...."},
	{"rumba", "x..x...x..x.x..."}, {"bossa", "x..x..x...x..x.."}, {"gahu", "x..x..x...x...x."},
}

// Díaz-Báñez, Farigu, Gómez, Rappaport & Toussaint 2004, El compás flamenco: a
// phylogenetic analysis, BRIDGES, 61–70.
var flamenco = rhythmSet{
	{"soleá", "..x..x.x.x.x"}, {"bulería", "..x...xx.x.x"}, {"seguiriya", "x.x.x..x..x."},
	{"guajira", "x..x..x.x.x."}, {"fandango", "x..x..x..x.."},
}

// Toussaint 2005, Classification and phylogenetic analysis of African ternary
// rhythm timelines.
var bells = rhythmSet{
	{"soli", "x.x.x.x.xx.x"}, {"tambú", "x.x.x.xx.x.x"}, {"bembé", "x.x.xx.x.x.x"}, {"bembé-2", "xx.x.xx.x.x."},
	{"yoruba", "x.x.xx.x.xx."}, {"tonada", "x.xx.xx.x.x."}, {"asaadua", "x.x.x.xx.xx."}, {"sorsonet", "xxx.x.x.x.x."},
	{"bemba", "x.xx.x.x.xx."}, {"ashanti", "x.xx.x.xx.x."},
}

// The flamenco matrices of directed swap and (linear) chronotonic distance are
// those of the 2004 paper's talk; its transcript prints 25 for the first sum of
// directed swaps, but its own row sums to 26. The other matrices are computed
// from Toussaint 2004, A comparison of rhythmic similarity measures, by another
// program in Python that tries every assignment; their qualitative result, the
// son having the smallest sum, is the paper's. The sums of a matrix are its
// last column.
func TestPublishedMatrices(t *testing.T) {
	tests := []struct {
		name     string
		set      rhythmSet
		distance func(a, b rhythm.Pulses) int
		want     string
	}{
		{"Hamming", timelines, func(a, b rhythm.Pulses) int { return rhythm.Hamming(a, b) }, `
			0 2 4 4 4 4 18 | 2 0 2 2 2 2 10 | 4 2 0 4 2 2 14 | 4 2 4 0 4 4 18 | 4 2 2 4 0 2 14 | 4 2 2 4 2 0 14`},
		{"swap", timelines, rhythm.Swap, `
			0 1 2 2 2 3 10 | 1 0 1 1 1 2 6 | 2 1 0 2 2 3 10 | 2 1 2 0 2 3 10 | 2 1 2 2 0 1 8 | 3 2 3 3 1 0 12`},
		{"directed swap of as many onsets is swap", timelines, rhythm.DirectedSwap, `
			0 1 2 2 2 3 10 | 1 0 1 1 1 2 6 | 2 1 0 2 2 3 10 | 2 1 2 0 2 3 10 | 2 1 2 2 0 1 8 | 3 2 3 3 1 0 12`},
		{"chronotonic", timelines, rhythm.Chronotonic, `
			0 6 14 10 12 14 56 | 6 0 8 6 6 8 34 | 14 8 0 14 12 12 60 | 10 6 14 0 12 14 56 | 12 6 12 12 0 6 48 | 14 8 12 14 6 0 54`},
		{"edit", timelines, func(a, b rhythm.Pulses) int { return rhythm.Edit(a, b) }, `
			0 2 4 3 4 4 17 | 2 0 2 2 2 2 10 | 4 2 0 4 2 2 14 | 3 2 4 0 4 4 17 | 4 2 2 4 0 2 14 | 4 2 2 4 2 0 14`},
		{"directed swap", flamenco, rhythm.DirectedSwap, `
			0 1 11 7 7 26 | 1 0 12 8 8 29 | 11 12 0 4 4 31 | 7 8 4 0 2 21 | 7 8 4 2 0 21`},
		{"chronotonic, linear", flamenco, rhythm.LinearChronotonic, `
			0 6 8 4 10 28 | 6 0 12 8 14 40 | 8 12 0 8 6 34 | 4 8 8 0 6 26 | 10 14 6 6 0 36`},
		{"chronotonic, cyclic (computed)", flamenco, rhythm.Chronotonic, `
			0 6 10 2 6 24 | 6 0 14 6 10 36 | 10 14 0 8 6 38 | 2 6 8 0 6 22 | 6 10 6 6 0 28`},
		{"swap of bells", bells, rhythm.Swap, `
			0 1 2 7 3 6 2 9 4 5 39 | 1 0 1 6 2 5 1 8 3 4 31 | 2 1 0 5 1 4 2 7 2 3 27 | 7 6 5 0 4 1 5 2 3 2 35
			| 3 2 1 4 0 3 1 6 1 2 23 | 6 5 4 1 3 0 4 3 2 1 29 | 2 1 2 5 1 4 0 7 2 3 27 | 9 8 7 2 6 3 7 0 5 4 51
			| 4 3 2 3 1 2 2 5 0 1 23 | 5 4 3 2 2 1 3 4 1 0 25`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rows := strings.Split(tt.want, "|")
			require.Len(t, rows, len(tt.set))
			for i, a := range tt.set {
				var row []int
				sum := 0
				for _, b := range tt.set {
					d := tt.distance(pulses(a.text), pulses(b.text))
					row, sum = append(row, d), sum+d
				}
				require.Equal(t, ints(t, rows[i]), append(row, sum), a.name)
			}
		})
	}
}

// The library Beatsearch (Tomasito665/Beatsearch on GitHub) has this case among
// its tests.
func TestHammingOfALibrary(t *testing.T) {
	require.Equal(t, 3, rhythm.Hamming(pulses("1001000100101000"), pulses("1001001000101001")))
}

// Every order and no order: the fewest moves over all assignments of onsets,
// tried one by one.
func TestDirectedSwapAgainstEveryAssignment(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		n := 1 + random.IntN(9)
		a, b := make(rhythm.Pulses, n), make(rhythm.Pulses, n)
		for i := range n {
			a[i], b[i] = random.IntN(2) == 0, random.IntN(3) == 0
		}
		from, to := a.Onsets(), b.Onsets()
		if len(from) < len(to) {
			from, to = to, from
		}
		if len(to) > 0 {
			require.Equal(t, fewestMoves(from, to, make([]int, len(to))), rhythm.DirectedSwap(a, b), "%v %v", a, b)
		}
		require.Equal(t, rhythm.DirectedSwap(a, b), rhythm.DirectedSwap(b, a))
	}
}

func fewestMoves(from, to, taken []int) int {
	if len(from) == 0 {
		for _, n := range taken {
			if n == 0 {
				return 1 << 20 // one of them has no onset
			}
		}
		return 0
	}
	best := 1 << 20
	for i, t := range to {
		taken[i]++
		best = min(best, max(t-from[0], from[0]-t)+fewestMoves(from[1:], to, taken))
		taken[i]--
	}
	return best
}

// Rhythms without onsets, by what the comments promise.
func TestSilence(t *testing.T) {
	silence, two := pulses("...."), pulses("x.x.")
	require.Zero(t, rhythm.DirectedSwap(silence, silence))
	require.Equal(t, 8, rhythm.DirectedSwap(silence, two))
	require.Equal(t, 8, rhythm.DirectedSwap(two, silence))
	require.Equal(t, 8, rhythm.Chronotonic(silence, two), "one interval of 4 against 2, over 4 pulses")
	require.Equal(t, 8, rhythm.LinearChronotonic(silence, two))
	require.Equal(t, 2, rhythm.Edit(nil, silence[:2]))
	require.Empty(t, silence.Onsets())
}

func TestSimilarityRefuses(t *testing.T) {
	short, long := pulses("x.x"), pulses("x.x.")
	for name, measure := range map[string]func(a, b rhythm.Pulses) int{
		"swap": rhythm.Swap, "directed swap": rhythm.DirectedSwap,
		"chronotonic": rhythm.Chronotonic, "linear": rhythm.LinearChronotonic,
		"Hamming": func(a, b rhythm.Pulses) int { return rhythm.Hamming(a, b) },
	} {
		require.Panics(t, func() { measure(short, long) }, name)
	}
	require.Panics(t, func() { rhythm.Swap(pulses("xxx"), short) }, "3 onsets against 2")
}
