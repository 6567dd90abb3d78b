package round_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// toBaladi is a round of four eights of maqsum at 120 that becomes baladi after the
// second, begun. It starts at 2 s, changes at 10, differs at 10.25 and ends at 18.
func toBaladi(t testing.TB) *round.Changed {
	t.Helper()
	r := changed(t, supplied(t, "maqsum"), supplied(t, "baladi"), 2, 4, 120, riff.Bare)
	r.Begin()
	return r
}

func TestChangeHeard(t *testing.T) {
	r := toBaladi(t)
	require.False(t, r.Press(round.Tap{At: 1900 * ms}, 0), "in the count-in")
	require.True(t, r.Press(round.Tap{At: 5 * time.Second, Mark: 1}, 0), "too early, and taken")
	r.Hear(5*time.Second, 0)
	require.Equal(t, round.Playing, r.Phase())
	require.Equal(t, 18*time.Second, r.End())
	require.True(t, r.Press(round.Tap{At: 11250 * ms, Mark: 2}, 0))
	require.Equal(t, 14*time.Second, r.End(), "to the end of that eight")
	require.False(t, r.Press(round.Tap{At: 11500 * ms}, 0), "it has been heard")
	require.False(t, r.Answer("baladi"), "not asked yet")
	r.Hear(14*time.Second-1, 0)
	require.Equal(t, round.Playing, r.Phase())
	require.Zero(t, r.Notice())
	r.Hear(14*time.Second, 0)
	require.Equal(t, round.Waiting, r.Phase())
	r.Cut("hidden")
	require.Equal(t, round.Waiting, r.Phase(), "it has been heard")
	require.False(t, r.Answer(""))
	require.True(t, r.Answer("baladi"))
	require.False(t, r.Answer("saidi"), "one answer only")
	require.Equal(t, round.Review, r.Phase())
	require.Equal(t, round.Notice{
		Heard: true, Press: 1, Late: time.Second, Counts: 2, InEight: 1250 * ms, Early: 1,
		Answer: "baladi", Right: true,
	}, r.Notice())
	require.False(t, r.Press(round.Tap{At: 12 * time.Second}, 0))
}

// A press every 0.9 s hits the change, and may as well have come by chance: the set-up's
// mean is taken off before that is told.
func TestChangeHitByChance(t *testing.T) {
	for _, c := range []struct {
		first, gap time.Duration
		chance     bool
	}{{2100 * ms, 450 * ms, true}, {2100 * ms, 900 * ms, true}, {6 * time.Second, 4900 * ms, false}, {10 * time.Second, 700 * ms, true}} {
		const setup = 200 * ms
		r := toBaladi(t)
		for at := c.first; at < 12*time.Second; at += c.gap {
			r.Press(round.Tap{At: at + setup}, setup)
		}
		r.Hear(time.Minute, setup)
		r.Answer("baladi")
		n := r.Notice()
		require.True(t, n.Heard && n.Right, "as it was pressed and said")
		require.Equal(t, c.chance, n.Chance, "every %v, %d early", c.gap, n.Early)
	}
}

func TestChangeSaidOtherwise(t *testing.T) {
	r := toBaladi(t)
	r.Press(round.Tap{At: 10250 * ms}, 0)
	r.Hear(time.Minute, 0)
	require.True(t, r.Answer("saidi"))
	n := r.Notice()
	require.False(t, n.Right)
	require.True(t, n.Heard)
	require.Zero(t, n.Late, "at the very stroke")
}

// The set-up's mean is taken off before it is decided whether the change could be
// heard, and from the time that it took.
func TestChangeWithSetUp(t *testing.T) {
	r := toBaladi(t)
	require.True(t, r.Press(round.Tap{At: 10449 * ms}, 200*ms))
	require.Equal(t, 18*time.Second, r.End(), "for her that was at 10.249 s: too early")
	require.True(t, r.Press(round.Tap{At: 10950 * ms}, 200*ms))
	r.Hear(14*time.Second, 200*ms)
	r.Answer("baladi")
	require.Equal(t, 500*ms, r.Notice().Late)
	require.Equal(t, 1, r.Notice().Early)
	require.InDelta(t, 1, r.Notice().Counts, 1e-9)
}

func TestChangeLeftOut(t *testing.T) {
	r := toBaladi(t)
	r.Press(round.Tap{At: 10 * time.Second}, 0) // the eight has begun, and nothing differs yet
	r.Hear(18*time.Second+round.Grace-1, 0)
	require.Equal(t, round.Playing, r.Phase(), "a press may still come")
	r.Hear(18*time.Second+round.Grace, 0)
	require.Equal(t, round.Review, r.Phase(), "nothing is asked")
	require.Equal(t, round.Notice{Early: 1}, r.Notice())

	r = toBaladi(t)
	require.True(t, r.Press(round.Tap{At: 18100 * ms}, 0), "just after the end")
	r.Hear(18100*ms, 0)
	require.Equal(t, round.Waiting, r.Phase())
}

