package roundview

import (
	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every two rhythms can be reviewed side by side, the one right and the other
// said, in whatever metres.
func TestEveryTwoRhythmsCanBeReviewed(t *testing.T) {
	w := words(t)
	for _, a := range proof.EveryRhythm(t) {
		for _, b := range proof.EveryRhythm(t) {
			q := Which{Phase: view.Reviewing, Ask: view.AskRhythm, BPM: a.Tempo.Usual, Board: 320,
				Right: view.Option{Value: a.ID, Label: a.Name}, Said: view.Option{Value: b.ID, Label: b.Name}, Sides: []Side{{ID: a.ID, Rhythm: a}}}
			if a.ID != b.ID {
				q.Sides = append(q.Sides, Side{ID: b.ID, Rhythm: b})
				q.Differences = rhythm.Differ(a, b)
			}
			s := q.Screen(w)
			require.NoError(t, screenproof.Check(s), "%s, %s", a.ID, b.ID)
			require.NotContains(t, text(t, s), "{")
			if it := s.Find("beside"); it != nil {
				screenproof.RequireInside(t, it.Picture)
				continue
			}
			require.True(t, q.MetresApart())
			for i := range q.Sides {
				screenproof.RequireInside(t, s.Find("line-"+SideLetters[i]).Picture)
			}
		}
	}
}
