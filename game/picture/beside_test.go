package picture

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// Laid one above another, rhythms stand under counts of the same length, whatever the
// length of their cycles, and each ring is a difference that the words tell of.
func TestBeside(t *testing.T) {
	all := map[string]*rhythm.Cycle{}
	for _, c := range everyRhythm(t) {
		all[c.ID] = c
	}
	for _, c := range []struct {
		ids    []string
		steps  int
		counts string // the first of them
		rings  []int  // how many in each line
	}{
		{[]string{"maqsum"}, 8, "1&2&", []int{0}},
		{[]string{"maqsum", "baladi"}, 8, "1&2&", []int{0, 1}},
		{[]string{"maqsum", "baladi", "saidi"}, 8, "1&2&", []int{0, 1, 2}},
		{[]string{"masmudi-kabir", "ciftetelli"}, 16, "1&2&", []int{0, 3}},
		{[]string{"maqsum", "masmudi-kabir"}, 16, "1&2&", []int{0, 8}},
		{[]string{"malfuf", "maqsum"}, 16, "1e&a", []int{0, 5}},
	} {
		var cycles []*rhythm.Cycle
		for _, id := range c.ids {
			cycles = append(cycles, all[id])
		}
		b := BesideOf(c.ids, cycles, 360)
		require.Len(t, b.Counts, c.steps, c.ids)
		require.Equal(t, c.counts, b.Counts[0]+b.Counts[1]+b.Counts[2]+b.Counts[3])
		for i := range c.ids {
			require.Len(t, b.Lines[i], c.steps)
			require.Len(t, b.Ringed(i), c.rings[i], "%v %d", c.ids, i)
			if i > 0 {
				require.Len(t, rhythm.Differ(cycles[i-1], cycles[i]), c.rings[i])
			}
		}
		p := &Picture{}
		b.Draw(p)
		require.Positive(t, p.Height)
	}
	require.Nil(t, BesideOf([]string{"maqsum", "karsilama"}, []*rhythm.Cycle{all["maqsum"], all["karsilama"]}, 0))
}

// The same in words: each line with its name, one alone without.
func TestBesideInWords(t *testing.T) {
	w := words(t)
	maqsum, baladi := cycle(t, "maqsum"), cycle(t, "baladi")
	require.Equal(t, "maqsum: Dum on 1 and 3; tek on 1 &, 2 & and 4. baladi: Dum on 1, 1 & and 3; tek on 2 & and 4.",
		BesideOf([]string{"maqsum", "baladi"}, []*rhythm.Cycle{maqsum, baladi}, 0).Twin(w))
	require.Equal(t, "Dum on 1 and 3; tek on 1 &, 2 & and 4.", BesideOf([]string{"maqsum"}, []*rhythm.Cycle{maqsum}, 0).Twin(w))
}
