package link

import (
	"testing"

	"groundbeat/game/proof"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

func TestWrongLink(t *testing.T) {
	w, all := proof.Words(t), map[string]view.Screen{}
	for name, query := range map[string]string{
		"link-home":   "screen=hom",
		"link":        "rhythm=maqsoum&bpm=900&zoom=2",
		"link-listen": "screen=listen&rhythm=saidi&answers=2",
		"link-which":  "screen=which&rhythm=maqsum&ask=howmany",
		"link-any":    "rhythm=any&eights=0&from=waltz",
		"link-set-up": "screen=setup&seed=3",
		"link-check":  "screen=soundcheck&bpm=90",
		"link-change": "screen=change&eights=2",
	} {
		nearest, err := Parse(query, allowed)
		wrong := &WrongLink{Problems: err.(*Error).Problems, Nearest: nearest, Rhythm: nearest.Rhythm}
		all[name] = wrong.Screen(w)
	}
	screenproof.Screens(t, all)
	proof.GoldensAreUsed(t, screenproof.Files(all)...)
}
