package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestMix(t *testing.T) {
	for _, c := range []struct {
		name        string
		mix         Mix
		left, right float64 // of lead 1 and bass 0.5
	}{
		{"centre", Full(), 0.71 + 0.355, 0.71 + 0.355},
		{"apart", Mix{1, 1, Apart, 1}, 1, 0.5},
		{"spread", Mix{1, 1, Spread, 1}, 0.83 + 0.28, 0.56 + 0.415},
		{"bass alone", Mix{0, 1, Centre, 1}, 0.355, 0.355},
		{"lead alone, apart", Mix{1, 0, Apart, 0.5}, 0.5, 0},
		{"softer", Mix{1, 0.5, Centre, 0.1}, 0.0710 + 0.01775, 0.0710 + 0.01775},
		{"nothing", Mix{}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			frames := []float32{1, 0.5, -1, -0.5, 9}
			c.mix.Apply(frames)
			want := []float64{c.left, c.right, -c.left, -c.right, 9}
			for i, v := range frames {
				require.InDelta(t, want[i], v, 1e-6)
			}
		})
	}
	require.Panics(t, func() { Mix{Stage: stages}.Apply(make([]float32, 2)) })
}

// A drum stays as loud wherever it stands, within 0.1 dB.
func TestStagesKeepThePower(t *testing.T) {
	for s := range stages {
		require.NotContains(t, s.String(), "stage")
		for drum := range 2 {
			left, right := pans[s][2*drum], pans[s][2*drum+1]
			require.InDelta(t, 0, 10*math.Log10(left*left+right*right), 0.1, "%v", s)
		}
	}
	require.Equal(t, "stage 3", stages.String())
}

func TestRender(t *testing.T) {
	hits := busy(30000)
	got, err := Render(Rate, 30001, hits...)
	require.NoError(t, err)
	require.Len(t, got, 2*30001)
	s := NewStream(Rate)
	require.NoError(t, s.Schedule(hits...))
	left, right := split(read(t, s, 30001))
	for i := range left {
		require.Equal(t, float32(left[i]), got[2*i])
		require.Equal(t, float32(right[i]), got[2*i+1])
	}
	empty, err := Render(Rate, 0)
	require.NoError(t, err)
	require.Empty(t, empty)
	_, err = Render(Rate, 100, Hit{Frame: -1, Strength: 1})
	require.ErrorIs(t, err, ErrPast)
}
