package quiz

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

var loaded = sync.OnceValues(func() (*rhythm.Catalogue, error) { return rhythm.Load(os.DirFS("../../assets")) })

func supplied(t testing.TB) *rhythm.Catalogue {
	t.Helper()
	c, err := loaded()
	require.NoError(t, err)
	return c
}

func get(t testing.TB, id string) *rhythm.Cycle {
	t.Helper()
	c, found := supplied(t).Get(id)
	require.True(t, found, id)
	return c
}

func pool(t testing.TB, from string) []*rhythm.Cycle {
	t.Helper()
	p, err := From(supplied(t), from)
	require.NoError(t, err)
	return p
}

func next(t testing.TB, ask Ask, from string, answers, bpm int, level riff.Level, seed uint64) Question {
	t.Helper()
	q, err := Next(ask, pool(t, from), answers, bpm, level, seed)
	require.NoError(t, err)
	return q
}

// made makes a rhythm of a metre and a skeleton that is played at 60 to 120
// beats a minute.
func made(t testing.TB, id, metre, skeleton string) *rhythm.Cycle {
	t.Helper()
	text := "name: " + id + "\nmetre: " + metre + "\nskeleton: " + skeleton + "\ntempo: 60 90 120 quarter\nmemory: all\n"
	c, err := rhythm.Parse(id+".txt", strings.NewReader(text))
	require.NoError(t, err)
	return c
}

func ids(choices []Choice) string {
	var all []string
	for _, c := range choices {
		all = append(all, c.ID)
	}
	return strings.Join(all, " ")
}

// setting is what a question of Which is drawn from.
type setting struct {
	from    string
	answers int
	level   riff.Level
	bpm     int
}

func (s setting) String() string {
	return fmt.Sprintf("%s %d %s %d", s.from, s.answers, s.level, s.bpm)
}

// settings are all of them, at each of some tempi.
func settings(tempi ...int) []setting {
	var all []setting
	for _, from := range []string{Five, Even, All} {
		for answers := MinAnswers; answers <= MaxAnswers; answers++ {
			for _, level := range []riff.Level{riff.Bare, riff.Filled} {
				for _, bpm := range tempi {
					all = append(all, setting{from, answers, level, bpm})
				}
			}
		}
	}
	return all
}

func sqrt(n int) float64 { return math.Sqrt(float64(n)) }

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
