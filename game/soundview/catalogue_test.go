package soundview

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// Every rhythm can be listened to, bare and filled, on a phone and on a projector.
func TestEveryRhythmCanBeListenedTo(t *testing.T) {
	w := words(t)
	for _, c := range everyRhythm(t) {
		for _, level := range []string{view.LevelBare, view.LevelFilled} {
			for _, board := range []float64{0, 288, 576} {
				l := Listen{Rhythm: c, Level: level, Board: board, BPM: c.Tempo.Usual, Slow: c.Tempo.Slow, Fast: c.Tempo.Fast}
				s := l.Screen(w)
				require.NoError(t, screenproof.Check(s), c.ID)
				require.NotContains(t, text(t, s), "{", c.ID)
				screenproof.RequireInside(t, s.Find("line").Picture)
				head, p := l.Head(), &picture.Picture{}
				head.Draw(p)
				screenproof.RequireInside(t, p)
			}
		}
	}
}
