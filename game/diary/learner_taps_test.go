package diary_test

import (
	"cmp"
	"math"
	"os"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/scoring"
	"groundbeat/scoring/history"
)

// window is that of tap rounds.
const window = scoring.Wide

// tap plays a round in which dums are tapped, in one part of the stream.
func (l *learner) tap(m *made, c *rhythm.Cycle, out learnt) {
	day := float64(m.day)
	heard := l.Float64() < l.hears(m, hideTapped(day))
	steps := dumSteps(c, m.Eights)
	if m.Kind == history.Stop {
		steps = stopped(m, c, steps)
	}
	lost := 0.
	if !heard {
		lost = l.Float64() * ms(c.Length(m.BPM))
	}
	leaves := 1 / (1 + math.Exp(-(grown(-2.6, -3.6, day) + .8*l.NormFloat64())))
	bias, asynchrony, hand := out.bias+wander*l.NormFloat64(), l.settled(day), motor*l.NormFloat64()
	var taps []float64 // ms
	for _, step := range steps {
		next := motor * l.NormFloat64()
		asynchrony = (1-correction)*asynchrony + clockSD(day)*l.NormFloat64() + next - hand
		hand = next
		at := ms(c.At(step, m.BPM)) + bias + out.setup + asynchrony + lost
		if c.ID == "saidi" && step%8 == 3 {
			at += rushed
		}
		if l.Float64() >= leaves {
			taps = append(taps, at)
		}
	}
	slices.Sort(taps)
	m.Round = recorded(m.Round, c, steps, taps, out.setup)
}

// settled is an asynchrony as it is after many taps.
func (l *learner) settled(day float64) float64 {
	return math.Sqrt(variance(clockSD(day))) * l.NormFloat64()
}

// variance is that of asynchronies, ms², at a deviation of the clock: of
// A′ = (1−α) A + T + M′ − M it is (T² + 2αM²)/(1−(1−α)²), and the covariance of
// neighbours (1−α) var − M², each further one (1−α) times that.
func variance(clock float64) float64 {
	return (clock*clock + 2*correction*motor*motor) / (1 - (1-correction)*(1-correction))
}

// within is the variance expected within a round of n taps.
func within(clock float64, n int) float64 {
	v := variance(clock)
	var alike float64
	for k := 1; k < n; k++ {
		alike += float64(n-k) * math.Pow(1-correction, float64(k-1)) * ((1-correction)*v - motor*motor)
	}
	return v - 2*alike/float64(n*(n-1))
}

// dumSteps are the dums of some eights.
func dumSteps(c *rhythm.Cycle, eights int) []int {
	var steps []int
	for cycle := range c.CyclesIn(eights) {
		for _, d := range c.Dums() {
			steps = append(steps, cycle*c.Steps()+d)
		}
	}
	return steps
}

// stopped puts a stop on the 5 of the second eight, a figure of four counts before it,
// and silence to its end. The dums of that eight are not asked for.
func stopped(m *made, c *rhythm.Cycle, dums []int) []int {
	beat := c.StepsPerBeat()
	stop, back := 12*beat, 16*beat
	steps := slices.DeleteFunc(dums, func(s int) bool { return s >= 8*beat && s < 16*beat })
	steps = append(steps, stop, back)
	slices.Sort(steps)
	steps = slices.Compact(steps)
	at, _ := slices.BinarySearch(steps, stop)
	m.Breaks = []history.Break{{From: start + c.At(8*beat, m.BPM).Seconds(), Stop: at, Counts: 4, Back: at + 1}}
	return steps
}

// start is when a made-up round begins in the stream, in s.
const start = 10

// recorded is the record of a tap round: its strokes by their steps, its taps in ms from
// its first step.
func recorded(r history.Round, c *rhythm.Cycle, steps []int, taps []float64, setup float64) history.Round {
	r.Window = ms(window)
	var strokes, tapped []time.Duration
	for _, s := range steps {
		at := math.Round((start+c.At(s, r.BPM).Seconds())*48000) / 48000
		r.Strokes = append(r.Strokes, at)
		strokes = append(strokes, seconds(at))
	}
	for _, t := range taps {
		at := start + t/1000
		r.Taps = append(r.Taps, history.Tap{At: t + 5000, Frame: at * 48000, By: "key"})
		tapped = append(tapped, seconds(at))
	}
	return must(history.New(r, scoring.Score(strokes, tapped, seconds(setup/1000), window)))
}

func ms(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

func seconds(s float64) time.Duration { return time.Duration(math.Round(s * 1e9)) }

func must(r history.Round, err error) history.Round {
	if err != nil {
		panic(err)
	}
	return r
}

func inOrder[T cmp.Ordered](x []T) { slices.Sort(x) }

// without is a list without one of its names.
func without(all []string, name string) []string {
	return slices.DeleteFunc(slices.Clone(all), func(s string) bool { return s == name })
}

// loaded are the supplied rhythms.
var loaded = sync.OnceValues(func() (*rhythm.Catalogue, error) { return rhythm.Load(os.DirFS("../../assets")) })

// supplied are the rhythms by their ids.
func supplied(t testing.TB) map[string]*rhythm.Cycle {
	t.Helper()
	catalogue, err := loaded()
	require.NoError(t, err)
	all := map[string]*rhythm.Cycle{}
	for _, id := range catalogue.IDs() {
		all[id], _ = catalogue.Get(id)
	}
	return all
}

// lookUp finds the supplied rhythms, as a book does.
func lookUp(t testing.TB) func(id string) *rhythm.Cycle {
	all := supplied(t)
	return func(id string) *rhythm.Cycle { return all[id] }
}
