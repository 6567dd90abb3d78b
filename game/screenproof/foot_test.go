package screenproof_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/proof"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// The foot of a screen behind each door. No golden of a screen has it.
func TestFoot(t *testing.T) {
	w := proof.Words(t)
	var text string
	for _, d := range view.Doors(w) {
		var first string
		door := view.Screen{Items: []view.Item{d.Item(w)}}
		door.Each(func(it *view.Item) {
			if first == "" && it.Action == view.ActGo {
				first = it.Value
			}
		})
		s := view.ReadyScreen(w, first, view.SayScreen(w, first), nil)
		foot := s.Find("nav")
		require.NotNil(t, foot)
		s.Items = []view.Item{*foot}
		text += screenproof.Text(t, s)
	}
	proof.Golden(t, "foot.txt", []byte(text))
	proof.GoldensAreUsed(t, "foot.txt")
}
