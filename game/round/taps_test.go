package round_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/round"
)

// Where the first and the last tap of a round lie, for set-ups that are behind
// (wireless headphones) and ahead (who taps ahead of what is heard). A player
// with a set-up taps so much later or earlier, at the start as at the end.
func TestTapsWithSetUp(t *testing.T) {
	for _, c := range []struct {
		name        string
		bpm         int
		setup       time.Duration
		first, over time.Duration
	}{
		{"no set-up", 120, 0, 1750 * ms, 6300 * ms},
		{"behind", 120, 60 * ms, 1810 * ms, 6360 * ms},
		{"far behind", 120, 300 * ms, 2050 * ms, 6600 * ms},
		{"ahead", 120, -40 * ms, 1710 * ms, 6300 * ms},
		{"fast", 200, 0, 1050 * ms, 3900 * ms},
		{"fast and behind: a tap on the 8 is still one on the 8", 200, 180 * ms, 1230 * ms, 4080 * ms},
		{"fast and ahead: a tap on the 1 is still one on the 1", 200, -160 * ms, 890 * ms, 3900 * ms},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := begun(t, supplied(t, "maqsum"), c.bpm, 1, 0)
			take := func(at time.Duration) bool { return r.Tap(round.Tap{At: at}, c.setup) }
			require.False(t, take(c.first-1))
			require.True(t, take(c.first))
			require.True(t, take(c.over-1))
			require.False(t, take(c.over))
			require.False(t, r.Over(c.over-1, c.setup))
			require.True(t, r.Over(c.over, c.setup))
			r.Hear(c.over-1, c.setup)
			require.Equal(t, round.Playing, r.Phase())
			r.Hear(c.over, c.setup)
			require.Equal(t, round.Review, r.Phase())
			require.Equal(t, c.setup, r.Result().Setup)
		})
	}
}

// A dum on the very last step, and a player who is 300 ms behind: her tap comes
// after the question and after the bare grace, and it is on the dum.
func TestLastStrokeWithSetUp(t *testing.T) {
	const setup = 300 * ms
	r := begun(t, made(t, "4/4", "---------------D"), 200, 1, 0)
	strokes := r.Strokes()
	last := strokes[len(strokes)-1]
	require.Equal(t, r.End()-75*ms, last)
	tap := last + setup + 90*ms
	require.Greater(t, tap, r.End()+round.Grace)
	require.False(t, r.Tap(round.Tap{At: tap}, 0), "too late without the set-up")
	r.Hear(tap, setup)
	require.True(t, r.Tap(round.Tap{At: tap}, setup))
	r.Hear(time.Minute, setup)
	require.Len(t, r.Result().Pairs, 1)
	require.Equal(t, len(strokes)-1, r.Result().Pairs[0].Stroke)
	require.Equal(t, 390*ms, r.Result().Pairs[0].Offset)
}

// Taps may arrive in any order: two thumbs, or a queue.
func TestTapsAscend(t *testing.T) {
	r := begun(t, supplied(t, "maqsum"), 120, 1, 2*time.Second)
	for mark, at := range []time.Duration{3000, 2000, 4000, 3000, 2500, 3000} {
		require.True(t, r.Tap(round.Tap{At: at * ms, Mark: mark}, 0))
	}
	require.Equal(t, []round.Tap{
		{At: 2000 * ms, Mark: 1}, {At: 2500 * ms, Mark: 4},
		{At: 3000 * ms, Mark: 0}, {At: 3000 * ms, Mark: 3}, {At: 3000 * ms, Mark: 5},
		{At: 4000 * ms, Mark: 2},
	}, r.Taps())
}

func TestRetime(t *testing.T) {
	r := begun(t, supplied(t, "maqsum"), 120, 1, 2*time.Second)
	for mark, at := range []time.Duration{2010, 2020, 3000} {
		r.Tap(round.Tap{At: at * ms, Mark: mark}, 0)
	}
	better := map[int]time.Duration{0: 2030 * ms, 1: 2005 * ms, 2: 3001 * ms}
	retime := func(tap round.Tap) time.Duration { return better[tap.Mark] }
	r.Retime(retime)
	require.Equal(t, []round.Tap{{At: 2005 * ms, Mark: 1}, {At: 2030 * ms, Mark: 0}, {At: 3001 * ms, Mark: 2}}, r.Taps())

	r.Hear(time.Minute, 0)
	require.Equal(t, []int{1}, r.Result().Added, "the tap that is now the farther one")
	require.Equal(t, 5*ms, r.Result().Pairs[0].Offset)
	require.Equal(t, 1*ms, r.Result().Pairs[1].Offset)

	// The result names taps by their place; it must not be pulled from under it.
	before := at(r.Taps())
	better = map[int]time.Duration{0: 2000 * ms, 1: 2900 * ms, 2: 2100 * ms}
	r.Retime(retime)
	require.Equal(t, before, at(r.Taps()), "a finished round keeps its taps")
}

func TestRetimeWithoutTaps(t *testing.T) {
	r := begun(t, supplied(t, "maqsum"), 120, 1, 2*time.Second)
	r.Retime(func(round.Tap) time.Duration { panic("no tap to place") })
	require.Empty(t, r.Taps())
}
