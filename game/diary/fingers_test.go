package diary_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
)

// at is a time of one January, a round a minute.
func at(day, minute int) string {
	return time.Date(2026, 1, day, 18, minute, 0, 0, time.UTC).Format(time.RFC3339)
}

// Bias, spread and offsets by count, worked out with gonum from the offsets put in.
// Three to five eights of sa'idi are not needed: two have twelve dums.
func TestFingers(t *testing.T) {
	var rounds []history.Round
	var means, variances []float64
	byDum := make([][]float64, 3)
	for i := range 7 {
		o := []float64{4 + float64(i), -20.5 + 2*float64(i), 11.25}
		rounds = append(rounds, tapped(t, at(30, i), "saidi", o...))
		m, v := stat.MeanVariance([]float64{o[0], o[1], o[2], o[0], o[1], o[2], o[0], o[1], o[2], o[0], o[1], o[2]}, nil)
		means, variances = append(means, m), append(variances, v)
		for k := range o {
			byDum[k] = append(byDum[k], o[k])
		}
	}
	all := figures(t, rounds...).Fingers
	require.Len(t, all, 1)
	f := all[0]
	require.Equal(t, []any{"saidi", "2026-01-30", "2026-01-30"}, []any{f.Rhythm, f.From, f.To})
	require.Equal(t, []int{7, 84, 0, 0}, []int{f.Rounds, f.Taps, f.Out, f.Added})
	require.InDelta(t, stat.Mean(means, nil), f.Bias.Value, 1e-9)
	require.InDelta(t, math.Sqrt(stat.Mean(variances, nil)), f.Spread.Value, 1e-9)
	require.Equal(t, 7, f.Bias.N)
	// Student's t with 6 degrees of freedom: 2.446912 (Abramowitz and Stegun, Table 26.10).
	require.InDelta(t, stat.Mean(means, nil)+2.446912*stat.StdDev(means, nil)/math.Sqrt(7), f.Bias.High, 1e-5)
	require.Len(t, f.Counts, 3)
	for k, step := range []int{0, 3, 4} { // sa'idi is DT-DD-T-
		require.Equal(t, step, f.Counts[k].Step)
		require.InDelta(t, stat.Mean(byDum[k], nil), f.Counts[k].Offset.Value, 1e-9)
		require.Equal(t, 7, f.Counts[k].Offset.N)
	}
}

func TestFingersFew(t *testing.T) {
	var rounds []history.Round
	for i := range diary.LeastTapped - 1 {
		rounds = append(rounds, tapped(t, at(30, i), "maqsum", 5, 999, 5, 5))
	}
	f := figures(t, rounds...).Fingers[0]
	require.False(t, f.Bias.Known || f.Spread.Known || f.Counts[0].Offset.Known)
	require.Equal(t, 1, f.Bias.Missing())
	require.Equal(t, []int{5, 30, 10, 0}, []int{f.Rounds, f.Taps, f.Out, f.Added})
}

// Bins go from −150 on, 5 ms each; an offset on an edge belongs to the later bin.
func TestBins(t *testing.T) {
	r := tapped(t, at(30, 0), "maqsum", 0, -0.001, 4.999, 5, -100, 99.999, -5, -5.001)
	f := figures(t, r).Fingers[0]
	require.Len(t, f.Bins, 60)
	for i, n := range f.Bins {
		from := -diary.Reached + i*diary.BinWidth
		require.Equal(t, map[int]int{0: 2, -5: 2, 5: 1, -100: 1, 95: 1, -10: 1}[from], n, "from %d", from)
	}
}

// Those of another output, those that are not right, and those with a coarse clock are
// no finger timing; of the right ones the latest count.
func TestFingersWhich(t *testing.T) {
	coarse, wrong, elsewhere := tapped(t, at(1, 0), "maqsum", 50), tapped(t, at(1, 1), "maqsum", 50, 999), tapped(t, at(1, 2), "maqsum", 50)
	coarse.Coarse, elsewhere.Output = true, "telephone"
	rounds := []history.Round{coarse, wrong, elsewhere, tapped(t, at(1, 3), "baladi", 7)}
	for i := range diary.LatestRounds + 3 {
		rounds = append(rounds, tapped(t, at(2+i/20, i%20), "maqsum", map[bool]float64{true: 50, false: 10}[i < 3]))
	}
	all := figures(t, rounds...).Fingers
	require.Len(t, all, 2)
	require.Equal(t, "maqsum", all[0].Rhythm, "the most practised first")
	require.Equal(t, diary.LatestRounds, all[0].Rounds)
	require.InDelta(t, 10, all[0].Bias.Value, 1e-9)
	require.Equal(t, []string{"2026-01-02", "2026-01-05"}, []string{all[0].From, all[0].To})
}

