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

// The pairs that are one another at another speed: centralbellydanceschool.com
// and handpandojo.com for fallahi, NWR Hawaii for wahda, bauchtanzinfo.de and
// UCLA for masmudi kabir.
func TestSameButSpeed(t *testing.T) {
	tests := []struct {
		a, b       *rhythm.Cycle
		times, per int
		same       bool
	}{
		{get(t, "maqsum"), get(t, "fallahi"), 1, 2, true},
		{get(t, "fallahi"), get(t, "maqsum"), 2, 1, true},
		{get(t, "malfuf"), get(t, "wahda"), 2, 1, true},
		{get(t, "baladi"), get(t, "masmudi-kabir"), 2, 1, true},
		{get(t, "maqsum"), get(t, "maqsum"), 1, 1, true},
		{get(t, "maqsum"), get(t, "saidi"), 0, 0, false},
		{get(t, "masmudi-kabir"), get(t, "ciftetelli"), 0, 0, false},
		{get(t, "malfuf"), get(t, "khaliji"), 0, 0, false},
		{made(t, "4/4", "DT-TD-T-"), made(t, "8/4", "DT-TD-T-DT-TD-T-"), 1, 1, true}, // written twice
		{made(t, "4/4", "D-T-"), made(t, "4/4", "D-T-D-T-"), 1, 2, true},             // D T, in half the beats
		{made(t, "3/4", "DTT"), made(t, "4/4", "DTTD"), 0, 0, false},
		{made(t, "2/4", "DT"), made(t, "8/4", "D---T---"), 4, 1, true},
		{made(t, "2/4", "D---"), made(t, "3/4", "D--"), 3, 2, true}, // a dum every two beats, every three
		{made(t, "4/4", "D-S-"), made(t, "4/4", "D-T-"), 0, 0, false},
	}
	for _, tt := range tests {
		t.Run(tt.a.ID+" "+tt.b.ID+" "+tt.b.Skeleton.String(), func(t *testing.T) {
			times, per, same := rhythm.SameButSpeed(tt.a, tt.b)
			require.Equal(t, tt.same, same)
			require.Equal(t, [2]int{tt.times, tt.per}, [2]int{times, per})
			if same && tt.a.Steps() == tt.b.Steps() && tt.a.Skeleton.String() == tt.b.Skeleton.String() {
				require.Equal(t, tt.a.Length(60*per), tt.b.Length(60*times), "so fast they last as long")
			}
		})
	}
}

// No other pair of the supplied rhythms is the same but for speed, and none is at
// a tempo of both.
func TestSoundsAs(t *testing.T) {
	twins := map[string]string{
		"maqsum": "fallahi", "fallahi": "maqsum", "malfuf": "wahda", "wahda": "malfuf",
		"baladi": "masmudi-kabir", "masmudi-kabir": "baladi",
	}
	all := supplied(t)
	for _, a := range all.IDs() {
		for _, b := range all.IDs() {
			x, y := get(t, a), get(t, b)
			_, _, same := rhythm.SameButSpeed(x, y)
			require.Equal(t, a == b || twins[a] == b, same, "%s, %s", a, b)
			for bpm := x.Tempo.Slow; bpm <= x.Tempo.Fast; bpm++ {
				require.Equal(t, a == b, rhythm.SoundsAs(x, y, bpm), "%s at %d, %s", a, bpm, b)
			}
		}
	}
	maqsum, fallahi := get(t, "maqsum"), get(t, "fallahi")
	for bpm, want := range map[int]bool{219: false, 220: true, 300: true, 301: false} {
		require.Equal(t, want, rhythm.SoundsAs(maqsum, fallahi, bpm), "maqsum at %d is fallahi at %v", bpm, float64(bpm)/2)
	}
}

func TestSameDums(t *testing.T) {
	groups := []string{
		"maqsum fallahi ayyub zaffa wahda malfuf", // evenly spaced, the first with the cycle
		"baladi masmudi-kabir", "saidi", "ciftetelli", "khaliji", "karachi", "nawari",
		"karsilama roman-9", "devr-i-hindi nawakht", "samai-thaqil",
	}
	all := supplied(t)
	grouped := map[string]int{}
	for i, group := range groups {
		for _, id := range strings.Fields(group) {
			grouped[id] = i
		}
	}
	require.Len(t, grouped, len(all.IDs()))
	for _, a := range all.IDs() {
		for _, b := range all.IDs() {
			require.Equal(t, grouped[a] == grouped[b], rhythm.SameDums(get(t, a), get(t, b)), "%s, %s", a, b)
		}
	}
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
		require.GreaterOrEqual(t, rhythm.Hamming(onPaper.Pattern, beside.Pattern), rhythm.Edit(onPaper.Pattern, beside.Pattern))
		require.GreaterOrEqual(t, rhythm.Edit(p, q), max(len(p)-len(q), len(q)-len(p)))
		require.InDelta(t, rhythm.Distance(onPaper, beside), rhythm.Distance(beside, onPaper), 1e-9)
		low, lowBeside := onPaper.Pattern.Pulses(rhythm.Stroke.Low), beside.Pattern.Pulses(rhythm.Stroke.Low)
		require.Equal(t, rhythm.DirectedSwap(low, lowBeside), rhythm.DirectedSwap(lowBeside, low))
		require.GreaterOrEqual(t, rhythm.Chronotonic(low, lowBeside), 0)
		require.Len(t, a.Differ(b), len(b.Differ(a)))
	})
}
