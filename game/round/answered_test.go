package round_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// answered is a round of two cycles of maqsum at 120: a count-in of 2 s, then 4 s.
func answered(t *testing.T, limit time.Duration) *round.Answered {
	t.Helper()
	p, err := round.NewPassage(120, riff.Bare, 1, true, round.Section{Rhythm: supplied(t, "maqsum"), Cycles: 2})
	require.NoError(t, err)
	return round.NewAnswered(p, limit)
}

func TestAnsweredRound(t *testing.T) {
	a := answered(t, 0)
	require.Equal(t, round.Ready, a.Phase())
	require.False(t, a.Answer("maqsum", time.Second), "nothing has been heard")
	a.Begin()
	a.Hear(time.Second)
	require.Equal(t, "7", a.Count())
	require.False(t, a.Answer("maqsum", time.Second), "only the count-in")
	a.Hear(2 * time.Second)
	require.Equal(t, round.Playing, a.Phase())
	a.Hear(6 * time.Second)
	require.Equal(t, round.Waiting, a.Phase())
	a.Cut("hidden")
	require.Equal(t, round.Waiting, a.Phase(), "it has been heard")
	require.True(t, a.Answer("saidi", 7*time.Second))
	require.Equal(t, round.Review, a.Phase())
	require.False(t, a.Answer("maqsum", 8*time.Second), "one answer only")
	answer, took := a.Given()
	require.Equal(t, "saidi", answer)
	require.Equal(t, 5*time.Second, took)
}

func TestAnswerWhilePlaying(t *testing.T) {
	a := answered(t, 0)
	a.Begin()
	a.Hear(2500 * time.Millisecond)
	require.True(t, a.Answer("maqsum", 1900*time.Millisecond))
	_, took := a.Given()
	require.Zero(t, took, "a clock that steps back gives no answer before the question")
	a.Hear(9 * time.Second)
	require.Equal(t, round.Review, a.Phase())
}

func TestAnsweredRoundIsCut(t *testing.T) {
	a := answered(t, 0)
	a.Begin()
	a.Hear(3 * time.Second)
	a.Cut("gap")
	require.Equal(t, round.Void, a.Phase())
	require.Equal(t, "gap", a.Why())
	require.False(t, a.Answer("maqsum", 4*time.Second))
}

func TestAnsweredRoundHasALimit(t *testing.T) {
	require.Equal(t, 6*time.Second, answered(t, 0).End())
	require.Equal(t, 6*time.Second, answered(t, time.Minute).End())
	a := answered(t, 1500*time.Millisecond)
	require.Equal(t, 3500*time.Millisecond, a.End())
	a.Begin()
	a.Hear(3500 * time.Millisecond)
	require.Equal(t, round.Waiting, a.Phase())
}

// Two sections follow one another without a gap, each on its own grid: sa'idi
// after maqsum at 97, where no step is a whole number of nanoseconds.
func TestSections(t *testing.T) {
	maqsum, saidi := supplied(t, "maqsum"), supplied(t, "saidi")
	p, err := round.NewPassage(97, riff.Bare, 1, false,
		round.Section{Rhythm: maqsum, Cycles: 3}, round.Section{Rhythm: saidi, Cycles: 2})
	require.NoError(t, err)
	change := maqsum.At(24, 97)
	require.Zero(t, p.Start())
	require.Equal(t, change+saidi.At(16, 97), p.End())
	require.Equal(t, maqsum, p.Rhythm(change-1))
	require.Equal(t, saidi, p.Rhythm(change))
	require.Zero(t, p.TurnAt(change))
	require.InDelta(t, 1, p.TurnAt(change-1), 1e-6)
	require.Equal(t, "1", p.CountAt(change))
	require.Empty(t, p.CountAt(p.End()))
}
