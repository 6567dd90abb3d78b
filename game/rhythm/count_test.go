package rhythm_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// counts joins what is said on steps from, from+1, … before to.
func counts(count func(int) string, from, to int) string {
	var said []string
	for step := from; step < to; step++ {
		said = append(said, count(step))
	}
	return strings.Join(said, " ")
}

func TestCount(t *testing.T) {
	tests := []struct{ id, want string }{
		{"maqsum", "1 & 2 & 3 & 4 &"},                        // kamrah.wordpress.com, May 2013
		{"malfuf", "1 e & a 2 e & a"},                        // sixteenths: common practice, no source
		{"masmudi-kabir", "1 & 2 & 3 & 4 & 5 & 6 & 7 & 8 &"}, // bauchtanzinfo.de: 1 to 8
		{"karsilama", "1 2 3 4 5 6 7 8 9"},                   // bellydancegeek.com, 2013: 1-3-5-789
		{"samai-thaqil", "1 2 3 4 5 6 7 8 9 10"},             // francisdrummingblog.com, 2021: 1, 4, 6, 7, 8
		{"devr-i-hindi", "1 2 3 4 5 6 7"},                    // as the other odd metres, no source
		{"nine-in-halves", "1 & 2 & 3 & 4 & 5 & 6 & 7 & 8 & 9 &"},
	}
	for _, tt := range tests {
		t.Run(tt.id, func(t *testing.T) {
			c := shape(t, tt.id)
			require.Equal(t, tt.want, counts(c.Base().Count, 0, c.Steps()))
			require.Equal(t, tt.want, counts(c.Base().Count, 7*c.Steps(), 8*c.Steps()), "a later cycle")
			require.Equal(t, tt.want, counts(c.Base().Count, -c.Steps(), 0), "the cycle before")
		})
	}
}

// The counts on which the strokes fall, by the same sources.
func TestCountOfStrokes(t *testing.T) {
	tests := []struct{ id, want string }{
		{"karsilama", "1 3 5 7 8 9"},      // bellydancegeek.com, 2013: 1-3-5-789
		{"samai-thaqil", "1 4 6 7 8"},     // francisdrummingblog.com, 2021
		{"ayyub", "1 a 2 &"},              // Wikipedia, Dumbek rhythms: a tek just before 2
		{"masmudi-kabir", "1 2 4 5 7"},    // bauchtanzinfo.de
		{"maqsum", "1 & & 3 4"},           // M. Liberman, Language Log, 2021, slots 1 5 13 17 25 of 32
		{"devr-i-hindi", "1 2 3 4 6"},     // salihbora.com
		{"nine-in-halves", "1 3 5 7 8 9"}, // karsilama on twice the steps
	}
	for _, tt := range tests {
		t.Run(tt.id, func(t *testing.T) {
			c := shape(t, tt.id)
			var said []string
			for step, s := range c.Skeleton {
				if s.Sounds() {
					said = append(said, c.Base().Count(step))
				}
			}
			require.Equal(t, tt.want, strings.Join(said, " "))
		})
	}
}

func TestCountInEight(t *testing.T) {
	tests := []struct {
		id       string
		from, to int
		want     string
	}{
		// Two bars of 4/4 are a dancer's eight: kamrah.wordpress.com, May 2013.
		{"maqsum", 0, 18, "1 & 2 & 3 & 4 & 5 & 6 & 7 & 8 & 1 &"},
		{"maqsum", -8, 1, "5 & 6 & 7 & 8 & 1"},
		{"malfuf", 8, 18, "3 e & a 4 e & a 5 e"},
		{"malfuf", 28, 33, "8 e & a 1"},
		{"masmudi-kabir", 14, 19, "8 & 1 & 2"},
		{"long", 6, 11, "7 8 1 2 3"},
		{"karsilama", 7, 12, "8 9 1 2 3"},
		{"three", 4, 8, "3 & 1 &"},
	}
	for _, tt := range tests {
		t.Run(fmt.Sprint(tt.id, tt.from), func(t *testing.T) {
			c := shape(t, tt.id)
			require.Equal(t, tt.want, counts(c.CountInEight, tt.from, tt.to))
		})
	}
}

// A count said with its number names one step of a cycle and no other.
func TestSpokenNamesOneStep(t *testing.T) {
	for id := range shapes {
		c := shape(t, id)
		seen := map[string]bool{}
		for step := range c.Steps() {
			require.False(t, seen[c.Spoken(step)], "%s: %s", id, c.Spoken(step))
			seen[c.Spoken(step)] = true
		}
	}
}

func TestSpoken(t *testing.T) {
	c := shape(t, "malfuf")
	require.Equal(t, "1", c.Spoken(0))
	require.Equal(t, "the a of 1", c.Spoken(3))
	require.Equal(t, "the & of 2", c.Spoken(6))
	require.Equal(t, "the e of 1", c.Spoken(9))
	require.Equal(t, "the a of 2", c.Spoken(-1))
}

func TestCyclesIn(t *testing.T) {
	tests := []struct {
		id           string
		eights, want int
	}{
		{"maqsum", 1, 2}, {"maqsum", 4, 8},
		{"malfuf", 1, 4}, {"malfuf", 3, 12},
		{"masmudi-kabir", 1, 1}, {"masmudi-kabir", 5, 5},
		{"long", 1, 1}, {"long", 2, 1}, {"long", 3, 2},
		{"karsilama", 1, 1}, {"karsilama", 9, 8},
		{"devr-i-hindi", 1, 2}, {"devr-i-hindi", 7, 8},
		{"maqsum", 0, 0}, {"maqsum", -3, 0}, {"maqsum", 100_000_000, 200_000_000},
	}
	for _, tt := range tests {
		t.Run(fmt.Sprint(tt.id, tt.eights), func(t *testing.T) {
			require.Equal(t, tt.want, shape(t, tt.id).CyclesIn(tt.eights))
		})
	}
}

func TestShape(t *testing.T) {
	tests := []struct {
		id                    string
		steps, beats, perBeat int
		odd                   bool
		dums                  []int
	}{
		{"maqsum", 8, 4, 2, false, []int{0, 4}},
		{"malfuf", 8, 2, 4, false, []int{0}},
		{"masmudi-kabir", 16, 8, 2, false, []int{0, 2, 8}},
		{"long", 16, 16, 1, false, []int{0, 8}},
		{"karsilama", 9, 9, 1, true, []int{0, 4}},
		{"samai-thaqil", 10, 10, 1, true, []int{0, 5, 6}},
		{"three", 6, 3, 2, true, []int{0}},
	}
	for _, tt := range tests {
		t.Run(tt.id, func(t *testing.T) {
			c := shape(t, tt.id)
			require.Equal(t, tt.steps, c.Steps())
			require.Equal(t, tt.beats, c.Beats())
			require.Equal(t, tt.perBeat, c.StepsPerBeat())
			require.Equal(t, tt.odd, c.Odd())
			require.Equal(t, tt.dums, c.Dums())
		})
	}
}

func ExampleCycle_CountInEight() {
	c, _ := rhythm.Parse("maqsum.txt", strings.NewReader(
		"name: maqsum\nmetre: 4/4\nskeleton: DT-TD-T-\ntempo: 90 105 130 quarter\nmemory: all of it\n"))
	for step := range c.Steps() * c.CyclesIn(1) {
		if c.Skeleton[step%c.Steps()].Low() {
			fmt.Print(c.CountInEight(step), " ")
		}
	}
	// Output: 1 3 5 7
}
