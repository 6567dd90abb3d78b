package quiz

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

func TestDifferences(t *testing.T) {
	q := Question{Ask: Which, Rhythm: get(t, "maqsum"), Right: "maqsum"}
	for _, id := range []string{"maqsum", "baladi", "masmudi-kabir", "malfuf", "karsilama"} {
		q.Choices = append(q.Choices, Choice{ID: id, Rhythm: get(t, id)})
	}
	for answer, want := range map[string]string{
		"maqsum": "", "baladi": "the & of 1: T D;", "none": "", "": "",
		"karsilama": "", // 9 beats and 4: the metres differ
	} {
		got := ""
		for _, d := range Differences(q, answer) {
			got += fmt.Sprintf("%s: %s %s;", d.Count, d.A, d.B)
		}
		require.Equal(t, want, got, answer)
	}
	for _, id := range []string{"masmudi-kabir", "malfuf"} { // one cycle goes into the other
		require.NotEmpty(t, Differences(q, id))
		require.Equal(t, rhythm.Differ(get(t, "maqsum"), get(t, id)), Differences(q, id))
	}
	require.Empty(t, Differences(next(t, HowMany, Five, 2, 0, riff.Bare, 1), "1"))
	require.Empty(t, Differences(next(t, Stroke, Five, 2, 0, riff.Bare, 1), dum))
}

func TestFrom(t *testing.T) {
	for from, want := range map[string]string{
		Five:                         "baladi ciftetelli maqsum masmudi-kabir saidi",
		Even:                         "baladi ciftetelli maqsum masmudi-kabir saidi ayyub fallahi khaliji malfuf wahda",
		"wahda.maqsum.wahda":         "maqsum wahda",
		"samai-thaqil.masmudi-kabir": "masmudi-kabir samai-thaqil",
	} {
		got := ""
		for _, c := range pool(t, from) {
			got += " " + c.ID
		}
		require.Equal(t, " "+want, got)
	}
	require.Len(t, pool(t, All), 13)
	for from, want := range map[string]string{
		"": "quiz: there is no rhythm ''", "maqsum.": "quiz: there is no rhythm ''", "bamb": "quiz: there is no rhythm 'bamb'",
		"maqsum.karachi": "quiz: karachi can be heard, but is no answer in a quiz",
	} {
		_, err := From(supplied(t), from)
		require.EqualError(t, err, want)
	}
}

func TestCycles(t *testing.T) {
	for _, tt := range []struct {
		ask  Ask
		id   string
		want int
	}{{Which, "maqsum", 6}, {Which, "malfuf", 12}, {Same, "masmudi-kabir", 3}, {HowMany, "malfuf", 1}, {Stroke, "maqsum", 1}} {
		require.Equal(t, tt.want, Question{Ask: tt.ask, Rhythm: get(t, tt.id), Eights: 3}.Cycles())
	}
}
