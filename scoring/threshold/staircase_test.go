package threshold

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// equal returns the target at which steps are equal for a run of so many right
// answers, 0.5^(1/run): 0.707 for 2, 0.794 for 3 (Levitt 1971). That the levels
// settle exactly there holds for small steps only (García-Pérez, Forced-choice
// staircases with fixed step sizes, Vision Research 38, 1861–1881, 1998).
func equal(run int) float64 { return math.Pow(.5, 1/float64(run)) }

// TestTrace: levels and reversals of the tests of PsychoPy (Peirce et al.,
// Behavior Research Methods 51, 195–203, 2019). There a right answer makes the
// level lower; 1 is right.
func TestTrace(t *testing.T) {
	three := Rule{Start: .8, High: 1, Harder: -1, Run: 3, Target: equal(3), Sizes: []float64{.1, .01, .001}, Eager: true}
	log := three
	log.Start, log.Low, log.High, log.Sizes = math.Log10(.8), -5, 5, []float64{.02, .01, .01, .005}
	one := Rule{Start: .8, High: 1, Harder: -.1, Run: 1, Target: equal(1)}
	for _, c := range []struct {
		name, answers string
		rule          Rule
		level         func(float64) float64
		want          []float64
		turns         []int
	}{
		{"three down, linear", "1111 0000 1111 0000 1111", three, func(x float64) float64 { return x },
			[]float64{.8, .7, .6, .5, .4, .41, .42, .43, .44, .44, .44, .439, .439, .44, .441, .442, .443, .443, .443, .442}, []int{4, 10, 12, 18}},
		{"three down, logarithmic", "1111 0000 1111 0000 1111", log, func(x float64) float64 { return math.Pow(10, x) },
			[]float64{.8, .763994069, .729608671, .696770872, .665411017, .680910431, .696770872, .713000751, .729608671, .729608671,
				.729608671, .713000751, .713000751, .72125691, .729608671, .738057142, .746603441, .746603441, .746603441, .738057142}, []int{4, 10, 12, 18}},
		{"one down", "110 110 110 1", one, func(x float64) float64 { return x },
			[]float64{.8, .7, .6, .7, .6, .5, .6, .5, .4, .5}, []int{2, 3, 5, 6, 8, 9}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := Begin(c.rule)
			var turns []int
			for i, answer := range strings.ReplaceAll(c.answers, " ", "") {
				require.InDelta(t, c.want[i], c.level(s.Level()), 1e-9, "trial %d", i)
				before := s.Reversals
				if s.Answer(answer == '1'); s.Reversals > before {
					turns = append(turns, i)
				}
			}
			require.Equal(t, c.turns, turns)
		})
	}
}

// TestTargets: nominal targets of Levitt 1971, and the ratio of Kaernbach 1991
// for 75 %: three to one.
func TestTargets(t *testing.T) {
	for run, want := range map[int]float64{1: .5, 2: .7071068, 3: .7937005, 4: .8408964} {
		require.InDelta(t, want, equal(run), 1e-7)
		s := Begin(Rule{Start: 5, High: 10, Harder: 1, Run: run, Target: equal(run)})
		s.Answer(false)
		require.InDelta(t, 4, s.Level(), 1e-12, "equal steps")
	}
	s := Begin(Rule{Start: 5, High: 10, Harder: .5, Run: 1, Target: .75})
	s.Answer(true)
	require.Equal(t, 5.5, s.Level())
	s.Answer(false)
	require.InDelta(t, 4, s.Level(), 1e-12)
	require.InDelta(t, .73, Halfway(2), 1e-12)
	require.InDelta(t, .605, Halfway(4), 1e-12)
}

// TestRatioOfGarciaPerez: with these ratios of steps down to up the n-down
// staircase settles at these shares (García-Pérez 1998, Forced-choice staircases
// with fixed step sizes, Vision Research 38): the rule finds the ratio from the
// share.
func TestRatioOfGarciaPerez(t *testing.T) {
	for run, c := range map[int][2]float64{1: {.2845, .7785}, 2: {.5488, .8035}, 3: {.7393, .8315}, 4: {.8415, .8584}} {
		s := Begin(Rule{Start: 50, High: 100, Harder: 1, Run: run, Target: c[1]})
		s.Answer(false)
		require.InDelta(t, 1/c[0], 50-s.Level(), 2e-3*50/10, "run of %d", run)
	}
}

// TestSettles: simulated listeners are right as often as the target says, once
// the staircase has come to them, whatever the target and the choices.
func TestSettles(t *testing.T) {
	search := Search{Low: 0, High: 1}
	for _, c := range []struct {
		run, choices int
		target       float64
	}{{1, 2, Halfway(2)}, {1, 3, Halfway(3)}, {1, 4, Halfway(4)}, {1, 2, .85}, {2, 2, equal(2)}, {3, 2, equal(3)}} {
		r := rand.New(rand.NewPCG(71, uint64(c.run)))
		right, trials := 0, 0
		for range 100 {
			s := Begin(Rule{Start: .1, High: 1, Harder: .02, Run: c.run, Target: c.target, Sizes: []float64{3, 2, 1}})
			for i := range 200 {
				ok := r.Float64() < search.right(s.Level(), .5, .08, c.choices)
				s.Answer(ok)
				if i >= 80 {
					trials++
					if ok {
						right++
					}
				}
			}
		}
		require.InDelta(t, c.target, float64(right)/float64(trials), .015, "%+v", c)
	}
}

// TestChoicesVary: with the target set for each question a staircase settles at
// the same threshold, however many choices the questions have.
func TestChoicesVary(t *testing.T) {
	r, search := rand.New(rand.NewPCG(2, 4)), Search{Low: 0, High: 1}
	sum, trials := 0., 0
	for range 100 {
		s := Begin(Rule{Start: .5, High: 1, Harder: .02, Run: 1, Target: .5})
		for i := range 200 {
			choices := 2 + r.IntN(3)
			s.Rule.Target = Halfway(choices)
			s.Answer(r.Float64() < search.right(s.Level(), .62, .06, choices))
			if i >= 50 {
				sum += s.Level()
				trials++
			}
		}
	}
	require.InDelta(t, .62, sum/float64(trials), .02)
}

// TestStaysWithin: levels never leave their bounds, and a listener who is always
// right or always wrong stands at one of them.
func TestStaysWithin(t *testing.T) {
	for _, right := range []bool{true, false} {
		s := Begin(Rule{Start: .4, Low: .1, High: .9, Harder: .15, Run: 2, Target: .7})
		for range 100 {
			s.Answer(right)
			require.True(t, s.Level() >= .1 && s.Level() <= .9)
		}
		require.Equal(t, map[bool]float64{true: .9, false: .1}[right], s.Level())
		require.Zero(t, s.Reversals)
	}
}

func TestRulesThatCannotBeFollowed(t *testing.T) {
	good := Rule{Start: .5, High: 1, Harder: .1, Run: 1, Target: .75}
	require.NotPanics(t, func() { Begin(good) })
	for _, spoil := range []func(*Rule){
		func(r *Rule) { r.Start = 2 }, func(r *Rule) { r.Harder = 0 }, func(r *Rule) { r.Harder = math.NaN() },
		func(r *Rule) { r.Run = 0 }, func(r *Rule) { r.Target = 1 }, func(r *Rule) { r.Target = 0 },
		func(r *Rule) { r.Sizes = []float64{1, 0} }, func(r *Rule) { r.High = math.Inf(1) }, func(r *Rule) { r.Start = math.NaN() },
	} {
		bad := good
		spoil(&bad)
		require.Panics(t, func() { Begin(bad) }, "%+v", bad)
	}
}
