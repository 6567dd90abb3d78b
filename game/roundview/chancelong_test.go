package roundview

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/say"
)

// A stopper taps a round of stops: all dums with one lean and spread, and the stops, or
// the 1 after each, so much later.
type stopper struct {
	lean, spread, last, back float64 // ms
}

func (p stopper) plays(t testing.TB, chance *rand.Rand, w say.Words, c *rhythm.Cycle, eights int, seed uint64) (string, int) {
	r, err := round.NewStopped(round.Setting{Kind: round.Stops, Rhythm: c, BPM: c.Tempo.Usual, Eights: eights, Level: riff.Bare, Seed: seed})
	require.NoError(t, err)
	later := map[int]float64{}
	for _, s := range r.Stops() {
		later[s.At], later[s.Back] = p.last, p.back
	}
	r.Begin()
	for i, at := range r.Strokes() {
		r.Tap(round.Tap{At: at + say.Millis(p.lean+later[r.Steps()[i]]+p.spread*chance.NormFloat64())}, 0)
	}
	r.Hear(time.Hour, 0)
	s := &Stop{}
	s.Review = ReviewOf(&r.Round)
	s.Result = ResultOf(&r.Round, s.Review)
	s.Result.Measured = true
	s.Catch(r)
	return s.Finding(w), len(s.Caught)
}

// ofLandings reports whether a sentence is of taps on the stops or after them.
func ofLandings(text string) bool {
	return strings.Contains(text, "last tap") && !strings.Contains(text, "left out") || strings.Contains(text, "ou come back in") || strings.Contains(text, "ou came back in")
}

// habitual reports whether a sentence says that something is always so.
func habitual(text string) bool {
	return ofLandings(text) && !strings.Contains(text, "too few to tell a habit")
}

// Nothing is told of the stops of a player who taps them as she does the other dums, and
// what is told of one who is late on each of them is a habit only from three stops on.
func TestStopsByChance(t *testing.T) {
	w, chance, cycles := words(t), rand.New(rand.NewPCG(13, 1)), danced(t)
	plays := func(p stopper, i int) (string, int) {
		return p.plays(t, chance, w, cycles[i%len(cycles)], []int{4, 6, 8}[i/len(cycles)%3], uint64(i))
	}
	for _, p := range []stopper{{0, 20, 0, 0}, {20, 25, 0, 0}, {-20, 35, 0, 0}, {40, 15, 0, 0}} {
		told, hands, habits := 0, 0, 0
		for i := range rounds(t) {
			text, _ := plays(p, i)
			told += map[bool]int{true: 1}[ofLandings(text)]
			habits += map[bool]int{true: 1}[habitual(text)]
			hands += map[bool]int{true: 1}[strings.Contains(text, "hands") || strings.Contains(text, "left out")]
		}
		t.Logf("%+v: landings told %d, as habits %d, hands or left out %d of %d", p, told, habits, hands, rounds(t))
		require.LessOrEqual(t, told, rounds(t)/20, "%+v", p)
		require.LessOrEqual(t, hands, rounds(t)/20, "%+v", p)
	}
	for _, p := range []stopper{{0, 15, 75, 0}, {10, 15, 0, -75}} {
		told, all, habits, three := 0, 0, 0, 0
		for i := range rounds(t) {
			text, stops := plays(p, i)
			all++
			told += map[bool]int{true: 1}[ofLandings(text)]
			if stops >= 3 {
				three++
				habits += map[bool]int{true: 1}[habitual(text)]
			} else {
				require.False(t, habitual(text), text)
			}
		}
		t.Logf("%+v: told %d of %d; of three stops as a habit %d of %d", p, told, all, habits, three)
		require.GreaterOrEqual(t, told, all*8/10, "%+v", p)
		require.GreaterOrEqual(t, habits, three*8/10, "%+v", p)
	}
}

// A keeper carries on by herself: each interval of hers is longer by a share, and varies
// by its clock; her hand adds its own.
type keeper struct {
	lean, spread float64 // with the drums, ms
	slower       float64 // a share
	clock, hand  float64 // ms for an interval of a second; ms
}

