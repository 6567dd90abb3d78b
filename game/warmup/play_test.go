package warmup

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// near is what rounding frames and nanoseconds may amount to.
const near = float64(time.Millisecond)

func heard(t *testing.T, task Task, percent int) (*round.Passage, time.Duration) {
	t.Helper()
	p, cut, err := task.Passage(percent)
	require.NoError(t, err, "%v", task)
	return p, cut
}

// How long each kind is heard, in eights of its rhythm.
func TestHowLongTasksAreHeard(t *testing.T) {
	for k, n := range map[Kind]int{SayIt: 4, WalkAndClap: 4, CatchTheStop: 6, BaseOrRiff: 3, WhatChanged: 2} {
		eachTask(t, k, 6, func(task Task) {
			p, cut := heard(t, task, 100)
			require.Zero(t, cut, "it goes to its end")
			cycles := task.Rhythm.CyclesIn(n)
			if k == WhatChanged {
				cycles = 2 * task.Rhythm.CyclesIn(1)
			}
			want := time.Duration(cycles) * task.Rhythm.Length(task.BPM)
			require.InDelta(t, float64(want), float64(p.End()-p.Start()), near, "%v", task)
			require.Positive(t, p.Start(), "there is a count-in")
		})
	}
}

// A name is asked for after the same time whatever it is and however fast; that lasts as
// long as three eights of 8 counts do at 100 counts a minute.
func TestNamesAreHeardAsLong(t *testing.T) {
	require.Equal(t, 14400*time.Millisecond, handsUpLasts)
	eachTask(t, HandsUp, 12, func(task Task) {
		for _, percent := range []int{100, 80, 60} {
			p, cut := heard(t, task, percent)
			require.Equal(t, handsUpLasts, cut)
			require.GreaterOrEqual(t, p.End(), cut, "it does not end before it is cut")
			require.Less(t, p.End()-cut, p.Rhythm(0).Length(p.BPM())+time.Millisecond, "and goes on for less than a cycle")
		}
	})
}

// Heard slower it is slower by so much, and never slower than can be played.
func TestSlower(t *testing.T) {
	require.Equal(t, 80, slower(100, 80))
	require.Equal(t, round.MinBPM, slower(round.MinBPM+1, 50))
	for _, k := range Kinds() {
		eachTask(t, k, 1, func(task Task) {
			p, _ := heard(t, task, 80)
			require.Equal(t, max(round.MinBPM, task.BPM*80/100), p.BPM(), "%v", task)
			p, _ = heard(t, task, 1)
			require.Equal(t, round.MinBPM, p.BPM())
		})
	}
}

// What is turned about begins after the stroke on which it breaks off, and ends with it:
// nothing is lost, and nothing comes after it.
func TestTurned(t *testing.T) {
	eachTask(t, FindTheOne, 40, func(task Task) {
		s := task.turned()
		n := task.Rhythm.Steps()
		require.Equal(t, task.Rhythm.Skeleton[task.Last], s.Rhythm.Skeleton[n-1])
		require.Equal(t, task.Rhythm.Skeleton[(task.Last+1)%n], s.Rhythm.Skeleton[0])
		require.ElementsMatch(t, task.Rhythm.Skeleton, s.Rhythm.Skeleton)
		require.Equal(t, task.Rhythm.CyclesIn(oneEights), s.Cycles)
		require.Empty(t, s.Rhythm.Variants)
		if len(s.Rhythm.Filled) > 0 {
			fine := len(s.Rhythm.Filled) / n
			last := len(s.Rhythm.Filled) - fine
			require.True(t, s.Rhythm.Filled[last].Sounds())
			for _, after := range s.Rhythm.Filled[last+1:] {
				require.False(t, after.Sounds(), "%v", task)
			}
		}
	})
}

// What is turned about leaves the rhythm itself as it was, which others play too.
func TestTurnedLeavesTheRhythm(t *testing.T) {
	maqsum, _ := supplied(t).Get("maqsum")
	base, filled := maqsum.Skeleton.String(), maqsum.Filled.String()
	for _, last := range []int{0, 2, 4, 6} {
		_ = Task{Rhythm: maqsum, Last: last}.turned()
		require.Equal(t, base, maqsum.Skeleton.String())
		require.Equal(t, filled, maqsum.Filled.String())
	}
}

// What is heard in turn begins with what was right, then what it was taken for; without
// that, or with the right one itself, the right one alone.
func TestTurnsOfNames(t *testing.T) {
	eachTask(t, HandsUp, 8, func(task Task) {
		for _, other := range []string{"", "waltz", task.Right} {
			turns, err := task.Turns(other)
			require.NoError(t, err)
			require.Len(t, turns, 1, other)
			require.Equal(t, task.Right, turns[0].ID)
		}
		turns, err := task.Turns(task.rival())
		require.NoError(t, err)
		require.Len(t, turns, 2)
		require.Equal(t, []string{task.Right, task.rival()}, []string{turns[0].ID, turns[1].ID})
		rival, _ := task.Choice(task.rival())
		require.Equal(t, []*rhythm.Cycle{task.Rhythm, rival.Rhythm}, []*rhythm.Cycle{turns[0].Rhythm, turns[1].Rhythm})
		require.Equal(t, rival.BPM, turns[1].BPM(), "each at the tempo at which it would have been played")
		for _, turn := range turns {
			require.Zero(t, turn.Start(), "no count-in between them")
		}
	})
}

