package coach

import (
	"groundbeat/game/quiz"
	"testing"

	"github.com/stretchr/testify/require"
)

// What is offered: of each reason the first step, and a rhythm from slow to faster with
// all of its steps.
func TestOffers(t *testing.T) {
	for name, k := range learners() {
		steps := k.Practice(20, pool(t, quiz.Five), 1)
		all := Offers(steps, 3)
		require.NotEmpty(t, all, name)
		require.LessOrEqual(t, len(all), 4, name)
		for i, one := range all {
			require.Equal(t, i == 3, i >= 3 && one[0].Reason == ReasonWell, name)
			require.Equal(t, one[0].Reason == ReasonTempo, len(one) > 1, name)
			for j, s := range one[1:] {
				require.Equal(t, one[0].Rhythms, s.Rhythms, name)
				require.Greater(t, s.BPM, one[j].BPM, "from slow to faster")
			}
		}
	}
	tempo := func(rhythm string, bpm int) Step {
		return Step{Kind: "dums", Rhythms: []string{rhythm}, BPM: bpm, Reason: ReasonTempo}
	}
	steps := []Step{tempo("maqsum", 80), tempo("maqsum", 84), tempo("baladi", 70)}
	require.Equal(t, [][]Step{steps[:2]}, Offers(steps, 3))
	require.Empty(t, Offers(nil, 3))
}
