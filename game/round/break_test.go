package round

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A break put into a part takes what is within it and nothing else: a roll that
// would last into it ends where it begins, and so does its span.
func TestBreakInAPart(t *testing.T) {
	stroke := func(step, roll int) riff.Stroke {
		return riff.Stroke{Step: step, Sub: 6, Sound: rhythm.Tek, Strength: 0.5, Roll: roll}
	}
	was := []riff.Stroke{stroke(1, 0), stroke(3, 40), stroke(4, 0), stroke(7, 9), stroke(8, 9)}
	got := replaced(was, riff.Span{From: 4, To: 8}, []riff.Stroke{stroke(5, 0)})
	require.Equal(t, []riff.Stroke{stroke(1, 0), stroke(3, 6), stroke(5, 0), stroke(8, 9)}, got)
	require.Equal(t, stroke(3, 40), was[1], "what was given stays")

	more := riff.Span{From: 4, To: 8, Kind: riff.Break}
	roll := func(from, to int) riff.Span { return riff.Span{From: from, To: to, Kind: riff.Roll} }
	for _, c := range []struct{ was, want []riff.Span }{
		{nil, []riff.Span{more}},
		{[]riff.Span{roll(0, 2), roll(9, 12)}, []riff.Span{roll(0, 2), more, roll(9, 12)}},
		{[]riff.Span{roll(2, 6), roll(7, 9)}, []riff.Span{roll(2, 4), more, roll(8, 9)}},
		{[]riff.Span{roll(4, 8)}, []riff.Span{more}},
		{[]riff.Span{roll(0, 20)}, []riff.Span{roll(0, 4), more, roll(8, 20)}},
	} {
		require.Equal(t, c.want, opened(c.was, more))
	}
}
