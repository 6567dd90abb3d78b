package coach

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring/threshold"
)

// graduality is that of the simulated listeners: from 73 % to 27 % of the way between
// chance and best it takes 0.12 of hide.
const graduality = .06

// rightAt is the probability of a right answer at a level, as package threshold says.
func rightAt(level, at, graduality float64, choices int) float64 {
	chance := 1 / float64(choices)
	return chance + (1-chance-threshold.Lapses)/(1+math.Exp((level-at)/graduality))
}

// ear is a simulated listener, right as package threshold says, with its lapses.
type ear struct {
	threshold float64            // of hide, in the mean of the rhythms
	offsets   map[string]float64 // of each rhythm from it
	choices   int                // chance is one over it
	r         *rand.Rand
}

// spreads are offsets of five rhythms; they sum to 0, and lie 0.07 apart as a
// standard deviation.
var spreads = map[string]float64{"maqsum": .08, "baladi": .05, "saidi": 0, "ciftetelli": -.04, "masmudi-kabir": -.09}

var fiveIDs = []string{"maqsum", "baladi", "saidi", "ciftetelli", "masmudi-kabir"}

// askedRiff is what is played where so many hundredths are asked for: a level, and how
// far, in hundredths, its riffs of some seeds hide the base.
type askedRiff struct {
	level riff.Level
	hides []int
}

// riffsAsked are they, of five rhythms, by the hundredths.
var riffsAsked = sync.OnceValue(func() map[string]*[mostAsk + 1]askedRiff {
	all := map[string]*[mostAsk + 1]askedRiff{}
	for _, id := range fiveIDs {
		catalogue, err := loaded()
		if err != nil {
			panic(err)
		}
		c, _ := catalogue.Get(id)
		var of [mostAsk + 1]askedRiff
		reached := reaches{}
		for asked := range of {
			level, hide := reached.riffFor(asked, []*rhythm.Cycle{c})
			of[asked].level = level
			for seed := range uint64(2) {
				of[asked].hides = append(of[asked].hides, (hides(c, level, hide, seed)+5)/10)
			}
		}
		all[id] = &of
	}
	return all
})

// hears answers what is played for a hide that is asked for. Records do not say what
// the filled form hides.
func (e ear) hears(rhythm string, asked int) trial {
	hide := quiz.Pick(e.r, riffsAsked()[rhythm][asked].hides)
	p := rightAt(float64(hide)/100, e.threshold+e.offsets[rhythm], graduality, e.choices)
	return trial{rhythm: rhythm, choices: e.choices, hide: hide, right: e.r.Float64() < p}
}

// asked lets a staircase ask an ear about five rhythms, so many questions.
func (e ear) asked(w *walk, n int) []trial {
	all := make([]trial, n)
	for i := range all {
		rhythm := fiveIDs[e.r.IntN(len(fiveIDs))]
		all[i] = e.hears(rhythm, ask(w.level(), w.offsets.Of(rhythm)))
		w.answer(all[i])
	}
	return all
}

// figures are the errors of an estimate over many runs.
type figures struct{ n, squares float64 }

func (f *figures) add(off float64) { f.n, f.squares = f.n+1, f.squares+off*off }
func (f *figures) rms() float64    { return math.Sqrt(f.squares / f.n) }

// findings are what comes of an ear in many runs after so many answers: how far from the
// threshold of its own rhythm the next riff would be asked, with the offsets learnt and
// without.
type findings struct{ asks, plain figures }

func (f *findings) add(c ear, w *walk) {
	for _, id := range fiveIDs {
		own := c.threshold + c.offsets[id]
		f.plain.add(float64(w.level())/1000 - own)
		f.asks.add(float64(ask(w.level(), w.offsets.Of(id)))/100 - own)
	}
}

// recover finds an ear after few answers and after many, in so many runs.
func (c ear) recover(runs int) (few, many findings) {
	for run := range runs {
		c.r = rand.New(rand.NewPCG(uint64(run), uint64(c.choices)*1000+uint64(100*c.threshold)))
		w := startWalk(0)
		c.asked(w, fewAnswers)
		few.add(c, w)
		c.asked(w, manyAnswers-fewAnswers)
		many.add(c, w)
	}
	return few, many
}

const fewAnswers, manyAnswers = 50, 150

func (c ear) String() string {
	return fmt.Sprintf("one of %d", c.choices) + map[bool]string{true: ", rhythms alike", false: ", rhythms apart"}[c.offsets == nil]
}

// TestListeners: simulated listeners of known threshold, asked about five rhythms by
// the staircase and answering riffs as they are really played, are asked nearer to the
// threshold of each rhythm than if offsets were not learnt, where rhythms lie apart; where
// they do not, that costs little.
func TestListeners(t *testing.T) {
	runs := 1000
	if testing.Short() {
		runs = 30
	}
	t.Logf("%-24s %9s %7s   %6s %6s", "listener", "threshold", "answers", "asks", "plain")
	for _, c := range []struct {
		choices int
		offsets map[string]float64
	}{{2, spreads}, {3, spreads}, {3, nil}, {4, spreads}, {8, spreads}, {8, nil}} {
		if testing.Short() && c.choices != 3 {
			continue
		}
		for _, at := range []float64{.1, .3, .5} {
			l := ear{threshold: at, offsets: c.offsets, choices: c.choices}
			few, many := l.recover(runs)
			for answers, f := range map[int]findings{fewAnswers: few, manyAnswers: many} {
				t.Logf("%-24v %9.2f %7d   %.4f %.4f", l, at, answers, f.asks.rms(), f.plain.rms())
				gain := f.plain.rms() - f.asks.rms()
				if c.offsets == nil {
					assert.Greater(t, gain, -.006)
				} else {
					assert.Greater(t, gain, .003)
				}
			}
		}
	}
}
