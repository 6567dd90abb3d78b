package quiz

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// density is the strokes a second of the lead drum.
func density(c *rhythm.Cycle, level riff.Level, bpm int) float64 {
	return float64(Strokes(c, level)) / c.Length(bpm).Seconds()
}

// A guesser knows the choices and the strokes a second, and nothing else.
type guesser func(q Question, density float64) string

// byUsual guesses the choice whose density at its usual tempo is the nearest.
func byUsual(q Question, heard float64) string {
	return slices.MinFunc(q.Choices, func(a, b Choice) int {
		off := func(c Choice) int {
			return int(1e6 * math.Abs(math.Log(density(c.Rhythm, q.Level, c.Rhythm.Tempo.Usual)/heard)))
		}
		return off(a) - off(b)
	}).ID
}

// noise is how far a density is misjudged, as a standard deviation: listeners
// tell the tempo of a run of equal intervals to about 3 % (Drake & Botte 1993,
// Perception & Psychophysics 54, Tempo sensitivity in auditory sequences). A
// listener's judgement of a density will be worse.
const noise = 0.03

// judged is the density of a question as a listener judges it.
func judged(q Question) float64 {
	r := rand.New(rand.NewPCG(q.Seed, 99))
	return density(q.Rhythm, q.Level, q.BPM) * math.Exp(noise*r.NormFloat64())
}

// learner is the best guess that there can be: for the same choices and nearly
// the same density, what was right most often in other questions.
type learner map[string]map[string]int

func (l learner) key(q Question, heard float64) string {
	sorted := strings.Fields(ids(q.Choices))
	slices.Sort(sorted)
	return fmt.Sprint(sorted, math.Floor(math.Log(heard)/noise))
}

func (l learner) learn(q Question) {
	key := l.key(q, judged(q))
	if l[key] == nil {
		l[key] = map[string]int{}
	}
	l[key][q.Right]++
}

func (l learner) guess(q Question, heard float64) string {
	best, most := "", -1
	for _, c := range q.Choices {
		if n := l[l.key(q, heard)][c.ID]; n > most {
			best, most = c.ID, n
		}
	}
	return best
}

// tempoed returns the question with another tempo, or as it is.
type tempoed func(q Question, r *rand.Rand) Question

func asDrawn(q Question, _ *rand.Rand) Question { return q }

// inOwnRange plays the right answer at any tempo of its own, whatever the wrong
// ones are: what this package does not do.
func inOwnRange(q Question, r *rand.Rand) Question {
	tempo := q.Rhythm.Tempo
	q.BPM = tempo.Slow + r.IntN(tempo.Fast-tempo.Slow+1)
	return q
}

// excess returns how much more often than by chance, as a part of all questions,
// the two guessers are right.
func excess(t *testing.T, s setting, learn, ask uint64, tempo tempoed) (usual, learnt float64) {
	l, rhythms := learner{}, pool(t, s.from)
	r := rand.New(rand.NewPCG(uint64(s.answers), 98))
	for seed := range learn + ask {
		q, err := Next(Which, rhythms, s.answers, s.bpm, s.level, seed)
		require.NoError(t, err)
		q = tempo(q, r)
		if seed < learn {
			l.learn(q)
			continue
		}
		chance := 1 / float64(len(q.Choices))
		usual += (hit(q, byUsual) - chance) / float64(ask)
		learnt += (hit(q, l.guess) - chance) / float64(ask)
	}
	return usual, learnt
}

func hit(q Question, guess guesser) float64 {
	if guess(q, judged(q)) == q.Right {
		return 1
	}
	return 0
}

// The best guess from the strokes a second alone is as good as chance, over all
// settings within 1.5 % of the questions: four standard deviations of what
// chance does in 18,000. (With three times as many, and three choices too, the
// best guess was right in 0.1 % of the questions more often than chance, and in
// 2.4 % with no noise at all, from the rounding of tempi.)
func TestDensityTellsNothing(t *testing.T) {
	if testing.Short() {
		t.Skip("many questions: make test asks them all")
	}
	usual, learnt, n := 0.0, 0.0, 0.0
	for _, s := range settings(0) {
		if s.answers == 3 {
			continue
		}
		u, l := excess(t, s, 3000, 1500, asDrawn)
		t.Logf("%-17v over chance: by the usual tempi %+.3f, best guess %+.3f", s, u, l)
		usual, learnt, n = usual+u, learnt+l, n+1
	}
	t.Logf("over chance in all: by the usual tempi %+.4f, best guess %+.4f", usual/n, learnt/n)
	require.Less(t, usual/n, 0.015)
	require.Less(t, learnt/n, 0.015)
}

// The measure has teeth: with a tempo from the own range of what is played it
// finds the answer far more often than chance.
func TestDensityTellsWhereTempiAreFree(t *testing.T) {
	if testing.Short() {
		t.Skip("many questions: make test asks them all")
	}
	usual, learnt := excess(t, setting{from: All, answers: 4}, 3000, 1500, inOwnRange)
	t.Logf("over chance: by the usual tempi %+.3f, best guess %+.3f", usual, learnt)
	require.Greater(t, usual, 0.15)
	require.Greater(t, learnt, 0.15)
}
