package homeview

import (
	"testing"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
)

// What these tests share with others, by short names.

func words(t testing.TB) say.Words                { return proof.Words(t) }
func cycle(t testing.TB, id string) *rhythm.Cycle { return proof.Cycle(t, id) }
