package quiz

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

func supplied(t testing.TB) *rhythm.Catalogue   { return proof.Catalogue(t) }
func get(t testing.TB, id string) *rhythm.Cycle { return proof.Supplied(t, id) }
func loaded() (*rhythm.Catalogue, error)        { return proof.Supplies() }

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

func made(t testing.TB, id, metre, skeleton string) *rhythm.Cycle {
	return proof.Made(t, id, metre, skeleton)
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

func golden(t *testing.T, name, got string) { t.Helper(); proof.Golden(t, name, []byte(got)) }
