package roundview

import (
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/proof"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

func dums(t testing.TB, phase view.Phase) *Dums {
	return &Dums{
		Phase:  phase,
		Rhythm: view.RhythmName{ID: "maqsum", Name: "maqsum", Script: "مقسوم", Lang: "ar", Dir: "rtl"},
		Base:   pattern(t, "DT-TD-T-"), Counts: inFour,
		BPM: 96, Slow: 60, Fast: 140, Eights: 4,
	}
}

func result(t testing.TB, r *picture.Review) *Result {
	setUp := 12 * ms
	out := &Result{Asked: 16, On: 7, Landed: len(r.Landed), LeftOut: len(r.LeftOut), Added: len(r.Added),
		Bias: 15 * ms, Spread: 29 * ms, Lean: leanIn(r), SetUp: &setUp, Measured: true, Counts: r.Tally(pattern(t, "DT-TD-T-"), inFour)}
	for _, l := range r.Landed[:6] {
		state := TapOn
		if l.Offset > r.On {
			state = TapBehind
		}
		if l.Offset < -r.On {
			state = TapAhead
		}
		out.Taps = append(out.Taps, TapResult{1 + l.Step/16, picture.CountName(inEight, l.Step%16), state, l.Offset})
	}
	out.Taps = append(out.Taps, TapResult{Eight: 4, Count: "7", State: TapLeftOut},
		TapResult{Eight: 4, Count: "8", State: TapAdded})
	return out
}

// leanIn is the mean of a review's offsets.
func leanIn(r *picture.Review) scoring.Estimate {
	var p stat.Played
	for i, l := range r.Landed {
		p.Pairs = append(p.Pairs, scoring.Pair{Stroke: i, Tap: i, Offset: l.Offset})
	}
	return p.Bias()
}

func screens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name string, phase view.Phase, change func(*Dums)) {
		d := dums(t, phase)
		change(d)
		all["dums-"+name] = d.Screen(w)
	}
	add("ready", view.Ready, func(d *Dums) { d.Notes = []view.Note{view.NoteQuiet} })
	add("ready-odd", view.Ready, func(d *Dums) {
		d.Rhythm, d.Eights, d.Hidden = view.RhythmName{ID: "x", Name: "x"}, 3, true
		d.Notes = []view.Note{view.NoteNoSound, view.NoteNotKept}
	})
	add("playing", view.Playing, func(*Dums) {})
	add("review", view.Reviewing, func(d *Dums) {
		d.Review = played()
		d.Result = result(t, d.Review)
		d.Notes = []view.Note{view.NoteCoarse}
	})
	add("review-nothing", view.Reviewing, func(d *Dums) {
		d.BPM = d.Slow
		d.Review = &picture.Review{Steps: 64, StepTime: 400 * ms, On: 25 * ms}
		d.Result = &Result{Asked: 16, LeftOut: 16, Counts: d.Review.Tally(d.Base, d.Counts)}
		d.Notes = []view.Note{view.NoteNoSetUp}
	})
	add("review-unmeasured", view.Reviewing, func(d *Dums) {
		d.Review = played()
		for i := range d.Review.Landed {
			d.Review.Landed[i].Offset += 30 * ms
		}
		d.Result = result(t, d.Review)
		d.Result.SetUp, d.Result.Measured = nil, false
		d.Notes = []view.Note{view.NoteNoSetUp}
	})
	add("void-cut", view.Voided, func(*Dums) {})
	add("void-hidden", view.Voided, func(d *Dums) { d.Why = view.WhyHidden })
	add("void-paused", view.Voided, func(d *Dums) { d.Why = view.WhyPaused })

	add("ready-rhythms", view.Ready, func(d *Dums) {
		d.Core, d.More = append(core(t), AnyOption(w)), more(t)
		d.Level, d.Levels = view.LevelBare, []string{view.LevelBare, view.LevelFilled}
	})
	add("ready-riff", view.Ready, func(d *Dums) {
		d.Level, d.Levels, d.Hide, d.Hides, d.Notes = view.LevelSolo, allLevels, view.MostHide, new(0.5), []view.Note{view.NoteRiffs}
	})
	add("review-riff", view.Reviewing, func(d *Dums) {
		d.Level, d.Review, d.Replay = view.LevelRiffing, played(), Replay{Hearing: true, Drums: DrumsBass, Slowly: true}
		d.Review.Open, d.Review.LeftOut = []picture.OpenSteps{{From: 28, To: 32, Roll: false}, {From: 58, To: 64, Roll: true}}, nil
		d.Review.Landed = slices.DeleteFunc(d.Review.Landed, func(l picture.Landed) bool { return l.Step == 28 || l.Step == 60 })
		d.Result = result(t, d.Review)
		d.Result.Open = Opened(d.Review, cycle(t, "maqsum").CountInEight, 16)
	})
	add("any-ready", view.Ready, func(d *Dums) {
		d.Any, d.From, d.BPM = true, view.FromFive, 0
		d.Core, d.More = append(core(t), AnyOption(w)), more(t)
	})
	add("any-ready-asked", view.Ready, func(d *Dums) {
		d.Any, d.From, d.FromNames = true, "malfuf.saidi", []string{"malfuf", "sa'idi"}
	})
	add("any-playing", view.Playing, func(d *Dums) { d.Any = true })
	add("any-review", view.Reviewing, func(d *Dums) {
		d.Any, d.Review = true, played()
		d.Result = result(t, d.Review)
	})
	maps.Copy(all, whichScreens(t))
	maps.Copy(all, changeScreens(t))
	maps.Copy(all, stopScreens(t))
	maps.Copy(all, carryScreens(t))
	return all
}

func TestScreens(t *testing.T) {
	all := screens(t)
	screenproof.Screens(t, all)
	proof.GoldensAreUsed(t, screenproof.Files(all)...)
}

// While a round is played nothing is announced, and there is nothing but a line that says
// what to do, the drumhead and the ways out.
func TestPlayingIsQuiet(t *testing.T) {
	s := screens(t)["dums-playing"]
	var ids []string
	s.Each(func(it *view.Item) {
		ids = append(ids, it.ID)
		require.Empty(t, it.Live)
	})
	require.Equal(t, []string{"heading", "tap", "head", "bar", "home", "alone", "hands", "stop"}, ids)
	require.Equal(t, "tap", s.FocusID())
}

// What to do stands over the drum while a round is played, and never names a rhythm that
// must not be told.
func TestRoundSaysWhatToDo(t *testing.T) {
	all := screens(t)
	for name, want := range map[string]string{
		"dums-playing":     "Tap each dum · maqsum",
		"dums-any-playing": "Tap each dum",
		"stop-playing":     "Tap each dum, and stop with the drums · maqsum",
		"carry-playing":    "Tap each dum, on through the silence · maqsum",
		"change-playing":   "Press when the rhythm changes",
	} {
		s := all[name]
		require.Equal(t, want, s.Find("heading").Name, name)
	}
}
