package link_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/audio"
	"groundbeat/game/link"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Every number that a link may hold makes a round, and one that can be kept: what
// ParseAddress lets through, round.New and history.New must not refuse.
func TestLimitsOfAddressesLieWithinThoseOfRounds(t *testing.T) {
	require.GreaterOrEqual(t, link.LeastBPM, round.MinBPM)
	require.LessOrEqual(t, link.MostBPM, round.MaxBPM)
	require.GreaterOrEqual(t, link.LeastEights, round.MinEights)
	require.LessOrEqual(t, link.MostEights, round.MaxEights)

	file, err := assets.Rhythms.Open("rhythms/maqsum.txt")
	require.NoError(t, err)
	defer file.Close()
	maqsum, err := rhythm.Parse("maqsum.txt", file)
	require.NoError(t, err)
	allowed := func() link.Allowed {
		return link.Allowed{Rhythms: []string{maqsum.ID}, Riffs: []string{riff.Bare.String()}}
	}
	for _, query := range []string{
		"?screen=dums", // its tempo is the rhythm's usual one
		link.FirstRound().String(),
		fmt.Sprintf("?bpm=%d&eights=%d&seed=0", link.LeastBPM, link.LeastEights),
		fmt.Sprintf("?bpm=%d&eights=%d&seed=9007199254740991", link.MostBPM, link.MostEights),
		"?bpm=-5&eights=1000000&riff=solo&screen=plan", // wrong: brought within the limits
	} {
		a, _ := link.Parse(query, allowed)
		if a.BPM == 0 {
			a.BPM = maqsum.Tempo.Usual
		}
		level, err := riff.ParseLevel(a.Riff)
		require.NoError(t, err, query)
		r, err := round.New(round.Setting{
			Kind: a.Screen, Rhythm: maqsum, BPM: a.BPM, Eights: a.Eights, Level: level, Seed: a.Seed,
		})
		require.NoError(t, err, query)
		r.Begin()
		r.Hear(time.Hour, 0)
		require.NoError(t, keep(r), query)
	}
}

// keep makes the record of a finished round.
func keep(r *round.Round) error {
	q := r.Setting
	played := history.Round{
		Kind: history.Dums, Rhythm: q.Rhythm.ID, BPM: q.BPM, Riff: q.Level.String(), Eights: q.Eights, Seed: q.Seed,
		ID: "x", When: "2026-01-31T18:30:00Z", Epoch: 1, Rate: int(audio.Rate),
	}
	for _, s := range r.Strokes() {
		played.Strokes = append(played.Strokes, s.Seconds())
	}
	_, err := history.New(played, r.Result())
	return err
}

// Whatever eights a link of Hear the change, Catch the stop or Carry on may have can be played,
// and a link that names only its screen leads to a round.
func TestLimitsOfLongRounds(t *testing.T) {
	require.Equal(t, []int{round.MinLongEights, round.MaxLongEights}, []int{link.LeastLong, link.MostLong})
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	change, stop := link.Default(view.ScreenChange), link.Default(view.ScreenStop)
	pool, err := quiz.From(all, change.From)
	require.NoError(t, err)
	first, _ := all.Get(change.Rhythm)
	_, err = quiz.Lean{}.NextChange(first, pool, change.Answers, change.Eights, change.BPM, riff.Bare, 1)
	require.NoError(t, err)
	c, _ := all.Get(stop.Rhythm)
	_, err = round.NewStopped(round.Setting{Kind: round.Stops, Rhythm: c, BPM: c.Tempo.Usual, Eights: stop.Eights})
	require.NoError(t, err)
	for _, eights := range []int{link.LeastLong, link.Default(view.ScreenCarry).Eights, link.MostEights} {
		_, err = round.NewCarried(round.Setting{Kind: round.Carries, Rhythm: c, BPM: c.Tempo.Usual, Eights: eights})
		require.NoError(t, err)
	}
}
