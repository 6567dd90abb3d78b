package quiz

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring/threshold"
)

// graduality is that of the simulated listeners: from 73 % to 27 % of the way between
// chance and best it takes 0.12 of hide.
const graduality = .06

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
	hide := pick(e.r, riffsAsked()[rhythm][asked].hides)
	p := threshold.Search{}.Right(float64(hide)/100, e.threshold+e.offsets[rhythm], graduality, e.choices)
	return trial{rhythm: rhythm, choices: e.choices, hide: hide, right: e.r.Float64() < p}
}

// asked lets a staircase ask an ear about five rhythms, so many questions.
func (e ear) asked(w *walk, n int) []trial {
	all := make([]trial, n)
	for i := range all {
		rhythm := fiveIDs[e.r.IntN(len(fiveIDs))]
		all[i] = e.hears(rhythm, ask(w.level(), w.offsets.of(rhythm)))
		w.answer(all[i])
	}
	return all
}

// figures are the errors of an estimate over many runs.
type figures struct{ n, sum, squares, held float64 }

func (f *figures) add(off float64, holds bool) {
	f.n, f.sum, f.squares = f.n+1, f.sum+off, f.squares+off*off
	if holds {
		f.held++
	}
}

func (f *figures) bias() float64 { return f.sum / f.n }
func (f *figures) rms() float64  { return math.Sqrt(f.squares / f.n) }

// findings are what comes of an ear in many runs after so many answers: what Heard says of
// all rhythms and HeardOf of one, and how far from the threshold of its own rhythm the
// next riff would be asked, with the offsets learnt and without.
type findings struct{ heard, one, asks, plain figures }

func (f *findings) add(c ear, w *walk, trials []trial) {
	e := Edge{trials: trials}
	h := e.Heard().Hide
	f.heard.add(h.Value-c.threshold, !h.Excludes(c.threshold))
	if f.one.n < 60 {
		own := c.threshold + c.offsets[fiveIDs[0]]
		f.one.add(e.HeardOf(fiveIDs[0]).Hide.Value-own, true)
	}
	for _, id := range fiveIDs {
		own := c.threshold + c.offsets[id]
		f.plain.add(float64(w.level())/1000-own, true)
		f.asks.add(float64(ask(w.level(), w.offsets.of(id)))/100-own, true)
	}
}

// recover finds an ear after few answers and after many, in so many runs.
func (c ear) recover(runs int) (few, many findings) {
	for run := range runs {
		c.r = rand.New(rand.NewPCG(uint64(run), uint64(c.choices)*1000+uint64(100*c.threshold)))
		w := startWalk(0)
		trials := c.asked(w, fewAnswers)
		few.add(c, w, trials)
		many.add(c, w, append(trials, c.asked(w, manyAnswers-fewAnswers)...))
	}
	return few, many
}

const fewAnswers, manyAnswers = 50, 150

func (c ear) String() string {
	return fmt.Sprintf("one of %d", c.choices) + map[bool]string{true: ", rhythms alike", false: ", rhythms apart"}[c.offsets == nil]
}

// bound says how far off the threshold findings may be: its bias, and the root of its
// mean squared error.
type bound struct{ bias, err float64 }

// TestListeners: simulated listeners of known threshold, asked about five rhythms by
// the staircase and answering riffs as they are really played, are recovered. The
// bounds are those measured with 1,000 runs, rounded up. After 50
// answers the figure is a little too high, most where the threshold is.
func TestListeners(t *testing.T) {
	runs := 1000
	if testing.Short() {
		runs = 30
	}
	t.Logf("%-24s %9s %7s   %7s %6s %6s   %6s   %6s %6s", "listener", "threshold", "answers",
		"bias", "error", "held", "of one", "asks", "plain")
	for _, c := range []struct {
		choices   int
		offsets   map[string]float64
		few, many bound
	}{
		{2, spreads, bound{.019, .068}, bound{.004, .042}},
		{3, spreads, bound{.020, .053}, bound{.005, .031}},
		{3, nil, bound{.015, .045}, bound{.001, .024}},
		{4, spreads, bound{.023, .052}, bound{.002, .027}},
		{8, spreads, bound{.023, .045}, bound{.003, .025}},
		{8, nil, bound{.015, .035}, bound{.001, .018}},
	} {
		if testing.Short() && c.choices != 3 {
			continue
		}
		for _, at := range []float64{.1, .3, .5} {
			l := ear{threshold: at, offsets: c.offsets, choices: c.choices}
			few, many := l.recover(runs)
			for _, f := range []struct {
				answers int
				findings
				bound
			}{{fewAnswers, few, c.few}, {manyAnswers, many, c.many}} {
				t.Logf("%-24v %9.2f %7d   %+.4f %.4f  %.3f   %.4f   %.4f %.4f", l, at, f.answers,
					f.heard.bias(), f.heard.rms(), f.heard.held/f.heard.n, f.one.rms(), f.asks.rms(), f.plain.rms())
				slack := 4 * f.err / math.Sqrt(float64(runs))
				assert.InDelta(t, 0, f.heard.bias(), f.bias+slack)
				assert.Less(t, f.heard.rms(), f.err*(1+3/math.Sqrt(2*float64(runs))))
				assert.Greater(t, f.heard.held/f.heard.n, .93-3*math.Sqrt(.93*.07/float64(runs)))
				// What a rhythm's own offset is worth where rhythms lie apart, and costs
				// where they do not.
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