func (p keeper) plays(t testing.TB, chance *rand.Rand, w say.Words, c *rhythm.Cycle, eights int, seed uint64) string {
	r, err := round.NewCarried(round.Setting{Kind: round.Carries, Rhythm: c, BPM: c.Tempo.Usual, Eights: eights, Level: riff.Bare, Seed: seed})
	require.NoError(t, err)
	r.Begin()
	off, before := 0., time.Duration(0)
	for i, at := range r.Strokes() {
		alone := false
		for _, s := range r.Silences() {
			alone = alone || r.Steps()[i] > s.From && r.Steps()[i] <= s.To
		}
		if alone {
			gap := (at - before).Seconds()
			off += 1000*gap*p.slower + p.clock*gap*chance.NormFloat64()
			r.Tap(round.Tap{At: at + say.Millis(p.lean+off+p.hand*chance.NormFloat64())}, 0)
		} else {
			off = 0
			r.Tap(round.Tap{At: at + say.Millis(p.lean+p.spread*chance.NormFloat64())}, 0)
		}
		before = at
	}
	r.Hear(time.Hour, 0)
	s := &Carry{}
	s.Review = ReviewOf(&r.Round)
	s.Result = ResultOf(&r.Round, s.Review)
	s.Result.Measured = true
	s.Keep(r)
	return s.Finding(w)
}

// Of a player who keeps the time by herself as well as with the drums nothing is told of
// the silences; of one whose clock wanders to either side no habit; and one whose own
// tempo is off is told so, where there are three silences or more.
func TestSilencesByChance(t *testing.T) {
	if testing.Short() {
		t.Skip("fewer rounds would tell nothing")
	}
	w, cycles := words(t), danced(t)
	for _, c := range []struct {
		keeper
		eights      []int
		told, habit [2]float64 // in which share of the rounds, from and to
	}{
		{keeper{0, 20, 0, 0, 20}, []int{4, 8, 16}, [2]float64{0, .05}, [2]float64{0, .05}},
		{keeper{20, 25, 0, 0, 25}, []int{4, 8, 16}, [2]float64{0, .05}, [2]float64{0, .05}},
		{keeper{0, 35, 0, 0, 35}, []int{4, 8, 16}, [2]float64{0, .05}, [2]float64{0, .05}},
		{keeper{0, 20, 0, 25, 15}, []int{16, 32}, [2]float64{0, 1}, [2]float64{0, .05}},
		{keeper{0, 20, .03, 15, 15}, []int{16, 32}, [2]float64{.8, 1}, [2]float64{.8, 1}},
		{keeper{0, 20, -.03, 15, 15}, []int{16, 32}, [2]float64{.8, 1}, [2]float64{.8, 1}},
		{keeper{0, 20, .03, 10, 15}, []int{4, 8}, [2]float64{.8, 1}, [2]float64{0, 0}},
	} {
		chance, told, habits, n := rand.New(rand.NewPCG(13, 2)), 0, 0, rounds(t)/2
		for i := range n {
			text := c.plays(t, chance, w, cycles[i%len(cycles)], c.eights[i/len(cycles)%len(c.eights)], uint64(i))
			if strings.Contains(text, "drums come back you are about") {
				habits, told = habits+1, told+1
			} else if strings.Contains(text, "hen the drums came back") || strings.Contains(text, "now up to") {
				told++
			}
		}
		t.Logf("%+v: told %d, as a habit %d of %d", c.keeper, told, habits, n)
		require.GreaterOrEqual(t, float64(told)/float64(n), c.told[0], "%+v", c)
		require.LessOrEqual(t, float64(told)/float64(n), c.told[1], "%+v", c)
		require.GreaterOrEqual(t, float64(habits)/float64(n), c.habit[0], "%+v", c)
		require.LessOrEqual(t, float64(habits)/float64(n), c.habit[1], "%+v", c)
	}
}
