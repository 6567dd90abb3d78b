package riff_test

import (
	"encoding/binary"
	"flag"
	"fmt"
	"hash/fnv"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

var update = flag.Bool("update", false, "write the goldens anew")

// A seed is a promise: what riffs are for ever. If this fails, riffs that people
// have in links and records have changed: raise Version, or find out why.
//
// Of each rhythm and level there are cycles to read, and a sum of all
// strokes of 32 cycles of 50 seeds.
func TestSeedsAreKept(t *testing.T) {
	const path = "testdata/riffs.txt"
	var b strings.Builder
	fmt.Fprintf(&b, "version %d\n", riff.Version)
	for _, c := range supplied(t) {
		for level := range levels {
			fmt.Fprintf(&b, "\n%s, %v, %016x\n", c.ID, level, sum(t, c, level))
			cycles := 8
			if level <= riff.Filled {
				cycles = 1
			}
			p, err := riff.Play(c, level, cycles, 1)
			require.NoError(t, err)
			for cycle := range cycles {
				fmt.Fprintf(&b, "%-44s | %s\n", letters(c, p.Lead, cycle), letters(c, p.Bass, cycle))
			}
		}
	}
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(b.String()), 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, strings.Count(string(want), "\n"), strings.Count(b.String(), "\n"))
	got := strings.Split(b.String(), "\n")
	for i, line := range strings.Split(string(want), "\n") {
		require.Equal(t, line, got[i], "%s:%d", path, i+1)
	}
}

// sum is FNV-1a over all that is in the parts of 50 seeds.
func sum(t *testing.T, c *rhythm.Cycle, level riff.Level) uint64 {
	t.Helper()
	h := fnv.New64a()
	add := func(values ...uint64) {
		for _, v := range values {
			h.Write(binary.LittleEndian.AppendUint64(nil, v))
		}
	}
	for seed := range uint64(50) {
		p, err := riff.Play(c, level, 32, seed*0x0101_0101_0101_0101)
		require.NoError(t, err)
		for _, drum := range [][]riff.Stroke{p.Lead, p.Bass} {
			for _, s := range drum {
				add(uint64(s.Step), uint64(s.Sub), uint64(s.Sound), math.Float64bits(s.Strength), uint64(s.Roll), math.Float64bits(s.Swell))
			}
		}
		for _, o := range p.Open {
			add(uint64(o.From), uint64(o.To), uint64(o.Kind))
		}
	}
	return h.Sum64()
}
