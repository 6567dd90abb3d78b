package warmup

import (
	"testing"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
)

// What these tests share with others, by short names.

func supplied(t testing.TB) *rhythm.Catalogue { return proof.Catalogue(t) }
func golden(t *testing.T, name, got string)   { t.Helper(); proof.Golden(t, name, []byte(got)) }