// off plays six rounds of a rhythm in which only some dums are asked for, tapped by how
// many steps they lie from the first of the cycle in ms.
func off(t *testing.T, id string, asked func(step int) bool) diary.Fingers {
	t.Helper()
	c := supplied(t)[id]
	var rounds []history.Round
	for i := range 6 {
		r := history.Round{
			Kind: history.Dums, Rhythm: id, BPM: c.Tempo.Usual, Riff: "solo", Eights: 4, Seed: 7,
			ID: "b", When: at(30, i), Output: "studio", Epoch: 1, Rate: 48000,
		}
		var steps []int
		var taps []float64
		for _, s := range dumSteps(c, r.Eights) {
			if asked(s) {
				steps, taps = append(steps, s), append(taps, ms(c.At(s, r.BPM))+float64(s%c.Steps()))
			}
		}
		rounds = append(rounds, recorded(r, c, steps, taps, 0))
	}
	return figures(t, rounds...).Fingers[0]
}

// Taps are told apart by their place in the cycle, in every rhythm, also where breaks
// leave some dums out.
func TestCounts(t *testing.T) {
	for id, c := range supplied(t) {
		broken := func(step int) bool {
			return step < 3*c.Steps() || step >= 3*c.Steps()+c.Steps()/2 && step < 5*c.Steps()
		}
		for name, asked := range map[string]func(int) bool{"all": func(int) bool { return true }, "broken": broken} {
			f := off(t, id, asked)
			require.Len(t, f.Counts, len(c.Dums()), "%s, %s", id, name)
			for k, d := range c.Dums() {
				require.Equal(t, d, f.Counts[k].Step)
				require.InDelta(t, float64(d), f.Counts[k].Offset.Value, .03, "%s, %s, dum %d", id, name, k)
			}
		}
	}
}

// Where the first dum was not asked for, the intervals tell which one was, if they can.
func TestCountsFromAnother(t *testing.T) {
	f := off(t, "saidi", func(step int) bool { return step >= 3 })
	for k, d := range []float64{0, 3, 4} {
		require.InDelta(t, d, f.Counts[k].Offset.Value, .03)
	}
	// From the third dum of çiftetelli alone, 0, 8, 10 of 16 steps, and one cycle on, it
	// could be any: that it was the first is taken for granted.
	f = off(t, "ciftetelli", func(step int) bool { return step%16 == 10 })
	require.InDelta(t, 10, f.Counts[0].Offset.Value, .03)
}

// Strokes that are no dums of the rhythm as it is known now, or lie on no grid, leave
// bias and spread, and so does a rhythm that is not known.
func TestCountsUncertain(t *testing.T) {
	r := tapped(t, at(30, 0), "baladi", 5, 6, 7)
	r.Rhythm = "masmudi-kabir"
	f := figures(t, r, r, r, r, r, r).Fingers[0]
	require.True(t, f.Bias.Known)
	require.Len(t, f.Counts, 3)
	for _, c := range f.Counts {
		require.False(t, c.Offset.Known)
	}
	r.Rhythm = "lost"
	f = figures(t, r, r, r, r, r, r).Fingers[0]
	require.True(t, f.Bias.Known)
	require.Empty(t, f.Counts)
	r = tapped(t, at(30, 0), "maqsum", 5)
	r.Strokes[3] += .01
	f = figures(t, r, r, r, r, r, r).Fingers[0]
	require.True(t, f.Bias.Known)
	require.False(t, f.Counts[0].Offset.Known)
}

// The stop and the 1 after the silence are no dums of the rhythm going round.
func TestFingersOfStops(t *testing.T) {
	l := newLearner(1, supplied(t))
	m := made{Round: tapped(t, at(30, 0), "maqsum", 5)}
	m.Kind, m.Eights, m.Strokes, m.Taps = history.Stop, 4, nil, nil
	c := l.cycles["maqsum"]
	steps := stopped(&m, c, dumSteps(c, 4))
	var taps []float64
	for i, s := range steps {
		o := 10.
		if i == m.Breaks[0].Stop || i == m.Breaks[0].Back {
			o = 80
		}
		taps = append(taps, ms(c.At(s, m.BPM))+o)
	}
	r := recorded(m.Round, c, steps, taps[:len(taps)-1], 0)
	require.Equal(t, 13, len(r.Strokes), "16 dums less the four of an eight, one of which is the stop")
	f := figures(t, r, r, r, r, r, r)
	require.Equal(t, fmt.Sprint(60, 6), fmt.Sprint(f.Fingers[0].Taps, f.Fingers[0].Out))
	require.InDelta(t, 10, f.Fingers[0].Bias.Value, .02)
	require.InDelta(t, 10, f.Fingers[0].Counts[0].Offset.Value, .02)
	require.Equal(t, []int{60, 66}, []int{f.Accuracy[0].All.Right, f.Accuracy[0].All.N})
}
