package diaryview

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// Where nothing that was to be offered can be said beside what is told, there is no list of
// it, and still a practice to begin.
func TestNothingToOffer(t *testing.T) {
	w, d := words(t), mira(t)
	d.Figures.Accuracy = []diary.Accuracy{accuracy("maqsum", false, [2]int{20, 20}), accuracy("baladi", false, [2]int{8, 20})}
	d.Next = []Next{{Reason: ReasonWell, Kind: "dums", Rhythms: []string{"baladi"}}}
	s := d.Screen(w)
	require.NoError(t, screenproof.Check(s))
	require.Nil(t, s.Find("next-list"))
	require.NotNil(t, s.Find("practise"))
}

// Without a set-up, of two rhythms that cannot be told apart the one that leans is told:
// it is not said that neither does.
func TestOneLeansWithoutSetUp(t *testing.T) {
	d := withFigures(t, diary.Figures{Fingers: []diary.Fingers{fingering("maqsum", 9, 90, 12, 5, 20), fingering("saidi", 9, 90, -1, 20, 20)}})
	f := d.findFingers(words(t))
	require.Equal(t, "You tap maqsum about 12 ms behind (7 to 17 ms).", f.text)
	require.Equal(t, []claim{{says: saysBehind, rhythm: "maqsum"}}, f.claims)
}

// An interval that lies wholly beyond the end of a dum's arc has no line, only its mark at
// that end; one that reaches onto the arc has its line as far as that goes.
func TestIntervalBeyondTheArc(t *testing.T) {
	w, d := words(t), mira(t)
	lines := func(ms, half float64) []picture.Shape {
		p := d.round(w, d.rhythm("maqsum"), fingering("maqsum", 9, 0, 0, 5, 20, diary.Count{Step: 4, Offset: estimate(ms, half, 9)}))
		return shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindArc && s.R == roundScale && s.Width == 0.008 })
	}
	require.Empty(t, lines(90, 20))
	require.Empty(t, lines(-90, 20))
	reaching := lines(60, 20)
	require.Len(t, reaching, 1)
	require.InDelta(t, 0.5+0.16*40/RoundReach, reaching[0].From, 1e-9)
	require.InDelta(t, 0.5+0.16, reaching[0].To, 1e-9)
}

// A dum that the rhythm does not have is nowhere: not in the picture, the table or what is
// told.
func TestDumBeyondTheRhythm(t *testing.T) {
	w := words(t)
	f := fingering("maqsum", 9, 90, 1, 5, 20, diary.Count{Step: 0, Offset: estimate(2, 3, 9)}, diary.Count{Step: 64, Offset: estimate(70, 3, 9)})
	d := withFigures(t, diary.Figures{Output: "kitchen", Fingers: []diary.Fingers{f}})
	s := d.Screen(w)
	require.NoError(t, screenproof.Check(s))
	require.Len(t, s.Find("round-table").Rows, 1)
	require.NotContains(t, s.Find("round-maqsum").Text, "70")
	require.Equal(t, "No count comes farther ahead or behind than the others, as far as this tells.", s.Find("round-finding").Text)
}

// A diary without sound offers nothing to begin.
func TestNothingIsOfferedWithoutSound(t *testing.T) {
	d := mira(t)
	d.Silent = true
	s := d.Screen(words(t))
	s.Each(func(it *view.Item) {
		require.NotContains(t, []string{view.ActDiaryNext, view.ActDiaryPractise, view.ActDiaryMinutes}, it.Action, it.ID)
	})
}

// A rhythm that is not here, of any length and script, is called by the beginning of its
// ID, and no picture that names it reaches over its frame.
func TestLongNameOfRhythm(t *testing.T) {
	w := words(t)
	for _, letter := range []string{"x", "م"} {
		for n := 1; n <= 100; n += 9 {
			d, id := mira(t), strings.Repeat(letter, n)
			d.Figures.Accuracy[0].Rhythm, d.Figures.Fingers[0].Rhythm, d.Figures.Mixed.Rhythms[0] = id, id, id
			drawn := picturesOf(d.Screen(w))
			require.Contains(t, drawn, "named-"+id)
			for _, it := range drawn {
				screenproof.RequireInside(t, it.Picture)
			}
			require.Equal(t, n > 18, d.name(id) != id)
			require.True(t, strings.HasPrefix(id, strings.TrimSuffix(d.name(id), "…")))
			require.LessOrEqual(t, utf8.RuneCountInString(d.name(id)), 18)
		}
	}
	for _, c := range everyRhythm(t) {
		require.Equal(t, c.ID, (&Diary{}).name(c.ID), "the rhythms of the program are called in full")
	}
}
