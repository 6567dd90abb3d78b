package history

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// changed is the round with a change of the package comment, with a press too
// early before the right one.
func changed() Round {
	reading := Reading{Context: 3.2, Performance: 5100}
	return Round{
		Kind: Change, Rhythm: "maqsum", BPM: 120, Riff: "bare", Eights: 4, Seed: 7,
		To: "baladi", After: 2, Changes: new(10.), Strokes: []float64{10.25},
		Taps: []Tap{
			{At: 8000, Frame: 240000, By: "touch", Reading: reading},
			{At: 12123.4, Offset: new(1500.), Stroke: new(0), Frame: 564000, By: "key", Reading: reading},
		},
		Setup: 8, Choices: []string{"baladi", "saidi"}, Answer: "saidi",
		ID: "b2f3", When: "2026-01-31T18:34:00+02:00", Output: "studio", Epoch: 1, Rate: 48000,
	}
}

// A record says how many presses heard nothing; a line from before it did can be read.
func TestEarlyPresses(t *testing.T) {
	still := steady()
	still.Taps, still.Right = changed().Taps[:1], false
	for _, c := range []struct {
		played Round
		early  int
	}{{changed(), 1}, {steady(), 0}, {still, 1}} {
		r, err := NewChange(c.played)
		require.NoError(t, err)
		require.Equal(t, c.early, r.Early)
		require.Equal(t, c.early > 0, strings.Contains(thereAndBack(t, r), `"early":1`))
	}
	old, err := Format(changed())
	require.NoError(t, err)
	require.NotContains(t, string(old), "early")
	r, err := Parse(old)
	require.NoError(t, err, "written before there was the member")
	require.Zero(t, r.Early)

	r = changed()
	r.Early = 2
	_, err = Format(r)
	requireField(t, "early", err)
	r = record(t)
	r.Early = 1
	_, err = Format(r)
	requireField(t, "early", err)
}

// steady is a round without a change and without a press.
func steady() Round {
	r := changed()
	r.To, r.After, r.Changes, r.Strokes, r.Taps, r.Answer, r.Right = "", 0, nil, []float64{}, []Tap{}, "", true
	return r
}

// broken is the round of record with its second stroke as a stop, its third as the
// 1 after it, and the tap between in the silence.
func broken(t testing.TB) Round {
	t.Helper()
	played, result := studio()
	played.Kind = Stop
	played.Breaks = []Break{{From: 3, Stop: 1, Counts: 2, Back: 2, Taps: 1}}
	played.Aside = []Tap{{At: 8300.5, Frame: 150000, By: "key"}}
	r, err := New(played, result)
	require.NoError(t, err)
	return r
}

func TestNewChange(t *testing.T) {
	said := changed()
	said.Answer, said.Right = "baladi", true
	left := changed()
	left.Taps, left.Answer = left.Taps[:1], ""
	early := steady()
	early.Taps, early.Right = changed().Taps[:1], false
	for _, played := range []Round{changed(), steady(), said, left, early} {
		r, err := NewChange(played)
		require.NoError(t, err)
		line := thereAndBack(t, r)
		for _, name := range []string{"score", "window", "bias", "matched", "took", "heard", "breaks"} {
			require.NotContains(t, line, `"`+name+`"`)
		}
	}
	r, err := NewChange(changed())
	require.NoError(t, err)
	r.Choices[0], r.Strokes[0] = "another", 0
	require.Equal(t, changed().Choices, []string{"baladi", "saidi"}, "the argument is not shared")
}

// TestChangeText pins the text itself: a kept file must stay readable.
func TestChangeText(t *testing.T) {
	line, err := Format(changed())
	require.NoError(t, err)
	require.Equal(t, `{"v":1,"kind":"change","rhythm":"maqsum","bpm":120,"riff":"bare","eights":4,"seed":7,`+
		`"to":"baladi","after":2,"changes":10,"strokes":[10.25],"taps":[`+
		`{"at":8000,"offset":null,"stroke":null,"frame":240000,"reading":{"context":3.2,"performance":5100},"by":"touch"},`+
		`{"at":12123.4,"offset":1500,"stroke":0,"frame":564000,"reading":{"context":3.2,"performance":5100},"by":"key"}],`+
		`"setup":8,"choices":["baladi","saidi"],"answer":"saidi","right":false,`+
		`"id":"b2f3","when":"2026-01-31T18:34:00+02:00","output":"studio","epoch":1,"rate":48000,"coarse":false}`, string(line))
	line, err = Format(steady())
	require.NoError(t, err)
	require.Contains(t, string(line), `"to":"","after":0,"changes":null,"strokes":[],"taps":[],"setup":8,"choices":["baladi","saidi"],"answer":"","right":true,`)
}

