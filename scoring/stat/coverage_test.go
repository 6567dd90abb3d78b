package stat

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// TestCoverage: how often an interval holds the true number, for made-up
// samples of the least size and of larger ones; 95 % is asked for. alike is the
// correlation of neighbours in the taps. The bounds of each row are what was
// measured with 5,000 to 20,000 runs, rounded away; 1,000 runs have a standard error of
// 0.7 points.
func TestCoverage(t *testing.T) {
	runs := 1000
	if testing.Short() {
		runs = 300
	}
	slack := 3 * math.Sqrt(.95*.05/float64(runs))
	for _, c := range []struct {
		name      string
		sizes     []int
		low, high float64 // shares of intervals that hold the true number
		sample    func(r *rand.Rand, n int) bool
	}{
		{"mean", []int{6, 16, 64}, .94, .975, meanHolds(0)},
		{"mean, alike .3", []int{6, 16, 64}, .92, .96, meanHolds(.3)},
		{"mean, alike .5", []int{6, 16, 64}, .90, .96, meanHolds(.5)},
		{"median", []int{6, 16, 64}, .94, .985, normalHolds(Median, 0)},
		{"centre", []int{6, 16, 64}, .94, .975, normalHolds(Centre, 0)},
		{"spread", []int{6, 16, 64}, .94, .96, normalHolds(Spread, 1)},
		{"robust spread", []int{6, 16, 64}, .935, .965, normalHolds(Robust, 1)},
		{"drift", []int{8, 16, 64}, .955, .975, slopeHolds(0)},
		{"drift, alike .3", []int{8, 16, 64}, .93, .955, slopeHolds(.3)},
		{"drift, alike .5", []int{8, 16, 64}, .91, .955, slopeHolds(.5)},
		{"lag, alike 0", []int{8, 16, 64}, .935, .99, lagHolds(0)},
		{"lag, alike .3", []int{8, 16, 64}, .93, .98, lagHolds(.3)},
		{"lag, alike .5", []int{8, 16, 64}, .92, .955, lagHolds(.5)},
		{"lag, alike .8", []int{8, 16, 64}, .89, .945, lagHolds(.8)},
		{"direction, close", []int{5, 16, 64}, .94, .96, directionHolds(.2)},
		{"direction, scattered", []int{5, 16, 64}, .94, .975, directionHolds(1)},
		{"resultant, close", []int{5, 16, 64}, .94, .965, resultantHolds(.2)},
		{"resultant, scattered", []int{5, 16, 64}, .96, .995, resultantHolds(1)},
		{"bias over rounds", []int{6, 20, 60}, .94, .96, roundsHold(func(r Rhythm) scoring.Estimate { return r.Bias }, -15)},
		{"centre over rounds", []int{6, 20, 60}, .94, .975, roundsHold(func(r Rhythm) scoring.Estimate { return r.Centre }, -15)},
		{"spread over rounds", []int{6, 20, 60}, .93, .965, roundsHold(func(r Rhythm) scoring.Estimate { return r.Spread }, 20)},
		{"robust over rounds", []int{6, 20, 60}, .92, .98, roundsHold(func(r Rhythm) scoring.Estimate { return r.Robust }, 20)},
		{"lag over rounds", []int{6, 20, 60}, .92, .96, roundsHold(func(r Rhythm) scoring.Estimate { return r.Lag }, 0)},
		{"share of .8", []int{12, 40, 200}, .92, .99, shareHolds(.8)},
		{"share in rounds, all alike", []int{6, 20, 60}, .94, .998, roundsShareHolds(1.5, 0)},
		{"share in rounds, unlike", []int{6, 20, 60}, .93, .965, roundsShareHolds(1.5, 1)},
		{"kappa of .85", []int{24, 60, 200}, .94, .97, kappaHolds(.9)},
		{"kappa of .4", []int{24, 60, 200}, .94, .96, kappaHolds(.6)},
		{"information, nearly all", []int{60, 100, 200}, .93, .96, bitsHolds(.95)},
		{"information, much", []int{60, 100, 200}, .92, .96, bitsHolds(.8)},
		{"information, little", []int{60, 100, 200}, .94, .999, bitsHolds(.45)},
	} {
		for _, n := range c.sizes {
			r := rand.New(rand.NewPCG(95, uint64(n)))
			held := 0
			for range runs {
				if c.sample(r, n) {
					held++
				}
			}
			share := float64(held) / float64(runs)
			t.Logf("%-22s n %3d: %.3f", c.name, n, share)
			require.GreaterOrEqual(t, share, c.low-slack, "%s, n = %d", c.name, n)
			require.LessOrEqual(t, share, c.high+slack, "%s, n = %d", c.name, n)
		}
	}
}

