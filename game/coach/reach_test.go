package coach

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// hides is how far a riff that is asked for hides the base, in thousandths, as a round
// plays it.
func hides(c *rhythm.Cycle, level riff.Level, hide int, seed uint64) int {
	r, err := round.Riff(c, level, seed, 0, hide)
	if err != nil {
		panic(err)
	}
	p, err := r.At(c.Tempo.Usual).Cycles(0, 16)
	if err != nil {
		panic(err)
	}
	return riff.HideThousandths(c, p, c.Tempo.Usual)
}

// What is asked for is played to 0.15 of hide, up to what the rhythm's riffs can hide
// at all: so near that its answer moves the staircase.
func TestRiffThatReaches(t *testing.T) {
	worst := 0
	for _, c := range pool(t, quiz.All) {
		most := hides(c, riff.Solo, round.MaxHide, 1)
		last := riff.Bare
		for asked := 0; asked <= mostAsk; asked += 5 {
			level, hide := reaches{}.riffFor(asked, []*rhythm.Cycle{c})
			require.GreaterOrEqual(t, level, last, "%s %d", c.ID, asked)
			require.Equal(t, level > riff.Filled, hide > 0)
			last = level
			off := hides(c, level, hide, 1) - 10*min(asked, most/10)
			worst = max(worst, off, -off)
			require.LessOrEqual(t, max(off, -off), 10*near, "%s: %d asked", c.ID, asked)
		}
		require.Equal(t, riff.Solo, last, c.ID)
	}
	t.Log("farthest off, in thousandths:", worst)

	// Of several the lowest level that half of them reach.
	wahda, fallahi := get(t, "wahda"), get(t, "fallahi")
	for _, tt := range []struct {
		rhythms []*rhythm.Cycle
		want    riff.Level
	}{
		{[]*rhythm.Cycle{wahda}, riff.Ornamented}, {[]*rhythm.Cycle{fallahi}, riff.Riffing},
		{[]*rhythm.Cycle{wahda, fallahi}, riff.Ornamented}, {[]*rhythm.Cycle{fallahi, wahda, fallahi}, riff.Riffing},
	} {
		level, hide := reaches{}.riffFor(20, tt.rhythms)
		require.Equal(t, tt.want, level)
		require.Equal(t, 20, hide)
	}
}
