package audio

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestRoll(t *testing.T) {
	r := Roll{Frame: 1000, Length: 48000, Strokes: 16, From: 0.4, To: 0.8, Seed: 5}
	hits := r.Hits(Rate)
	require.Len(t, hits, 16)
	require.Equal(t, hits, r.Hits(Rate), "a seed is a promise")
	require.Equal(t, int64(1000), hits[0].Frame, "the first is exact")
	require.Equal(t, float32(0.4), hits[0].Strength)
	seeds := map[uint64]bool{}
	for i, h := range hits {
		require.Equal(t, []Voice{LeadRollTek, LeadRollKa}[i%2], h.Voice)
		require.InDelta(t, 1000+3000*i, h.Frame, 150, "a twentieth of the interval")
		require.InDelta(t, 0.4+0.025*float64(i), h.Strength, 1e-6)
		seeds[h.Seed] = true
	}
	require.Len(t, seeds, 16)
	r.Seed = 6
	require.NotEqual(t, hits, r.Hits(Rate))
	require.NoError(t, NewStream(Rate).Schedule(hits...))
}

func TestRollCounts(t *testing.T) {
	for _, c := range []struct {
		name    string
		seconds float64
		strokes int
		want    int
	}{
		{"a second", 1, 0, 16},
		{"half a beat at 120", 0.25, 0, 4},
		{"even", 0.30, 0, 4},
		{"too short", 0.05, 0, 0},
		{"as asked", 0.5, 7, 7},
		{"nothing", 0, 7, 0},
		{"backwards", -1, 7, 0},
		{"no more than frames", 3.0 / 48000, 7, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := Roll{Frame: 9, Length: int64(c.seconds * float64(Rate)), Strokes: c.strokes, From: 1, To: 0.5, Seed: 2}
			hits := r.Hits(Rate)
			require.Len(t, hits, c.want)
			last := int64(8)
			for _, h := range hits {
				require.Greater(t, h.Frame, last, "in order")
				require.Less(t, h.Frame, r.Frame+r.Length, "before the end")
				last = h.Frame
			}
		})
	}
}

// A roll is heard as strokes: between two of them the sound falls by 10 dB or
// more, and it grows with the strength.
func TestRollIsHeard(t *testing.T) {
	r := Roll{Length: int64(second), From: 0.3, To: 1, Seed: 1}
	hits := r.Hits(Rate)
	x := renderMono(t, second, hits...).highPass(400)
	for i, h := range hits {
		at := int(h.Frame)
		require.Greater(t, x[at:at+240].energy()/240, 10*x[at+2200:at+2440].energy()/240, "stroke %d", i)
	}
	require.Greater(t, x[36000:].energy(), 2*x[:12000].energy())
}
