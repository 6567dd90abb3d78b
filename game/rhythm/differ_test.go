package rhythm_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// written puts differences into one line: "the & of 1 TD" for tek against dum.
func written(all []rhythm.Difference) string {
	var texts []string
	for _, d := range all {
		texts = append(texts, d.Count+" "+d.A.String()+d.B.String())
	}
	return strings.Join(texts, ", ")
}

// The pairs of one stroke are those of Iana, Three common rhythms, and of
// bellydancegeek.com, 2013, for the nines. The others are read off the skeletons.
func TestDiffer(t *testing.T) {
	tests := []struct{ a, b, want string }{
		{"maqsum", "maqsum", ""},
		{"maqsum", "baladi", "the & of 1 TD"},
		{"baladi", "maqsum", "the & of 1 DT"},
		{"maqsum", "saidi", "the & of 2 TD"},
		{"baladi", "saidi", "the & of 1 DT, the & of 2 TD"},
		{"karsilama", "roman-9", "9 T-"},
		{"malfuf", "khaliji", "the a of 1 TD"},
		{"malfuf", "ayyub", "2 -D"},
		// 2/4 stands twice beside 4/4, 4/4 twice beside 8/4.
		{"maqsum", "malfuf", "the & of 1 T-, the a of 1 -T, the a of 3 -T, 4 T-, the & of 4 -T"},
		// The first half of çiftetelli is wahda, the second begins with two dums.
		{"wahda", "ciftetelli", "6 -D, the & of 6 T-, 7 -T, 8 T-"},
	}
	for _, tt := range tests {
		t.Run(tt.a+" "+tt.b, func(t *testing.T) {
			require.Equal(t, tt.want, written(rhythm.Differ(get(t, tt.a), get(t, tt.b))))
		})
	}
}

// Two rhythms differ in the same places whoever is named first, and in none only
// if they sound alike.
func TestDifferBothWays(t *testing.T) {
	all := supplied(t)
	for _, a := range all.IDs() {
		for _, b := range all.IDs() {
			there, back := rhythm.Differ(get(t, a), get(t, b)), rhythm.Differ(get(t, b), get(t, a))
			require.Len(t, back, len(there))
			require.Equal(t, a == b, len(there) == 0, "%s, %s", a, b)
			for i := range there {
				require.Equal(t, rhythm.Difference{Count: back[i].Count, A: back[i].B, B: back[i].A}, there[i])
			}
		}
	}
}

func TestFormDiffer(t *testing.T) {
	c := get(t, "malfuf")
	require.Equal(t, "the e of 1 -k, the & of 1 -k, 2 -k, the e of 2 -k, the a of 2 -k",
		written(c.Base().Differ(c.Form(c.Filled))))
	fine := made(t, "2/4", "D-T-").Form(pattern(t, "D---T--k"))
	require.Equal(t, "the a of 2 k-", written(fine.Differ(made(t, "2/4", "D-T-").Base())))
}

func ExampleDiffer() {
	read := func(id, skeleton string) *rhythm.Cycle {
		c, err := rhythm.Parse(id+".txt", strings.NewReader("name: "+id+
			"\nmetre: 4/4\nskeleton: "+skeleton+"\ntempo: 90 105 130 quarter\nmemory: all of it\n"))
		if err != nil {
			fmt.Println(err)
		}
		return c
	}
	for _, d := range rhythm.Differ(read("maqsum", "DT-TD-T-"), read("baladi", "DD-TD-T-")) {
		fmt.Printf("%s: %s in maqsum, %s in baladi\n", d.Count, d.A, d.B)
	}
	// Output: the & of 1: T in maqsum, D in baladi
}

func FuzzDistances(f *testing.F) {
	f.Add("DT-TD-T-", "DD-TD-T-")
	f.Add("----", "D---")
	f.Fuzz(func(t *testing.T, s, u string) {
		p, err := rhythm.ParsePattern(s)
		q, other := rhythm.ParsePattern(u)
		if err != nil || other != nil || len(p) > 24 || len(q) > 24 {
			t.Skip()
		}
		a := rhythm.Form{Metre: rhythm.Metre{Beats: len(p), Unit: 4}, Pattern: p}
		b := rhythm.Form{Metre: rhythm.Metre{Beats: len(q), Unit: 4}, Pattern: q}
		onPaper, beside := rhythm.StepForStep(a, b)
		require.InDelta(t, rhythm.Distance(onPaper, beside), rhythm.Distance(beside, onPaper), 1e-9)
		require.Len(t, a.Differ(b), len(b.Differ(a)))
	})
}
