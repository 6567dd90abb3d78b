package roundview

import (
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

// A stroke has no rhythm to be compared, whichever side of it is heard.
func TestReviewOfAStrokeWithItsSides(t *testing.T) {
	for _, heard := range []string{"dum", "tek", ""} {
		q := reviewed(t, view.AskStroke, view.Option{Value: "tek", Label: "tek"}, view.Option{Value: "dum", Label: "dum"})
		q.Sides = []Side{{ID: "dum", Hearing: heard == "dum"}, {ID: "tek", Hearing: heard == "tek"}}
		s := q.Screen(words(t))
		require.Nil(t, s.Find("differences"))
		require.NotNil(t, s.Find("why-dum"))
	}
}
