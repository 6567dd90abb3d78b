package diary_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
	"groundbeat/scoring/threshold"
)

// hidden are rounds under riffs that hide by so much of a thousand, right or not.
func hidden(day, n int, hide func(i int) (thousandths int, right bool)) []history.Round {
	all := many(day, n, "maqsum", "maqsum")
	for i := range all {
		h, right := hide(i)
		all[i].Riff, all[i].Hide = "riffing", new(float64(h)/1000)
		if !right {
			all[i].Answer, all[i].Right = "saidi", false
		}
	}
	return all
}

func half(i int) (int, bool) { return 10 * i, i < 50 }

// What is found is what package threshold finds of the same answers.
func TestReach(t *testing.T) {
	var trials []threshold.Trial
	for i := range 100 {
		h, right := half(i)
		trials = append(trials, threshold.Trial{Level: float64(h) / 1000, Right: right, Choices: 3})
	}
	want := threshold.Find(trials, threshold.Search{High: 1}).Level
	all := figures(t, hidden(5, 100, half)...).Reach
	require.Len(t, all, 1)
	r := all[0]
	require.Equal(t, []any{"which", 100, diary.LeastHeard}, []any{r.Kind, r.N, r.Now.Least})
	require.Equal(t, []float64{want.Value, want.Low, want.High}, []float64{r.Now.Value, r.Now.Low, r.Now.High})
	require.InDelta(t, .5, r.Now.Value, .05)
	require.Equal(t, []diary.Heard{{From: "2026-01-05", To: "2026-01-05", Hide: r.Now}}, r.Spans)
}

func TestReachFew(t *testing.T) {
	r := figures(t, hidden(5, diary.LeastHeard-1, half)...).Reach[0]
	require.False(t, r.Now.Known || r.Spans[0].Hide.Known)
	require.Equal(t, 1, r.Now.Missing())
	require.Empty(t, figures(t, many(5, 50, "maqsum", "maqsum")...).Reach, "hide is not known")
}

// Rounds with a help tell nothing; weeks are told apart; the latest answers count now.
func TestReachSpans(t *testing.T) {
	helped := hidden(5, 60, func(int) (int, bool) { return 990, true })
	for i := range helped {
		helped[i].Helps = []history.Helps{{Bass: 1}, {Balance: -5}, {Hands: true}}[i%3]
	}
	low := func(i int) (int, bool) { return 10 * i, i < 20 }
	r := figures(t, join(helped, hidden(6, 50, low), hidden(13, 100, half))...).Reach[0]
	require.Equal(t, 150, r.N)
	require.Len(t, r.Spans, 2)
	require.InDelta(t, .2, r.Spans[0].Hide.Value, .05)
	require.InDelta(t, .5, r.Spans[1].Hide.Value, .05)
	require.Equal(t, r.Spans[1].Hide, r.Now)
}

// Each kind is by itself, the most practised first, and can be had by itself.
func TestReachKinds(t *testing.T) {
	same := hidden(5, 41, half)
	for i := range same {
		same[i].Kind, same[i].Choices = history.Same, []string{"same", "different"}
	}
	b := book(t)
	for _, r := range join(same, hidden(6, 50, half)) {
		b.Add(r)
	}
	all := b.Reach("studio")
	require.Equal(t, []string{"which", "same"}, []string{all[0].Kind, all[1].Kind})
	require.Equal(t, all[1:], b.Reach("studio", history.Same))
	require.NotEqual(t, all[0].Now.Value, all[1].Now.Value, "among two there is more chance")
}

// Of a change chance is half as much, of taps it is counted. Both are seen in what is
// found where all answers are right by chance as often.
func TestReachChance(t *testing.T) {
	change := hidden(5, 60, half)
	for i := range change {
		change[i].Kind, change[i].To, change[i].Choices = history.Change, "saidi", []string{"baladi", "saidi"}
		change[i].Answer = map[bool]string{true: "saidi"}[change[i].Right]
	}
	still := change[0]
	still.To, still.Answer, still.Right = "", "", true
	var trials []threshold.Trial
	for i := range 60 {
		h, right := half(i)
		trials = append(trials, threshold.Trial{Level: float64(h) / 1000, Right: right, Choices: 4})
	}
	require.InDelta(t, threshold.Find(trials, threshold.Search{High: 1}).Level.Value, figures(t, change...).Reach[0].Now.Value, 1e-12)
	require.Equal(t, 60, figures(t, append(change, still)...).Reach[0].N, "who never presses is right where it does not change")

	var taps []history.Round
	for i := range 60 {
		h, right := half(i)
		r := tapped(t, at(5, i), "maqsum", map[bool][]float64{true: {5}, false: {5, 999, 999}}[right]...)
		r.Hide = new(float64(h) / 1000)
		taps = append(taps, r)
		// 2 × 100 ms of half a cycle of 2,500 ms.
		trials[i].Choices = 6
	}
	require.InDelta(t, threshold.Find(trials, threshold.Search{High: 1}).Level.Value, figures(t, taps...).Reach[0].Now.Value, 1e-12)
	for i := range taps {
		taps[i].Rhythm = "lost"
	}
	require.Empty(t, figures(t, taps...).Reach)
}

// The chance of a tap round, as so many choices, is what a player gets who taps the
// pattern from any moment on: of each rhythm, at its tempi, 2,000 rounds through the
// scorer.
func TestGuesses(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	rounds := 2000
	if testing.Short() {
		rounds = 300
	}
	for id, c := range supplied(t) {
		for _, bpm := range []int{c.Tempo.Slow, c.Tempo.Fast} {
			right := 0
			for range rounds {
				lost := r.Float64() * ms(c.Length(bpm))
				steps := dumSteps(c, 8)
				var taps []float64
				for _, s := range dumSteps(c, 8) {
					taps = append(taps, ms(c.At(s, bpm))+lost)
				}
				kept := recorded(history.Round{
					Kind: history.Dums, Rhythm: id, BPM: bpm, Riff: "solo", Eights: 8, ID: "a", When: at(1, 1), Epoch: 1, Rate: 48000,
				}, c, steps, taps, 0)
				if history.Right(kept) {
					right++
				}
			}
			p := float64(right) / float64(rounds)
			choices := float64(diary.Guesses(c, bpm, 100))
			slack := 4*math.Sqrt(p*(1-p)/float64(rounds)) + .01
			t.Logf("%s at %d: %.3f, one of %v", id, bpm, p, choices)
			require.LessOrEqual(t, 1/(choices+.5)-slack, p, "%s at %d", id, bpm)
			if choices > 2 {
				require.GreaterOrEqual(t, 1/(choices-.5)+slack, p, "%s at %d", id, bpm)
			}
		}
	}
}

func TestChoices(t *testing.T) {
	all := supplied(t)
	require.Equal(t, 3, diary.Choices(named(at(1, 1), "maqsum", "saidi"), nil))
	r := tapped(t, at(1, 1), "maqsum", 5)
	require.Equal(t, 6, diary.Choices(r, all["maqsum"]))
	require.Zero(t, diary.Choices(r, nil))
	require.Equal(t, 6, diary.Guesses(all["maqsum"], 96, 100))
	require.Equal(t, 13, diary.Guesses(all["baladi"], 96, 100))
	require.Equal(t, 2, diary.Guesses(all["fallahi"], 300, 1000))
	require.Equal(t, 1000, diary.Guesses(all["maqsum"], 96, 0))
}
