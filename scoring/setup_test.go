package scoring

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// tapper is a player who taps along, made up: normally distributed about a delay,
// now and then leaving a stroke out or tapping astray.
type tapper struct {
	delay, spread time.Duration
	out, stray    float64       // parts of the strokes, 0 to 1
	doubled       float64       // parts of the taps that bounce 30 ms later
	drift         time.Duration // from the first stroke to the last, its middle at the delay
}

func (p tapper) taps(r *rand.Rand, strokes []time.Duration) []time.Duration {
	var taps []time.Duration
	length := strokes[len(strokes)-1] - strokes[0]
	for _, stroke := range strokes {
		if r.Float64() >= p.out {
			at := stroke + p.delay + time.Duration(r.NormFloat64()*float64(p.spread))
			at += time.Duration((float64(stroke-strokes[0])/float64(length) - .5) * float64(p.drift))
			taps = append(taps, at)
			if r.Float64() < p.doubled {
				taps = append(taps, at+30*millisecond)
			}
		}
		if r.Float64() < p.stray {
			taps = append(taps, strokes[0]+time.Duration(r.Float64()*float64(length)))
		}
	}
	slices.Sort(taps)
	return taps
}

// every returns strokes at equal gaps from a second on.
func every(n int, gap time.Duration) []time.Duration {
	strokes := make([]time.Duration, n)
	for i := range strokes {
		strokes[i] = time.Second + time.Duration(i)*gap
	}
	return strokes
}

// twoEights are the dums of two eights of maqsum at 96 counts a minute.
var twoEights = every(8, 1250*millisecond)

// run plays many rounds and returns bias and standard deviation of the means
// found, in ms, the mean spread found, and the part of the rounds refused.
func (p tapper) run(strokes []time.Duration, rounds int) (bias, sd, spread, refused float64) {
	r := rand.New(rand.NewPCG(7, uint64(p.delay)^uint64(p.spread)))
	var n, sum, squares, spreads float64
	for range rounds {
		found, err := MeasureSetUp(strokes, p.taps(r, strokes))
		if err != nil {
			refused += 1 / float64(rounds)
			continue
		}
		e := ms(found.Mean - p.delay)
		n, sum, squares, spreads = n+1, sum+e, squares+e*e, spreads+ms(found.Spread)
	}
	return sum / n, math.Sqrt(squares/n - sum/n*sum/n), spreads / n, refused
}

// TestMeasureSetUp states what a set-up is worth: the mean is free of bias, wherever
// it lies, and its standard deviation near to that of the plain mean of the 7.2 taps
// that are there, spread/√7.2, which strays would ruin: 4, 10 and 16 ms for spreads
// of 10, 25 and 40 ms. Five or fewer of eight strokes are tapped in 3.8 % of the
// rounds (binomial, .1 left out), and those at least are refused.
func TestMeasureSetUp(t *testing.T) {
	const rounds = 1500
	t.Log("delay spread | bias    SD  spread found  refused (ms)")
	for _, c := range []struct {
		spread  time.Duration
		refused float64
	}{{10 * millisecond, .06}, {25 * millisecond, .06}, {40 * millisecond, .14}} {
		var pooled float64
		for _, delay := range []time.Duration{-150, -40, 0, 38, 180, 400, 600} {
			p := tapper{delay: delay * millisecond, spread: c.spread, out: .1, stray: .15}
			bias, sd, spread, refused := p.run(twoEights, rounds)
			t.Logf("%5d %6.0f | %+5.2f %5.2f %8.1f %10.3f", delay, ms(c.spread), bias, sd, spread, refused)
			require.Less(t, math.Abs(bias), 3.5*sd/math.Sqrt(rounds), "bias")
			require.Less(t, sd, 1.15*ms(c.spread)/math.Sqrt(7.2))
			require.Less(t, refused, c.refused)
			pooled += bias / 7
		}
		require.Less(t, math.Abs(pooled), 3*ms(c.spread)/math.Sqrt(7.2*7*rounds), "bias of all delays together")
	}
}

