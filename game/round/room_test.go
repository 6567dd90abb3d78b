package round_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// Maqsum at 96, four eights, the third of them silent: two cycles are an eight, a
// count lasts 60/96 = 0.625 s, and so the third eight lasts from 10 s to 15 s.
func TestQuieted(t *testing.T) {
	c := supplied(t, "maqsum")
	silent := func(at time.Duration) bool { return at >= 10*time.Second && at < 15*time.Second }
	for level := riff.Bare; level <= riff.Solo; level++ {
		p, err := round.NewPassage(96, level, 3, false, round.Section{Rhythm: c, Cycles: 8})
		require.NoError(t, err)
		before := len(p.Hits(audio.Rate, 0))
		q := p.Quieted(4*c.Steps(), 6*c.Steps())
		hits := q.Hits(audio.Rate, 0)
		for _, h := range hits {
			require.False(t, silent(audio.Rate.Duration(h.Frame)), level)
		}
		require.Greater(t, len(hits), 30, level)
		require.Less(t, len(hits), before)
		require.Len(t, p.Hits(audio.Rate, 0), before, "the passage stays as it is")
		for _, at := range q.Strokes(rhythm.Stroke.Low) {
			require.False(t, silent(at), level)
		}
		require.Equal(t, p.End(), q.End())
	}
}

func TestTamed(t *testing.T) {
	q := round.Setting{Kind: round.Stops, Rhythm: supplied(t, "saidi"), BPM: 100, Eights: 4, Level: riff.Riffing, Seed: 2}
	p, err := round.NewStoppedPassage(q, false)
	require.NoError(t, err)
	loudest := func(p *round.Passage) (most float32) {
		for _, h := range p.Hits(audio.Rate, 0) {
			most = max(most, h.Strength)
		}
		return most
	}
	require.InDelta(t, 1, loudest(p), 1e-6, "the stop")
	require.InDelta(t, 0.8, loudest(p.Tamed(0.8)), 1e-6)
	require.InDelta(t, 1, loudest(p), 1e-6, "the passage stays as it is")
	require.Len(t, p.Tamed(0.8).Hits(audio.Rate, 0), len(p.Hits(audio.Rate, 0)))
}
