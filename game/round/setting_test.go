package round_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

func TestNewRefuses(t *testing.T) {
	good := round.Setting{Kind: round.Dums, Rhythm: supplied(t, "maqsum"), BPM: 96, Eights: 4, Seed: 7}
	require.NoError(t, good.Check())
	for _, c := range []struct {
		name   string
		change func(*round.Setting)
		want   string
	}{
		{"no kind", func(q *round.Setting) { q.Kind = "" }, `round: unknown kind ""`},
		{"another kind", func(q *round.Setting) { q.Kind = "clapping" }, `round: unknown kind "clapping"`},
		{"no rhythm", func(q *round.Setting) { q.Rhythm = nil }, "round: no rhythm"},
		{"no tempo", func(q *round.Setting) { q.BPM = 0 }, "round: 0 beats a minute; allowed is 40 to 220"},
		{"too slow", func(q *round.Setting) { q.BPM = round.MinBPM - 1 }, "round: 39 beats a minute; allowed is 40 to 220"},
		{"too fast", func(q *round.Setting) { q.BPM = round.MaxBPM + 1 }, "round: 221 beats a minute; allowed is 40 to 220"},
		{"no length", func(q *round.Setting) { q.Eights = 0 }, "round: 0 eights; allowed is 1 to 32"},
		{"too long", func(q *round.Setting) { q.Eights = round.MaxEights + 1 }, "round: 33 eights; allowed is 1 to 32"},
		{"hide too far", func(q *round.Setting) { q.Hide = 101 }, "round: hide 101; allowed is 0 to 100"},
		{"hide below nothing", func(q *round.Setting) { q.Hide = -1 }, "round: hide -1; allowed is 0 to 100"},
		{"no such riff", func(q *round.Setting) { q.Level = riff.Solo + 1 }, "round: riff level Level(5) is not available"},
	} {
		t.Run(c.name, func(t *testing.T) {
			q := good
			c.change(&q)
			require.EqualError(t, q.Check(), c.want)
			r, err := round.New(q)
			require.EqualError(t, err, c.want)
			require.Nil(t, r)
		})
	}
}

func TestNewTakesTheEnds(t *testing.T) {
	for _, bpm := range []int{round.MinBPM, round.MaxBPM} {
		for _, eights := range []int{round.MinEights, round.MaxEights} {
			ready(t, supplied(t, "maqsum"), bpm, eights)
		}
	}
}

// The dums asked for, by hand: maqsum has them on 1 and 3, sa'idi on 1, on the
// & of 2 and on 3. At 96 a beat lasts 625 ms, so that all of these are whole
// frames.
func TestStrokes(t *testing.T) {
	r := ready(t, supplied(t, "maqsum"), 96, 1)
	require.Equal(t, []int{0, 4, 8, 12}, r.Steps())
	require.Equal(t, []time.Duration{2500 * ms, 3750 * ms, 5000 * ms, 6250 * ms}, r.Strokes())
	require.Equal(t, 2500*ms, r.Start())
	require.Equal(t, 7500*ms, r.End())

	r = ready(t, supplied(t, "saidi"), 96, 1)
	require.Equal(t, []int{0, 3, 4, 8, 11, 12}, r.Steps())
	require.Equal(t, []time.Duration{
		2500 * ms, 3437500 * time.Microsecond, 3750 * ms, 5000 * ms, 5937500 * time.Microsecond, 6250 * ms,
	}, r.Strokes())
}

// A tap is compared with the stroke that sounded, so the times of strokes are
// those of the frames in which they sound, at every tempo there is.
func TestStrokesLieOnFrames(t *testing.T) {
	c := supplied(t, "saidi")
	for bpm := round.MinBPM; bpm <= round.MaxBPM; bpm++ {
		r := ready(t, c, bpm, 2)
		var sounded []time.Duration
		for _, h := range r.Hits(audio.Rate, 0) {
			if h.Voice == audio.BassDum {
				sounded = append(sounded, audio.Rate.Duration(h.Frame))
			}
		}
		require.Equal(t, sounded, r.Strokes(), "at %d", bpm)
	}
}
