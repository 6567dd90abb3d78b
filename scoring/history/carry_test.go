package history

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// carried is the round of record with its second and third stroke in a silence.
func carried(t testing.TB) Round {
	t.Helper()
	played, result := studio()
	played.Kind = Carry
	played.Silences = []Silence{{From: 3.5, To: 6.25, First: 1, Last: 2}}
	r, err := New(played, result)
	require.NoError(t, err)
	return r
}

// TestCarryText pins what a round with silences has more than others.
func TestCarryText(t *testing.T) {
	r := carried(t)
	line := thereAndBack(t, r)
	require.Contains(t, line, `"score":0.732655,"silences":[{"from":3.5,"to":6.25,"first":1,"last":2}],"id":`)
	require.NotContains(t, line, `"breaks"`)
	played, result := studio()
	played.Kind = Carry
	none, err := New(played, result)
	require.NoError(t, err)
	require.Contains(t, thereAndBack(t, none), `"silences":[],"id":`)
	r.Silences[0].First = 2
	require.Equal(t, 1, carried(t).Silences[0].First)
}

// A silence begins on the 1, where a dum may be, and ends on one.
func TestCarryEnds(t *testing.T) {
	r := carried(t)
	r.Silences[0].From = 3.75
	_, err := Format(r)
	require.NoError(t, err)
	r.Silences = []Silence{{From: 3, To: 4, First: 1, Last: 1}}
	_, err = Format(r)
	require.NoError(t, err)
}

// What a reader does not know of a silence is kept.
func TestCarryUnknownMember(t *testing.T) {
	line := strings.Replace(thereAndBack(t, carried(t)), `"last":2}`, `"last":2,"felt":[1.50]}`, 1)
	r, err := Parse([]byte(line))
	require.NoError(t, err)
	text, err := Format(r)
	require.NoError(t, err)
	require.Equal(t, line, string(text))
}

func TestCarryRefused(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(r *Round)
	}{
		{"silences[0].first", func(r *Round) { r.Silences[0].First = 0 }},
		{"silences[0].first", func(r *Round) { r.Silences[0].First = -1 }},
		{"silences[0].last", func(r *Round) { r.Silences[0].Last = 0 }},
		{"silences[0].last", func(r *Round) { r.Silences[0].Last = 3 }},
		{"silences[0].last", func(r *Round) { r.Silences[0].Last = 4 }},
		{"silences[0].from", func(r *Round) { r.Silences[0].From = 2.5 }},
		{"silences[0].from", func(r *Round) { r.Silences[0].From = 3.8 }},
		{"silences[0].from", func(r *Round) { r.Silences[0].From = -1 }},
		{"silences[0].to", func(r *Round) { r.Silences[0].To = 5 }},
		{"silences[0].to", func(r *Round) { r.Silences[0].To = 6.3 }},
		{"silences[1].first", func(r *Round) {
			r.Silences = []Silence{{From: 3, To: 4, First: 1, Last: 1}, {From: 4.5, To: 6, First: 2, Last: 2}}
		}},
		{"breaks", func(r *Round) { r.Breaks = []Break{{}} }},
		{"aside", func(r *Round) { r.Aside = []Tap{{}} }},
		{"to", func(r *Round) { r.To = "baladi" }},
		{"choices", func(r *Round) { r.Choices = []string{"a", "b"} }},
	} {
		r := carried(t)
		c.spoil(&r)
		_, err := Format(r)
		requireField(t, c.field, err)
	}
	for _, r := range []Round{record(t), broken(t), changed()} {
		r.Silences = []Silence{{}}
		_, err := Format(r)
		requireField(t, "silences", err)
	}
}

// Where such a line is not right, the error points to it; see TestErrors.
func TestCarryErrors(t *testing.T) {
	for _, c := range []struct{ old, bad, msg string }{
		{`"silences":[{`, `"silences":[‸7,{`, "silences[0]: 7 is not an object"},
		{`"first":1`, `"first":‸null`, "silences[0].first: null is not a whole number"},
		{`"last":2`, `"last":‸9`, "silences[0].last: 9 is not from 1 to the last but one of 4 strokes (counted from 0)"},
		{`"silences":[{"from":3.5,"to":6.25,"first":1,"last":2}],`, ``, "silences"},
	} {
		line := strings.Replace(thereAndBack(t, carried(t)), c.old, c.bad, 1)
		column := strings.Index(line, "‸") + 1
		_, err := Parse([]byte(strings.Replace(line, "‸", "", 1)))
		var e *Error
		require.ErrorAs(t, err, &e, c.bad)
		require.Contains(t, err.Error(), c.msg)
		if column > 0 {
			require.Equal(t, column, e.Column, "%s: %v", c.bad, err)
		}
	}
}
