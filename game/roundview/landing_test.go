package roundview

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// landings are so many taps, each so many milliseconds off; none for 1000 or more.
func landings(offsets ...int) (all []Landing) {
	for _, ms := range offsets {
		all = append(all, Landing{Tapped: ms < 1000, Offset: time.Duration(ms) * time.Millisecond})
		if ms >= 1000 {
			all[len(all)-1].Offset = 0
		}
	}
	return all
}

// A tap is near up to what is worth a sentence, to either side; none is never near.
func TestNear(t *testing.T) {
	for off, near := range map[time.Duration]bool{0: true, 39 * ms: true, -39 * ms: true, 40 * ms: false, -40 * ms: false} {
		require.Equal(t, near, Landing{Tapped: true, Offset: off}.near(), off)
		require.False(t, Landing{Offset: off}.near())
	}
}

// What was not tapped is in no list of offsets.
func TestTappedOffsets(t *testing.T) {
	require.Equal(t, []float64{-20, 35}, tapped(landings(-20, 1000, 35)))
	require.Empty(t, tapped(landings(1000)))
}

// How far taps lay at the farthest, to either side of where they belong.
func TestEnds(t *testing.T) {
	chance := rand.New(rand.NewPCG(2, 1))
	for range 300 {
		var all []Landing
		for range chance.IntN(6) {
			all = append(all, landings(chance.IntN(300)-150)...)
		}
		e := elsewhere{off: time.Duration(chance.IntN(60)) * ms}
		low, high := e.ends(all)
		require.LessOrEqual(t, low, time.Duration(0))
		require.GreaterOrEqual(t, high, time.Duration(0))
		far := time.Duration(0)
		for _, l := range all {
			off := l.Offset - e.off
			require.True(t, low <= off && off <= high)
			far = max(far, off, -off)
		}
		require.Equal(t, far, e.farthest(all))
	}
}

// What matters is far enough, and lies to the side to which it is unlike the rest.
func TestMatters(t *testing.T) {
	var e elsewhere
	require.True(t, e.matters(40*ms, 10))
	require.True(t, e.matters(-40*ms, -10))
	require.False(t, e.matters(40*ms, -10))
	require.False(t, e.matters(-40*ms, 10))
	require.False(t, e.matters(39*ms, 10))
}

// Where taps lay is listed in their order, with a word where there was none.
func TestLandingsInWords(t *testing.T) {
	w := words(t)
	e := elsewhere{off: 10 * ms}
	require.Equal(t, "40 ms behind", plain(e.say(w, landings(50), "none")))
	require.Equal(t, "40 ms behind, then none, then 20 ms ahead", plain(e.say(w, landings(50, 1000, -10), "none")))
	require.Empty(t, e.say(w, nil, "none"))
}

// plain has plain blanks for those at which no line breaks.
func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// A habit is told of several taps that lie together far from the rest, with its mean; of
// one alone, of a few that scatter, and of what is the output's, it is not.
func TestHabit(t *testing.T) {
	usual := elsewhere{Group: stat.Group{N: 40, Mean: 0, Spread: 12}}
	mean, ok := usual.habit(landings(80, 84, 78, 82, 79, 83))
	require.True(t, ok)
	require.InDelta(t, float64(81*ms), float64(mean), float64(ms))
	mean, ok = usual.habit(landings(-80, -84, -78, -82, -79, -83))
	require.True(t, ok)
	require.Negative(t, mean)
	_, ok = usual.habit(landings(80))
	require.False(t, ok)
	_, ok = usual.habit(landings(10, 12, 9, 11, 8, 12))
	require.False(t, ok, "too little to matter")
	mean, ok = elsewhere{Group: usual.Group, off: 20 * ms}.habit(landings(80, 84, 78, 82, 79, 83))
	require.True(t, ok)
	require.InDelta(t, float64(61*ms), float64(mean), float64(ms), "what is the output's is taken off")
	late := elsewhere{Group: stat.Group{N: 40, Mean: 80, Spread: 12}, off: 80 * ms}
	_, ok = late.habit(landings(80, 84, 78, 82, 79, 83))
	require.False(t, ok, "as all others")
}

// Which kinds of taps are unlike the rest is told kind by kind.
func TestUnlike(t *testing.T) {
	usual := elsewhere{Group: stat.Group{N: 60, Mean: 0, Spread: 10}}
	require.Equal(t, []bool{true, false}, usual.unlike(landings(200), landings(5)))
	require.Equal(t, []bool{false, true}, usual.unlike(landings(5), landings(-200)))
	require.Equal(t, []bool{false, false}, usual.unlike(landings(5, -8), landings(12, 1000)))
	require.Equal(t, []bool{false, false}, usual.unlike(nil, nil))
}

// Behind is what is later than its stroke, ahead everything else.
func TestEither(t *testing.T) {
	require.Equal(t, "behind", either(1, "behind", "ahead"))
	require.Equal(t, "ahead", either(-1, "behind", "ahead"))
}

// An offset is told to the nearest five milliseconds, without its sign.
func TestAbout(t *testing.T) {
	for d := -130 * ms; d <= 130*ms; d += ms / 3 {
		n := about(d)
		require.Zero(t, n%5)
		require.GreaterOrEqual(t, n, 0)
		require.LessOrEqual(t, (max(d, -d) - time.Duration(n)*ms).Abs(), 5*ms/2)
	}
}

// A lean on an output without a set-up is said with one number, or with both ends of what
// it may be, the nearer first.
func TestLeanInWords(t *testing.T) {
	w := words(t)
	require.Contains(t, plain(SayUnmeasured(w, 150*ms, 150*ms)), "150 ms")
	behind, ahead := plain(SayUnmeasured(w, 100*ms, 200*ms)), plain(SayUnmeasured(w, -200*ms, -100*ms))
	require.NotEqual(t, behind, ahead)
	for _, said := range []string{behind, ahead} {
		require.Regexp(t, `100.*200`, said)
	}
	require.Equal(t, plain(SayUnmeasured(w, 101*ms, 102*ms)), plain(SayUnmeasured(w, 100*ms, 100*ms)), "to the nearest five they are one")
	require.Contains(t, plain(SayLean(w, scoring.Estimated(30, 20, 40, 8, 6))), "30 ms behind")
	require.Contains(t, plain(SayLean(w, scoring.Estimated(-30, -40, -20, 8, 6))), "30 ms ahead")
	require.Equal(t, w.Say("lean-none"), SayLean(w, scoring.Estimated(3, -2, 8, 8, 6)))
}
