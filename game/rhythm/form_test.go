package rhythm_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// rests is a pattern of so many steps.
func rests(steps int) rhythm.Pattern {
	p := make(rhythm.Pattern, steps)
	for i := range p {
		p[i] = rhythm.Rest
	}
	return p
}

// Words for the parts of a beat: e and a for sixteenths are common practice;
// there is none for their halves.
func TestFormCount(t *testing.T) {
	tests := []struct {
		id         string
		steps      int
		count      string // of one cycle
		inEight    string // of the second cycle
		spokenLast string
	}{
		{"maqsum", 4, "1 2 3 4", "5 6 7 8", "4"},
		{"maqsum", 8, "1 & 2 & 3 & 4 &", "5 & 6 & 7 & 8 &", "the & of 4"},
		{"maqsum", 16, "1 e & a 2 e & a 3 e & a 4 e & a", "5 e & a 6 e & a 7 e & a 8 e & a", "the a of 4"},
		{"malfuf", 16, "1  e  &  a  2  e  &  a ", "3  e  &  a  4  e  &  a ", "just after the a of 2"},
		{"karsilama", 18, "1 & 2 & 3 & 4 & 5 & 6 & 7 & 8 & 9 &", "1 & 2 & 3 & 4 & 5 & 6 & 7 & 8 & 9 &", "the & of 9"},
	}
	for _, tt := range tests {
		t.Run(fmt.Sprint(tt.id, tt.steps), func(t *testing.T) {
			f := shape(t, tt.id).Form(rests(tt.steps))
			n := f.Steps()
			require.Equal(t, tt.steps, n)
			require.Equal(t, tt.count, counts(f.Count, 0, n))
			require.Equal(t, tt.count, counts(f.Count, -n, 0), "the cycle before")
			require.Equal(t, tt.inEight, counts(f.CountInEight, n, 2*n))
			require.Equal(t, tt.spokenLast, f.Spoken(n-1))
			require.Equal(t, tt.spokenLast, f.Spoken(-1))
		})
	}
	require.Equal(t, "just after 1", shape(t, "malfuf").Form(rests(16)).Spoken(1))
}

// On every form the words name one step and no other, and a step that the
// skeleton has too is called the same and comes at the same time.
func TestFormAgreesWithSkeleton(t *testing.T) {
	for id := range shapes {
		c := shape(t, id)
		for _, scale := range []int{1, 2} {
			f := c.Form(rests(scale * c.Steps()))
			require.Equal(t, scale*c.StepsPerBeat(), f.StepsPerBeat())
			seen := map[string]bool{}
			for step := range f.Steps() {
				require.False(t, seen[f.Spoken(step)], "%s: %s", id, f.Spoken(step))
				seen[f.Spoken(step)] = true
			}
			for step := -9; step < 40; step++ {
				require.Equal(t, c.Base().Count(step), f.Count(scale*step))
				require.Equal(t, c.CountInEight(step), f.CountInEight(scale*step))
				require.Equal(t, c.Spoken(step), f.Spoken(scale*step))
				require.Equal(t, c.At(step, 97), f.At(scale*step, 97))
			}
		}
	}
}

func TestFormAt(t *testing.T) {
	f := shape(t, "malfuf").Form(rests(16)) // 60 s / (120 · 8) = 62.5 ms
	require.Equal(t, 62_500*time.Microsecond, f.At(1, 120))
	require.Equal(t, -62_500*time.Microsecond, f.At(-1, 120))
	require.Panics(t, func() { f.At(1, 0) })
}

func TestFormRefuses(t *testing.T) {
	c := shape(t, "maqsum")
	for _, steps := range []int{0, 7, 12, 64} {
		require.Panics(t, func() { c.Form(rests(steps)) }, "%d steps", steps)
	}
	require.Equal(t, c.Form(c.Skeleton), c.Base())
}
