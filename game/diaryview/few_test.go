package diaryview

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/screenproof"
	"groundbeat/scoring"
)

// How many more would do is never none: of what cannot be told from as many as there are,
// one more is asked for; and as many as would do are never asked for more.
func TestFewIsNeverNone(t *testing.T) {
	w := words(t)
	for n := range 9 {
		d := withFigures(t, diary.Figures{Fingers: []diary.Fingers{{Rhythm: "maqsum", Bias: scoring.Unknown(n, 6)}}})
		require.Equal(t, w.Say("too-few", "list", w.Say("few-rounds", "what", "maqsum", "n", max(1, 6-n))), d.fingersFew(w))
	}
	for n := range 2 * diary.LeastMixed {
		d := withFigures(t, diary.Figures{Mixed: diary.Mixed{Rhythms: []string{"maqsum"}, Said: [][]int{{n}}}})
		require.Equal(t, n >= diary.LeastMixed, d.mixedFew(w) == "", n)
		require.Equal(t, d.mixedKnown(), d.mixedFew(w) == "", "either drawn, or told how many are missing")
	}
}

// What lies at the very ends of a picture stays inside its frame: a lean farther off than
// the panel reaches, with a wide spread, and stretches of a single day.
func TestEndsStayInside(t *testing.T) {
	w, d := words(t), mira(t)
	for _, ms := range []float64{-900, -150, 150, 900} {
		screenproof.RequireInside(t, d.fingers(w, fingering("maqsum", 9, 90, ms, 60, 80)))
	}
	a := accuracy("maqsum", false, [2]int{0, 20}, [2]int{20, 20}, [2]int{1, 20}, [2]int{19, 20})
	for i := range a.Spans {
		a.Spans[i].From = a.Spans[i].To
	}
	days := timeline{first: a.Spans[0].To, last: a.Spans[3].To}
	screenproof.RequireInside(t, d.right(w, a, days))
}
