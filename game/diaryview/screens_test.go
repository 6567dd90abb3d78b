package diaryview

import (
	"bytes"
	"maps"
	"testing"

	"groundbeat/game/picture"
	"groundbeat/game/proof"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"

	"github.com/stretchr/testify/require"
)

func TestScreens(t *testing.T) {
	all := map[string]view.Screen{}
	maps.Copy(all, diaryScreens(t))
	maps.Copy(all, practiceScreens(t))
	screenproof.Screens(t, all)
	files := append(screenproof.Files(all), "thirty-days.txt")
	for name, p := range diaryPictures(t) {
		var b bytes.Buffer
		require.NoError(t, picture.WriteSVG(&b, p, name, p.Twin))
		screenproof.RequireXML(t, b.Bytes())
		screenproof.RequireInside(t, p)
		proof.Golden(t, name+".svg", b.Bytes())
		files = append(files, name+".svg")
	}
	proof.GoldensAreUsed(t, files...)
}
