package history

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// answered returns a round of each kind that is answered.
func answered() []Round {
	base := Round{
		Rhythm: "maqsum", BPM: 96, Riff: "filled", Eights: 2, Seed: 7, Took: new(5321.5), Heard: 2.128,
		ID: "b2f2", When: "2026-01-31T18:32:00+02:00", Output: "studio", Epoch: 1, Rate: 48000,
	}
	round := func(kind, answer string, right bool, choices ...string) Round {
		r := base
		r.Kind, r.Answer, r.Right, r.Choices = kind, answer, right, choices
		return r
	}
	all := []Round{
		round(Which, "baladi", false, "baladi", "maqsum", "saidi"),
		round(Stroke, "dum", true, "dum", "tek"),
		round(HowMany, "2", true, "1", "2", "3", "4"),
		round(Same, "different", false, "same", "different"),
	}
	all[1].Rhythm, all[1].Took, all[1].Heard = "", nil, 0
	return all
}

// thereAndBack writes a record as a line and reads it again.
func thereAndBack(t *testing.T, r Round) string {
	t.Helper()
	line, err := Format(r)
	require.NoError(t, err)
	require.True(t, json.Valid(line))
	got, err := Parse(line)
	require.NoError(t, err)
	require.Equal(t, r, got)
	return string(line)
}

func TestNewAnswered(t *testing.T) {
	for _, played := range answered() {
		r, err := NewAnswered(played)
		require.NoError(t, err, played.Kind)
		line := thereAndBack(t, r)
		for _, name := range []string{"strokes", "taps", "setup", "score", "window", "bias", "matched"} {
			require.NotContains(t, line, `"`+name+`"`)
		}
		r.Choices[0] = "another"
		require.NotEqual(t, "another", played.Choices[0], "the argument is not shared")
	}
}

// TestAnsweredText pins the text itself: a kept file must stay readable.
func TestAnsweredText(t *testing.T) {
	want := []string{
		`{"v":1,"kind":"which","rhythm":"maqsum","bpm":96,"riff":"filled","eights":2,"seed":7,` +
			`"choices":["baladi","maqsum","saidi"],"answer":"baladi","right":false,"took":5321.5,"heard":2.128,` +
			`"id":"b2f2","when":"2026-01-31T18:32:00+02:00","output":"studio","epoch":1,"rate":48000,"coarse":false}`,
		`{"v":1,"kind":"stroke","rhythm":"","bpm":96,"riff":"filled","eights":2,"seed":7,` +
			`"choices":["dum","tek"],"answer":"dum","right":true,"took":null,"heard":0,` +
			`"id":"b2f2","when":"2026-01-31T18:32:00+02:00","output":"studio","epoch":1,"rate":48000,"coarse":false}`,
	}
	for i, w := range want {
		line, err := Format(answered()[i])
		require.NoError(t, err)
		require.Equal(t, w, string(line))
	}
}

func TestAnsweredIsRounded(t *testing.T) {
	played := answered()[0]
	played.Took, played.Heard = new(5321.49951), 2.12849
	r, err := NewAnswered(played)
	require.NoError(t, err)
	require.Equal(t, 5321.5, *r.Took)
	require.Equal(t, 2.128, r.Heard)
	require.Equal(t, 5321.49951, *played.Took)
}

// TestAnsweredRefused: each field that is wrong for its kind is refused by its
// name, by NewAnswered and by Format.
func TestAnsweredRefused(t *testing.T) {
	const which, stroke, howMany, same = 0, 1, 2, 3
	for _, c := range []struct {
		kind  int
		field string
		spoil func(r *Round)
	}{
		{which, "rhythm", func(r *Round) { r.Rhythm = "" }},
		{howMany, "rhythm", func(r *Round) { r.Rhythm = "" }},
		{which, "choices", func(r *Round) { r.Choices = nil }},
		{which, "choices", func(r *Round) { r.Choices = []string{"maqsum"} }},
		{which, "choices", func(r *Round) { r.Choices = strings.Split(strings.Repeat("x,", 33), ",") }},
		{which, "choices", func(r *Round) { r.Rhythm = "wahda" }},
		{which, "choices[1]", func(r *Round) { r.Choices = []string{"maqsum", ""} }},
		{which, "choices[2]", func(r *Round) { r.Choices[2] = "a\xc3" }},
		{which, "choices[2]", func(r *Round) { r.Choices[2] = "baladi" }},
		{stroke, "choices[1]", func(r *Round) { r.Choices[1] = "ka" }},
		{howMany, "choices[3]", func(r *Round) { r.Choices[3] = "four" }},
		{howMany, "choices[3]", func(r *Round) { r.Choices[3] = "04" }},
		{howMany, "choices[3]", func(r *Round) { r.Choices[3] = "-1" }},
		{same, "choices[0]", func(r *Round) { r.Choices[0] = "equal" }},
		{which, "answer", func(r *Round) { r.Answer = "" }},
		{which, "answer", func(r *Round) { r.Answer = "wahda" }},
		{which, "right", func(r *Round) { r.Right = true }},
		{which, "right", func(r *Round) { r.Answer = "maqsum" }},
		{which, "took", func(r *Round) { r.Took = new(-1.) }},
		{which, "took", func(r *Round) { r.Took = new(math.NaN()) }},
		{which, "heard", func(r *Round) { r.Heard = -0.5 }},
		{which, "heard", func(r *Round) { r.Heard = math.Inf(1) }},
		{which, "heard", func(r *Round) { r.Took = nil }},
		{same, "bpm", func(r *Round) { r.BPM = 301 }},
		{same, "when", func(r *Round) { r.When = "" }},
		{which, "strokes", func(r *Round) { r.Strokes = []float64{1} }},
		{which, "taps", func(r *Round) { r.Taps = []Tap{{By: "key"}} }},
		{which, "setup", func(r *Round) { r.Setup = 8 }},
		{which, "score", func(r *Round) { r.Score = 1 }},
		{stroke, "window", func(r *Round) { r.Window = 50 }},
		{same, "bias", func(r *Round) { r.Bias = new(1.) }},
		{howMany, "drift", func(r *Round) { r.Drift = new(1.) }},
		{howMany, "added", func(r *Round) { r.Added = 1 }},
	} {
		r := answered()[c.kind]
		c.spoil(&r)
		_, err := NewAnswered(r)
		requireField(t, c.field, err)
		_, err = Format(r)
		requireField(t, c.field, err)
	}
}

