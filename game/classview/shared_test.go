package classview

import (
	"testing"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/screenproof"
)

// What these tests share with others, by short names.

var allLevels = screenproof.AllLevels

func words(t testing.TB) say.Words                   { return proof.Words(t) }
func supplied(t testing.TB, id string) *rhythm.Cycle { return proof.Supplied(t, id) }
func catalogue(t testing.TB) *rhythm.Catalogue       { return proof.Catalogue(t) }
func everyRhythm(t testing.TB) []*rhythm.Cycle       { return proof.EveryRhythm(t) }