func TestMeasureSetUpOfHabits(t *testing.T) {
	for _, c := range []struct {
		name          string
		player        tapper
		bias, refused float64
	}{
		{"doubled", tapper{delay: 200 * millisecond, spread: 10 * millisecond, doubled: 1}, .5, 0},
		{"some doubled", tapper{delay: -40 * millisecond, spread: 25 * millisecond, doubled: .3}, 1, .001},
		{"drift", tapper{delay: 60 * millisecond, spread: 10 * millisecond, drift: 60 * millisecond}, .5, .001},
		{"a quarter astray", tapper{delay: 60 * millisecond, spread: 25 * millisecond, stray: .25}, 1.5, .04},
	} {
		t.Run(c.name, func(t *testing.T) {
			bias, sd, spread, refused := c.player.run(twoEights, 1000)
			t.Logf("bias %+.2f SD %.2f spread %.1f ms, refused %.3f", bias, sd, spread, refused)
			require.Less(t, math.Abs(bias), c.bias)
			require.LessOrEqual(t, refused, c.refused)
		})
	}
}

// TestMeasureSetUpExactly: worked by hand. Eight offsets in ms, in the order of
// size −20 0 10 20 22 30 40 140: without the first and the last (8/5 = 1) their mean
// is 122/6 = 20.333333…, the median 21, distances from it 1 1 9 11 19 21 41 119, their
// median 15, times 1.4826: 22.239.
func TestMeasureSetUpExactly(t *testing.T) {
	offsets := []time.Duration{10, -20, 30, 0, 140, 40, 22, 20}
	taps := make([]time.Duration, len(offsets))
	for i := range taps {
		taps[i] = twoEights[i] + offsets[i]*millisecond
	}
	for _, delay := range []time.Duration{-40 * millisecond, 0, 300*millisecond + 1} {
		found, err := MeasureSetUp(twoEights, moved(taps, delay))
		require.NoError(t, err)
		require.Equal(t, SetUp{delay + 20333333, 22239 * time.Microsecond, 8, 8}, found)
	}
}

func moved(taps []time.Duration, by time.Duration) []time.Duration {
	out := slices.Clone(taps)
	for i := range out {
		out[i] += by
	}
	return out
}

func TestTrimmedMeanRoundsAlikeOnBothSides(t *testing.T) {
	require.Equal(t, time.Duration(2), trimmedMean([]time.Duration{1, 2})) // 1.5, away from 0
	require.Equal(t, time.Duration(-2), trimmedMean([]time.Duration{-2, -1}))
	require.Equal(t, time.Duration(1), trimmedMean([]time.Duration{1, 1, 2})) // 4/3
	require.Equal(t, time.Duration(-1), trimmedMean([]time.Duration{-2, -1, -1}))
	require.Equal(t, time.Duration(3), trimmedMean([]time.Duration{-99, 2, 3, 4, 999}))
}

func TestMeasureSetUpRefuses(t *testing.T) {
	dums := twoEights
	zigzag := func(half time.Duration) []time.Duration {
		taps := slices.Clone(dums)
		for i := range taps {
			taps[i] += half * time.Duration(1-2*(i%2))
		}
		return taps
	}
	merged := func(a, b []time.Duration) []time.Duration {
		all := slices.Concat(a, b)
		slices.Sort(all)
		return all
	}
	sixteen := every(16, 1250*millisecond)
	dense := every(16, 500*millisecond)
	for _, c := range []struct {
		name          string
		strokes, taps []time.Duration
		want          error
	}{
		{"no tap", dums, nil, ErrFewTaps},
		{"no stroke", nil, dums, ErrFewTaps},
		{"five taps", dums, dums[:5], ErrFewTaps},
		{"the count-in too", dums, merged(moved(every(8, 100*millisecond), -1100*millisecond), dums), nil},
		{"six taps", dums, dums[:6], nil},
		{"seven of sixteen", sixteen, sixteen[:7], ErrFewTaps},
		{"eight of sixteen", sixteen, sixteen[:8], nil},
		{"too far behind", dums, moved(dums, 610*millisecond), ErrFewTaps},
		{"too far ahead", dums, moved(dums, -160*millisecond), ErrFewTaps},
		{"40 ms either way", dums, zigzag(40 * millisecond), nil}, // 1.4826·40 = 59.3
		{"41 ms either way", dums, zigzag(41 * millisecond), ErrScattered},
		{"strokes too close", dense, dense, ErrUnclear},
		{"twice for every dum", dums, merged(dums, moved(dums, 300*millisecond)), ErrUnclear},
		{"on every count", dums, merged(dums, moved(dums, 625*millisecond)), ErrUnclear},
		{"now here, now there", sixteen, merged(sixteen[:8], moved(sixteen[8:], 300*millisecond)), ErrUnclear},
	} {
		t.Run(c.name, func(t *testing.T) {
			found, err := MeasureSetUp(c.strokes, c.taps)
			require.True(t, errors.Is(err, c.want), "%v", err)
			require.Equal(t, len(c.strokes), found.Strokes)
		})
	}
	require.Panics(t, func() { MeasureSetUp(dums, []time.Duration{2, 1}) })
}