// A round of one kind has nothing of the other.
func TestKindsApart(t *testing.T) {
	for field, spoil := range map[string]func(r *Round){
		"choices": func(r *Round) { r.Choices = []string{"dum", "tek"} },
		"answer":  func(r *Round) { r.Answer = "dum" },
		"right":   func(r *Round) { r.Right = true },
		"took":    func(r *Round) { r.Took = new(0.) },
		"heard":   func(r *Round) { r.Heard = 1 },
	} {
		r := record(t)
		spoil(&r)
		_, err := Format(r)
		requireField(t, field, err)
	}
	for _, r := range answered() {
		_, err := New(r, scoring.Result{})
		requireField(t, "kind", err)
	}
	_, err := NewAnswered(record(t))
	requireField(t, "kind", err)
}

// TestAnsweredErrors: each case is a piece of a line and what takes its place,
// with ‸ before the byte where the error must point.
func TestAnsweredErrors(t *testing.T) {
	text, err := Format(answered()[0])
	require.NoError(t, err)
	for _, c := range []struct{ old, bad, msg string }{
		{`"kind":"which"`, `"kind":‸7`, "kind: 7 is not a text"},
		{`"kind":"which"`, `"kind":‸"what"`, `kind: unknown kind "what"`},
		{`"kind":"which"`, `"kind":"dums"`, "strokes: missing"},
		{`"choices":[`, `"choices":‸"baladi","x":[`, `choices: "baladi" is not a list`},
		{`"choices":[`, `"choices":‸null,"x":[`, `choices: null is not a list`},
		{`"choices":["baladi"`, `"choices":[‸null`, "choices[0]: null is not a text"},
		{`"choices":["baladi",`, `"choices":["baladi",‸"baladi",`, `choices[1]: "baladi" twice`},
		{`"answer":"baladi"`, `"answer":‸"wahda"`, `answer: "wahda" is not among the choices`},
		{`"right":false`, `"right":‸null`, "right: null is not true or false"},
		{`"right":false`, `"right":‸true`, `right: true, but "maqsum" was played and "baladi" answered`},
		{`"took":5321.5`, `"took":‸"5"`, `took: "5" is not a number or null`},
		{`"took":5321.5,"heard":`, `"took":null,"heard":‸`, "heard: 2.128 cycles before the first step"},
		{`"heard":2.128,`, ``, "heard: missing"},
	} {
		line := strings.Replace(string(text), c.old, c.bad, 1)
		column := max(strings.Index(line, "‸"), 0) + 1
		line = strings.Replace(line, "‸", "", 1)
		_, err := Parse([]byte(line))
		var e *Error
		require.ErrorAs(t, err, &e, c.bad)
		require.Contains(t, err.Error(), c.msg)
		require.Equal(t, column, e.Column, "%s: %v", c.bad, err)
		require.Equal(t, line, string(e.Raw))
	}
}

func TestAnsweredKeepsUnknownMembers(t *testing.T) {
	text, err := Format(answered()[3])
	require.NoError(t, err)
	r, err := Parse([]byte(strings.TrimSuffix(string(text), "}") + `,"score":0.5,"mood":[1]}`))
	require.NoError(t, err)
	require.Zero(t, r.Score, "no member of this kind")
	again, err := Format(r)
	require.NoError(t, err)
	require.True(t, strings.HasSuffix(string(again), `,"score":0.5,"mood":[1]}`))
}
