package riff_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// cycle makes a rhythm of a metre and a skeleton.
func cycle(t testing.TB, metre, skeleton string) *rhythm.Cycle {
	t.Helper()
	beat := map[bool]string{true: "eighth", false: "quarter"}[strings.HasSuffix(metre, "/8")]
	text := "name: x\nmetre: " + metre + "\nskeleton: " + skeleton + "\ntempo: 60 90 120 " + beat + "\nmemory: all\n"
	if metre == "9/8" {
		text += "grouping: 2+2+2+3\n"
	}
	c, err := rhythm.Parse("x.txt", strings.NewReader(text))
	require.NoError(t, err)
	return c
}

var skeletons = []struct{ name, metre, skeleton string }{
	{"maqsum", "4/4", "DT-TD-T-"},
	{"sa'idi", "4/4", "DT-DD-T-"},
	{"malfuf", "2/4", "D--T--T-"},
	{"karachi, no stroke on the last step, dum late", "2/4", "T--T--D-"},
	{"karşılama", "9/8", "D-T-D-TTT"},
	{"with slaps, made up", "4/4", "-SD-SDTS"},
	{"one dum alone, made up", "4/4", "---D"},
}

// Both drums play every dum of every cycle, nothing low elsewhere, and together
// nothing off the skeleton.
func TestBareHoldsTheBase(t *testing.T) {
	for _, tt := range skeletons {
		for _, cycles := range []int{1, 2, 7} {
			t.Run(fmt.Sprint(tt.name, cycles), func(t *testing.T) {
				c := cycle(t, tt.metre, tt.skeleton)
				part, err := riff.Play(c, riff.Bare, cycles, 7)
				require.NoError(t, err)
				base := strings.Repeat(tt.skeleton, cycles)
				require.Equal(t, base, written(part.Lead, len(base)))
				require.Equal(t, strings.ReplaceAll(base, "S", "T"), written(part.Bass, len(base)))
			})
		}
	}
}

// written puts strokes back on their steps and fails on two for one step.
func written(strokes []riff.Stroke, steps int) string {
	line := []byte(strings.Repeat("-", steps))
	for _, s := range strokes {
		if line[s.Step] != '-' || s.Sub != 0 {
			return fmt.Sprintf("two strokes on step %d, or one beside it", s.Step)
		}
		line[s.Step] = byte(s.Sound)
	}
	return string(line)
}

func TestBareStrengths(t *testing.T) {
	part, err := riff.Play(cycle(t, "4/4", "DS-TD-T-"), riff.Bare, 3, 1)
	require.NoError(t, err)
	for i, bass := range part.Bass {
		lead := part.Lead[i]
		require.Positive(t, lead.Strength)
		require.LessOrEqual(t, lead.Strength, 1.0)
		if bass.Sound.Low() {
			require.Equal(t, 1.0, bass.Strength, "every dum is firm")
			require.Equal(t, 1.0, lead.Strength)
		} else {
			require.Less(t, bass.Strength, 0.5, "teks of the bass drum are soft")
			require.Less(t, bass.Strength, lead.Strength)
		}
	}
}

func TestPlayIsInOrderOfTime(t *testing.T) {
	for _, tt := range skeletons {
		part, err := riff.Play(cycle(t, tt.metre, tt.skeleton), riff.Bare, 5, 3)
		require.NoError(t, err)
		for _, drum := range [][]riff.Stroke{part.Lead, part.Bass} {
			last := -1
			for _, s := range drum {
				require.Greater(t, s.Step, last)
				require.True(t, s.Sound.Sounds())
				last = s.Step
			}
		}
	}
}

func TestPlayIsDeterministic(t *testing.T) {
	c := cycle(t, "4/4", "DT-TD-T-")
	first, err := riff.Play(c, riff.Bare, 4, 1)
	require.NoError(t, err)
	for _, seed := range []uint64{0, 1, 99, math.MaxUint64} {
		again, err := riff.Play(c, riff.Bare, 4, seed)
		require.NoError(t, err)
		require.Equal(t, first, again, "bare draws nothing from the seed %d", seed)
	}
	require.Equal(t, "DT-TD-T-", c.Skeleton.String(), "the rhythm is left as it was")
}

func TestPlayRefuses(t *testing.T) {
	c := cycle(t, "4/4", "DT-TD-T-")
	for _, level := range []riff.Level{riff.Solo + 1, 200} {
		part, err := riff.Play(c, level, 2, 7)
		require.EqualError(t, err, "riff level '"+level.String()+"' is not available")
		require.Zero(t, part)
	}
	r, err := riff.New(c, riff.Solo, 7)
	require.NoError(t, err)
	for _, first := range []int{-1, 1<<30 + 1} {
		_, err := r.Cycles(first, 1)
		require.ErrorContains(t, err, "of a riff")
	}
	for _, cycles := range []int{0, -1, riff.MaxCycles + 1, math.MaxInt} {
		_, err := riff.Play(c, riff.Bare, cycles, 7)
		require.ErrorContains(t, err, "a part has 1 to 10000")
	}
	part, err := riff.Play(c, riff.Bare, riff.MaxCycles, 7)
	require.NoError(t, err)
	require.Len(t, part.Bass, 5*riff.MaxCycles)
}

func TestLevel(t *testing.T) {
	names := []string{"bare", "filled", "ornamented", "riffing", "solo"}
	for i, name := range names {
		level, err := riff.ParseLevel(name)
		require.NoError(t, err)
		require.Equal(t, riff.Level(i), level)
		require.Equal(t, name, level.String())
		require.True(t, riff.Available(level))
	}
	for _, name := range []string{"", "Bare", "bare ", "level"} {
		_, err := riff.ParseLevel(name)
		require.EqualError(t, err, "unknown riff level '"+name+"'; it is one of bare, filled, ornamented, riffing, solo")
	}
	require.Equal(t, "Level(200)", riff.Level(200).String())
	require.False(t, riff.Available(200))
}

func ExamplePlay() {
	maqsum, err := rhythm.Parse("maqsum.txt", strings.NewReader(
		"name: maqsum\nmetre: 4/4\nskeleton: DT-TD-T-\ntempo: 90 105 130 quarter\nmemory: all of it\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	part, err := riff.Play(maqsum, riff.Bare, maqsum.CyclesIn(1), 7)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range part.Bass {
		if s.Sound.Low() {
			fmt.Println("dum on", maqsum.CountInEight(s.Step), "after", maqsum.At(s.Step, 120))
		}
	}
	// Output:
	// dum on 1 after 0s
	// dum on 3 after 1s
	// dum on 5 after 2s
	// dum on 7 after 3s
}
