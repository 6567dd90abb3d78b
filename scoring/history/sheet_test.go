package history

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// sheet reads one row as cells by column.
func sheet(t *testing.T, r Round) map[string]string {
	t.Helper()
	text := SheetHead() + SheetRow(r)
	require.True(t, strings.HasPrefix(text, "\uFEFFplayer,when,"))
	require.True(t, strings.HasSuffix(text, "\r\n"))
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\uFEFF"))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 2)
	cells := map[string]string{}
	for i, name := range rows[0] {
		cells[name] = rows[1][i]
	}
	require.Len(t, cells, len(columns), "no column twice")
	return cells
}

func TestSheet(t *testing.T) {
	tapped := record(t)
	tapped.Player, tapped.Hide, tapped.Helps = "Amira", new(0.58), Helps{Balance: -40, Hands: true}
	chose, changes, stops := answered()[0], changed(), broken(t)
	for _, c := range []struct {
		round Round
		cells map[string]string
	}{
		{tapped, map[string]string{
			"player": "Amira", "when": "2026-01-31T18:30:00+02:00", "kind": "dums", "bpm": "96", "output": "studio <1>",
			"strokes": "4", "taps": "4", "matched": "3", "bias": "2.753", "coarse": "false", "seed": "7",
			"hide": "0.58", "helps.balance": "-40", "helps.bass": "", "helps.hands": "true",
			"right": "", "choices": "", "reaction": "", "breaks": "", "to": "",
		}},
		{chose, map[string]string{
			"choices": "baladi maqsum saidi", "answer": "baladi", "right": "false", "took": "5321.5", "heard": "2.128",
			"score": "", "taps": "", "matched": "", "spread": "", "player": "",
		}},
		{changes, map[string]string{"to": "baladi", "after": "2", "changes": "10", "reaction": "1500", "taps": "2"}},
		{steady(), map[string]string{"to": "", "changes": "", "reaction": "", "taps": "0", "right": "true"}},
		{stops, map[string]string{"breaks": "1", "aside": "1", "kind": "stop"}},
	} {
		cells := sheet(t, c.round)
		for name, want := range c.cells {
			require.Equal(t, want, cells[name], "%s of %s", name, c.round.Kind)
		}
	}
}

// Every member of every kind has its column, and every column its member.
func TestSheetHasAllMembers(t *testing.T) {
	names := []string{"reaction"}
	r := record(t)
	for _, f := range slices.Concat(r.fields(), r.foreign()) {
		names = append(names, f.name)
	}
	for _, f := range r.Helps.fields() {
		names = append(names, "helps."+f.name)
	}
	slices.Sort(names)
	names = slices.DeleteFunc(slices.Compact(names), func(n string) bool { return n == "helps" })
	require.Equal(t, names, slices.Sorted(slices.Values(columns)))
}

// What a person or a file names so that a spreadsheet would reckon with it, comes as a
// text; what looks odd otherwise comes as it is. The beginnings are those of OWASP,
// "CSV Injection"; quoting is RFC 4180's (Shafranovich 2005), section 2, points 5 to 7.
func TestSheetIsHarmless(t *testing.T) {
	for name, want := range map[string]string{
		"=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@SUM(A1)": "'@SUM(A1)", "＝1": "'＝1",
		"\t=1": "'\t=1", "\n=1": "'\n=1",
		"a=1": "a=1", `say "dum", then`: `say "dum", then`, "two\nlines": "two\nlines", "ليلى": "ليلى", "'": "'",
	} {
		r := record(t)
		r.Player, r.Output, r.Rhythm = name, name, name
		cells := sheet(t, r)
		require.Equal(t, []string{want, want, want}, []string{cells["player"], cells["output"], cells["rhythm"]})
	}
	r := record(t)
	r.Player, r.Output = `a "b", c`, "d\ne"
	require.True(t, strings.HasPrefix(SheetRow(r), `"a ""b"", c",2026`), "quotes are doubled")
	r = record(t)
	r.Bias, r.Seed, r.Strokes[0] = new(-0.5), 1<<53-1, 1e-9
	cells := sheet(t, r)
	require.Equal(t, []string{"-0.5", "9007199254740991"}, []string{cells["bias"], cells["seed"]}, "numbers stay numbers")
}
