package roundview

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

func stopping(t testing.TB, phase view.Phase) *Stop {
	s := &Stop{Dums: *dums(t, phase)}
	s.Kind = view.ScreenStop
	s.Core, s.Round, s.Eights = core(t), 3, 6
	s.Level, s.Levels = view.LevelBare, []string{view.LevelBare, view.LevelFilled}
	if phase == view.Reviewing {
		s.Review = played()
		s.Result = result(t, s.Review)
		s.Between = stat.Group{N: 15, Mean: 15, Spread: 29}
		s.Caught = []StopResult{
			{Eight: 2, Count: "5", Silence: 4, Last: Landing{true, 12 * ms}, Back: Landing{true, -8 * ms}},
			{Eight: 4, Count: "7", Silence: 2, Last: Landing{true, -31 * ms}, InSilence: 1, Back: Landing{}},
		}
	}
	return s
}

func stopScreens(t testing.TB) map[string]view.Screen {
	w := words(t)
	all := map[string]view.Screen{
		"stop-ready":   stopping(t, view.Ready).Screen(w),
		"stop-playing": stopping(t, view.Playing).Screen(w),
		"stop-review":  stopping(t, view.Reviewing).Screen(w),
		"stop-void":    stopping(t, view.Voided).Screen(w),
	}
	nothing := stopping(t, view.Reviewing)
	nothing.Review = &picture.Review{Steps: 64, StepTime: 400 * ms, On: 25 * ms}
	nothing.Result = &Result{Asked: 16, LeftOut: 16, Counts: nothing.Review.Tally(nothing.Base, nothing.Counts)}
	nothing.Caught = []StopResult{{Eight: 2, Count: "5", Silence: 4}}
	all["stop-review-nothing"] = nothing.Screen(w)
	return all
}

// The way out has another name than the drummer's stop.
func TestEndIsNotStop(t *testing.T) {
	s := stopping(t, view.Playing).Screen(words(t))
	require.Equal(t, "End", s.Find("stop").Name)
	require.Equal(t, []string{view.ActStop, view.ActStop, "tap"}, []string{s.Find("stop").Action, s.Escape, s.FocusID()})
	s.Each(func(it *view.Item) { require.NotEqual(t, "Stop", it.Name) })
	elsewhere := dums(t, view.Playing).playing(words(t))
	require.Equal(t, "Stop", elsewhere.Find("stop").Name, "elsewhere it has its own")
}

// Each stop has a line.
func TestTableOfStops(t *testing.T) {
	s := stopping(t, view.Reviewing).Screen(words(t))
	require.Equal(t, [][]string{
		{"eight 2, on 5", "12 ms behind", "4 counts, still", "8 ms ahead"},
		{"eight 4, on 7", "31 ms ahead", "2 counts, 1 tap", "left out"},
	}, s.Find("stops").Rows)
}

func TestFindingOfStops(t *testing.T) {
	w := words(t)
	good := StopResult{Silence: 4, Last: Landing{true, 20 * ms}, Back: Landing{true, -20 * ms}}
	with := func(change func(s *StopResult)) StopResult {
		s := good
		change(&s)
		return s
	}
	last := func(offset time.Duration) StopResult {
		return with(func(s *StopResult) { s.Last.Offset = offset })
	}
	back := func(offset time.Duration) StopResult {
		return with(func(s *StopResult) { s.Back.Offset = offset })
	}
	steadily := Result{Asked: 16, On: 14, Landed: 16, Measured: true}
	for _, c := range []struct {
		result Result
		caught []StopResult
		want   string
	}{
		{Result{Asked: 16, LeftOut: 16}, []StopResult{{}}, "No taps came. Tap each dum: space, any letter, or the drumhead."},
		{steadily, []StopResult{good, with(func(s *StopResult) { s.InSilence, s.Last.Tapped = 1, false })},
			"Your hands went on in the silence: 1 tap. After the stop, keep still and count."},
		{steadily, []StopResult{with(func(s *StopResult) { s.InSilence = 2 }), with(func(s *StopResult) { s.InSilence = 1 })},
			"Your hands went on in the silence: 3 taps. After the stop, keep still and count."},
		{steadily, []StopResult{with(func(s *StopResult) { s.InSilence, s.Last.Tapped, s.Late = 1, false, true })},
			"Stops left out: 1 of 1. Let your last tap land on the last stroke of both drums."},
		{steadily, []StopResult{good, with(func(s *StopResult) { s.Last.Tapped, s.Back.Tapped = false, false })},
			"Stops left out: 1 of 2. Let your last tap land on the last stroke of both drums."},
		{steadily, []StopResult{with(func(s *StopResult) { s.Back.Tapped = false })},
			"The 1 after the silence is left out 1 of 1 times. Count on through the silence."},
		// One stop or two tell what happened, and no habit; and only what is not how she taps.
		{steadily, []StopResult{last(72 * ms)}, "At the stop your last tap came 72 ms behind. One stop is too few to tell a habit."},
		{steadily, []StopResult{last(72 * ms), good}, "At the 2 stops your last taps came 72 ms behind, then 20 ms behind. That is too few to tell a habit."},
		{steadily, []StopResult{last(45 * ms)}, "You are steady: 14 of 16 on the dum."},
		{steadily, []StopResult{back(-84 * ms)}, "After the silence you came back in 84 ms ahead. One stop is too few to tell a habit."},
		{steadily, []StopResult{with(func(s *StopResult) { s.Last.Offset, s.Back.Offset = 70*ms, 91*ms })},
			"After the silence you came back in 91 ms behind. One stop is too few to tell a habit."},
		// Three alike do.
		{steadily, []StopResult{last(62 * ms), last(55 * ms), last(66 * ms)}, "Your last tap comes about 60 ms behind the stop."},
		{steadily, []StopResult{last(-52 * ms), last(-55 * ms), last(-49 * ms)}, "Your last tap comes about 50 ms ahead of the stop."},
		{steadily, []StopResult{back(71 * ms), back(75 * ms), back(73 * ms)}, "You come back in about 75 ms behind the 1."},
		{steadily, []StopResult{back(-44 * ms), back(-45 * ms), back(-43 * ms)}, "You come back in about 45 ms ahead of the 1."},
		{steadily, []StopResult{last(90 * ms), last(-55 * ms), last(0)},
			"At the 3 stops your last taps came 90 ms behind, then 55 ms ahead, then 0 ms. That is too few to tell a habit."},
		{Result{Asked: 16, Landed: 12, On: 12, Added: 4, Measured: true}, []StopResult{good}, "4 taps came where no dum is. Wait for the low strokes."},
		{Result{Asked: 16, On: 4, Landed: 16, Lean: scoring.Estimated(35, 20, 50, 14, 6)}, []StopResult{with(func(s *StopResult) { s.InSilence = 2 })},
			"All your taps come about 35 ms behind: probably your loudspeaker or headphones, not you. Set-up measures it once and takes it off. Apart from that: " +
				"Your hands went on in the silence: 2 taps. After the stop, keep still and count."},
		{steadily, []StopResult{good, last(39 * ms)}, "You land on the stop, keep still, and come back in on the 1."},
	} {
		s := Stop{Dums: Dums{Result: &c.result}, Caught: c.caught, Between: stat.Group{N: 12, Mean: 1, Spread: 20}}
		require.Equal(t, c.want, s.Finding(w))
	}
}
