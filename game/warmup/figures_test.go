package warmup

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
)

// entryBy is an entry by chance: of every kind, under every riff.
func entryBy(chance *rand.Rand) Entry {
	e := Entry{Version: 1, When: begin.Add(time.Duration(chance.IntN(1000)) * time.Hour), Set: "five_solo_hands-up_5_1"}
	ids := []string{"maqsum", "saidi", "baladi"}
	for range chance.IntN(12) {
		k := Kinds()[chance.IntN(len(Kinds()))]
		d := Done{Kind: k, Rhythm: ids[chance.IntN(3)], BPM: 90, Riff: riff.Level(chance.IntN(5)).String()}
		if k.Counted() {
			d.Choices, d.Right = ids, d.Rhythm
			for range ids {
				d.Hands = append(d.Hands, everyHands()[chance.IntN(len(everyHands()))])
			}
		}
		e.Tasks = append(e.Tasks, d)
	}
	return e
}

// Whatever hands were counted: every task is counted once, of names as of all others;
// what was known and mixed up was told; and a pair is never of one rhythm with itself.
func TestFiguresAddUp(t *testing.T) {
	chance := rand.New(rand.NewPCG(4, 4))
	for range 400 {
		e := entryBy(chance)
		f := FiguresOf(e)
		require.Equal(t, len(e.Tasks), f.Counted+f.Moved)
		require.LessOrEqual(t, f.Knew, f.Of)
		require.LessOrEqual(t, f.Of, f.Counted)
		names, knew, mixed := 0, 0, 0
		for i, l := range f.Levels {
			names, knew = names+l.Of, knew+l.Knew
			require.Positive(t, l.Of, "a level of which nothing is told is not shown")
			if i > 0 {
				require.Less(t, levelOf(t, f.Levels[i-1].Riff), levelOf(t, l.Riff), "bare first")
			}
		}
		require.LessOrEqual(t, names, f.Of)
		for i, p := range f.Mixed {
			mixed += p.Times
			require.NotEqual(t, p.Played, p.TakenFor)
			if i > 0 {
				require.GreaterOrEqual(t, f.Mixed[i-1].Times, p.Times, "the most often first")
			}
		}
		require.LessOrEqual(t, knew+mixed, names)
		require.Equal(t, knew > 0, len(f.Known) > 0)
	}
}

func levelOf(t *testing.T, name string) riff.Level {
	l, err := riff.ParseLevel(name)
	require.NoError(t, err)
	return l
}

// Two entries together tell what each tells by itself.
func TestFiguresOfTwo(t *testing.T) {
	chance := rand.New(rand.NewPCG(5, 5))
	for range 200 {
		a, b := entryBy(chance), entryBy(chance)
		one, other, both := FiguresOf(a), FiguresOf(b), FiguresOf(a, b)
		require.Equal(t, one.Of+other.Of, both.Of)
		require.Equal(t, one.Knew+other.Knew, both.Knew)
		require.Equal(t, [2]int{one.Counted + other.Counted, one.Moved + other.Moved}, [2]int{both.Counted, both.Moved})
		times := map[[2]string]int{}
		for _, p := range append(one.Mixed, other.Mixed...) {
			times[[2]string{p.Played, p.TakenFor}] += p.Times
		}
		require.Len(t, both.Mixed, len(times))
		for _, p := range both.Mixed {
			require.Equal(t, times[[2]string{p.Played, p.TakenFor}], p.Times)
		}
		require.Equal(t, both, FiguresOf(a, b), "it is told alike each time")
	}
	require.Equal(t, Figures{}, FiguresOf())
}

// Through is under which riff a room named all that was asked, and under all thinner ones.
func TestThroughAllThinner(t *testing.T) {
	for _, c := range []struct {
		levels []Level
		want   string
	}{
		{nil, ""},
		{[]Level{{"bare", Tally{1, 1}}}, "bare"},
		{[]Level{{"bare", Tally{0, 1}}, {"filled", Tally{1, 1}}}, ""},
		{[]Level{{"bare", Tally{2, 2}}, {"filled", Tally{1, 2}}, {"solo", Tally{1, 1}}}, "bare"},
		{[]Level{{"bare", Tally{2, 2}}, {"riffing", Tally{3, 3}}}, "riffing"},
	} {
		require.Equal(t, c.want, Figures{Levels: c.levels}.Through())
	}
}

// What to dance to is a rhythm that was played; under more riff only if the room knew it,
// by one level, and no level that there is none of.
func TestDanceToWhatWasPlayed(t *testing.T) {
	chance := rand.New(rand.NewPCG(6, 6))
	for range 400 {
		e := entryBy(chance)
		d, f := DanceTo(e), FiguresOf(e)
		if len(e.Tasks) == 0 {
			require.Equal(t, Dance{Riff: "bare"}, d)
			continue
		}
		played := map[string]bool{}
		for _, task := range e.Tasks {
			played[task.Rhythm] = true
		}
		require.True(t, played[d.Rhythm])
		require.Equal(t, len(f.Known) > 0, d.Known)
		level := levelOf(t, d.Riff)
		if f.Through() == "" || !d.Known {
			require.Equal(t, riff.Bare, level)
		} else {
			require.Equal(t, min(levelOf(t, f.Through())+1, riff.Solo), level)
		}
		require.Equal(t, len(f.Mixed) > 0, d.Apart != Pair{})
	}
}

// Hands of kinds that ask no name tell of the room, but of no level, rhythm or pair.
func TestOtherKindsTellNoNames(t *testing.T) {
	for _, k := range []Kind{WhatChanged, BaseOrRiff, FindTheOne} {
		f := FiguresOf(Entry{Tasks: []Done{
			{Kind: k, Rhythm: "saidi", Riff: "bare", Choices: []string{"1", "2"}, Right: "1", Hands: []Hands{Most, Few}},
			{Kind: k, Rhythm: "saidi", Riff: "bare", Choices: []string{"1", "2"}, Right: "1", Hands: []Hands{Few, Most}},
		}})
		require.Equal(t, Figures{Tally: Tally{1, 2}, Counted: 2}, f, k)
	}
}
