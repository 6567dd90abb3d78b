package diary_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
)

// named is a round in which a rhythm was told by name.
func named(when, played, said string) history.Round {
	return must(history.NewAnswered(history.Round{
		Kind: history.Which, Rhythm: played, BPM: 96, Riff: "filled", Eights: 2, Seed: 7,
		Choices: []string{"baladi", "maqsum", "saidi"}, Answer: said, Right: said == played, Took: new(900.), Heard: 1,
		ID: "a", When: when, Output: "studio", Epoch: 1, Rate: 48000,
	}))
}

// tapped is a round in which the dums of two eights of a rhythm were tapped, each with
// one of the offsets in ms, less a set-up of 8 ms, the first again after the last; a dum
// is left out where the offset is 999.
func tapped(t testing.TB, when, id string, offsets ...float64) history.Round {
	t.Helper()
	c := supplied(t)[id]
	r := history.Round{
		Kind: history.Dums, Rhythm: id, BPM: 96, Riff: "bare", Eights: 2, Seed: 7,
		ID: "b", When: when, Output: "studio", Epoch: 1, Rate: 48000,
	}
	steps := dumSteps(c, r.Eights)
	var taps []float64
	for i, s := range steps {
		if o := offsets[i%len(offsets)]; o != 999 {
			taps = append(taps, ms(c.At(s, r.BPM))+8+o)
		}
	}
	return recorded(r, c, steps, taps, 8)
}

// figures are those of rounds as they come from a book.
func figures(t testing.TB, rounds ...history.Round) diary.Figures {
	t.Helper()
	b := book(t)
	for _, r := range rounds {
		b.Add(r)
	}
	return b.Figures("studio")
}

func book(t testing.TB) *diary.Book { return diary.New(lookUp(t)) }

// again is a day as it is read from its text.
func again(t testing.TB, d *diary.Day) *diary.Day {
	t.Helper()
	got, err := diary.ParseDay(d.Format())
	require.NoError(t, err)
	require.Equal(t, string(d.Format()), string(got.Format()))
	return got
}

// Days are made in any order of the rounds, kept and read, and tell what a book tells
// that was given the records themselves.
func TestOrderDoesNotMatter(t *testing.T) {
	made := newLearner(3, supplied(t)).practise(30)
	records := book(t)
	for _, m := range made {
		records.Add(m.Round)
	}
	for seed := range uint64(3) {
		r := rand.New(rand.NewPCG(seed, 1))
		days := map[string]*diary.Day{}
		for _, i := range r.Perm(len(made)) {
			date := diary.Date(made[i].Round)
			if days[date] == nil {
				days[date] = new(diary.Day)
			}
			days[date].Add(made[i].Round)
		}
		kept := book(t)
		for date, d := range days {
			require.Equal(t, string(records.Day(date).Format()), string(d.Format()))
			kept.Put(again(t, d))
		}
		require.Equal(t, records.Outputs(), kept.Outputs())
		for _, output := range records.Outputs() {
			require.Equal(t, records.Figures(output), kept.Figures(output))
			require.Equal(t, records.Met(output), kept.Met(output))
		}
		require.Equal(t, records.Practised(), kept.Practised())
	}
}

// Rounds of one second come in one order too.
func TestOrderWithinASecond(t *testing.T) {
	const when = "2026-01-31T18:30:00Z"
	a, b := named(when, "maqsum", "baladi"), named(when, "saidi", "saidi")
	var one, other diary.Day
	one.Add(a)
	one.Add(b)
	other.Add(b)
	other.Add(a)
	require.Equal(t, string(one.Format()), string(other.Format()))
}

func TestDay(t *testing.T) {
	var d diary.Day
	require.Zero(t, d.Rounds())
	require.Empty(t, d.Date())
	require.Zero(t, again(t, &d).Rounds())
	d.Add(named("2026-01-31T23:59:59+02:00", "maqsum", "maqsum"))
	telephone := named("2026-01-31T00:00:00-11:00", "maqsum", "baladi")
	telephone.Output = "telephone"
	d.Add(telephone)
	d.Add(telephone)
	require.Equal(t, 3, d.Rounds(), "one that is added twice counts twice")
	require.Equal(t, "2026-01-31", d.Date())
	require.Equal(t, 3, again(t, &d).Rounds())
	require.Panics(t, func() { d.Add(named("2026-02-01T00:00:00+02:00", "maqsum", "maqsum")) })
}

