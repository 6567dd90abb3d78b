package diaryview

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/coach"
	"groundbeat/scoring/history"
)

// requireChosen asks whether what was chosen for the learners fits what they were made
// with.
func requireChosen(t *testing.T, all []*learner) {
	requireNeverTwice(t, all)
	requireWorstMixUpMost(t, all)
	requireLearntRarer(t, all)
	requireHideFollows(t, all)
	requireTempoFollows(t, all)
}

func requireNeverTwice(t *testing.T, all []*learner) {
	for _, l := range all {
		for _, of := range l.days {
			for i := range len(of) - 1 {
				require.False(t, of[i].Same(of[i+1].Step), "%v", of[i])
			}
		}
	}
}

// livedIn are the rounds of all learners from one day up to another.
func livedIn(all []*learner, from, to int) []lived {
	var some []lived
	for _, l := range all {
		some = append(some, slices.Concat(l.days[from:min(to, thirty)]...)...)
	}
	return some
}

// practisedOn is on how many of these days there was a practice.
func practisedOn(all []*learner, from, to int) (n float64) {
	for _, l := range all {
		for _, of := range l.days[from:min(to, thirty)] {
			if len(of) > 0 {
				n++
			}
		}
	}
	return n
}

// The pair that is mixed up most often is practised more than any other: as a mix-up, and
// by name at all.
func requireWorstMixUpMost(t *testing.T, all []*learner) {
	mixed, taken, together := map[[2]string]float64{}, map[[2]string]float64{}, map[[2]string]float64{}
	for _, p := range livedIn(all, 0, thirty) {
		for name, likely := range p.likely {
			if name != p.kept.Rhythm {
				mixed[namesOf(p.kept.Rhythm, name)] += likely
				together[namesOf(p.kept.Rhythm, name)]++
			}
		}
		if p.Reason == coach.ReasonMixUp && p.Kind == history.Which {
			taken[namesOf(p.Rhythms[0], p.Rhythms[1])]++
		}
	}
	worst := mostly(mixed)
	t.Logf("%s: %.0f mix-ups expected, %.0f rounds as a mix-up of %.0f, %.0f by name of %.0f", strings.Join(worst[:], " and "),
		mixed[worst], taken[worst], total(taken), together[worst], total(together))
	require.Equal(t, worst, mostly(taken))
	require.Equal(t, worst, mostly(together))
	require.Greater(t, taken[worst], total(taken)/3)
}

func mostly(of map[[2]string]float64) (most [2]string) {
	for pair, n := range of {
		if n > of[most] || n == of[most] && pair[0]+pair[1] < most[0]+most[1] {
			most = pair
		}
	}
	return most
}

func total(of map[[2]string]float64) (sum float64) {
	for _, n := range of {
		sum += n
	}
	return sum
}

// Rhythms that are learnt are tapped less and less often, and rest longer and longer
// before they are due.
func requireLearntRarer(t *testing.T, all []*learner) {
	rounds := func(from, to int) float64 {
		_, n := average(livedIn(all, from, to), func(p lived) (float64, bool) {
			return 0, p.Kind == history.Dums && slices.Contains([]string{"maqsum", "baladi", "ciftetelli"}, p.kept.Rhythm)
		})
		return float64(n) / practisedOn(all, from, to)
	}
	first, second, later := rounds(0, 7), rounds(7, 14), rounds(14, thirty)
	early, late := rested(all, 0, 14), rested(all, 14, thirty)
	t.Logf("the first three rhythms: %.1f rounds a day in the first week, %.1f in the second, %.1f later; due after %.1f days, later %.1f",
		first, second, later, early, late)
	require.Less(t, second, first)
	require.Less(t, later, second)
	require.Less(t, 2*later, first)
	require.Greater(t, late, 1.2*early)
}

// rested is how many days, on average, a rhythm that was due had not been met at its level.
func rested(all []*learner, from, to int) float64 {
	sum, n := 0., 0.
	for _, l := range all {
		for day := from; day < to; day++ {
			for _, p := range l.days[day] {
				if since := l.since(day, p); p.Reason == coach.ReasonDue && since > 0 {
					sum, n = sum+float64(since), n+1
				}
			}
		}
	}
	return sum / n
}

// since is how many days before one a rhythm was met at the level of a round; 0 if it was
// not.
func (l *learner) since(day int, p lived) int {
	for before := day - 1; before >= 0; before-- {
		if slices.ContainsFunc(l.days[before], func(o lived) bool { return o.kept.Rhythm == p.kept.Rhythm && o.Level == p.Level }) {
			return day - before
		}
	}
	return 0
}

// At the edge as much riff is asked for as is heard through, and more as that rises.
func requireHideFollows(t *testing.T, all []*learner) {
	for _, kind := range []string{history.Dums, history.Which} {
		var weeks []float64
		asked := func(from, to int) float64 {
			x, _ := average(livedIn(all, from, to), func(p lived) (float64, bool) {
				return float64(p.Hide) / 100, p.Reason == coach.ReasonEdge && p.Kind == kind
			})
			return x
		}
		for week := range 4 {
			weeks = append(weeks, asked(7*week, 7*week+7))
		}
		threshold, _ := average(livedIn(all, 14, thirty), func(p lived) (float64, bool) { return p.hidden, p.Kind == kind })
		t.Logf("%s: hide asked %.2f, week by week; in the last two %.2f, heard through %.2f", kind, weeks, asked(14, thirty), threshold)
		require.Less(t, weeks[0], weeks[1])
		require.Less(t, weeks[1], weeks[2])
		require.InDelta(t, threshold, asked(14, thirty), .08)
	}
}

// The ladder of tempo goes up as she keeps up with more: to where three rounds of four
// are right, which is ln 3 β below where she keeps up with half.
func requireTempoFollows(t *testing.T, all []*learner) {
	asked := func(from, to int) float64 {
		var sum, n float64
		for _, l := range all {
			for _, p := range livedIn([]*learner{l}, from, to) {
				if p.Reason == coach.ReasonTempo {
					sum, n = sum+tempoOf(l.cycles[p.kept.Rhythm], p.BPM), n+1
				}
			}
		}
		return sum / n
	}
	keeps, _ := average(livedIn(all, 14, thirty), func(p lived) (float64, bool) { return keepsUp(p.day) - 1.1*outOfStep, true })
	t.Logf("tempo asked %.0f, later %.0f; keeps up with %.0f", asked(0, 7), asked(14, thirty), keeps)
	require.Less(t, asked(0, 7), asked(7, 14))
	require.InDelta(t, keeps, asked(14, thirty), 20)
}