// TestStopText pins what a round with stops has more than others.
func TestStopText(t *testing.T) {
	r := broken(t)
	line := thereAndBack(t, r)
	require.Contains(t, line, `"score":0.732655,"breaks":[{"from":3,"stop":1,"counts":2,"back":2,"taps":1}],`+
		`"aside":[{"at":8300.5,"offset":null,"stroke":null,"frame":150000,"reading":{"context":0,"performance":0},"by":"key"}],"id":`)
	none, result := studio()
	none.Kind = Stop
	r, err := New(none, result)
	require.NoError(t, err)
	text, err := Format(r)
	require.NoError(t, err)
	require.Contains(t, string(text), `"breaks":[],"aside":[],`)
	require.Contains(t, string(text), `"added":1}`)
}

// Each field that is wrong for its kind is refused by its name.
func TestChangeRefused(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(r *Round)
	}{
		{"kind", func(r *Round) { r.Kind = Dums }},
		{"rhythm", func(r *Round) { r.Rhythm = "" }},
		{"to", func(r *Round) { r.To = "maqsum" }},
		{"changes", func(r *Round) { r.Changes = nil }},
		{"changes", func(r *Round) { *r.Changes = -1 }},
		{"changes", func(r *Round) { r.To, r.Strokes = "", nil }},
		{"after", func(r *Round) { r.After = 0 }},
		{"after", func(r *Round) { r.After = 4 }},
		{"after", func(r *Round) { r.After = -1 }},
		{"strokes", func(r *Round) { r.Strokes = nil }},
		{"strokes", func(r *Round) { r.Strokes = []float64{10.25, 11} }},
		{"strokes[0]", func(r *Round) { r.Strokes[0] = 9.9 }},
		{"taps[0].stroke", func(r *Round) {
			r.Taps[0], r.Taps[1].Frame = r.Taps[1], 1e6
			r.Taps[1].Offset, r.Taps[1].Stroke = nil, nil
		}},
		{"taps[1].stroke", func(r *Round) { r.Taps[1].Stroke = new(1) }},
		{"taps[1].offset", func(r *Round) { r.Taps[1].Offset = nil }},
		{"taps[1].frame", func(r *Round) { r.Taps[1].Frame = 1 }},
		{"taps[0].by", func(r *Round) { r.Taps[0].By = "foot" }},
		{"setup", func(r *Round) { r.Setup = 9000 }},
		{"choices", func(r *Round) { r.Choices = []string{"baladi"} }},
		{"choices", func(r *Round) { r.Choices = []string{"baladi", "maqsum"} }},
		{"choices", func(r *Round) { r.Choices = []string{"ayyub", "saidi"} }},
		{"choices[1]", func(r *Round) { r.Choices[1] = "baladi" }},
		{"answer", func(r *Round) { r.Answer = "" }},
		{"answer", func(r *Round) { r.Answer = "wahda" }},
		{"answer", func(r *Round) { r.Taps = r.Taps[:1] }},
		{"right", func(r *Round) { r.Right = true }},
		{"right", func(r *Round) { r.Answer = "baladi" }},
		{"score", func(r *Round) { r.Score = 0.5 }},
		{"took", func(r *Round) { r.Took = new(1.) }},
		{"heard", func(r *Round) { r.Heard = 1 }},
		{"window", func(r *Round) { r.Window = 50 }},
		{"breaks", func(r *Round) { r.Breaks = []Break{{}} }},
		{"aside", func(r *Round) { r.Aside = []Tap{{}} }},
	} {
		r := changed()
		c.spoil(&r)
		_, err := NewChange(r)
		requireField(t, c.field, err)
		if c.field != "kind" {
			_, err = Format(r)
			requireField(t, c.field, err)
		}
	}
	still := steady()
	still.Right = false
	_, err := NewChange(still)
	requireField(t, "right", err)
	_, err = New(changed(), scoring.Result{Matching: scoring.Matching{Pairs: []scoring.Pair{{}}, Added: []int{0}}})
	requireField(t, "kind", err)
	_, err = NewAnswered(changed())
	requireField(t, "kind", err)
}

