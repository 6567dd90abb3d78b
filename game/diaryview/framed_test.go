package diaryview

import (
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

// A screen that is framed once more keeps its bar; a next step that was put before it
// becomes the filled one, and the one before stays beside it.
func TestFramedOnceMore(t *testing.T) {
	w := words(t)
	d := dums(t, view.Reviewing)
	s := d.Screen(w)
	require.Equal(t, []string{"home", "once"}, idsOf(s.Find("bar").Children))
	require.Equal(t, s.Items, view.Framed(w, s.ID, s.Items))
	s = Practice{Part: 1, Parts: 3, Done: true}.On(s, w)
	require.Equal(t, []string{"home", "once", "practice-on"}, idsOf(s.Find("bar").Children))
	require.Equal(t, []string{"", view.LookPrimary}, []string{s.Find("once").Look, s.Find("practice-on").Look})
	require.NoError(t, screenproof.Check(s))
}

func idsOf(items []view.Item) (ids []string) {
	for _, it := range items {
		ids = append(ids, it.ID)
	}
	return ids
}
