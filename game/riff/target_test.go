package riff_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// bands are how much riffs of a level hide the base, whatever the rhythm and the
// seed, in thousandths at the rhythm's usual tempo: measured, then rounded outward
// to fifties. Each level may hide more than the one before and no less.
var bands = [levels][2]int{
	riff.Bare:       {0, 50},
	riff.Filled:     {0, 150},
	riff.Ornamented: {0, 250},
	riff.Riffing:    {50, 600},
	riff.Solo:       {300, 750},
}

func hideOf(t testing.TB, c *rhythm.Cycle, r riff.Riff, cycles int) int {
	t.Helper()
	p, err := r.Cycles(0, cycles)
	require.NoError(t, err)
	return riff.HideThousandths(c, p, c.Tempo.Usual)
}

// From level to level the base of every rhythm is hidden further, in the median of
// the seeds, and none leaves its level's band.
func TestLevelsHideMoreAndMore(t *testing.T) {
	for _, c := range supplied(t) {
		t.Run(c.ID, func(t *testing.T) {
			before := -1
			for level := range levels {
				var all []int
				for seed := range seeds() {
					r, err := riff.New(c, level, seed)
					require.NoError(t, err)
					all = append(all, hideOf(t, c, r, 16))
				}
				slices.Sort(all)
				require.GreaterOrEqual(t, all[0], bands[level][0], level)
				require.LessOrEqual(t, all[len(all)-1], bands[level][1], level)
				median := all[len(all)/2]
				require.Greater(t, median, before, level)
				before = median
				t.Logf("%v: %d to %d, median %d", level, all[0], all[len(all)-1], median)
			}
		})
	}
}

// What is asked for is met within 0.05 wherever it lies between the least and the
// most that the seed's riffs hide at the level.
func TestHiddenComesNear(t *testing.T) {
	const cycles = 16
	for _, c := range supplied(t) {
		for level := riff.Ornamented; level < levels; level++ {
			for seed := range 1 + seeds()/25 {
				hidden := func(target int) int {
					r, err := riff.Hidden(c, level, cycles, seed, float64(target)/1000, c.Tempo.Usual)
					require.NoError(t, err)
					return hideOf(t, c, r, cycles)
				}
				least, most := hidden(0), hidden(1000)
				require.Less(t, least, most)
				for target := least; target <= most; target += max(1, (most-least)/5) {
					require.InDelta(t, target, hidden(target), 50, "%s %v %d", c.ID, level, seed)
				}
			}
		}
	}
}

func TestHiddenIsOneOfTheSeed(t *testing.T) {
	maqsum := cycle(t, "4/4", "DT-TD-T-")
	r, err := riff.Hidden(maqsum, riff.Riffing, 16, 7, 0.3, 90)
	require.NoError(t, err)
	again, err := riff.Hidden(maqsum, riff.Riffing, 16, 7, 0.3, 90)
	require.NoError(t, err)
	first, err := r.Cycles(0, 16)
	require.NoError(t, err)
	second, err := again.Cycles(0, 16)
	require.NoError(t, err)
	require.Equal(t, first, second)
	played, err := riff.PlayHidden(maqsum, riff.Riffing, 16, 7, 0.3, 90)
	require.NoError(t, err)
	require.Equal(t, first, played)
	other, err := riff.PlayHidden(maqsum, riff.Riffing, 16, 8, 0.3, 90)
	require.NoError(t, err)
	require.NotEqual(t, first, other)

	for level := range riff.Ornamented { // what is written hides what it hides
		r, err := riff.Hidden(maqsum, level, 16, 7, 0.9, 90)
		require.NoError(t, err)
		played, err := r.Cycles(0, 16)
		require.NoError(t, err)
		plain, err := riff.Play(maqsum, level, 16, 0)
		require.NoError(t, err)
		require.Equal(t, plain, played)
	}
	_, err = riff.Hidden(maqsum, riff.Solo+1, 16, 7, 0.3, 90)
	require.ErrorContains(t, err, "is not available")
	for _, cycles := range []int{0, riff.MaxCycles + 1} {
		_, err = riff.PlayHidden(maqsum, riff.Solo, cycles, 7, 0.3, 90)
		require.EqualError(t, err, fmt.Sprintf("%d cycles; a part has 1 to 10000", cycles))
	}
}

// BenchmarkHidden finds a riff that is there to be found, and one that is not.
func BenchmarkHidden(b *testing.B) {
	for _, target := range []float64{0.35, 0.95} {
		b.Run(fmt.Sprint(target), func(b *testing.B) {
			all := supplied(b)
			for i := range b.N {
				c := all[i%len(all)]
				if _, err := riff.Hidden(c, riff.Riffing, 32, uint64(i), target, c.Tempo.Usual); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