func TestStopRefused(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(r *Round)
	}{
		{"breaks[0].from", func(r *Round) { r.Breaks[0].From = 3.75 }},
		{"breaks[0].from", func(r *Round) { r.Breaks[0].From = -1 }},
		{"breaks[1].from", func(r *Round) { r.Breaks = append(r.Breaks, Break{From: 5, Stop: 2, Counts: 2, Back: 3}) }},
		{"breaks[0].stop", func(r *Round) { r.Breaks[0].Stop = 4 }},
		{"breaks[0].counts", func(r *Round) { r.Breaks[0].Counts = 0 }},
		{"breaks[0].back", func(r *Round) { r.Breaks[0].Back = 3 }},
		{"breaks[0].back", func(r *Round) { r.Breaks[0].Stop, r.Breaks[0].Back = 3, 4 }},
		{"breaks", func(r *Round) { r.Breaks[0].Taps = 2 }},
		{"breaks[0].taps", func(r *Round) { r.Breaks[0].Taps = -1 }},
		{"aside[0].stroke", func(r *Round) { r.Aside[0].Stroke, r.Aside[0].Offset = new(0), new(1.) }},
		{"aside[0].offset", func(r *Round) { r.Aside[0].Offset = new(1.) }},
		{"aside[1].frame", func(r *Round) { r.Aside = append(r.Aside, Tap{By: "key"}) }},
		{"aside[0].by", func(r *Round) { r.Aside[0].By = "" }},
		{"to", func(r *Round) { r.To = "baladi" }},
		{"after", func(r *Round) { r.After = 1 }},
		{"changes", func(r *Round) { r.Changes = new(1.) }},
		{"choices", func(r *Round) { r.Choices = []string{"a", "b"} }},
	} {
		r := broken(t)
		c.spoil(&r)
		_, err := Format(r)
		requireField(t, c.field, err)
	}
	r := record(t)
	r.Breaks = []Break{{}}
	_, err := Format(r)
	requireField(t, "breaks", err)
}

// Where a line of these kinds is wrong, the error points to it; see TestErrors.
func TestChangeErrors(t *testing.T) {
	for _, c := range []struct {
		round    Round
		old, bad string
		msg      string
	}{
		{changed(), `"changes":10`, `"changes":‸"10"`, `changes: "10" is not a number or null`},
		{changed(), `"to":"baladi"`, `"to":‸null`, "to: null is not a text"},
		{changed(), `"stroke":0`, `"stroke":‸3`, "taps[1].stroke: 3 of 1 strokes (counted from 0)"},
		{changed(), `"right":false`, `"right":‸true`, "right: true, but the presses and the answer make it false"},
		{broken(t), `"breaks":[{`, `"breaks":[‸7,{`, "breaks[0]: 7 is not an object"},
		{broken(t), `"back":2`, `"back":‸0`, "breaks[0].back: 0 is not the stroke after the stop, 1, of 4"},
		{broken(t), `"aside":[{`, `"aside":‸{"x":[{`, "aside: "},
	} {
		text, err := Format(c.round)
		require.NoError(t, err)
		line := strings.Replace(string(text), c.old, c.bad, 1)
		column := strings.Index(line, "‸") + 1
		line = strings.Replace(line, "‸", "", 1)
		if strings.HasSuffix(c.msg, "aside: ") {
			line = strings.Replace(line, `"by":"key"}],"id"`, `"by":"key"}]},"id"`, 1)
		}
		_, err = Parse([]byte(line))
		var e *Error
		require.ErrorAs(t, err, &e, c.bad)
		require.Contains(t, err.Error(), c.msg)
		require.Equal(t, column, e.Column, "%s: %v", c.bad, err)
	}
}
