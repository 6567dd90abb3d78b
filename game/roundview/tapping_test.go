package roundview

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// Each kind of round whose strokes are tapped says in words of its own what is to be done,
// and whatever names the strokes; where these are not the dums, it does not say that they are.
func TestTappings(t *testing.T) {
	w := words(t)
	for _, k := range history.Kinds {
		said, has := tappings[k.ID]
		require.Equal(t, k.Play == history.Tapped, has, k.ID)
		if !has {
			continue
		}
		texts := []string{said.page(w, "maqsum"), said.heading(w, "maqsum"), said.how(w, "maqsum", false), said.how(w, "maqsum", true), said.playing(w, "maqsum")}
		known := map[string]bool{}
		for f := foundOn; f <= foundOpen; f++ {
			text := said.found(w, f, "count", "4", "n", 3, "of", 8, "ms", 20, "places", "eight 1", "tempo", "90")
			require.False(t, known[text], "%s: %q twice", k.ID, text)
			known[text], texts = true, append(texts, text)
		}
		for _, text := range texts {
			require.NotEmpty(t, text, k.ID)
			require.NotContains(t, text, "{", k.ID)
			if !round.Asks(k.ID)(rhythm.Dum) {
				require.NotRegexp(t, `(?i)\bdums?\b|low stroke`, text, k.ID)
			}
		}
	}
}

// A round in which teks are asked for is told by its teks: what is asked, tapped and left out.
func TestTallyOfTeks(t *testing.T) {
	base := pattern(t, "DT-TD-T-")
	v := &picture.Review{Asks: rhythm.Stroke.High, Steps: 16, StepTime: 300 * ms, On: 25 * ms,
		Landed: []picture.Landed{{Step: 1, Offset: 4 * ms}, {Step: 3, Offset: -6 * ms}, {Step: 9, Offset: 8 * ms}}, LeftOut: []int{6, 11, 14}}
	require.Equal(t, []picture.CountResult{
		{Count: "1 &", Asked: 2, Tapped: 2, Mean: 6 * ms, Spread: 2828427},
		{Count: "2 &", Asked: 2, Tapped: 1, Mean: -6 * ms},
		{Count: "4", Asked: 2},
	}, v.Tally(base, inFour))
}
