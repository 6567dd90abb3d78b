package soundview

import (
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

// The letters that are on the screen are explained, and no others.
func TestLettersAreExplained(t *testing.T) {
	w := words(t)
	l := Listen{Rhythm: supplied(t, "maqsum"), Level: view.LevelBare}
	bare := l.letters(w)
	require.Equal(t, "D dum, low · T tek, high", bare.Text)
	l.Level = view.LevelFilled
	filled := l.letters(w)
	require.Equal(t, "D dum, low · T tek, high · k ka, the other hand", filled.Text)
	l.Level, l.Rolls = view.LevelSolo, true
	l.Sounds = []rhythm.Stroke{rhythm.Tek, rhythm.Sak, rhythm.LightTek, rhythm.Ka}
	solo := l.letters(w)
	require.Equal(t, "D dum, low · T tek, high · S sak, slap · t light tek · k ka, the other hand · a line that swells is a roll", solo.Text)
}
