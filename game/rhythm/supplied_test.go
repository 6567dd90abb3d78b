package rhythm_test

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// supplied loads the rhythms that the program comes with.
func supplied(t *testing.T) *rhythm.Catalogue {
	t.Helper()
	c, err := rhythm.Load(os.DirFS("../../assets"))
	require.NoError(t, err)
	return c
}

func get(t *testing.T, id string) *rhythm.Cycle {
	t.Helper()
	c, found := supplied(t).Get(id)
	require.True(t, found, id)
	return c
}

// The patterns of M. Frishkopf, Percussion piece (University of Alberta), and
// the counts of their dums: maqsum on 1 and 3 (momoibellydance.com, Middle
// Eastern rhythms for dancers: hip drops on 1 and 3); sa'idi one at the start and
// two in the middle (Gilboa, offtherails.com).
func TestSuppliedStrokes(t *testing.T) {
	tests := []struct{ id, metre, skeleton, dums string }{
		{"maqsum", "4/4", "DT-TD-T-", "1, 3"},
		{"saidi", "4/4", "DT-DD-T-", "1, the & of 2, 3"},
	}
	for _, tt := range tests {
		t.Run(tt.id, func(t *testing.T) {
			c := get(t, tt.id)
			require.Equal(t, tt.metre, c.Metre.String())
			require.Equal(t, tt.skeleton, c.Skeleton.String())
			require.Equal(t, tt.dums, strings.Join(said(c), ", "))
		})
	}
}

// said returns the counts of the dums as they are said.
func said(c *rhythm.Cycle) []string {
	var all []string
	for _, step := range c.Dums() {
		all = append(all, c.Spoken(step))
	}
	return all
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

// What holds for every rhythm that is supplied.
func TestSuppliedFacts(t *testing.T) {
	address := regexp.MustCompile(`https?://\S+$`)
	all := supplied(t)
	for _, id := range all.IDs() {
		t.Run(id, func(t *testing.T) {
			c, _ := all.Get(id)
			require.NotEmpty(t, c.Script)
			require.NotEmpty(t, c.Spellings)
			require.NotEmpty(t, c.Role)
			require.NotEmpty(t, c.Family)
			require.GreaterOrEqual(t, len(c.Sources), 2)
			for _, source := range c.Sources {
				require.Regexp(t, address, source)
			}
			require.True(t, strings.HasPrefix(c.Listen, "dums on "+strings.Join(said(c)[:1], "")), c.Listen)
			for _, count := range said(c) {
				require.Contains(t, c.Listen, "on "+count, "listen names every dum")
			}
			if c.Tempo.About {
				require.Contains(t, strings.Join(c.Memory, "\n"), "tempo")
			}
			found, ok := all.Find(c.Name)
			require.True(t, ok)
			require.Same(t, c, found)
		})
	}
}

// The spellings under which pages of the sources write them.
func TestSuppliedSpellings(t *testing.T) {
	all := supplied(t)
	for id, spellings := range map[string][]string{
		"maqsum": {"Maqsoum", "maksoum", "Ma'sum", "masum", "مقسوم"},
		"saidi":  {"Sa'idi", "saidi", "Saiidi", "maqlub", "صعيدي"},
	} {
		for _, spelling := range spellings {
			c, found := all.Find(spelling)
			require.True(t, found, spelling)
			require.Equal(t, id, c.ID, spelling)
		}
	}
}

// Comments and blank lines aside, a supplied file is as Format writes it.
func TestSuppliedForm(t *testing.T) {
	comments := regexp.MustCompile(`(?m)^(#.*)?\n`)
	for _, id := range supplied(t).IDs() {
		text, err := os.ReadFile("../../assets/rhythms/" + id + ".txt")
		require.NoError(t, err)
		var b bytes.Buffer
		require.NoError(t, rhythm.Format(&b, get(t, id)))
		require.Equal(t, b.String(), comments.ReplaceAllString(string(text), ""))
	}
}
