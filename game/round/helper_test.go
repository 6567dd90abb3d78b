package round_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
)

const ms = time.Millisecond

// supplied reads one of the rhythms that come with the program.
func supplied(t testing.TB, id string) *rhythm.Cycle {
	t.Helper()
	name := "rhythms/" + id + ".txt"
	file, err := assets.Rhythms.Open(name)
	require.NoError(t, err)
	defer file.Close()
	c, err := rhythm.Parse(name, file)
	require.NoError(t, err)
	return c
}

// made makes a rhythm of a metre and a skeleton.
func made(t testing.TB, metre, skeleton string) *rhythm.Cycle {
	t.Helper()
	beat := "quarter"
	if strings.HasSuffix(metre, "/8") {
		beat = "eighth"
	}
	text := "name: x\nmetre: " + metre + "\nskeleton: " + skeleton + "\ntempo: 60 90 120 " + beat + "\nmemory: all\n"
	if metre == "9/8" {
		text += "grouping: 2+2+2+3\n"
	}
	c, err := rhythm.Parse("x.txt", strings.NewReader(text))
	require.NoError(t, err)
	return c
}

// ready returns a round of Dums that is ready to begin.
func ready(t testing.TB, c *rhythm.Cycle, bpm, eights int) *round.Round {
	t.Helper()
	r, err := round.New(round.Setting{Kind: round.Dums, Rhythm: c, BPM: bpm, Eights: eights, Seed: 7})
	require.NoError(t, err)
	return r
}

// begun returns a round in which a time is heard, without a set-up mean.
func begun(t testing.TB, c *rhythm.Cycle, bpm, eights int, heard time.Duration) *round.Round {
	t.Helper()
	r := ready(t, c, bpm, eights)
	r.Begin()
	r.Hear(heard, 0)
	return r
}

// at lists the times of taps.
func at(taps []round.Tap) []time.Duration {
	times := make([]time.Duration, len(taps))
	for i, tap := range taps {
		times[i] = tap.At
	}
	return times
}

// golden compares a text with what is kept of it, or keeps it with -update.
func golden(t *testing.T, path, got string) {
	t.Helper()
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), got)
}
