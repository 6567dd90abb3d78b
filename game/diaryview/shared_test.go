package diaryview

import (
	"testing"
	"time"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/roundview"
	"groundbeat/game/say"
	"groundbeat/game/screenproof"
	"groundbeat/game/soundview"
	"groundbeat/game/view"
)

// What these tests share with others, by short names.

const ms = time.Millisecond

func words(t testing.TB) say.Words                { return proof.Words(t) }
func cycle(t testing.TB, id string) *rhythm.Cycle { return proof.Cycle(t, id) }
func everyRhythm(t testing.TB) []*rhythm.Cycle    { return proof.EveryRhythm(t) }
func core(t testing.TB) []view.Option             { return screenproof.Core(t) }
func more(t testing.TB) []view.Option             { return screenproof.More(t) }

// dums is a screen of a round of Dums; in its review all of eight dums lay on them.
func dums(t testing.TB, phase view.Phase) *roundview.Dums {
	d := &roundview.Dums{
		Phase:  phase,
		Rhythm: view.RhythmName{ID: "maqsum", Name: "maqsum", Script: "مقسوم", Lang: "ar", Dir: "rtl"},
		Base:   rhythm.Pattern("DT-TD-T-"), Counts: screenproof.InFour,
		BPM: 96, Slow: 60, Fast: 140, Eights: 4,
	}
	if phase == view.Reviewing {
		d.Review = screenproof.Played()
		d.Result = &roundview.Result{Asked: 16, On: 7, Landed: 15, LeftOut: 1, Added: 2, Bias: 15 * ms, Spread: 29 * ms,
			Measured: true, Counts: d.Review.Tally(d.Base, d.Counts)}
	}
	return d
}

func listen(t testing.TB, id string) *soundview.Listen {
	return &soundview.Listen{
		Rhythm: cycle(t, id), Core: core(t), More: more(t), BPM: 105, Slow: 60, Fast: 140,
		Level: view.LevelBare, Levels: []string{view.LevelBare, view.LevelFilled}, Volume: 60,
	}
}
