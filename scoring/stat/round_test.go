package stat

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"groundbeat/scoring"
)

const millisecond = time.Millisecond

// tapper is a player, made up: offsets with a bias of her own and one of the
// day, a spread, a likeness of neighbours and a drift.
type tapper struct {
	bias, day, spread, alike, drift float64 // ms, ms, ms, −1 to 1, ms a minute
	left                            float64 // share of dums left out
}

// round plays so many dums of sa'idi at 96 counts a minute.
func (p tapper) round(r *rand.Rand, dums int) Played {
	gaps := []time.Duration{937500 * time.Microsecond, 312500 * time.Microsecond, 1250 * millisecond}
	played := Played{Setup: 40 * millisecond, Beat: 625 * millisecond}
	at, day, last := time.Second, p.day*r.NormFloat64(), r.NormFloat64()
	for i := range dums {
		last = p.alike*last + math.Sqrt(1-p.alike*p.alike)*r.NormFloat64()
		played.Strokes = append(played.Strokes, at)
		played.Counts = append(played.Counts, i%3)
		if r.Float64() >= p.left {
			off := p.bias + day + p.spread*last + p.drift*(at-time.Second).Minutes()
			played.Pairs = append(played.Pairs, scoring.Pair{Stroke: i, Tap: len(played.Pairs),
				Offset: played.Setup + time.Duration(off*float64(millisecond))})
		}
		at += gaps[i%3]
	}
	return played
}

// TestOfRound: every number is that of its own function, of the offsets less the
// set-up mean.
func TestOfRound(t *testing.T) {
	p := tapper{bias: 12, spread: 20, drift: 30}.round(rand.New(rand.NewPCG(1, 9)), 24)
	r := OfRound(p)
	x, minutes := make([]float64, 24), make([]float64, 24)
	var counts [3][]float64
	for i, pair := range p.Pairs {
		x[i] = (pair.Offset - p.Setup).Seconds() * 1000
		minutes[i] = (p.Strokes[i] - p.Strokes[0]).Minutes()
		counts[i%3] = append(counts[i%3], x[i])
	}
	same := func(want, got scoring.Estimate) {
		t.Helper()
		require.InDelta(t, want.Value, got.Value, 1e-9)
		require.InDelta(t, want.Low, got.Low, 1e-9)
		require.InDelta(t, want.High, got.High, 1e-9)
		require.Equal(t, 24, got.N)
	}
	same(Mean(x), r.Bias)
	same(Median(x), r.Median)
	same(Centre(x), r.Centre)
	same(Spread(x), r.Spread)
	same(Robust(x), r.Robust)
	same(Lag(x), r.Lag)
	same(Slope(minutes, x), r.Drift)
	require.InDelta(t, stat.Mean(x, nil)/625, math.Remainder(r.Circle.Mean.Value, 1), .002, "behind: a little of a beat")
	require.Less(t, r.Circle.Rayleigh, 1e-6)
	require.Len(t, r.Counts, 3)
	for k, c := range r.Counts {
		require.InDelta(t, stat.Mean(counts[k], nil), c.Offset.Value, 1e-9)
		require.Equal(t, 8, c.Offset.N)
		require.Equal(t, 8, c.Ahead+c.Behind)
		require.Zero(t, c.Out)
	}
}

// TestOfRoundFromScore: what scoring.Score yields can be measured as it is, and
// says the same.
func TestOfRoundFromScore(t *testing.T) {
	p := tapper{bias: -8, spread: 15}.round(rand.New(rand.NewPCG(4, 9)), 30)
	taps := make([]time.Duration, len(p.Pairs))
	for i, pair := range p.Pairs {
		taps[i] = p.Strokes[pair.Stroke] + pair.Offset
	}
	scored := scoring.Score(p.Strokes, taps, p.Setup, scoring.Window{Within: scoring.Wide, Capped: true})
	p.Pairs = scored.Pairs
	r := OfRound(p)
	require.InDelta(t, scored.Timing.Bias.Value, r.Bias.Value, 1e-9)
	require.InDelta(t, scored.Timing.Median.Value, r.Median.Value, 1e-9)
	require.InDelta(t, scored.Timing.Spread.Value, r.Spread.Value, 1e-9)
	require.InDelta(t, scored.Timing.Drift.Value, r.Drift.Value, 1e-9)
	n := float64(len(p.Pairs))
	require.InDelta(t, scored.Timing.Robust.Value*n/(n-.8), r.Robust.Value, 1e-3) // 1.4826 rounded there
}

