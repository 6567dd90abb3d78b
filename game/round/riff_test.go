package round_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// A seed has one riff, whatever the length, and one for each that is asked to hide
// the base so far; Bare and Filled are not asked.
func TestRiffOfASeed(t *testing.T) {
	c := supplied(t, "saidi")
	asked := round.Setting{Kind: round.Dums, Rhythm: c, BPM: 80, Eights: 2, Level: riff.Riffing, Hide: 55, Seed: 9}
	short, err := round.New(asked)
	require.NoError(t, err)
	asked.Eights, asked.BPM = 8, 110
	long, err := round.New(asked)
	require.NoError(t, err)
	first := short.Played(0).Lead
	require.Equal(t, first, long.Played(0).Lead[:len(first)], "the beginning of the same riff, at another tempo")

	asked.Hide = 0
	free, err := round.New(asked)
	require.NoError(t, err)
	p, err := round.NewPassage(110, riff.Riffing, 9, true, round.Section{Rhythm: c, Cycles: c.CyclesIn(8)})
	require.NoError(t, err)
	require.Equal(t, p.Played(0), free.Played(0), "as it comes")

	bare, err := round.Riff(c, riff.Bare, 9, 0, 90)
	require.NoError(t, err)
	same, err := round.Riff(c, riff.Bare, 9, 0, 0)
	require.NoError(t, err)
	require.Equal(t, same, bare)
	first0, err := round.Riff(c, riff.Solo, 9, 0, 0)
	require.NoError(t, err)
	second, err := round.Riff(c, riff.Solo, 9, 1, 0)
	require.NoError(t, err)
	require.NotEqual(t, first0, second, "each section has its own")
	_, err = round.Riff(c, riff.Solo+1, 9, 0, 50)
	require.Error(t, err)
}

// What is asked for is come near to, and more than is possible is not refused.
func TestHideIsAskedFor(t *testing.T) {
	c := supplied(t, "maqsum")
	hides := func(hide int) float64 {
		r, err := round.Riff(c, riff.Riffing, 4, 0, hide)
		require.NoError(t, err)
		p, err := r.At(c.Tempo.Usual).Cycles(0, 32)
		require.NoError(t, err)
		return riff.Hide(c, p, c.Tempo.Usual)
	}
	require.Less(t, hides(1), hides(round.MaxHide))
}

// Taps that go along with a break or a roll are no taps of the round; others are, as
// ever.
func TestOpenSpansAreNotScored(t *testing.T) {
	c := supplied(t, "maqsum")
	var r *round.Round
	var err error
	for seed := uint64(1); r == nil || len(r.Open()) == 0; seed++ {
		require.Less(t, seed, uint64(50), "some riff breaks off or rolls")
		r, err = round.New(round.Setting{Kind: round.Dums, Rhythm: c, BPM: 100, Eights: 8, Level: riff.Solo, Seed: seed})
		require.NoError(t, err)
	}
	open, span := r.Open()[0], r.OpenSteps()[0]
	require.Equal(t, time.Duration(span.From)*c.At(1, 100), open.From-r.Start())
	for i, at := range r.Strokes() {
		require.False(t, at >= open.From && at < open.To, "no dum is asked there")
		require.False(t, span.Contains(r.Steps()[i]))
	}

	const setup = 20 * ms
	r.Begin()
	r.Hear(r.Start(), setup)
	between := r.Strokes()[0] + 300*ms // beside every dum of maqsum at 100
	taps := []time.Duration{r.Strokes()[0] + 4*ms, between, open.From - 60*ms, open.From + 5*ms, (open.From + open.To) / 2, open.To + 8*ms}
	for i, at := range taps {
		require.True(t, r.Tap(round.Tap{At: at + setup, Mark: i}, setup))
	}
	r.Hear(r.End()+time.Second, setup)
	require.Equal(t, round.Review, r.Phase())
	var marks []int
	for _, tap := range r.Taps() {
		marks = append(marks, tap.Mark)
	}
	require.Equal(t, []int{0, 1, 5}, marks)
	require.Len(t, r.Result().Added, 1)
	require.Len(t, r.Result().Pairs, 2)
}
