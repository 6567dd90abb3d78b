package warmup

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// eachTask draws tasks of a kind out of every rhythm, at every level, of some seeds; of
// names, which take long to be put together, out of five.
func eachTask(t *testing.T, k Kind, seeds uint64, each func(Task)) {
	t.Helper()
	from := quiz.All
	if k == HandsUp {
		from, seeds = quiz.Five, (seeds+1)/2
	}
	pool, err := quiz.From(supplied(t), from)
	require.NoError(t, err)
	for level := riff.Bare; level <= riff.Solo; level++ {
		for seed := uint64(1); seed <= seeds; seed++ {
			task, err := Set{Level: riff.Solo}.draw(pool, k, level, seed)
			require.NoError(t, err)
			each(task)
		}
	}
}

// Of what is counted one choice is right, no two are alike, and there are few enough to
// be asked one by one; of what is danced there are none.
func TestEveryTaskHasOneRightAnswer(t *testing.T) {
	for _, k := range Kinds() {
		eachTask(t, k, 12, func(task Task) {
			if !k.Counted() {
				require.Empty(t, task.Choices)
				require.Empty(t, task.Right)
				require.Empty(t, task.rival())
				return
			}
			var ids []string
			for _, c := range task.Choices {
				require.NotContains(t, ids, c.ID)
				ids = append(ids, c.ID)
			}
			require.Contains(t, ids, task.Right)
			require.GreaterOrEqual(t, len(ids), 2, "%v", task)
			require.LessOrEqual(t, len(ids), mostCounts, "%v", task)
			require.NotEqual(t, task.Right, task.rival())
			require.Contains(t, ids, task.rival())
		})
	}
}

// No place in the list of answers is the right one's: among many questions the right one
// stands at each, and none of them holds it more than twice as often as another.
func TestNoPlaceOfTheAnswersTells(t *testing.T) {
	for _, k := range []Kind{HandsUp, BaseOrRiff} {
		at := map[int]int{}
		eachTask(t, k, 60, func(task Task) {
			at[slices.IndexFunc(task.Choices, func(c quiz.Choice) bool { return c.ID == task.Right })]++
		})
		least, most := 1<<30, 0
		for _, n := range at {
			least, most = min(least, n), max(most, n)
		}
		require.GreaterOrEqual(t, len(at), 2, k)
		require.Less(t, most, 2*least, "%s: %v", k, at)
	}
}

// What tells the answer is the level in one kind only; the level that is asked for is kept
// in the others, but where strokes must be compared.
func TestLevelsOfTasks(t *testing.T) {
	pool, err := quiz.From(supplied(t), quiz.Five)
	require.NoError(t, err)
	for level := riff.Bare; level <= riff.Solo; level++ {
		for seed := uint64(1); seed <= 10; seed++ {
			for _, k := range Kinds() {
				task, err := Set{Level: riff.Riffing}.draw(pool, k, level, seed)
				require.NoError(t, err)
				require.Equal(t, max(level, riff.Riffing), task.Under, "it is heard again under the set's riff at least")
				switch k {
				case WhatChanged, FindTheOne:
					require.Equal(t, min(level, riff.Filled), task.Level)
				case BaseOrRiff:
					require.Equal(t, map[string]riff.Level{OnBase: riff.Filled, OffBase: riff.Solo}[task.Right], task.Level)
				default:
					require.Equal(t, level, task.Level)
				}
			}
		}
	}
}

// A tempo is one at which the rhythm is played; what is walked and spoken is no faster
// than usual, and stays within eights.
func TestTempiOfTasks(t *testing.T) {
	for _, k := range Kinds() {
		eachTask(t, k, 8, func(task Task) {
			require.GreaterOrEqual(t, task.BPM, task.Rhythm.Tempo.Slow, "%v", task)
			require.LessOrEqual(t, task.BPM, task.Rhythm.Tempo.Fast, "%v", task)
			if !k.Counted() {
				require.LessOrEqual(t, task.BPM, task.Rhythm.Tempo.Usual, "%v", task)
				require.False(t, task.Rhythm.Odd(), "%v", task)
			}
		})
	}
}

