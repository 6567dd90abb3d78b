package classview

import (
	"maps"
	"testing"

	"groundbeat/game/proof"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

func TestScreens(t *testing.T) {
	all := map[string]view.Screen{}
	maps.Copy(all, classScreens(t))
	screenproof.Screens(t, all)
	proof.GoldensAreUsed(t, screenproof.Files(all)...)
}
