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
func (p tapper) round(r *rand.Rand, dums int) (played Played, strokes []time.Duration) {
	gaps := []time.Duration{937500 * time.Microsecond, 312500 * time.Microsecond, 1250 * millisecond}
	played.Setup = 40 * millisecond
	at, day, last := time.Second, p.day*r.NormFloat64(), r.NormFloat64()
	for i := range dums {
		last = p.alike*last + math.Sqrt(1-p.alike*p.alike)*r.NormFloat64()
		strokes = append(strokes, at)
		played.Counts = append(played.Counts, i%3)
		if r.Float64() >= p.left {
			off := p.bias + day + p.spread*last + p.drift*(at-time.Second).Minutes()
			played.Pairs = append(played.Pairs, scoring.Pair{Stroke: i, Tap: len(played.Pairs),
				Offset: played.Setup + time.Duration(off*float64(millisecond))})
		}
		at += gaps[i%3]
	}
	return played, strokes
}

// TestBiasFromScore: what scoring.Score yields can be measured as it is, and
// says the same.
func TestBiasFromScore(t *testing.T) {
	p, strokes := tapper{bias: -8, spread: 15}.round(rand.New(rand.NewPCG(4, 9)), 30)
	taps := make([]time.Duration, len(p.Pairs))
	for i, pair := range p.Pairs {
		taps[i] = strokes[pair.Stroke] + pair.Offset
	}
	scored := scoring.Score(strokes, taps, p.Setup, scoring.Wide)
	p.Pairs = scored.Pairs
	require.InDelta(t, scored.Timing.Bias.Value, p.Bias().Value, 1e-9)
	require.Equal(t, 30, p.Bias().N)
	require.Equal(t, scoring.Unknown(0, LeastTaps), Played{}.Bias())
}

// TestDumsLeftOut: the taps on both sides of one are no neighbours.
func TestDumsLeftOut(t *testing.T) {
	p, _ := tapper{spread: 20}.round(rand.New(rand.NewPCG(2, 9)), 30)
	p.Pairs = append(p.Pairs[:10:10], p.Pairs[12:]...) // strokes 10 and 11
	x, at := p.offsets(), make([]int, 28)
	for i := range at {
		at[i] = p.Pairs[i].Stroke
	}
	require.Equal(t, mean(x, at), p.Bias())
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
	for i := range at {
		at[i] = 2 * i
	}
	_, ok := correlation(d, at)
	require.False(t, ok, "no neighbours at all")
}

// TestAnotherSetUp: the same round with another set-up on the offsets says the same.
func TestAnotherSetUp(t *testing.T) {
	p, _ := tapper{bias: 3, spread: 9}.round(rand.New(rand.NewPCG(3, 9)), 24)
	before := p.Bias()
	for i := range p.Pairs {
		p.Pairs[i].Offset += 177 * millisecond
	}
	p.Setup += 177 * millisecond
	require.Equal(t, before, p.Bias())
}

// TestOfRounds: a player is recovered from forty rounds.
func TestOfRounds(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 9))
	player := tapper{bias: -15, day: 8, spread: 20, alike: .4, drift: 12, left: .1}
	var rounds []Played
	var strokes []time.Duration
	for range 40 {
		var p Played
		p, strokes = player.round(r, 24)
		rounds = append(rounds, p)
	}
	rounds = append(rounds, Played{}, Played{Pairs: make([]scoring.Pair, 1)})
	got := OfRounds(rounds)
	require.Equal(t, 40, got.Bias.N, "rounds with one tap do not count")
	half := 12 * (strokes[23] - strokes[0]).Minutes() / 2 // the drift is in the bias
	require.InDelta(t, -15+half, got.Bias.Value, 5)       // three standard errors
	require.InDelta(t, 19, got.Spread.Value, 2)
	require.Len(t, got.Counts, 3)
	require.Equal(t, 40, got.Counts[0].N)

	few := OfRounds(rounds[:5])
	require.False(t, few.Bias.Known || few.Spread.Known || few.Counts[0].Known)
	require.Equal(t, 1, few.Bias.Missing())
	require.Zero(t, OfRounds(nil).Bias.N)
}

// TestCountsOfRounds: by hand, from six rounds of two taps on each of three counts, the
// last of which nobody tapped.
func TestCountsOfRounds(t *testing.T) {
	var rounds []Played
	for i := range 6 {
		p := Played{Counts: []int{0, 1, 2, 0, 1, 2}}
		for _, s := range []int{0, 1, 3, 4} {
			off := time.Duration(10*(s%3)+i+s) * millisecond
			p.Pairs = append(p.Pairs, scoring.Pair{Stroke: s, Tap: len(p.Pairs), Offset: off})
		}
		rounds = append(rounds, p)
	}
	got := OfRounds(rounds).Counts
	require.Len(t, got, 3)
	require.InDelta(t, 4, got[0].Value, 1e-12)  // of 0 3, 1 4, … 5 8: 1.5 to 6.5
	require.InDelta(t, 15, got[1].Value, 1e-12) // of 11 14, … 16 19: 12.5 to 17.5
	require.Equal(t, scoring.Unknown(0, LeastRounds), got[2])
}

// TestPerfectRounds: a machine's taps, without any scatter, do no harm.
func TestPerfectRounds(t *testing.T) {
	var rounds []Played
	for range 8 {
		p, _ := tapper{bias: 5}.round(rand.New(rand.NewPCG(1, 1)), 12)
		rounds = append(rounds, p)
	}
	got := OfRounds(rounds)
	require.InDelta(t, 5, got.Bias.Value, 1e-6)
	require.False(t, got.Spread.Known, "no scatter to speak of")
	require.InDelta(t, 5, rounds[0].Bias().High, 1e-6)
}