func holds(e scoring.Estimate, truth float64) bool { return e.Known && !e.Excludes(truth) }

// series returns normally distributed values of mean 0 and deviation 1 of which
// neighbours are so alike.
func series(r *rand.Rand, n int, alike float64) []float64 {
	x, last := make([]float64, n), r.NormFloat64()
	for i := range x {
		last = alike*last + math.Sqrt(1-alike*alike)*r.NormFloat64()
		x[i] = last
	}
	return x
}

func meanHolds(alike float64) func(*rand.Rand, int) bool {
	return func(r *rand.Rand, n int) bool { return holds(Mean(series(r, n, alike)), 0) }
}

func normalHolds(f func([]float64) scoring.Estimate, truth float64) func(*rand.Rand, int) bool {
	return func(r *rand.Rand, n int) bool { return holds(f(series(r, n, 0)), truth) }
}

func slopeHolds(alike float64) func(*rand.Rand, int) bool {
	return func(r *rand.Rand, n int) bool {
		at := make([]float64, n)
		for i := range at {
			at[i] = float64(i) * .02
		}
		return holds(Slope(at, series(r, n, alike)), 0)
	}
}

func lagHolds(alike float64) func(*rand.Rand, int) bool {
	return func(r *rand.Rand, n int) bool { return holds(Lag(series(r, n, alike)), alike) }
}

// scattered returns directions about ¾, normally distributed with a deviation
// in radians.
func scattered(r *rand.Rand, n int, deviation float64) []float64 {
	turns := series(r, n, 0)
	for i := range turns {
		turns[i] = .75 + turns[i]*deviation/(2*math.Pi)
	}
	return turns
}

func directionHolds(deviation float64) func(*rand.Rand, int) bool {
	return func(r *rand.Rand, n int) bool {
		mean := Around(scattered(r, n, deviation)).Mean
		if !mean.Known { // a quarter turn would not do: it says nothing wrong
			return true
		}
		near := mean.Value + math.Remainder(.75-mean.Value, 1)
		return mean.Low <= near && near <= mean.High
	}
}

func resultantHolds(deviation float64) func(*rand.Rand, int) bool {
	truth := math.Exp(-deviation * deviation / 2)
	return func(r *rand.Rand, n int) bool {
		return holds(Around(scattered(r, n, deviation)).Resultant, truth)
	}
}

// roundsHold plays rounds of 16 dums with a bias that changes from day to day.
func roundsHold(f func(Rhythm) scoring.Estimate, truth float64) func(*rand.Rand, int) bool {
	player := tapper{bias: -15, day: 8, spread: 20}
	return func(r *rand.Rand, n int) bool {
		rounds := make([]Played, n)
		for i := range rounds {
			rounds[i] = player.round(r, 16)
		}
		return holds(f(OfRounds(rounds)), truth)
	}
}

func shareHolds(p float64) func(*rand.Rand, int) bool {
	return func(r *rand.Rand, n int) bool {
		k := 0
		for range n {
			if r.Float64() < p {
				k++
			}
		}
		return holds(Share(k, n), p)
	}
}

// said returns the answers of a listener who tells three rhythms, played alike
// often, with a share of right answers, all mistakes alike likely.
func said(r *rand.Rand, n int, right float64) Confusions {
	c := Confusions{{0, 0, 0}, {0, 0, 0}, {0, 0, 0}}
	for range n {
		played, answer := r.IntN(3), 0
		if answer = played; r.Float64() >= right {
			answer = (played + 1 + r.IntN(2)) % 3
		}
		c[played][answer]++
	}
	return c
}

func kappaHolds(right float64) func(*rand.Rand, int) bool {
	return func(r *rand.Rand, n int) bool { return holds(Agreement(said(r, n, right)), (right-1./3)/(1-1./3)) }
}

func bitsHolds(right float64) func(*rand.Rand, int) bool {
	wrong := (1 - right) / 2
	truth := right*math.Log2(3*right) + 2*wrong*math.Log2(3*wrong)
	return func(r *rand.Rand, n int) bool { return holds(Transmitted(said(r, n, right)).Bits, truth) }
}
