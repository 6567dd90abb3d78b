package threshold

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// listener answers, made up, as the model says.
type listener struct {
	threshold, gradual, lapses float64
	choices                    int // 0: two to four, at random
}

// asked lets a staircase ask a listener so many questions.
func (l listener) asked(r *rand.Rand, trials int) []Trial {
	s := Begin(Rule{Start: .1, High: 1, Harder: .04, Run: 1, Target: .5, Sizes: []float64{2, 1}})
	all := make([]Trial, trials)
	for i := range all {
		choices := l.choices
		if choices == 0 {
			choices = 2 + r.IntN(3)
		}
		chance := 1 / float64(choices)
		p := chance + (1-chance-l.lapses)/(1+math.Exp((s.Level()-l.threshold)/l.gradual))
		all[i] = Trial{Level: s.Level(), Right: r.Float64() < p, Choices: choices}
		s.Rule.Target = Halfway(choices)
		s.Answer(all[i].Right)
	}
	return all
}

// found is what [Find] says of a listener in many runs.
type found struct{ bias, sd, held, narrow float64 }

func (l listener) found(trials, runs int) found {
	r := rand.New(rand.NewPCG(uint64(trials), uint64(l.choices)))
	var f found
	var sum, squares float64
	for range runs {
		e := Find(l.asked(r, trials), Search{High: 1}).Level
		off := e.Value - l.threshold
		sum, squares = sum+off, squares+off*off
		if !e.Excludes(l.threshold) {
			f.held += 1 / float64(runs)
		}
		if e.High-e.Low < .5 {
			f.narrow += 1 / float64(runs)
		}
	}
	f.bias = sum / float64(runs)
	f.sd = math.Sqrt(squares/float64(runs) - f.bias*f.bias)
	return f
}

// TestFindRecovers: simulated listeners of known threshold, asked by a staircase
// among 2, 3, 4, or any of these choices. Levels go from 0 to 1. The bounds of
// bias and standard deviation are those measured with 1,000 runs, rounded up.
func TestFindRecovers(t *testing.T) {
	runs := 1000
	if testing.Short() {
		runs = 60
	}
	for _, c := range []struct {
		name     string
		listener listener
		trials   int
		bias, sd float64
	}{
		{"2 choices", listener{.5, .06, .04, 2}, 40, .02, .075},
		{"2 choices", listener{.5, .06, .04, 2}, 120, .01, .035},
		{"3 choices", listener{.5, .06, .04, 3}, 40, .015, .05},
		{"4 choices", listener{.5, .06, .04, 4}, 40, .015, .042},
		{"2 to 4 choices", listener{.5, .06, .04, 0}, 30, .02, .065},
		{"2 to 4 choices", listener{.5, .06, .04, 0}, 40, .015, .05},
		{"2 to 4 choices", listener{.5, .06, .04, 0}, 120, .01, .027},
		{"hears little through", listener{.2, .06, .04, 0}, 40, .015, .05},
		{"hears much through", listener{.85, .06, .04, 0}, 40, .02, .05},
		{"never slips", listener{.5, .06, 0, 0}, 120, .015, .03},
		{"slips twice as often", listener{.5, .06, .08, 0}, 120, .02, .035},
	} {
		f := c.listener.found(c.trials, runs)
		t.Logf("%-20s %3d trials: bias %+.4f, sd %.4f, interval holds in %.3f, narrower than half in %.3f", c.name, c.trials, f.bias, f.sd, f.held, f.narrow)
		slack := 4 * c.sd / math.Sqrt(float64(runs))
		require.InDelta(t, 0, f.bias, c.bias+slack, "%+v", c)
		require.Less(t, f.sd, c.sd*(1+3/math.Sqrt(2*float64(runs))), "%+v", c)
		require.Greater(t, f.held, .93-3*math.Sqrt(.93*.07/float64(runs)), "%+v", c)
		require.Greater(t, f.narrow, .9-3*math.Sqrt(.9*.1/float64(runs)), "%+v", c)
	}
}

// TestExpected: where a player's own threshold over all rhythms is known, that
// of one rhythm is found from few trials with less error, and from many as if it
// were not known.
func TestExpected(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	miss := func(trials int, s Search) float64 {
		var sum float64
		for range 80 {
			l := listener{.5 + .07*r.NormFloat64(), .06, .04, 0}
			sum += math.Pow(Find(l.asked(r, trials), s).Level.Value-l.threshold, 2)
		}
		return math.Sqrt(sum / 80)
	}
	flat, known := Search{High: 1}, Search{High: 1, Expected: .5, Spread: .07}
	require.Less(t, miss(20, known), .8*miss(20, flat))
	require.InDelta(t, miss(200, flat), miss(200, known), .012)
}

// TestFalling: with lower levels harder everything is mirrored.
func TestFalling(t *testing.T) {
	trials := listener{.3, .05, .04, 3}.asked(rand.New(rand.NewPCG(1, 1)), 60)
	up := Find(trials, Search{High: 1})
	for i := range trials {
		trials[i].Level = 1 - trials[i].Level
	}
	down := Find(trials, Search{High: 1, Falling: true})
	require.InDelta(t, 1-up.Level.Value, down.Level.Value, 1e-9)
	require.InDelta(t, 1-up.Level.High, down.Level.Low, 1e-9)
	require.InDelta(t, up.Gradual.Value, down.Gradual.Value, 1e-9)
}

