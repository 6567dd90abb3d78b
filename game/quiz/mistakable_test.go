package quiz

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

func TestMistakable(t *testing.T) {
	for _, tt := range []struct {
		name string
		a, b *rhythm.Cycle
		want bool
	}{
		{"the same at twice the speed", get(t, "maqsum"), get(t, "fallahi"), true},
		{"the same at half the speed", get(t, "baladi"), get(t, "masmudi-kabir"), true},
		{"the same at half the speed, shorter", get(t, "malfuf"), get(t, "wahda"), true},
		{"one stroke is low", get(t, "maqsum"), get(t, "baladi"), false},
		{"the first half alike", get(t, "wahda"), get(t, "ciftetelli"), false},
		{"the same written twice", made(t, "a", "2/4", "D-T-"), made(t, "b", "4/4", "D-T-D-T-"), true},
		{"slap for tek", made(t, "a", "2/4", "D-T-"), made(t, "b", "2/4", "D-S-"), true},
		{"a rest first", made(t, "a", "2/4", "D-T-"), made(t, "b", "2/4", "-D-T"), true},
		{"rotated", made(t, "a", "4/4", "DT-TD-T-"), made(t, "b", "4/4", "D-T-DT-T"), false},
		{"alike for sixteen counts, and then not",
			made(t, "a", "2/4", "D-T-"), made(t, "b", "32/4", strings.Repeat("D-T-", 8)+strings.Repeat("DTT-", 8)), true},
		{"alike for fewer counts than are heard",
			made(t, "a", "2/4", "D-T-"), made(t, "b", "16/4", strings.Repeat("D-T-", 6)+strings.Repeat("DTT-", 2)), false},
		{"the other goes on", made(t, "a", "16/4", strings.Repeat("D-T-", 5)+"D-T---------"), made(t, "b", "2/4", "D-T-"), false},
		{"one stroke heard, and the other so slow that it has had only one",
			made(t, "a", "16/4", "D"+strings.Repeat("-", 15)), made(t, "b", "2/4", "D-T-"), true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			require.Equal(t, tt.want, Mistakable(tt.a, tt.b))
			require.Equal(t, tt.want, Mistakable(tt.b, tt.a))
			require.True(t, Mistakable(tt.a, tt.a))
		})
	}
}

// Among the supplied rhythms the mistakable are those that are the same but for
// speed, no more and no fewer: centralbellydanceschool.com and handpandojo.com for
// fallahi, NWR Hawaii for wahda, bauchtanzinfo.de and UCLA for masmudi kabir.
func TestMistakableIsSameButSpeed(t *testing.T) {
	twins := map[string]string{
		"maqsum": "fallahi", "fallahi": "maqsum", "malfuf": "wahda", "wahda": "malfuf",
		"baladi": "masmudi-kabir", "masmudi-kabir": "baladi",
	}
	for _, a := range pool(t, All) {
		for _, b := range pool(t, All) {
			require.Equal(t, a == b || twins[a.ID] == b.ID, Mistakable(a, b), "%s %s", a.ID, b.ID)
		}
	}
}

// FuzzMistakable: it is symmetric, and it holds where a rhythm at its usual tempo is
// heard stroke for stroke as the other at some whole tempo.
func FuzzMistakable(f *testing.F) {
	f.Add("DT-TD-T-", "DT-TD-T-", true)
	f.Add("D--T--T-", "D--T--T-D-D-T---", false)
	f.Add("-D-T", "D-T-", false)
	f.Fuzz(func(t *testing.T, one, other string, long bool) {
		metres := map[bool]string{true: "4/4", false: "2/4"}
		parse := func(skeleton, metre string) *rhythm.Cycle {
			text := "name: x\nmetre: " + metre + "\nskeleton: " + skeleton + "\ntempo: 60 90 120 quarter\nmemory: all\n"
			c, err := rhythm.Parse("x.txt", strings.NewReader(text))
			if err != nil {
				t.Skip()
			}
			return c
		}
		a, b := parse(one, "4/4"), parse(other, metres[long])
		got := Mistakable(a, b)
		require.Equal(t, got, Mistakable(b, a))
		for _, bpm := range []int{45, 90, 180} {
			until := a.At(a.CyclesIn(whichEights)*a.Steps(), 90)
			if !got {
				require.Positive(t, differ(heard(t, a, 0, 90, until), heard(t, b, 0, bpm, until)))
			}
		}
	})
}
