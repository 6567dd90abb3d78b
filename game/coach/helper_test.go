package coach

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/proof"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
)

// What these tests share with others, by short names.

func supplied(t testing.TB) *rhythm.Catalogue   { return proof.Catalogue(t) }
func get(t testing.TB, id string) *rhythm.Cycle { return proof.Supplied(t, id) }
func golden(t *testing.T, name, got string)     { t.Helper(); proof.Golden(t, name, []byte(got)) }
func sqrt(n int) float64                        { return math.Sqrt(float64(n)) }
func loaded() (*rhythm.Catalogue, error)        { return proof.Supplies() }
func made(t testing.TB, id, metre, skeleton string) *rhythm.Cycle {
	return proof.Made(t, id, metre, skeleton)
}

func pool(t testing.TB, from string) []*rhythm.Cycle {
	t.Helper()
	p, err := quiz.From(supplied(t), from)
	require.NoError(t, err)
	return p
}

// sound checks that a question has its right answer among its choices.
func sound(t testing.TB, q quiz.Question) {
	t.Helper()
	_, found := q.Choice(q.Right)
	require.True(t, found)
}
