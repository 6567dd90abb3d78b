package view

import (
	"testing"

	"groundbeat/game/proof"
	"groundbeat/game/say"
)

func words(t testing.TB) say.Words { return proof.Words(t) }