// TestBeyond: who is always right has a threshold at the upper end, or beyond;
// who guesses one at the lower end.
func TestBeyond(t *testing.T) {
	var right, wrong []Trial
	for i := range 40 {
		right = append(right, Trial{float64(i) / 40, true, 2})
		wrong = append(wrong, Trial{float64(i) / 40, i%2 == 0, 2})
	}
	high, low := Find(right, Search{High: 1}).Level, Find(wrong, Search{High: 1}).Level
	require.Greater(t, high.Value, .85)
	require.Greater(t, high.High, .97)
	require.Less(t, low.Value, .25)
	require.Less(t, low.Low, .02)
}

// TestGradual: whether it falls at once or slowly is found too, roughly.
func TestGradual(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for _, gradual := range []float64{.02, .15} {
		trials := make([]Trial, 600)
		for i := range trials {
			at := r.Float64()
			trials[i] = Trial{at, r.Float64() < (Search{High: 1}).right(at, .5, gradual, 3), 3}
		}
		e := Find(trials, Search{High: 1}).Gradual
		require.False(t, e.Excludes(gradual), "%+v", e)
		require.InEpsilon(t, gradual, e.Value, .6)
	}
}

// right returns the probability of a right answer at a level.
func (s Search) right(level, threshold, graduality float64, choices int) float64 {
	harder := (level - threshold) / graduality
	if s.Falling {
		harder = -harder
	}
	chance := 1 / float64(choices)
	return chance + (1-chance-Lapses)/(1+math.Exp(harder))
}

// TestRight: the model, by hand: at the threshold half way between chance and
// best, far from it one or the other.
func TestRight(t *testing.T) {
	s := Search{High: 1}
	require.InDelta(t, Halfway(3), s.right(.4, .4, .1, 3), 1e-12)
	require.InDelta(t, .96, s.right(-9, .4, .1, 3), 1e-12)
	require.InDelta(t, 1./3, s.right(9, .4, .1, 3), 1e-12)
	require.InDelta(t, .25+.71/(1+math.E), s.right(.5, .4, .1, 4), 1e-12)
	s.Falling = true
	require.InDelta(t, .96, s.right(9, .4, .1, 3), 1e-12)
}

// TestLikelihood: what the search works with is the model of right, for
// many trials at once and for levels beyond those considered.
func TestLikelihood(t *testing.T) {
	trials := listener{.5, .2, .04, 0}.asked(rand.New(rand.NewPCG(8, 1)), 250)
	trials = append(trials, Trial{-40, true, 2}, Trial{55, false, 4}, Trial{900, true, 3})
	for _, falling := range []bool{false, true} {
		s := Search{Low: -1, High: 2, Falling: falling}
		for _, beta := range []float64{.03, .3} {
			var want float64
			for _, trial := range trials {
				p := s.right(trial.Level, .4, beta, trial.Choices)
				if !trial.Right {
					p = 1 - p
				}
				want += math.Log(p)
			}
			got := logLikelihood(s.chances(trials, beta), math.Exp(-s.steps(.4, beta)))
			require.InEpsilon(t, want, got, 1e-9)
		}
	}
}

func TestFewTrials(t *testing.T) {
	trials := listener{.5, .06, .04, 2}.asked(rand.New(rand.NewPCG(1, 1)), 11)
	got := Find(trials, Search{High: 1})
	require.Equal(t, scoring.Unknown(11, LeastTrials), got.Level)
	require.False(t, got.Gradual.Known)
	require.False(t, Find(nil, Search{High: 1}).Level.Known)
	require.Equal(t, 11, Find(trials, Search{High: 1, Expected: .4, Spread: .1}).Level.N)
	require.True(t, Find(trials, Search{High: 1, Expected: .4, Spread: .1}).Level.Known)
	require.False(t, Find(nil, Search{High: 1, Expected: .4, Spread: .1}).Level.Known)
	require.Panics(t, func() { Find(nil, Search{}) })
	require.Panics(t, func() { Find(nil, Search{High: 1, Spread: -1}) })
	require.Panics(t, func() { Find([]Trial{{.5, true, 1}}, Search{High: 1}) })
	require.Panics(t, func() { Find([]Trial{{math.NaN(), true, 2}}, Search{High: 1}) })
}

// BenchmarkFind: 160 trials, all at levels of their own.
func BenchmarkFind(b *testing.B) {
	trials := listener{.5, .06, .04, 0}.asked(rand.New(rand.NewPCG(1, 1)), 160)
	b.ReportAllocs()
	for b.Loop() {
		Find(trials, Search{High: 1})
	}
}

// Whoever was right where another was wrong hears through no less, whatever the levels.
func TestBetterAnswersTellNoLess(t *testing.T) {
	var trials []Trial
	for i := range 48 {
		trials = append(trials, Trial{Level: float64(i%12) / 12, Right: i%3 > 0, Choices: 3})
	}
	before := Find(trials, Search{High: 1}).Level.Value
	for i := range trials {
		if !trials[i].Right {
			trials[i].Right = true
			after := Find(trials, Search{High: 1}).Level.Value
			require.GreaterOrEqual(t, after, before-1e-9, "answer %d", i)
			before = after
		}
	}
}
