package round_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// The hands strike when the lead drum sounds, and at no other time: count-in,
// strokes between steps, and each stroke of a roll.
func TestStrikesAreWhatSounds(t *testing.T) {
	lead := []audio.Voice{audio.LeadDum, audio.LeadTek, audio.LeadKa, audio.LeadSak, audio.LeadRollTek, audio.LeadRollKa}
	rolls := 0
	for _, id := range []string{"maqsum", "malfuf", "ciftetelli", "karsilama"} {
		c := supplied(t, id)
		for level := riff.Bare; level <= riff.Solo; level++ {
			p, err := round.NewPassage(c.Tempo.Usual, level, 3, true, round.Section{Rhythm: c, Cycles: 16})
			require.NoError(t, err)
			var sounds, strikes []int64
			for _, h := range p.Hits(audio.Rate, 0) {
				if slices.Contains(lead, h.Voice) {
					sounds = append(sounds, h.Frame)
				}
				if h.Voice == audio.LeadRollKa {
					rolls++
				}
			}
			slices.Sort(sounds)
			for _, s := range p.Strikes() {
				strikes = append(strikes, audio.Rate.Frame(s.At))
				require.Positive(t, s.Strength)
			}
			require.Len(t, strikes, len(sounds))
			for i := range sounds { // the strokes of a roll stray by up to a twentieth of the way to the next
				require.InDelta(t, sounds[i], strikes[i], float64(audio.Rate)/16/10, "%s, %v, stroke %d", id, level, i)
			}
		}
	}
	require.Positive(t, rolls, "some of these riffs roll")
}

// What a letter says is done by its hand where there is time for it: the strong
// hand strikes dums and slaps, the other one kas; no hand strikes twice in what one
// hand needs.
func TestStrikesOfBothHands(t *testing.T) {
	c := supplied(t, "maqsum")
	p, err := round.NewPassage(c.Tempo.Usual, riff.Riffing, 5, true, round.Section{Rhythm: c, Cycles: 24})
	require.NoError(t, err)
	last := map[riff.Hand]int64{riff.Strong: -1 << 40, riff.Other: -1 << 40}
	used := map[riff.Hand]int{}
	for i, s := range p.Strikes() {
		if i < round.CountInBeats || s.Sound.Low() {
			require.Equal(t, riff.Strong, s.Hand)
		}
		at := s.At.Microseconds()
		require.GreaterOrEqual(t, at-last[s.Hand], riff.HandGap.Microseconds()*9/10, "stroke %d", i) // rolls stray
		last[s.Hand] = at
		used[s.Hand]++
	}
	require.Greater(t, used[riff.Other], 20)
	require.Greater(t, used[riff.Strong], 20)
}