// Both versions of what changed are heard in turn, and both of base or riff, whatever was
// right; counts have the rhythm alone.
func TestTurnsOfOthers(t *testing.T) {
	eachTask(t, WhatChanged, 4, func(task Task) {
		turns, err := task.Turns("1")
		require.NoError(t, err)
		require.Equal(t, []*rhythm.Cycle{task.Rhythm, task.Other}, []*rhythm.Cycle{turns[0].Rhythm, turns[1].Rhythm})
		require.Positive(t, turns[0].Start(), "a count-in before the first")
		require.Zero(t, turns[1].Start())
	})
	eachTask(t, BaseOrRiff, 4, func(task Task) {
		turns, err := task.Turns("")
		require.NoError(t, err)
		require.Equal(t, []string{OnBase, OffBase}, []string{turns[0].ID, turns[1].ID})
		require.Less(t, onDums(turns[1].Passage), 1.0, "off the base")
		require.Equal(t, 1.0, onDums(turns[0].Passage), "on the base")
	})
	eachTask(t, FindTheOne, 4, func(task Task) {
		turns, err := task.Turns(task.rival())
		require.NoError(t, err)
		require.Len(t, turns, 1)
		require.Equal(t, task.Right, turns[0].ID)
	})
}

// onDums is how many of the bass drum's dums have one of the lead drum's with them, of 1.
func onDums(p *round.Passage) float64 {
	part := p.Played(0)
	with := map[[2]int]bool{}
	for _, s := range part.Lead {
		with[[2]int{s.Step, s.Sub}] = s.Sound.Low()
	}
	all, on := 0, 0
	for step, s := range p.Rhythm(0).Skeleton {
		if s.Low() {
			all++
			if with[[2]int{step, 0}] {
				on++
			}
		}
	}
	return float64(on) / float64(all)
}

// Heard once more it is under the riff that the set goes up to; base or riff as it was,
// and what changed both ways.
func TestAgain(t *testing.T) {
	for _, k := range []Kind{HandsUp, FindTheOne, BaseOrRiff, WhatChanged} {
		eachTask(t, k, 4, func(task Task) {
			p, err := task.Replay()
			require.NoError(t, err)
			require.Equal(t, task.BPM, p.BPM())
			require.Positive(t, p.Start(), "there is a count-in")
			cycles := task.Rhythm.CyclesIn(underEights)
			if k == WhatChanged {
				cycles = 2 * task.Rhythm.CyclesIn(1)
				require.Equal(t, task.Other, p.Rhythm(p.End()-time.Millisecond))
			}
			require.InDelta(t, float64(time.Duration(cycles)*task.Rhythm.Length(task.BPM)), float64(p.End()-p.Start()), near)
		})
	}
}

// The line stands for the first half of what is spoken, the count-in with it.
func TestLineUntil(t *testing.T) {
	eachTask(t, SayIt, 6, func(task Task) {
		p, _ := heard(t, task, 100)
		until := LineUntil(p)
		require.InDelta(t, float64(until-p.Start()), float64(p.End()-until), near)
		two := time.Duration(task.Rhythm.CyclesIn(2)) * task.Rhythm.Length(task.BPM)
		require.InDelta(t, float64(two), float64(until-p.Start()), near, "two eights with it")
	})
}

// Taming leaves no stroke out and makes none firmer than a firm one, in any task.
func TestTamingLosesNothing(t *testing.T) {
	for _, k := range []Kind{BaseOrRiff, SayIt} {
		eachTask(t, k, 4, func(task Task) {
			p, _ := heard(t, task, 100)
			n := map[Kind]int{BaseOrRiff: baseEights, SayIt: sayEights}[k]
			wild, err := round.NewPassage(task.BPM, task.Level, task.Seed, true, eights(task.Rhythm, n))
			require.NoError(t, err)
			tame, as := p.Hits(audio.Rate, 0), wild.Hits(audio.Rate, 0)
			require.Len(t, tame, len(as))
			for i := range tame {
				require.Equal(t, as[i].Frame, tame[i].Frame)
				require.LessOrEqual(t, tame[i].Strength, min(as[i].Strength, mostStrength))
				if len(p.Open()) == 0 { // a roll grows from end to end, both of which are tamed
					require.Equal(t, min(as[i].Strength, mostStrength), tame[i].Strength)
				}
			}
		})
	}
}

// A task at a tempo that cannot be played is refused by all that would be heard of it.
func TestUnplayableTask(t *testing.T) {
	maqsum, _ := supplied(t).Get("maqsum")
	for _, k := range Kinds() {
		task := Task{Kind: k, Rhythm: maqsum, Other: maqsum, BPM: 100000, Level: riff.Bare, Seed: 1, Choices: quiz.Plain("1", "2"), Right: "1"}
		_, _, err := task.Passage(100)
		require.Error(t, err, k)
		_, err = task.Replay()
		require.Error(t, err, k)
		_, err = task.Turns("2")
		require.Error(t, err, k)
		_, err = task.Lasts()
		require.Error(t, err, k)
	}
}
