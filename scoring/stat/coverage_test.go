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
		{"spread", []int{6, 16, 64}, .94, .96, spreadHolds},
		{"bias over rounds", []int{6, 20, 60}, .94, .96, roundsHold(func(r Rhythm) scoring.Estimate { return r.Bias }, -15)},
		{"spread over rounds", []int{6, 20, 60}, .93, .965, roundsHold(func(r Rhythm) scoring.Estimate { return r.Spread }, 20)},
		{"share of .8", []int{12, 40, 200}, .92, .99, shareHolds(.8)},
		{"share in rounds, all alike", []int{6, 20, 60}, .94, .998, roundsShareHolds(1.5, 0)},
		{"share in rounds, unlike", []int{6, 20, 60}, .93, .965, roundsShareHolds(1.5, 1)},
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
	return func(r *rand.Rand, n int) bool { return holds(meanOf(series(r, n, alike)), 0) }
}

func spreadHolds(r *rand.Rand, n int) bool { return holds(Spread(series(r, n, 0)), 1) }

// roundsHold plays rounds of 16 dums with a bias that changes from day to day.
func roundsHold(f func(Rhythm) scoring.Estimate, truth float64) func(*rand.Rand, int) bool {
	player := tapper{bias: -15, day: 8, spread: 20}
	return func(r *rand.Rand, n int) bool {
		rounds := make([]Played, n)
		for i := range rounds {
			rounds[i], _ = player.round(r, 16)
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
