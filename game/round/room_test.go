package round

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// Maqsum at 96, four eights, the third of them silent: two cycles are an eight, a
// count lasts 60/96 = 0.625 s, and so the third eight lasts from 10 s to 15 s.
func TestQuieted(t *testing.T) {
	c := cycleOf(t, "maqsum")
	for level := riff.Bare; level <= riff.Solo; level++ {
		p, err := NewPassage(96, level, 3, false, Section{Rhythm: c, Cycles: 8})
		require.NoError(t, err)
		before := len(p.Hits(audio.Rate, 0))
		q := p.Quieted(4*c.Steps(), 6*c.Steps())
		inside, outside := 0, 0
		for _, h := range q.Hits(audio.Rate, 0) {
			if at := audio.Rate.Duration(h.Frame); at >= 10*time.Second && at < 15*time.Second {
				inside++
			} else {
				outside++
			}
		}
		require.Zero(t, inside, level)
		require.Greater(t, outside, 6*5, level)
		require.Len(t, p.Hits(audio.Rate, 0), before, "the passage stays as it is")
		for _, at := range q.Dums() {
			require.False(t, at >= 10*time.Second && at < 15*time.Second, level)
		}
		require.Equal(t, p.End(), q.End())
	}
}

func TestTamed(t *testing.T) {
	c := cycleOf(t, "saidi")
	p, err := NewStoppedPassage(Question{Kind: Stops, Rhythm: c, BPM: 100, Eights: 4, Level: riff.Riffing, Seed: 2}, false)
	require.NoError(t, err)
	loudest := func(p *Passage) (most float32) {
		for _, h := range p.Hits(audio.Rate, 0) {
			most = max(most, h.Strength)
		}
		return most
	}
	require.InDelta(t, figureStop, loudest(p), 1e-6)
	require.InDelta(t, 0.8, loudest(p.Tamed(0.8)), 1e-6)
	require.InDelta(t, figureStop, loudest(p), 1e-6, "the passage stays as it is")
	require.Len(t, p.Tamed(0.8).Hits(audio.Rate, 0), len(p.Hits(audio.Rate, 0)))
}

var _ = rhythm.Rest
