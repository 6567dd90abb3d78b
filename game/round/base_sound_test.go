package round_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// Behind a small loudspeaker, which gives next to nothing below 200 or 400 Hz, the base's
// dum is the louder of the two drums in its first 80 ms in half of all cases or more, at
// every level up to Riffing, over all rhythms; and no passage has a true peak above −1 dBTP
// (EBU R 128). Half is a choice.
func TestBaseDumsOnSmallLoudspeakers(t *testing.T) {
	if testing.Short() {
		t.Skip("renders minutes of sound")
	}
	for level := riff.Bare; level <= riff.Riffing; level++ {
		dums, louder := 0, [2]int{}
		for _, id := range catalogue(t) {
			lead, bass, at := bothDrums(t, id, level)
			dums += len(at)
			for i, hz := range []float64{200, 400} {
				lead, bass := highPassed(lead, hz), highPassed(bass, hz)
				for _, from := range at {
					if first80(bass, from) > first80(lead, from) {
						louder[i]++
					}
				}
			}
		}
		t.Logf("%v: of %d dums %d are the louder above 200 Hz, %d above 400 Hz", level, dums, louder[0], louder[1])
		require.GreaterOrEqual(t, 2*min(louder[0], louder[1]), dums, "%v", level)
	}
}

// bothDrums are two eights of a rhythm, drum by drum, and the frames of the base's dums.
func bothDrums(t *testing.T, id string, level riff.Level) (lead, bass []float64, dums []int) {
	t.Helper()
	c := supplied(t, id)
	p, err := round.NewPassage(c.Tempo.Usual, level, 3, false, round.Section{Rhythm: c, Cycles: c.CyclesIn(2)})
	require.NoError(t, err)
	hits := p.Hits(audio.Rate, 0)
	frames, err := audio.Render(audio.Rate, audio.Rate.Frame(p.End())+int64(audio.Rate)/10, hits...)
	require.NoError(t, err)
	for i := 0; i < len(frames); i += 2 {
		lead, bass = append(lead, float64(frames[i])), append(bass, float64(frames[i+1]))
	}
	for _, h := range hits {
		if h.Voice == audio.BassDum {
			dums = append(dums, int(h.Frame))
		}
	}
	audio.Full().Apply(frames)
	meter := audio.NewMeter(audio.Rate)
	meter.Add(frames)
	require.LessOrEqual(t, meter.Peak(), -1.0, "%s, %v", id, level)
	return lead, bass, dums
}

// first80 is the energy of 80 ms.
func first80(sound []float64, from int) (sum float64) {
	for _, x := range sound[from : from+int(audio.Rate)*8/100] {
		sum += x * x
	}
	return sum
}
