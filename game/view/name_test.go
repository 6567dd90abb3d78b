package view

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
)

// A name in Arabic letters is written from right to left, and told to be Arabic, so that
// it is pronounced so; of Greek letters and of none nothing is told.
func TestScriptTellsItsDirection(t *testing.T) {
	for script, want := range map[string][2]string{
		"مقسوم": {"ar", "rtl"}, "9 مقسوم": {"ar", "rtl"}, "": {}, "Τσιφτετέλι": {}, "çiftetelli": {},
	} {
		n := NameOf(&rhythm.Cycle{ID: "x", Name: "X", Script: script})
		require.Equal(t, RhythmName{ID: "x", Name: "X", Script: script, Lang: want[0], Dir: want[1]}, n)
	}
}

// What stands in brackets goes; brackets without a blank before them belong to the name.
func TestPlain(t *testing.T) {
	for name, want := range map[string]string{
		"baladi (masmudi saghir)": "baladi", "maqsum": "maqsum", "": "", "a (b) (c)": "a", "9(a)": "9(a)",
	} {
		require.Equal(t, want, Plain(name))
		require.Equal(t, want, Plain(Plain(name)), "it is plain already")
	}
}

// An odd metre is told once: by the name or after it; an even one never.
func TestRhythmOptionTellsItsMetreOnce(t *testing.T) {
	w := words(t)
	for _, c := range proof.EveryRhythm(t) {
		o := RhythmOption(c, w)
		require.Equal(t, c.ID, o.Value)
		require.True(t, strings.HasPrefix(o.Label, c.Name), o.Label)
		told := strings.Count(o.Label, c.Metre.String())
		if c.Odd() {
			require.Equal(t, 1, told, o.Label)
		} else {
			require.LessOrEqual(t, told, strings.Count(c.Name, c.Metre.String()), o.Label)
		}
		require.Equal(t, c.Differ, strings.HasSuffix(o.Label, "(sources differ)"), o.Label)
	}
}

// No two rhythms are shown alike in a list.
func TestRhythmOptionsDiffer(t *testing.T) {
	w, by := words(t), map[string]string{}
	for _, c := range proof.EveryRhythm(t) {
		o := RhythmOption(c, w)
		require.Empty(t, by[o.Label], "%s and %s", by[o.Label], c.ID)
		by[o.Label] = c.ID
	}
}

// An odd metre and sources that differ are both told, in this order.
func TestRhythmOptionTellsBoth(t *testing.T) {
	w := words(t)
	c := &rhythm.Cycle{ID: "seven", Name: "seven", Metre: rhythm.Metre{Beats: 7, Unit: 8}}
	require.Equal(t, "seven, 7/8", RhythmOption(c, w).Label)
	c.Differ = true
	require.Equal(t, "seven, 7/8 (sources differ)", RhythmOption(c, w).Label)
	c.Name = "seven 7/8"
	require.Equal(t, "seven 7/8 (sources differ)", RhythmOption(c, w).Label)
}

// A title has the name in its own script beside it, if there is one.
func TestTitle(t *testing.T) {
	w := words(t)
	bare := Title(w, "maqsum", RhythmName{ID: "maqsum", Name: "maqsum"})
	require.Equal(t, []string{"heading"}, ids(bare.Children))
	it := Title(w, "Listen to it", NameOf(proof.Cycle(t, "maqsum")))
	require.Equal(t, []string{"heading", "script"}, ids(it.Children))
	require.Equal(t, "Listen to it", it.Children[0].Name)
	require.Equal(t, 1, it.Children[0].Level)
	require.Equal(t, Item{ID: "script", Role: RoleText, Text: "مقسوم", Lang: "ar", Dir: "rtl", Look: LookScript}, it.Children[1])
}