func TestBook(t *testing.T) {
	b := book(t)
	require.Empty(t, b.Outputs())
	require.Equal(t, "studio", b.Figures("studio").Output)
	require.Nil(t, b.Day("2026-01-31"))
	b.Add(named("2026-01-31T18:30:00Z", "maqsum", "maqsum"))
	telephone := named("2026-01-30T18:30:00Z", "maqsum", "baladi")
	telephone.Output = "telephone"
	b.Add(telephone)
	b.Add(telephone)
	require.Equal(t, []string{"telephone", "studio"}, b.Outputs(), "the most used first")
	require.Equal(t, []string{"2026-01-30", "2026-01-31"}, b.Dates())
	require.Equal(t, []diary.Practice{
		{Day: "2026-01-31", Rounds: 1, Kinds: map[string]int{"which": 1}},
		{Day: "2026-01-30", Rounds: 2, Kinds: map[string]int{"which": 2}},
	}, b.Practised())
	require.Len(t, b.Figures("studio").Practised, 1, "outputs are kept apart")
	require.Equal(t, 1, b.Figures("studio").Rounds)
	require.Zero(t, b.Figures("kitchen").Rounds)

	var other diary.Day
	other.Add(named("2026-01-30T12:00:00Z", "saidi", "saidi"))
	b.Put(&other)
	require.Equal(t, []string{"studio"}, b.Outputs(), "the day is replaced")
	b.Put(new(diary.Day))
	require.Len(t, b.Dates(), 2, "an empty day is none")
	b.Remove("2026-01-30")
	require.Equal(t, []string{"2026-01-31"}, b.Dates())
}

// A round of a kind that is not known here counts as practice.
func TestUnknownKind(t *testing.T) {
	r := named("2026-01-31T18:30:00Z", "maqsum", "maqsum")
	r.Kind = "dance"
	b := book(t)
	b.Add(r)
	b.Put(again(t, b.Day("2026-01-31")))
	f := b.Figures("studio")
	require.Equal(t, 1, f.Practised[0].Kinds["dance"])
	require.Empty(t, f.Accuracy)
	require.Empty(t, f.Mixed.Rhythms)
	require.Empty(t, f.Reach)
	require.Empty(t, b.Met("studio"))
}

// Nor does it tell anything where a day was written by a program that knows it.
func TestUnknownKindInADay(t *testing.T) {
	d, err := diary.ParseDay([]byte(`{"v":2,"day":"2026-01-31","outputs":[{"output":"studio","rounds":[` +
		strings.TrimSuffix(strings.Repeat(`{"at":7,"kind":"dance","rhythm":"maqsum","riff":"bare","hide":0.3,"choices":2,"said":"maqsum","right":true},`, 60), ",") + `]}]}`))
	require.NoError(t, err)
	b := book(t)
	b.Put(again(t, d))
	f := b.Figures("studio")
	require.Equal(t, 60, f.Practised[0].Kinds["dance"])
	f.Practised, f.Rounds = nil, 0
	require.Equal(t, book(t).Figures("studio"), f, "as of nobody")
	require.Empty(t, b.Met("studio"))
}

func TestMet(t *testing.T) {
	changed := named("2026-01-30T18:30:00Z", "maqsum", "saidi")
	changed.Kind, changed.To, changed.Choices, changed.Right = history.Change, "saidi", []string{"baladi", "saidi"}, true
	stroke := named("2026-01-30T18:31:00Z", "maqsum", "maqsum")
	stroke.Kind, stroke.Rhythm = history.Stroke, ""
	b := book(t)
	for _, r := range []history.Round{
		named("2026-01-31T18:30:00Z", "maqsum", "maqsum"), named("2026-01-31T18:31:00Z", "maqsum", "baladi"),
		tapped(t, "2026-01-31T18:32:00Z", "maqsum", 5), tapped(t, "2026-01-31T18:33:00Z", "maqsum", 5, 999), changed, stroke,
	} {
		b.Add(r)
	}
	require.Equal(t, []diary.Met{
		{Rhythm: "saidi", Riff: "filled", Day: "2026-01-30", Right: 1, N: 1},
		{Rhythm: "maqsum", Riff: "bare", Day: "2026-01-31", Right: 1, N: 2},
		{Rhythm: "maqsum", Riff: "filled", Day: "2026-01-31", Right: 1, N: 2},
	}, b.Met("studio"))
	require.Empty(t, b.Met("telephone"))
}