// Every move of every rhythm keeps within one count, to an empty step beside the stroke,
// and all such moves are found.
func TestMovable(t *testing.T) {
	for _, id := range supplied(t).IDs() {
		c, _ := supplied(t).Get(id)
		found := map[[2]int]bool{}
		for _, m := range movable(c) {
			require.False(t, found[m], "%s: %v twice", id, m)
			found[m] = true
		}
		for from := range c.Steps() {
			for to := range c.Steps() {
				beside := to == from+1 || to == from-1
				inCount := from/c.StepsPerBeat() == to/c.StepsPerBeat()
				may := beside && inCount && c.Skeleton[from].Sounds() && !c.Skeleton[to].Sounds()
				require.Equal(t, may, found[[2]int{from, to}], "%s: %d to %d", id, from, to)
			}
		}
		require.Equal(t, len(found) > 0, Task{Kind: WhatChanged}.suits(c))
	}
}

// A stroke can be moved to the very first step and from the very last.
func TestMovableAtTheEnds(t *testing.T) {
	c := &rhythm.Cycle{Metre: rhythm.Metre{Beats: 2, Unit: 4}, Skeleton: rhythm.Pattern("-D-T")}
	require.ElementsMatch(t, [][2]int{{1, 0}, {3, 2}}, movable(c))
	c.Skeleton = rhythm.Pattern("D-T-")
	require.ElementsMatch(t, [][2]int{{0, 1}, {2, 3}}, movable(c))
}

// What is moved sounds the same but for its place: no stroke is lost or changed, in the
// filled form neither; the rhythm it is made from stays as it was; and moved twice it is
// what it was.
func TestSwapped(t *testing.T) {
	for _, id := range supplied(t).IDs() {
		c, _ := supplied(t).Get(id)
		before := *c
		for _, m := range movable(c) {
			other := swapped(c, m)
			require.Equal(t, before, *c)
			require.Equal(t, c.Skeleton[m[0]], other.Skeleton[m[1]])
			require.False(t, other.Skeleton[m[0]].Sounds())
			require.ElementsMatch(t, c.Skeleton, other.Skeleton)
			require.ElementsMatch(t, c.Filled, other.Filled)
			if len(c.Filled) > 0 {
				fine := len(c.Filled) / c.Steps()
				require.Equal(t, c.Filled[m[0]*fine], other.Filled[m[1]*fine], "the stroke moves with it")
			}
			require.Empty(t, other.Variants, "a variant is another rhythm")
			again := swapped(other, m)
			require.Equal(t, c.Skeleton, again.Skeleton)
			require.Equal(t, c.Filled, again.Filled)
		}
	}
}

// What changed is in the count that is right, by the rhythm's own counts.
func TestChangedInTheRightCount(t *testing.T) {
	counts := map[string]bool{}
	eachTask(t, WhatChanged, 60, func(task Task) {
		require.Contains(t, movable(task.Rhythm), task.Moved)
		require.Equal(t, swapped(task.Rhythm, task.Moved).Skeleton, task.Other.Skeleton)
		for _, step := range task.Moved {
			on := step - step%task.Rhythm.StepsPerBeat()
			require.Equal(t, task.Right, task.Rhythm.Base().Count(on), "%v", task)
		}
		counts[task.Right] = true
	})
	require.Greater(t, len(counts), 3)
}

// The counts that are asked follow one another, lie within the cycle, hold the right one,
// and of a long cycle the right one may be any of them.
func TestAskedCountsHoldTheRightOne(t *testing.T) {
	for _, beats := range []int{2, 3, 4, 5, 8, 9, 16} {
		c := &rhythm.Cycle{Metre: rhythm.Metre{Beats: beats, Unit: 4}, Skeleton: make(rhythm.Pattern, beats)}
		places := map[int]bool{}
		for beat := range beats {
			for seed := uint64(0); seed < 60; seed++ {
				task := Task{Rhythm: c}
				task.askCount(beat, rand.New(rand.NewPCG(seed, 1)))
				require.Len(t, task.Choices, min(beats, mostCounts))
				require.Equal(t, strconv.Itoa(beat+1), task.Right)
				first, err := strconv.Atoi(task.Choices[0].ID)
				require.NoError(t, err)
				require.GreaterOrEqual(t, first, 1)
				require.LessOrEqual(t, first+len(task.Choices)-1, beats)
				for i, choice := range task.Choices {
					require.Equal(t, strconv.Itoa(first+i), choice.ID)
				}
				at := beat + 1 - first
				require.True(t, at >= 0 && at < len(task.Choices), "%d of %d", beat, beats)
				places[at] = true
			}
		}
		require.Len(t, places, min(beats, mostCounts), "of %d beats", beats)
	}
}