func TestNoChange(t *testing.T) {
	for _, c := range []struct {
		presses []time.Duration
		right   bool
	}{{nil, true}, {[]time.Duration{5 * time.Second, 12 * time.Second}, false}} {
		r := changed(t, supplied(t, "maqsum"), nil, 0, 4, 120, riff.Filled)
		r.Begin()
		for _, at := range c.presses {
			require.True(t, r.Press(round.Tap{At: at}, 0))
		}
		r.Hear(time.Minute, 0)
		require.Equal(t, round.Review, r.Phase())
		require.Equal(t, round.Notice{Early: len(c.presses), Right: c.right}, r.Notice())
	}
}

func TestChangeIsCut(t *testing.T) {
	r := toBaladi(t)
	r.Hear(3*time.Second, 0)
	r.Cut("gap")
	require.Equal(t, round.Void, r.Phase())
	require.False(t, r.Press(round.Tap{At: 11 * time.Second}, 0))
	require.False(t, r.Answer("baladi"))
	require.Zero(t, r.Notice())
}

// A clock that has heard more moves a press a little; which one heard the change
// stays, and it is never before it.
func TestChangeRetimed(t *testing.T) {
	r := toBaladi(t)
	r.Press(round.Tap{At: 4 * time.Second, Mark: 1}, 0)
	r.Press(round.Tap{At: 10251 * ms, Mark: 2}, 0)
	r.Retime(func(tap round.Tap) time.Duration { return tap.At - 2*ms })
	require.Equal(t, []time.Duration{3998 * ms, 10249 * ms}, at(r.Presses()))
	r.Hear(time.Minute, 0)
	r.Answer("baladi")
	require.Equal(t, 1, r.Notice().Press)
	require.Zero(t, r.Notice().Late)
	r.Retime(func(round.Tap) time.Duration { return 0 })
	require.Equal(t, 10249*ms, r.Presses()[1].At, "a result stands")
}

// The end is that of an eight of the new rhythm, whatever its metre.
func TestEightsOfTheNewRhythm(t *testing.T) {
	r := changed(t, supplied(t, "karsilama"), supplied(t, "samai-thaqil"), 2, 4, 120, riff.Bare)
	r.Begin()
	at, _ := r.Changes()
	require.InDelta(t, (4+18)*0.5, at.Seconds(), 1e-4)
	require.True(t, r.Press(round.Tap{At: at + 5500*ms}, 0), "in its second cycle of ten counts")
	require.InDelta(t, (4+18+20)*0.5, r.End().Seconds(), 1e-4)
}

// FuzzChanged does things to a round in any order; see FuzzRound.
func FuzzChanged(f *testing.F) {
	f.Add([]byte("\x00\x00\x01\x30\x02\x80\x01\xff\x05\x00"))
	f.Add([]byte("\x00\x00\x02\x20\x03\x00\x01\xff"))
	from, to := supplied(f, "maqsum"), supplied(f, "saidi")
	f.Fuzz(func(t *testing.T, script []byte) {
		r := changed(t, from, to, 1, 4, 220, riff.Bare)
		for ; len(script) >= 2; script = script[2:] {
			before, at := r.Phase(), (time.Duration(script[1])-20)*60*ms
			switch script[0] % 6 {
			case 0:
				r.Begin()
			case 1:
				r.Hear(at, at/9)
			case 2:
				r.Press(round.Tap{At: at}, at/8)
			case 3:
				r.Cut("stop")
			case 4:
				r.Retime(func(tap round.Tap) time.Duration { return at - tap.At })
			case 5:
				r.Answer("saidi")
			}
			require.True(t, forward(before, r.Phase()), "from %v to %v", before, r.Phase())
			requireNoticed(t, r)
		}
	})
}

func requireNoticed(t *testing.T, r *round.Changed) {
	t.Helper()
	for i, p := range r.Presses() {
		require.True(t, i == 0 || p.At >= r.Presses()[i-1].At)
	}
	require.LessOrEqual(t, r.End(), r.Passage.End())
	n := r.Notice()
	if r.Phase() != round.Review {
		require.Zero(t, n)
		return
	}
	require.Equal(t, n.Heard, n.Answer != "")
	require.Equal(t, n.Right, n.Answer == "saidi")
	require.GreaterOrEqual(t, n.Late, time.Duration(0))
	require.GreaterOrEqual(t, n.InEight, n.Late)
	if n.Heard {
		require.Equal(t, len(r.Presses()), n.Early+1)
	} else {
		require.Equal(t, len(r.Presses()), n.Early)
	}
}
