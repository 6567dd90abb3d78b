package picture

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestTwins(t *testing.T) {
	w := words(t)
	h := heads(t)["head-review"]
	require.Equal(t, "The drum seen from above. 4 counts go once round, clockwise. Dum on 1 and 3; tek on 1 &, 2 & and 4. "+
		"Your 1: 8 of 8 tapped, mean 8 ms ahead. Your 3: 7 of 8 tapped, mean 41 ms behind. 2 taps added. "+
		"On the drumhead, distances from a stroke are drawn 2 times as long as they are.", h.Twin(w))
	require.NotContains(t, heads(t)["head-play"].Twin(w), "Dum on", "what is hidden is not told")
	require.NotContains(t, lines(t)["line-hidden"].Twin(w), "Dum on", "what is hidden is not told")
	require.Contains(t, lines(t)["line-left-out"].Twin(w), "Your 3: left out every time.")
}

func TestCountName(t *testing.T) {
	for i, want := range []string{"1", "1 &", "2", "2 &", "3"} {
		require.Equal(t, want, CountName(inFour, i))
	}
	require.Equal(t, "", CountName(nil, 0))
	require.Equal(t, "&", CountName([]string{"&"}, 0))
}

// A frame of the busiest drumhead allocates nothing once the picture has grown.
func TestDrawingAllocatesNothing(t *testing.T) {
	for name, h := range heads(t) {
		p := &Picture{}
		h.Draw(p)
		require.Zero(t, testing.AllocsPerRun(20, func() { p.Reset(); h.Draw(p) }), name)
	}
}

func TestColumns(t *testing.T) {
	for _, c := range []struct {
		steps, perBeat int
		width          float64
		review         bool
		want           int
	}{
		{8, 2, 900, false, 8}, {8, 2, 300, false, 8}, {8, 2, 300, true, 4}, {16, 2, 300, false, 8},
		{16, 2, 900, false, 16}, {16, 4, 300, false, 8}, {16, 4, 100, false, 8}, {9, 1, 100, false, 9},
	} {
		require.Equal(t, c.want, Columns(c.steps, c.perBeat, c.width, c.review), "%+v", c)
	}
}

func TestEnlarged(t *testing.T) {
	h := heads(t)["head-review"] // a cycle of 2.5 s: 100 ms are 0.04 turns, room for 0.11
	require.Equal(t, 2, h.Enlarged())
	h.Review.StepTime = 900 * time.Millisecond
	require.Equal(t, 7, h.Enlarged(), "7.2 s: 0.0139 turns, 7.9 fit")
	h.Review.StepTime = 10 * time.Second
	require.Equal(t, 8, h.Enlarged(), "at most 8")
	h.Base = pattern(t, "DD-TD-T-")
	h.Review.StepTime = 312500 * time.Microsecond
	require.Equal(t, 1, h.Enlarged(), "0.46 of an eighth of a turn: 0.0575")
	h.Review = nil
	require.Equal(t, 1, h.Enlarged())
}

func BenchmarkHead(b *testing.B) {
	h := heads(b)["head-review"]
	p := &Picture{}
	b.ReportAllocs()
	for b.Loop() {
		p.Reset()
		h.Draw(p)
	}
}
