package warmup

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

func warmup(t testing.TB, preset string, seed uint64, minutes int) *Warmup {
	t.Helper()
	s, ok := Preset(preset)
	require.True(t, ok)
	s.Seed, s.Minutes = seed, minutes
	w, err := NewWarmup(s, supplied(t))
	require.NoError(t, err)
	return w
}

// The same seed is the same warm-up for ever, on every machine.
func TestWarmupGolden(t *testing.T) {
	var b strings.Builder
	for _, id := range Presets() {
		for seed := uint64(1); seed <= 3; seed++ {
			b.WriteString(id + " " + strconv.FormatUint(seed, 10) + "\n")
			for _, task := range warmup(t, id, seed, 12).Tasks {
				b.WriteString("  " + task.String() + "\n")
			}
		}
	}
	golden(t, "warmups.txt", b.String())
}

// It keeps to its minutes, fills them, and a longer one begins as the shorter one.
func TestWarmupKeepsItsMinutes(t *testing.T) {
	for _, id := range Presets() {
		for seed := uint64(1); seed <= 5; seed++ {
			long := warmup(t, id, seed, 15)
			for _, minutes := range []int{2, 5, 10, 15} {
				w := warmup(t, id, seed, minutes)
				asked := time.Duration(minutes) * time.Minute
				require.LessOrEqual(t, w.Lasts(), asked)
				require.Greater(t, w.Lasts(), asked-2*time.Minute, "nothing more would fit")
				require.Equal(t, long.Tasks[:len(w.Tasks)], w.Tasks)
			}
		}
	}
}

// Kinds come mixed: each once before any twice, and none two times running.
func TestWarmupMixesKinds(t *testing.T) {
	for seed := uint64(1); seed <= 20; seed++ {
		w := warmup(t, "riff", seed, 30)
		n := len(Kinds())
		require.Greater(t, len(w.Tasks), n)
		seen := map[Kind]bool{}
		for i, task := range w.Tasks {
			if i < n {
				require.False(t, seen[task.Kind])
				seen[task.Kind] = true
			}
			if i > 0 {
				require.NotEqual(t, w.Tasks[i-1].Kind, task.Kind)
			}
		}
	}
}

// Every task has one right answer, which is there to be heard.
func TestTasksAreFair(t *testing.T) {
	rights := map[Kind]map[string]int{}
	for seed := uint64(1); seed <= 60; seed++ {
		for _, task := range warmup(t, "riff", seed, 12).Tasks {
			if !task.Kind.Counted() {
				require.Empty(t, task.Choices)
				require.Empty(t, task.Right)
				continue
			}
			if rights[task.Kind] == nil {
				rights[task.Kind] = map[string]int{}
			}
			rights[task.Kind][task.Right]++
			n := 0
			for _, c := range task.Choices {
				if c.ID == task.Right {
					n++
				}
			}
			require.Equal(t, 1, n)
			switch task.Kind {
			case WhatChanged:
				checkChanged(t, task)
			case FindTheOne:
				checkOne(t, task)
			}
		}
	}
	require.Len(t, rights[BaseOrRiff], 2)
	require.Len(t, rights[HandsUp], 5)
	require.GreaterOrEqual(t, len(rights[FindTheOne]), 4)
	require.GreaterOrEqual(t, len(rights[WhatChanged]), 4)
}

// The two differ in one count alone, by one stroke that is moved.
func checkChanged(t *testing.T, task Task) {
	t.Helper()
	differences := rhythm.Differ(task.Rhythm, task.Other)
	require.Len(t, differences, 2)
	for _, d := range differences {
		count := d.Count[strings.LastIndex(d.Count, " ")+1:] // "the & of 2" is in 2
		require.Equal(t, task.Right, count, "%v", task)
	}
	require.Equal(t, len(task.Rhythm.Dums()), len(task.Other.Dums()))
	require.LessOrEqual(t, task.Level, riff.Filled)
}

// The last stroke falls on the right count, with nothing after it, and the drums go
// through the rhythm in its own order.
func checkOne(t *testing.T, task Task) {
	t.Helper()
	p, _, err := task.Passage(100)
	require.NoError(t, err)
	c := task.Rhythm
	hits := p.Hits(audio.Rate, 0)
	last := int64(0)
	for _, h := range hits {
		last = max(last, h.Frame)
	}
	step := c.At(1, task.BPM)
	require.InDelta(t, float64(p.End()-step), float64(audio.Rate.Duration(last)), float64(time.Millisecond))
	require.Equal(t, task.Right, c.Base().Count(task.Last))
	require.True(t, c.Skeleton[task.Last].Sounds())
	require.Equal(t, (c.Skeleton.String() + c.Skeleton.String())[task.Last+1:][:c.Steps()], p.Rhythm(0).Skeleton.String())
}

// What is asked for a name lasts as long whatever it is, and neither it nor what must
// be found has a count-in.
func TestNothingTellsBefore(t *testing.T) {
	for seed := uint64(1); seed <= 20; seed++ {
		for _, task := range warmup(t, "ears", seed, 12).Tasks {
			for _, percent := range []int{100, 80} {
				p, cut, err := task.Passage(percent)
				require.NoError(t, err)
				switch task.Kind {
				case HandsUp:
					require.Equal(t, handsUpLasts, cut)
					require.GreaterOrEqual(t, p.End(), cut)
					require.Zero(t, p.Start())
				case FindTheOne:
					require.Zero(t, p.Start())
				default:
					require.Zero(t, cut)
				}
			}
		}
	}
}

// In a room nothing starts anybody: no stroke is firmer than a firm one.
func TestRoomIsTamed(t *testing.T) {
	for seed := uint64(1); seed <= 10; seed++ {
		for _, task := range warmup(t, "riff", seed, 12).Tasks {
			p, _, err := task.Passage(100)
			require.NoError(t, err)
			again, err := task.Replay()
			require.NoError(t, err)
			turns, err := task.Turns(task.rival())
			require.NoError(t, err)
			require.NotEmpty(t, turns)
			hits := append(p.Hits(audio.Rate, 0), again.Hits(audio.Rate, 0)...)
			for _, turn := range turns {
				hits = append(hits, turn.Hits(audio.Rate, 0)...)
			}
			for _, h := range hits {
				require.LessOrEqual(t, h.Strength, float32(mostStrength))
			}
		}
	}
}

// The drums drop out for the third of four eights.
func TestWalkDropsOut(t *testing.T) {
	for _, task := range warmup(t, "body", 4, 12).Tasks {
		if task.Kind != WalkAndClap {
			continue
		}
		p, _, err := task.Passage(100)
		require.NoError(t, err)
		eight := task.Rhythm.At(task.Rhythm.CyclesIn(1)*task.Rhythm.Steps(), task.BPM)
		from, to, silent := p.Start()+2*eight, p.Start()+3*eight, true
		for _, h := range p.Hits(audio.Rate, 0) {
			at := audio.Rate.Duration(h.Frame) + time.Millisecond
			silent = silent && (at < from || at >= to)
		}
		require.True(t, silent)
		require.InDelta(t, float64(p.Start()+4*eight), float64(p.End()), float64(time.Microsecond))
	}
}