// It breaks off on a count with a stroke on it, and each of them may be the one.
func TestBreaksOffOnAStroke(t *testing.T) {
	seen := map[string]map[int]bool{}
	eachTask(t, FindTheOne, 150, func(task Task) {
		require.Zero(t, task.Last%task.Rhythm.StepsPerBeat())
		require.True(t, task.Rhythm.Skeleton[task.Last].Sounds())
		if seen[task.Rhythm.ID] == nil {
			seen[task.Rhythm.ID] = map[int]bool{}
		}
		seen[task.Rhythm.ID][task.Last] = true
	})
	maqsum, _ := supplied(t).Get("maqsum")
	want := map[int]bool{}
	for step, s := range maqsum.Skeleton {
		if s.Sounds() && step%maqsum.StepsPerBeat() == 0 {
			want[step] = true
		}
	}
	require.Equal(t, want, seen["maqsum"])
}

// The same seed draws the same task, another one another; a task says what it is.
func TestSeedDrawsTheTask(t *testing.T) {
	pool, err := quiz.From(supplied(t), quiz.Five)
	require.NoError(t, err)
	for _, k := range Kinds() {
		texts := map[string]bool{}
		for seed := uint64(1); seed <= 30; seed++ {
			a, err := Set{}.draw(pool, k, riff.Bare, seed)
			require.NoError(t, err)
			b, err := Set{}.draw(pool, k, riff.Bare, seed)
			require.NoError(t, err)
			require.Equal(t, a, b)
			texts[a.String()] = true
		}
		require.Greater(t, len(texts), 10, k)
	}
}

// Where no rhythm suits a kind there is no task, and it is said why.
func TestNothingSuits(t *testing.T) {
	karsilama, _ := supplied(t).Get("karsilama")
	for _, k := range []Kind{SayIt, WalkAndClap, CatchTheStop} {
		_, err := Set{}.draw([]*rhythm.Cycle{karsilama}, k, riff.Bare, 1)
		require.ErrorIs(t, err, quiz.ErrTooFew, k)
		require.False(t, Task{Kind: k}.suits(karsilama))
	}
	require.True(t, Task{Kind: FindTheOne}.suits(karsilama))
	_, err := Set{}.draw([]*rhythm.Cycle{karsilama}, HandsUp, riff.Bare, 1)
	require.ErrorIs(t, err, quiz.ErrTooFew, "one name alone is no question")
}

// Of several names the likeliest to be taken for the right one is the one that sounds
// most like it.
func TestRivalIsTheMostAlike(t *testing.T) {
	eachTask(t, HandsUp, 16, func(task Task) {
		rival, ok := task.Choice(task.rival())
		require.True(t, ok)
		for _, c := range task.Choices {
			if c.ID != task.Right {
				require.LessOrEqual(t, quiz.Apart(task.Rhythm, rival.Rhythm), quiz.Apart(task.Rhythm, c.Rhythm))
			}
		}
	})
	require.Equal(t, "1", Task{Right: "2", Choices: quiz.Plain("1", "2", "3")}.rival(), "of counts the first")
}

// Kinds are told apart, and hands are counted of those that ask and no others.
func TestCountedKinds(t *testing.T) {
	counted := 0
	for i, k := range Kinds() {
		require.NotContains(t, Kinds()[:i], k)
		require.Regexp(t, `^[a-z0-9]+(-[a-z0-9]+)*$`, string(k), "it stands in links, between points and strokes")
		if k.Counted() {
			counted++
		}
	}
	require.Equal(t, 4, counted)
	require.False(t, Kind("dance").Counted())
}
