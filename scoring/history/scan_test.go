package history

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// valueBy is a value of JSON by chance, so deep at most, with white space where it may be.
func valueBy(chance *rand.Rand, deep int) string {
	gap := func() string { return []string{"", "", " ", "\t", " \r\n"}[chance.IntN(5)] }
	texts := []string{`""`, `"a"`, `"}"`, `"]"`, `","`, `"\""`, `"\\"`, `"\\\""`, `"{[:"`, `"é"`, `"\u00e9"`}
	plain := append([]string{"0", "-1.5e3", "true", "false", "null"}, texts...)
	kind := chance.IntN(4)
	if deep == 0 {
		kind = 0
	}
	var parts []string
	switch kind {
	case 1:
		for range chance.IntN(4) {
			parts = append(parts, gap()+valueBy(chance, deep-1)+gap())
		}
		return "[" + strings.Join(parts, ",") + "]"
	case 2:
		for i := range chance.IntN(4) {
			parts = append(parts, fmt.Sprintf("%s\"%d\"%s:%s%s%s", gap(), i, gap(), gap(), valueBy(chance, deep-1), gap()))
		}
		return "{" + strings.Join(parts, ",") + "}"
	}
	return plain[chance.IntN(len(plain))]
}

// Taken apart by its ends alone, a value has the parts that Go's own reader finds, each at
// its place in the line.
func TestPartsAreThoseOfJSON(t *testing.T) {
	chance := rand.New(rand.NewPCG(4, 4))
	lists, objects := 0, 0
	for range 4000 {
		line := []byte(" " + valueBy(chance, 4) + "\t")
		require.NoError(t, syntax(line), "%s", line)
		m := whole(line)
		var list []json.RawMessage
		var object map[string]json.RawMessage
		switch m.raw[0] {
		case '[':
			require.NoError(t, json.Unmarshal(line, &list))
			require.Len(t, m.parts(), len(list), "%s", line)
			lists++
		case '{':
			require.NoError(t, json.Unmarshal(line, &object))
			require.Len(t, m.parts(), len(object), "%s", line)
			objects++
		default:
			continue
		}
		for i, part := range m.parts() {
			want := string(object[part.name])
			if list != nil {
				want = string(list[i])
			}
			require.Equal(t, want, string(part.raw), "%s", line)
			require.Equal(t, string(part.raw), string(line[part.from:part.from+len(part.raw)]), "%s", line)
		}
	}
	require.Greater(t, lists, 300)
	require.Greater(t, objects, 300)
}

// A field is found by its way through lists and objects, as far as that goes.
func TestFind(t *testing.T) {
	line := []byte(`{"a":1,"taps":[{"by":"key"},{"by":"pen","reading":{"context":3}}]}`)
	for field, want := range map[string]string{
		"a": "1", "taps[0]": `{"by":"key"}`, "taps[1].by": `"pen"`, "taps[1].reading.context": "3",
		"taps[7].by": `[{"by":"key"},{"by":"pen","reading":{"context":3}}]`, "a.b": "1", "": string(line), "b": string(line),
	} {
		require.Equal(t, want, string(whole(line).find(field).raw), field)
	}
}

// Where the bytes are no UTF-8, the first that is none is told.
func TestPlaceOfWhatIsNoText(t *testing.T) {
	for line, column := range map[string]int{"\xff": 1, `{"v":"` + "\x80": 7, "é\xff": 3, "�\xff": 4} {
		_, err := Parse([]byte(line))
		var bad *Error
		require.ErrorAs(t, err, &bad)
		require.Equal(t, []any{column, "not UTF-8"}, []any{bad.Column, bad.Msg}, "%q", line)
	}
}

// A message quotes so much of a value as is of use, and no half of a letter.
func TestShort(t *testing.T) {
	require.Equal(t, `{"a":1}`, short([]byte(`{ "a" : 1 }`)))
	for n := range 40 {
		quoted := short([]byte(`"` + strings.Repeat("é", n) + `"`))
		require.NoError(t, syntax([]byte(`"`+strings.ReplaceAll(strings.Trim(quoted, `"`), `"`, "")+`"`)))
		require.Equal(t, 2*n+2 > 24, strings.HasSuffix(quoted, "…"), quoted)
	}
}

// A choice in how many dums is a whole number as it is written.
func TestWholeNumber(t *testing.T) {
	for text, is := range map[string]bool{"0": true, "1": true, "12": true, "": false, "-1": false, "+1": false, "01": false, "1.0": false, "dum": false, " 1": false} {
		require.Equal(t, is, wholeNumber(text), text)
	}
}

// An error's place has as much as is known, and a field within another its way.
func TestErrorPlaces(t *testing.T) {
	for _, c := range []struct {
		e    Error
		want string
	}{
		{Error{Msg: "m"}, "m"}, {Error{Field: "bpm", Msg: "m"}, "bpm: m"}, {Error{Column: 3, Msg: "m"}, "column 3: m"},
		{Error{Line: 2, Msg: "m"}, "line 2: m"}, {Error{File: "f", Line: 2, Column: 3, Field: "a", Msg: "m"}, "f:2:3: a: m"}, {Error{File: "f", Msg: "m"}, "m"},
	} {
		require.Equal(t, c.want, c.e.Error())
	}
	require.EqualError(t, under("taps[1]", wrong("by", "m")), "taps[1].by: m")
	require.EqualError(t, under("taps", wrong("[1]", "m")), "taps[1]: m")
	require.EqualError(t, under("", wrong("by", "m")), "by: m")
	require.NoError(t, under("taps", nil))
	require.EqualError(t, within("taps", "aside", wrong("taps[0].by", "m")), "aside[0].by: m")
}

// No row of a sheet has another number of cells than its head, and each cell is what the
// line says of it, of every kind of round.
func TestSheetSaysWhatTheLineSays(t *testing.T) {
	for _, r := range everyRound(t) {
		cells, members := sheet(t, r), lineOf(t, r)
		require.Len(t, cells, len(columns))
		for name, raw := range members {
			cell, has := cells[name]
			switch {
			case !has:
				require.Contains(t, []string{"v", "helps"}, name)
			case raw[0] == '[' && name != "choices":
				var list []json.RawMessage
				require.NoError(t, json.Unmarshal(raw, &list))
				require.Equal(t, fmt.Sprint(len(list)), cell, name)
			case string(raw) == "null":
				require.Empty(t, cell, name)
			case raw[0] == '"':
				require.Equal(t, `"`+cell+`"`, string(raw), name)
			case name == "choices":
				require.Equal(t, strings.Join(r.Choices, " "), cell)
			default:
				require.JSONEq(t, string(raw), cell, name)
			}
		}
		for name, cell := range cells {
			if _, has := members[name]; !has && !strings.HasPrefix(name, "helps.") && name != "reaction" {
				require.Empty(t, cell, name)
			}
		}
	}
}
