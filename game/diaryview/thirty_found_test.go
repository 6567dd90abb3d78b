package diaryview

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/scoring"
	"groundbeat/scoring/history"
)

// gauge gathers how an estimate did over many learners.
type gauge struct {
	known, held  int
	sum, squares float64 // of value less truth
}

func (g *gauge) off() float64   { return g.sum / float64(g.known) }
func (g *gauge) err() float64   { return math.Sqrt(g.squares / float64(g.known)) }
func (g *gauge) holds() float64 { return float64(g.held) / float64(g.known) }

// gauges are those of what a diary tells, by name.
type gauges map[string]*gauge

func (all gauges) add(name string, e scoring.Estimate, truth float64) {
	if all[name] == nil {
		all[name] = new(gauge)
	}
	g := all[name]
	if !e.Known {
		return
	}
	g.known++
	if !e.Excludes(truth) {
		g.held++
	}
	g.sum, g.squares = g.sum+e.Value-truth, g.squares+(e.Value-truth)*(e.Value-truth)
}

// average returns the mean over the rounds that have a number, and how many these are.
func average(of []lived, number func(lived) (float64, bool)) (float64, int) {
	sum, n := 0., 0
	for _, p := range of {
		if x, ok := number(p); ok {
			sum, n = sum+x, n+1
		}
	}
	return sum / float64(max(1, n)), n
}

// toldAs is how likely a name was said for a rhythm, in the rounds in which that was
// played.
func toldAs(played, name string) func(lived) (float64, bool) {
	return func(p lived) (float64, bool) { return p.likely[name], p.likely != nil && p.kept.Rhythm == played }
}

// latest are the last n of the rounds of which something is so.
func latest(of []lived, n int, is func(lived) bool) []lived {
	of = slices.DeleteFunc(slices.Clone(of), func(p lived) bool { return !is(p) })
	return of[max(0, len(of)-n):]
}

// requireFound compares what each diary says with what its learner was made with, and
// logs it as a table: how far off the estimates are on average, how far at all (root mean
// square), and how often their interval holds the truth. The bounds are those measured
// with 20 learners, rounded up.
//
// The worst mix-up is said too high: of many pairs it is one that had bad luck too. And
// it is of all weeks together, in which what is mixed up became less.
func requireFound(t *testing.T, all []*learner) {
	found, worst := gauges{}, 0
	for _, l := range all {
		f, of := l.book.Figures(theirOutput), slices.Concat(l.days...)
		for _, a := range f.Accuracy {
			if !a.Tapped {
				p, n := average(of, toldAs(a.Rhythm, a.Rhythm))
				require.Equal(t, n, a.Rounds)
				found.add("told by name", a.All.Share, p)
			}
		}
		for _, x := range f.Fingers {
			found.fingers(x, of)
		}
		for _, r := range f.Reach {
			hidden, _ := average(latest(of, diary.LatestHeard, func(p lived) bool { return p.Kind == r.Kind && p.kept.Hide != nil }),
				func(p lived) (float64, bool) { return p.hidden, true })
			found.add("hide, "+r.Kind, r.Now, hidden)
		}
		require.NotEmpty(t, f.Mixed.Worst)
		w := f.Mixed.Worst[0]
		p, _ := average(of, toldAs(w.Played, w.Said))
		found.add("worst mix-up", w.Share, p)
		if 2*p >= likeliest(f.Mixed, of) {
			worst++
		}
	}
	found.require(t, len(all))
	t.Logf("worst mix-up at least half as likely as the likeliest: %d of %d", worst, len(all))
	require.GreaterOrEqual(t, 10*worst, 8*len(all)-10)
}

// fingers adds what is told of finger timing.
func (all gauges) fingers(x diary.Fingers, of []lived) {
	bias := lean
	if x.Rhythm == "saidi" { // one of its three dums is rushed
		bias += rushed / 3
		all.add("& of 2, ms", x.Counts[1].Offset, lean+rushed)
	}
	all.add("bias, ms", x.Bias, bias)
	variance, _ := average(latest(of, diary.LatestRounds, func(p lived) bool {
		return p.kept.Rhythm == x.Rhythm && p.Kind == history.Dums && history.Right(p.kept)
	}), func(p lived) (float64, bool) { return p.variance, true })
	all.add("spread, ms", x.Spread, math.Sqrt(variance))
}

// likeliest is how likely the likeliest mix-up was, of rhythms played often enough.
func likeliest(m diary.Mixed, of []lived) float64 {
	most := 0.
	for _, played := range m.Rhythms {
		for _, name := range m.Rhythms {
			if p, n := average(of, toldAs(played, name)); played != name && n >= diary.LeastMixed {
				most = max(most, p)
			}
		}
	}
	return most
}

func (all gauges) require(t *testing.T, learners int) {
	slack := 4 / math.Sqrt(float64(learners)) // what one learner has of many rhythms is not independent
	for _, c := range []struct {
		name            string
		off, err, holds float64
	}{
		{"told by name", .015, .10, .95},
		{"worst mix-up", .09, .10, .80},
		{"bias, ms", 1, 4.2, .95},
		{"& of 2, ms", 1, 3.9, .95},
		{"spread, ms", .3, 1.3, .95},
		{"hide, dums", .01, .02, .95},
		{"hide, which", .01, .04, .93},
	} {
		g := all[c.name]
		t.Logf("%-13s off %+8.4f, error %7.4f, interval holds in %.3f of %d", c.name, g.off(), g.err(), g.holds(), g.known)
		require.InDelta(t, 0, g.off(), c.off+slack*c.err/4, c.name)
		require.Less(t, g.err(), c.err*(1+slack), c.name)
		require.Greater(t, g.holds(), c.holds-slack*math.Sqrt(c.holds*(1-c.holds)), c.name)
	}
}