// TestDumsLeftOut: the taps on both sides of one are no neighbours, and what is
// left out is counted where it was.
func TestDumsLeftOut(t *testing.T) {
	p := tapper{spread: 20}.round(rand.New(rand.NewPCG(2, 9)), 30)
	p.Pairs = append(p.Pairs[:10:10], p.Pairs[12:]...) // strokes 10 and 11: counts 1 and 2
	r := OfRound(p)
	require.Equal(t, []int{0, 1, 1}, []int{r.Counts[0].Out, r.Counts[1].Out, r.Counts[2].Out})
	require.Equal(t, 28, r.Lag.N)
	_, x, at := p.lists()
	d := deviations(x, stat.Mean(x, nil))
	var products, squares float64
	for i := range d {
		squares += d[i] * d[i]
		if i > 0 && i != 10 {
			products += d[i] * d[i-1]
		}
	}
	got, _ := correlation(d, at)
	require.InDelta(t, products/26/(squares/27), got, 1e-12)
	_, ok := correlation(d, []int{0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40, 42, 44, 46, 48, 50, 52, 54})
	require.False(t, ok, "no neighbours at all")
}

func TestRoundOfNothing(t *testing.T) {
	r := OfRound(Played{})
	require.Equal(t, scoring.Unknown(0, LeastTaps), r.Bias)
	require.Equal(t, scoring.Unknown(0, LeastSeries), r.Drift)
	require.Equal(t, scoring.Unknown(0, LeastCircle), r.Circle.Mean)
	require.Equal(t, 1., r.Circle.Rayleigh)
	require.Nil(t, r.Counts)

	left := OfRound(Played{Strokes: make([]time.Duration, 4), Counts: []int{0, 1, 0, 1}})
	require.Equal(t, 2, left.Counts[1].Out)
	require.Equal(t, 0, left.Counts[1].Offset.N)
}

// TestLateRounds: the same round 10⁷ ms later, and with another set-up on the
// offsets, says the same.
func TestLateRounds(t *testing.T) {
	p := tapper{bias: 3, spread: 9}.round(rand.New(rand.NewPCG(3, 9)), 24)
	early := OfRound(p)
	for i := range p.Strokes {
		p.Strokes[i] += 1e7 * millisecond
		p.Pairs[i].Offset += 177 * millisecond
	}
	p.Setup += 177 * millisecond
	require.Equal(t, early, OfRound(p))
}

// TestOfRounds: a player is recovered from forty rounds, and the way she differs
// from day to day is told from the way she differs from tap to tap.
func TestOfRounds(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 9))
	player := tapper{bias: -15, day: 8, spread: 20, alike: .4, drift: 12, left: .1}
	var rounds []Played
	for range 40 {
		rounds = append(rounds, player.round(r, 24))
	}
	rounds = append(rounds, Played{}, Played{Strokes: make([]time.Duration, 3), Pairs: make([]scoring.Pair, 1)})
	got := OfRounds(rounds)
	require.Equal(t, 40, got.Rounds)
	require.InDelta(t, 40*24*.9, got.Taps, 40)
	half := 12 * (rounds[0].Strokes[23] - rounds[0].Strokes[0]).Minutes() / 2 // the drift is in the bias
	require.InDelta(t, -15+half, got.Bias.Value, 5)                           // three standard errors
	require.InDelta(t, -15+half, got.Centre.Value, 5)
	require.InDelta(t, 2*student(39)*got.Wander.Value/math.Sqrt(40), got.Bias.High-got.Bias.Low, 1e-9)
	require.InDelta(t, 19, got.Spread.Value, 2)
	require.InDelta(t, 19, got.Robust.Value, 3)
	require.InDelta(t, 12, got.Drift.Value, 20)
	require.InDelta(t, .4, got.Lag.Value, .12)
	require.InDelta(t, 10, got.Wander.Value, 3) // the day's 8, and what is left of the taps' 20
	require.Len(t, got.Counts, 3)
	require.Equal(t, 40, got.Counts[0].Offset.N)

	few := OfRounds(rounds[:5])
	require.False(t, few.Bias.Known || few.Spread.Known || few.Wander.Known || few.Counts[0].Offset.Known)
	require.Equal(t, 1, few.Bias.Missing())
	require.Equal(t, Rhythm{}.Rounds, OfRounds(nil).Rounds)
}

// TestPerfectRounds: a machine's taps, without any scatter, do no harm.
func TestPerfectRounds(t *testing.T) {
	var rounds []Played
	for range 8 {
		rounds = append(rounds, tapper{bias: 5}.round(rand.New(rand.NewPCG(1, 1)), 12))
	}
	got := OfRounds(rounds)
	require.InDelta(t, 5, got.Bias.Value, 1e-6)
	require.False(t, got.Spread.Known, "no scatter to speak of")
	r := OfRound(rounds[0])
	require.InDelta(t, 0, r.Spread.Value, 1e-6)
	require.False(t, math.IsNaN(r.Lag.Low) || math.IsNaN(r.Circle.Mean.Low))
}
