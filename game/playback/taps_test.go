package playback_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// catcher is a round that takes taps.
type catcher struct {
	refuses bool
	got     []round.Tap
	setup   time.Duration
}

func (c *catcher) take(t round.Tap, setup time.Duration) bool {
	if !c.refuses {
		c.got, c.setup = append(c.got, t), setup
	}
	return !c.refuses
}

// tapping is a track that plays, the taps of its round, and the frame at which it began.
func tapping(t *testing.T) (*desk, *playback.Track, *playback.Taps, float64) {
	t.Helper()
	d := &desk{frame: 9000}
	p, base := begun(t, d, 0)
	_, _, why := p.Heard(ms(base))
	require.Empty(t, why)
	taps := &playback.Taps{}
	taps.Renew()
	return d, p, taps, ms(base)
}

func TestATapIsWhatIsHeardAtItsStamp(t *testing.T) {
	d, p, taps, begin := tapping(t)
	var c catcher
	d.frame += 1 << 20 // it comes long after it was made
	taps.Take(p, &host.Tap{At: begin + 1500, Round: 1}, -17*time.Millisecond, c.take)
	taps.Take(p, &host.Tap{At: begin + 2000.5, Round: 1}, -17*time.Millisecond, c.take)
	require.Len(t, c.got, 2)
	require.InDelta(t, 1500*time.Millisecond, c.got[0].At, 1000)
	require.InDelta(t, 2000500*time.Microsecond, c.got[1].At, 1000)
	require.Equal(t, []int{0, 1}, []int{c.got[0].Mark, c.got[1].Mark})
	require.Equal(t, -17*time.Millisecond, c.setup)
}

func TestTapsThatAreNotOfTheRound(t *testing.T) {
	for name, of := range map[string]struct {
		tap   host.Tap
		spoil func(d *desk)
		why   string
	}{
		"of the round before": {host.Tap{At: 1000, Round: 0}, nil, "it was on the page before"},
		"of no round yet":     {host.Tap{At: 1000, Round: 2}, nil, "numbers are not guessed"},
		"before it is heard":  {host.Tap{At: -0.5, Round: 1}, nil, "nothing is heard yet"},
		"in a gap":            {host.Tap{At: 1000, Round: 1}, func(d *desk) { d.epoch++ }, "another start"},
		"at no known time":    {host.Tap{At: 1000, Round: 1}, func(d *desk) { d.lost = errLost }, "it has no place"},
	} {
		d, p, taps, begin := tapping(t)
		if of.spoil != nil {
			of.spoil(d)
		}
		of.tap.At += begin
		var c catcher
		taps.Take(p, &of.tap, 0, c.take)
		require.Empty(t, c.got, "%s: %s", name, of.why)
	}
}

func TestARefusedTapLeavesNoMark(t *testing.T) {
	d, p, taps, begin := tapping(t)
	c := catcher{refuses: true}
	d.coarse = true
	taps.Take(p, &host.Tap{At: begin + 100, Round: 1, By: "mouse"}, 0, c.take)
	require.False(t, taps.Coarse, "it is not of the round")
	d.coarse, c.refuses = false, false
	taps.Take(p, &host.Tap{At: begin + 200, Round: 1, By: "touch"}, 0, c.take)
	require.Zero(t, c.got[0].Mark)
	require.Equal(t, "touch", taps.Recorded(c.got[0]).By)
}

func TestOneCoarseTapMakesTheRoundCoarse(t *testing.T) {
	d, p, taps, begin := tapping(t)
	var c catcher
	for i, coarse := range []bool{false, true, false} {
		d.coarse = coarse
		taps.Take(p, &host.Tap{At: begin + 100*float64(i+1), Round: 1}, 0, c.take)
		require.Equal(t, i > 0, taps.Coarse, "after tap %d", i)
	}
	taps.Renew()
	require.False(t, taps.Coarse, "another round")
	require.Equal(t, 2, taps.Number)
	taps.Take(p, &host.Tap{At: begin + 500, Round: 2}, 0, c.take)
	require.Zero(t, c.got[3].Mark, "whose marks begin anew")
}

// What the clock has learnt by the end of a round moves its taps, and what is kept of them
// says where they were placed at last.
func TestTapsAreSettledAtTheEnd(t *testing.T) {
	d, p, taps, begin := tapping(t)
	var c catcher
	taps.Take(p, &host.Tap{At: begin + 1000, Round: 1, By: "key"}, 0, c.take)
	taps.Take(p, &host.Tap{At: begin + 2000, Round: 1, By: "pen"}, 0, c.take)
	d.shift = 480 // 10 ms
	require.InDelta(t, 2010*time.Millisecond, taps.Settled(p, c.got[1]), 1000)
	d.lost = errLost
	require.InDelta(t, 1000*time.Millisecond, taps.Settled(p, c.got[0]), 1000, "it knows no better now")
	require.InDelta(t, 2010*time.Millisecond, taps.Settled(p, c.got[1]), 1000, "what it knew is not forgotten")

	first, second := begin+1000, begin+2000
	require.Equal(t, history.Tap{At: first, Frame: first * 48, By: "key",
		Reading: history.Reading{Context: first / 1000, Performance: first}}, taps.Recorded(c.got[0]))
	require.Equal(t, history.Tap{At: second, Frame: second*48 + 480, By: "pen",
		Reading: history.Reading{Context: second / 1000, Performance: second}}, taps.Recorded(c.got[1]))
}
