package rhythm_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// Skeletons and the steps of their dums, from 1, as these pages have them; each
// file names more. Frishkopf: M. Frishkopf, Percussion piece, University of
// Alberta. Fent: percussioniarabe.it. Ritmos: Percussion Ritmos Darbouka.
func TestPublishedStrokes(t *testing.T) {
	tests := []struct{ id, metre, grouping, skeleton, dums string }{
		{"maqsum", "4/4", "", "DT-TD-T-", "1 5"},                     // Frishkopf
		{"baladi", "4/4", "", "DD-TD-T-", "1 2 5"},                   // Frishkopf
		{"saidi", "4/4", "", "DT-DD-T-", "1 4 5"},                    // Frishkopf
		{"masmudi-kabir", "8/4", "", "D-D---T-D---T---", "1 3 9"},    // UCLA, Metric modes
		{"ciftetelli", "8/4", "", "D--T--T-D-D-T---", "1 9 11"},      // NWR Hawaii
		{"malfuf", "2/4", "", "D--T--T-", "1"},                       // Frishkopf
		{"ayyub", "2/4", "", "D--TD-T-", "1 5"},                      // Wikipedia, Dumbek rhythms
		{"wahda", "4/4", "", "D--T--T-", "1"},                        // Frishkopf
		{"fallahi", "2/4", "", "DT-TD-T-", "1 5"},                    // handpandojo.com: maqsum, double speed
		{"khaliji", "2/4", "", "D--D--T-", "1 4"},                    // Fent
		{"karachi", "2/4", "", "T--T--D-", "7"},                      // Fent; the second tek inferred
		{"samai-thaqil", "10/8", "[3 2 2 3]", "D--T-DDT--", "1 6 7"}, // Arabic Wikipedia
		{"karsilama", "9/8", "[2 2 2 3]", "D-T-D-TTT", "1 5"},        // bellydancegeek.com
		{"roman-9", "9/8", "[2 2 2 3]", "D-T-D-TT-", "1 5"},          // bellydancegeek.com
		{"devr-i-hindi", "7/8", "[3 2 2]", "DTTD-T-", "1 4"},         // salihbora.com; dums inferred
		{"nawakht", "7/8", "[3 2 2]", "D-TD-TT", "1 4"},              // Univ. of Oldenburg
		{"zaffa", "4/4", "", "DTTTDTT-", "1 5"},                      // ishtardance.com
		{"nawari", "4/4", "", "TD-TD-T-", "2 5"},                     // Ritmos
	}
	require.Len(t, supplied(t).IDs(), len(tests))
	for _, tt := range tests {
		t.Run(tt.id, func(t *testing.T) {
			c := get(t, tt.id)
			require.Equal(t, tt.metre, c.Metre.String())
			require.Equal(t, tt.skeleton, c.Skeleton.String())
			if tt.grouping != "" {
				require.Equal(t, tt.grouping, fmt.Sprint(c.Grouping))
			}
			var dums []int
			for _, step := range c.Dums() {
				dums = append(dums, step+1)
			}
			require.Equal(t, ints(t, tt.dums), dums)
		})
	}
}

// Counts on which strokes fall, as dancers' and drummers' pages print them.
func TestPublishedCounts(t *testing.T) {
	tests := []struct {
		id   string
		kind func(rhythm.Stroke) bool
		want string
	}{
		{"karsilama", rhythm.Stroke.Sounds, "1, 3, 5, 7, 8, 9"},         // bellydancegeek.com: 1-3-5-789
		{"roman-9", rhythm.Stroke.Sounds, "1, 3, 5, 7, 8"},              // bellydancegeek.com: 1-3-5-78-
		{"samai-thaqil", rhythm.Stroke.Sounds, "1, 4, 6, 7, 8"},         // francisdrummingblog.com, 2021
		{"masmudi-kabir", rhythm.Stroke.Sounds, "1, 2, 4, 5, 7"},        // bauchtanzinfo.de
		{"ciftetelli", rhythm.Stroke.Low, "1, 5, 6"},                    // Lazzaro; Wikipedia, Tsifteteli
		{"ayyub", rhythm.Stroke.Sounds, "1, the a of 1, 2, the & of 2"}, // Wikipedia: a tek just before 2
		{"maqsum", rhythm.Stroke.Low, "1, 3"},                           // momoibellydance.com: hip drops on 1 and 3
		{"saidi", rhythm.Stroke.Low, "1, the & of 2, 3"},                // offtherails.com: one at the start, two in the middle
		{"baladi", rhythm.Stroke.Low, "1, the & of 1, 3"},               // kamrah.wordpress.com: two drops, then a third
		{"karachi", rhythm.Stroke.Low, "the & of 2"},                    // percussioniarabe.it: off the second beat
		{"devr-i-hindi", rhythm.Stroke.Sounds, "1, 2, 3, 4, 6"},         // salihbora.com: five strokes in 3+4
	}
	for _, tt := range tests {
		t.Run(tt.id, func(t *testing.T) {
			require.Equal(t, tt.want, strings.Join(said(get(t, tt.id), tt.kind), ", "))
		})
	}
}