// Taps that have nothing to do with the strokes are almost never taken for a
// set-up, however many there are.
func TestMeasureSetUpOfNonsense(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, n := range []int{6, 8, 12, 16, 24, 40, 80} {
		taken := 0
		for range 1000 {
			taps := make([]time.Duration, n)
			for i := range taps {
				taps[i] = time.Second + time.Duration(r.Float64()*float64(10*time.Second))
			}
			slices.Sort(taps)
			if _, err := MeasureSetUp(twoEights, taps); err == nil {
				taken++
			}
		}
		t.Logf("%d taps: %.3f taken", n, float64(taken)/1000)
		require.LessOrEqual(t, taken, 25)
	}
}

// Whatever is tapped, a set-up that is taken is inside what it promises, and all
// moved alike it moves alike.
func FuzzMeasureSetUp(f *testing.F) {
	f.Add(uint64(1), uint64(2), uint8(8), uint8(9), uint16(1250))
	f.Add(uint64(3), uint64(4), uint8(20), uint8(40), uint16(300))
	f.Fuzz(func(t *testing.T, a, b uint64, strokes, taps uint8, gap uint16) {
		r := rand.New(rand.NewPCG(a, b))
		asked := every(int(strokes%32), time.Duration(gap)*millisecond)
		tapped := make([]time.Duration, taps%64)
		for i := range tapped {
			tapped[i] = time.Duration(r.Int64N(int64(20 * time.Second)))
		}
		slices.Sort(tapped)
		found, err := MeasureSetUp(asked, tapped)
		again, errAgain := MeasureSetUp(moved(asked, 7*time.Hour+1), moved(tapped, 7*time.Hour+1))
		require.Equal(t, found, again)
		require.Equal(t, err == nil, errAgain == nil)
		require.LessOrEqual(t, found.Taps, min(len(asked), len(tapped)))
		if err == nil {
			require.GreaterOrEqual(t, found.Taps, leastTaps)
			require.LessOrEqual(t, found.Spread, MostSpread)
			require.Less(t, MinSetUp-2*belong, found.Mean)
			require.Less(t, found.Mean, MaxSetUp+2*belong)
		}
	})
}

func ExampleMeasureSetUp() {
	var dums, taps []time.Duration
	for i, offset := range []time.Duration{190, 178, 185, 201, 170, 188, 176, 194} { // ms
		dum := time.Duration(1+i) * time.Second
		dums = append(dums, dum)
		if i != 4 { // one is left out
			taps = append(taps, dum+offset*time.Millisecond)
		}
	}
	setUp, err := MeasureSetUp(dums, taps)
	fmt.Println(setUp.Mean, setUp.Spread, setUp.Taps, "of", setUp.Strokes, err)

	_, err = MeasureSetUp(dums, taps[:4])
	fmt.Println(err)
	// Output:
	// 187ms 8.8956ms 7 of 8 <nil>
	// too few taps belong to a stroke: 4 of 8
}
