//go:build !js

package main

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/rhythm"
)

var update = flag.Bool("update", false, "write the README's table of rhythms anew")

// The README's table is between these two lines.
const tableBegins, tableEnds = "<!-- rhythms: written by make golden -->\n", "<!-- end of rhythms -->\n"

// The table of rhythms in the README is what the catalogue holds.
func TestReadmeTable(t *testing.T) {
	const name = "../README.md"
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	before, rest, found := strings.Cut(string(text), tableBegins)
	require.True(t, found)
	_, after, found := strings.Cut(rest, tableEnds)
	require.True(t, found)
	want := before + tableBegins + table(t) + tableEnds + after
	if *update {
		require.NoError(t, os.WriteFile(name, []byte(want), 0o644))
	}
	require.Equal(t, want, string(text), "make golden")
}

func table(t *testing.T) string {
	t.Helper()
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	var b strings.Builder
	b.WriteString("| rhythm | metre | strokes | dums on | tempo (of which beat) | |\n|---|---|---|---|---|---|\n")
	for _, id := range all.IDs() {
		c, _ := all.Get(id)
		name := c.Name
		if c.Script != "" {
			name += " " + c.Script
		}
		fmt.Fprintf(&b, "| `%s` %s | %v | `%s` | %s | %s%d to %d (%s) | %s |\n",
			c.ID, name, c.Metre, c.Skeleton, dumCounts(c), about(c), c.Tempo.Slow, c.Tempo.Fast, c.Tempo.Beat, marks(c))
	}
	return b.String()
}

func dumCounts(c *rhythm.Cycle) string {
	var counts []string
	for _, step := range c.Dums() {
		counts = append(counts, c.Spoken(step))
	}
	return strings.Join(counts, ", ")
}

func about(c *rhythm.Cycle) string {
	if c.Tempo.About {
		return "about "
	}
	return ""
}

func marks(c *rhythm.Cycle) string {
	var marks []string
	if c.Core {
		marks = append(marks, "most used")
	}
	if c.Differ {
		marks = append(marks, "sources differ")
	}
	if !c.Quiz {
		marks = append(marks, "heard, not asked")
	}
	return strings.Join(marks, ", ")
}