// Çiftetelli is silent on 8 (F. Lazzaro, gildedserpent.com: a rest after the
// seventh beat).
func TestSilenceOnEight(t *testing.T) {
	c := get(t, "ciftetelli")
	for step, s := range c.Skeleton {
		if c.Base().Count(step-step%2) == "8" {
			require.Equal(t, rhythm.Rest, s)
		}
	}
}

// A recorded maqsum has its onsets in slots 1, 5, 13, 17 and 25 of 32, the low
// ones in 1 and 17 (M. Liberman, Language Log, 13 November 2021).
func TestMaqsumAsMeasured(t *testing.T) {
	c := get(t, "maqsum")
	var onsets, lows []int
	for step, s := range c.Skeleton {
		slot := 1 + step*32/c.Steps()
		if s.Sounds() {
			onsets = append(onsets, slot)
		}
		if s.Low() {
			lows = append(lows, slot)
		}
	}
	require.Equal(t, []int{1, 5, 13, 17, 25}, onsets)
	require.Equal(t, []int{1, 17}, lows)
}

// maqsum and sa'idi have the same onsets and differ in one stroke, on the & of 2
// (lilymoves.blogspot.com, 2013: sa'idi is maqsum with the middle dum doubled).
func TestMaqsumAgainstSaidi(t *testing.T) {
	maqsum, saidi := get(t, "maqsum"), get(t, "saidi")
	var differ []string
	for step := range maqsum.Skeleton {
		require.Equal(t, maqsum.Skeleton[step].Sounds(), saidi.Skeleton[step].Sounds())
		if maqsum.Skeleton[step] != saidi.Skeleton[step] {
			differ = append(differ, maqsum.Spoken(step))
		}
	}
	require.Equal(t, []string{"the & of 2"}, differ)
}

// Light strokes taken away, a filled form is the skeleton: every stroke where it
// was, a tek perhaps as a slap, and something added.
func TestFilledKeepsSkeleton(t *testing.T) {
	for _, id := range supplied(t).IDs() {
		t.Run(id, func(t *testing.T) {
			c := get(t, id)
			scale := len(c.Filled) / c.Steps()
			light := 0
			for i, s := range c.Filled {
				if s.Light() {
					light++
					continue
				}
				require.True(t, i%scale == 0 || s == rhythm.Rest)
				if i%scale == 0 {
					base := c.Skeleton[i/scale]
					require.True(t, s == base || s == rhythm.Sak && base == rhythm.Tek, "step %d", i)
				}
			}
			require.Positive(t, light)
			require.Equal(t, said(c, rhythm.Stroke.Low), dumsOf(c.Form(c.Filled)))
		})
	}
}

func dumsOf(f rhythm.Form) []string {
	var all []string
	for _, step := range f.Pattern.Dums() {
		all = append(all, f.Spoken(step))
	}
	return all
}

// Tempi with a source: A. Kawakib (kawakib.com) for çiftetelli; medians of
// SymbTr (M. K. Karaosmanoğlu, ISMIR 2012), as counted by us, for the odd metres.
func TestPublishedTempi(t *testing.T) {
	for id, usual := range map[string]int{
		"ciftetelli": 72, "karsilama": 144, "samai-thaqil": 120, "devr-i-hindi": 120,
	} {
		require.Equal(t, usual, get(t, id).Tempo.Usual, id)
	}
	slower := func(slow, fast string) {
		require.Less(t, get(t, slow).Tempo.Usual, get(t, fast).Tempo.Usual, "%s, %s", slow, fast)
	}
	slower("baladi", "maqsum")  // bauchtanzinfo.de
	slower("wahda", "malfuf")   // NWR Hawaii
	slower("maqsum", "fallahi") // handpandojo.com
}

// Tempi are such that a cycle can be held in mind and its steps be played: no
// cycle above 10 s and no step under 60 ms. Limits chosen, from no source.
func TestTempiAreSane(t *testing.T) {
	for _, id := range supplied(t).IDs() {
		c := get(t, id)
		require.LessOrEqual(t, c.Length(c.Tempo.Slow), 10*time.Second, id)
		require.GreaterOrEqual(t, c.Form(c.Filled).At(1, c.Tempo.Fast), 60*time.Millisecond, id)
		require.Less(t, c.Tempo.Slow, c.Tempo.Fast, id)
	}
}
