package history

import (
	"bytes"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestFormatParse(t *testing.T) {
	r := record(t)
	line, err := Format(r)
	require.NoError(t, err)
	require.True(t, json.Valid(line))
	require.NotContains(t, string(line), "\n")
	got, err := Parse(line)
	require.NoError(t, err)
	require.Equal(t, r, got)
	again, err := Format(got)
	require.NoError(t, err)
	require.Equal(t, string(line), string(again))
}

// TestText pins the text itself: a kept file must stay readable.
func TestText(t *testing.T) {
	line, err := Format(record(t))
	require.NoError(t, err)
	want, err := os.ReadFile("testdata/round.jsonl")
	require.NoError(t, err)
	require.Equal(t, string(want), string(line)+"\n")
}

// TestPackageComment parses the example that the package comment shows.
func TestPackageComment(t *testing.T) {
	examples := commentExamples(t)
	require.Len(t, examples, 7)
	r, err := Parse(examples[0])
	require.NoError(t, err)
	require.Equal(t, 12.25, *r.Taps[0].Offset)
	require.InDelta(t, *r.Taps[0].Offset, (r.Taps[0].Frame/float64(r.Rate)-r.Strokes[0])*1000, 1e-9)
	for _, example := range examples {
		tapped := []byte(examples[0])
		if bytes.Contains(example, []byte(`"breaks":`)) {
			tapped = bytes.Replace(tapped, []byte(`"dums"`), []byte(`"stop"`), 1)
		}
		if bytes.Contains(example, []byte(`"silences":`)) { // with a stroke more, after the silence
			tapped = []byte(strings.NewReplacer(`"dums"`, `"carry"`, `3.75]`, `3.75,5]`, `"out": 1`, `"out": 2`).Replace(string(tapped)))
		}
		if !bytes.Contains(example, []byte(`"v":`)) { // what a round may have besides
			example = slices.Concat(bytes.TrimSuffix(tapped, []byte("}")), []byte(","), bytes.TrimPrefix(example, []byte("{")))
		}
		r, err := Parse(example)
		require.NoError(t, err)
		line, err := Format(r)
		require.NoError(t, err)
		var shown, known map[string]any
		require.NoError(t, json.Unmarshal(example, &shown))
		require.NoError(t, json.Unmarshal(line, &known))
		require.Equal(t, known, shown, "every member is documented")
	}
}

func commentExamples(t *testing.T) []json.RawMessage {
	text, err := os.ReadFile("doc.go")
	require.NoError(t, err)
	var out bytes.Buffer
	for l := range strings.Lines(string(text)) {
		if l = strings.TrimPrefix(l, "//\t"); !strings.HasPrefix(l, "//") {
			cut, _, _ := strings.Cut(l, "  ") // words of explanation
			if strings.HasPrefix(l, " ") {
				cut, _, _ = strings.Cut(strings.TrimLeft(l, " "), "  ")
			}
			out.WriteString(strings.TrimSpace(cut))
		}
	}
	shown, _, _ := strings.Cut(out.String(), "package history")
	var examples []json.RawMessage
	for d := json.NewDecoder(strings.NewReader(shown)); d.More(); {
		var example json.RawMessage
		require.NoError(t, d.Decode(&example))
		examples = append(examples, example)
	}
	return examples
}

// edit replaces one piece of the line of record.
func edit(t *testing.T, old, new string) string {
	t.Helper()
	line, err := Format(record(t))
	require.NoError(t, err)
	require.Equal(t, 1, strings.Count(string(line), old), old)
	return strings.Replace(string(line), old, new, 1)
}

func TestUnknownMembersAreKept(t *testing.T) {
	line := edit(t, `"by":"key"}`, `"by":"key","finger":2}`)
	line = strings.Replace(line, `"context":3.2,"performance":5100}`, `"context":3.2,"performance":5100,"how":[1, 2.50]}`, 1)
	line = strings.TrimSuffix(line, "}") + `, "BPM" : 1.0, "mood": {"a" : 12345678901234567890.10}}`
	r, err := Parse([]byte(line))
	require.NoError(t, err)
	require.Equal(t, 96, r.BPM, "names are not matched in other cases")
	got, err := Format(r)
	require.NoError(t, err)
	require.Contains(t, string(got), `"by":"key","finger":2}`)
	require.Contains(t, string(got), `"how":[1,2.50]}`)
	require.True(t, strings.HasSuffix(string(got), `,"BPM":1.0,"mood":{"a":12345678901234567890.10}}`))
	again, err := Parse(got)
	require.NoError(t, err)
	require.Equal(t, r, again)
}

// TestErrors: each case is a piece of a line and what takes its place, with
// ‸ before the byte where the error must point.
func TestErrors(t *testing.T) {
	for _, c := range []struct{ old, bad, msg string }{
		{`"bpm":96`, `"bpm":‸5`, "bpm: 5 is not from 20 to 300"},
		{`"bpm":96`, `"bpm":  ‸96.5`, "bpm: 96.5 is not a whole number"},
		{`"bpm":96`, `"bpm":‸null`, "bpm: null is not a whole number"},
		{`"bpm":96`, `"bpm":‸"96"`, `bpm: "96" is not a whole number`},
		{`"bpm":96`, `"bpm":96,"bpm":‸97`, "bpm: twice"},
		{`"seed":7`, `"seed":‸-7`, "seed: -7 is not a whole number"},
		{`"seed":7`, `"seed":7‸7x`, "invalid character 'x' after object key:value pair"},
		{`"v":1`, `"v":‸0`, "v: 0 is not a version"},
		{`"v":1`, `"v":‸null`, "v: null is not a version"},
		{`"kind":"dums"`, `"kind":‸"dance"`, `kind: unknown kind "dance"`},
		{`"rhythm":"maqsum"`, `"rhythm":‸["maqsum, baladi, sa'idi"]`, `rhythm: ["maqsum, baladi, sa'idi… is not a text`},
		{`"strokes":[2.5,3.75`, `"strokes":[2.5,‸"3"`, `strokes[1]: "3" is not a number`},
		{`"strokes":[2.5,3.75`, `"strokes":[2.5, ‸2.25`, "strokes[1]: strokes do not ascend: 2.25 after 2.5"},
		{`"strokes":[2.5`, `"strokes":[‸1e999`, "strokes[0]: 1e999 is not a number"},
		{`"offset":12.25`, `"offset":‸true`, "taps[0].offset: true is not a number or null"},
		{`"offset":12.25`, `"offset":‸null`, "taps[0].offset: offset and stroke are not null together"},
		{`"stroke":2`, `"stroke":‸9`, "taps[3].stroke: 9 of 4 strokes (counted from 0)"},
		{`"by":"pen"`, `"by":‸"foot"`, `taps[3].by: "foot" is not key, touch, mouse, pen or click`},
		{`"by":"pen"`, `"by":‸7`, "taps[3].by: 7 is not a text"},
		{`"coarse":false`, `"coarse":‸0`, "coarse: 0 is not true or false"},
		{`"score":`, `"score":‸-`, "score: "},
		{`"output":"studio <1>"`, "\"output\":\"‸\xff\"", "not UTF-8"},
		{`"output":"studio <1>"`, `"output":‸7`, "output: 7 is not a text"},
	} {
		line := edit(t, c.old, c.bad)
		column := strings.Index(line, "‸") + 1
		line = strings.Replace(line, "‸", "", 1)
		if strings.HasPrefix(c.msg, "invalid character") {
			column += len("7") // the mark is before the last good byte
		}
		_, err := Parse([]byte(line))
		var e *Error
		require.ErrorAs(t, err, &e, c.bad)
		require.Equal(t, column, e.Column, "%s: %v", c.bad, err)
		require.Contains(t, err.Error(), c.msg)
		require.Equal(t, line, string(e.Raw))
	}
}

func TestErrorsOfTheWhole(t *testing.T) {
	for text, want := range map[string]string{
		``:                 "column 1: unexpected end of JSON input",
		`[1]`:              "column 1: [1] is not an object",
		`null`:             "column 1: null is not an object",
		`{"kind":"dums"}`:  "column 1: v: missing",
		`{"v":1}`:          "column 1: kind: missing",
		`{"v":1} {"v":1}`:  "column 9: invalid character '{' after top-level value",
		`{"v":"1"}`:        `column 6: v: "1" is not a version`,
		`{"v":2,"new":[]}`: "version 2, this program knows up to 1",
	} {
		_, err := Parse([]byte(text))
		require.EqualError(t, err, want, text)
	}
	line := edit(t, `"taps":[{`, `"taps":[7,{`)
	_, err := Parse([]byte(line))
	require.ErrorContains(t, err, "taps[0]: 7 is not an object")
	line = edit(t, `"by":"pen"`, `"with":"pen"`)
	_, err = Parse([]byte(line))
	require.ErrorContains(t, err, "taps[3].by: missing")
}

// FuzzParse: no input breaks Parse; what it reads is written and read again
// as the same; what it refuses comes back whole.
func FuzzParse(f *testing.F) {
	text, err := os.ReadFile("testdata/round.jsonl")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(text)
	f.Add(bytes.Replace(text, []byte(`"by":`), []byte(`"x":{"y":[null]},"by":`), 1))
	f.Add(bytes.Replace(text, []byte(`"strokes":[`), []byte(`"strokes":[1e-7, `), 1))
	for _, r := range answered() {
		line, err := Format(r)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(line)
	}
	for _, r := range []Round{changed(), broken(f), carried(f)} {
		line, err := Format(r)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(line)
	}
	for _, extra := range []string{`"hide":0.5,"helps":{"bass":2,"hands":true,"eyes":1}`, `"helps":{}`, `"riffVersion":0`} {
		f.Add(bytes.Replace(text, []byte(`"kind":`), []byte(extra+`,"kind":`), 1))
	}
	f.Add([]byte(`{"v":2}`))
	f.Add([]byte(`{"v":1,"kind":[{}]}`))
	f.Fuzz(func(t *testing.T, line []byte) {
		r, err := Parse(line)
		if err != nil {
			checkRefused(t, line, err)
			return
		}
		once, err := Format(r)
		require.NoError(t, err)
		again, err := Parse(once)
		require.NoError(t, err)
		require.Equal(t, r, again)
		twice, err := Format(again)
		require.NoError(t, err)
		require.Equal(t, string(once), string(twice))
	})
}

func checkRefused(t *testing.T, line []byte, err error) {
	switch e := err.(type) {
	case *Newer:
		require.Equal(t, string(line), string(e.Raw))
	case *Error:
		require.Equal(t, string(line), string(e.Raw))
		require.GreaterOrEqual(t, e.Column, 1)
		require.LessOrEqual(t, e.Column, len(line)+1)
	default:
		t.Fatalf("%T: %v", err, err)
	}
}

// TestPlaces: white space anywhere, names with escapes, and texts that hold
// brackets do not put the search for places off.
func TestPlaces(t *testing.T) {
	line := edit(t, `"output":"studio <1>"`, `"outp\u0075t" : "[{\"}\\" , "x" : [ [ ], { }, [{"a":"]"}] ] `)
	line = strings.NewReplacer(`,"frame"`, " ,\t\"frame\"", `"taps":[`, `"taps": [ `, `"by":"pen"`, `"by" : 7 `).Replace(line)
	_, err := Parse([]byte(" " + line + " "))
	var e *Error
	require.ErrorAs(t, err, &e)
	require.Equal(t, "taps[3].by: 7 is not a text", wrong(e.Field, "%s", e.Msg).Error())
	require.Equal(t, strings.Index(line, `: 7 `)+len(": ")+1+len(" "), e.Column)
	r, err := Parse([]byte(" " + strings.Replace(line, `"by" : 7 `, `"by" : "pen" `, 1) + "\t"))
	require.NoError(t, err)
	require.Equal(t, `[{"}\`, r.Output)
	require.Equal(t, []member{{name: "x", raw: json.RawMessage(`[[],{},[{"a":"]"}]]`)}}, r.rest)
}
