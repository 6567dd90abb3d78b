package screenproof

import (
	"testing"
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/proof"
	"groundbeat/game/view"
)

// AllLevels are all riff levels.
var AllLevels = []string{view.LevelBare, view.LevelFilled, view.LevelOrnamented, view.LevelRiffing, view.LevelSolo}

// Counts of a cycle of four beats, and of one of eight.
var (
	InFour  = []string{"1", "&", "2", "&", "3", "&", "4", "&"}
	InEight = []string{"1", "&", "2", "&", "3", "&", "4", "&", "5", "&", "6", "&", "7", "&", "8", "&"}
)

// Core are two of the most used rhythms, as one chooses them.
func Core(t testing.TB) []view.Option { return options(t, "baladi", "maqsum") }

// More are two of the others.
func More(t testing.TB) []view.Option { return options(t, "masmudi-kabir", "samai-thaqil") }

func options(t testing.TB, ids ...string) (all []view.Option) {
	for _, id := range ids {
		all = append(all, view.RhythmOption(proof.Cycle(t, id), proof.Words(t)))
	}
	return all
}

// Played is what came of eight cycles of maqsum at 96 beats a minute. The 1 lies about
// 8 ms ahead, the 3 about 40 ms behind; one 3 is left out, two taps are added.
func Played() *picture.Review {
	const ms = time.Millisecond
	r := &picture.Review{Steps: 64, StepTime: 312500 * time.Microsecond, On: 25 * ms}
	ones := []time.Duration{-31, -12, 4, -9, -28, 6, -2, 8}
	threes := []time.Duration{52, 47, 30, 61, 12, 44, 0, 38}
	for i := range ones {
		r.Landed = append(r.Landed, picture.Landed{Step: 8 * i, Offset: ones[i] * ms})
		if i == 6 {
			r.LeftOut = append(r.LeftOut, 8*i+4)
			continue
		}
		r.Landed = append(r.Landed, picture.Landed{Step: 8*i + 4, Offset: threes[i] * ms})
	}
	r.Added = []float64{14.1, 45.8}
	return r
}
