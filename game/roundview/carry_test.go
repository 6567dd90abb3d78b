package roundview

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

func carrying(t testing.TB, phase view.Phase) *Carry {
	c := &Carry{Dums: *dums(t, phase)}
	c.Kind = view.ScreenCarry
	c.Core, c.Round, c.Eights = core(t), 3, 8
	c.Level, c.Levels = view.LevelBare, []string{view.LevelBare, view.LevelFilled}
	if phase == view.Reviewing {
		c.Review = played()
		c.Result = result(t, c.Review)
		c.Eight, c.InEight = slices.Repeat(c.Base, 2), inEight
		c.Alone = c.Review.Only([]int{16, 48}, 16)
		c.Silences = []SilenceResult{
			{Eight: 2, Tapped: 4, Asked: 4, Back: Landing{true, 62 * ms}, Slower: new(0.0144)},
			{Eight: 4, Tapped: 3, Asked: 4, Back: Landing{}, Slower: new(-0.0002)},
		}
		c.With, c.Without = scoring.Estimated(18, 12, 30, 8, 6), scoring.Estimated(27, 18, 40, 7, 6)
		c.Between, c.Drummed = stat.Group{N: 8, Mean: 4, Spread: 18}, c.Result
		c.Own = OwnTime{Clock: scoring.Unknown(8, 40), Hand: scoring.Unknown(8, 40), Why: UntoldFew}
	}
	return c
}

func carryScreens(t testing.TB) map[string]view.Screen {
	w := words(t)
	all := map[string]view.Screen{
		"carry-ready":   carrying(t, view.Ready).Screen(w),
		"carry-playing": carrying(t, view.Playing).Screen(w),
		"carry-review":  carrying(t, view.Reviewing).Screen(w),
		"carry-void":    carrying(t, view.Voided).Screen(w),
	}
	told := carrying(t, view.Reviewing)
	told.Own = OwnTime{Clock: scoring.Estimated(24.6, 17.2, 30.1, 44, 40), Hand: scoring.Estimated(11.4, 4.5, 16.2, 44, 40),
		Slower: scoring.Estimated(-0.012, -0.02, -0.004, 11, 6)}
	all["carry-review-told"] = told.Screen(w)
	nothing := carrying(t, view.Reviewing)
	nothing.Review = &picture.Review{Steps: 64, StepTime: 400 * ms, On: 25 * ms}
	nothing.Result = &Result{Asked: 16, LeftOut: 16, Counts: nothing.Review.Tally(nothing.Base, nothing.Counts)}
	nothing.Alone = nothing.Review.Only([]int{16}, 16)
	nothing.Silences, nothing.Drummed = []SilenceResult{{Eight: 2, Asked: 4}}, nothing.Result
	nothing.With, nothing.Without = scoring.Unknown(0, 6), scoring.Unknown(1, 6)
	all["carry-review-nothing"] = nothing.Screen(w)
	return all
}

// Each silence has a line.
func TestTableOfSilences(t *testing.T) {
	s := carrying(t, view.Reviewing).Screen(words(t))
	require.Equal(t, [][]string{
		{"2", "4 of 4", "62 ms behind", "1.4 % slower"},
		{"4", "3 of 4", "left out", "as the drums"},
	}, s.Find("silences").Rows)
	nothing := carryScreens(t)["carry-review-nothing"]
	require.Equal(t, [][]string{{"2", "0 of 4", "left out", "–"}}, nothing.Find("silences").Rows)
}

// One calm order: the sentence, the picture, and all figures in one place.
func TestOrderOfSilences(t *testing.T) {
	var order []string
	for _, it := range carrying(t, view.Reviewing).Screen(words(t)).Items {
		if slices.Contains([]string{"finding", "line", "figures", "silences", "own", "again", "details"}, it.ID) {
			order = append(order, it.ID)
		}
	}
	require.Equal(t, []string{"finding", "line", "figures", "silences", "own", "again", "details"}, order)
}

// The line shows the silences alone, one below the other.
func TestOnlySilences(t *testing.T) {
	r := &picture.Review{Steps: 64, StepTime: 300 * ms, On: 25 * ms,
		Landed:  []picture.Landed{{Step: 12, Offset: 1}, {Step: 16, Offset: 2}, {Step: 20, Offset: 3}, {Step: 31, Offset: 4}, {Step: 32, Offset: 5}, {Step: 52, Offset: 6}},
		LeftOut: []int{8, 24, 48, 40}, Added: []float64{15.9, 17.5, 50.25, 47.9}}
	require.Equal(t, &picture.Review{Steps: 32, StepTime: 300 * ms, On: 25 * ms,
		Landed:  []picture.Landed{{Step: 0, Offset: 2}, {Step: 4, Offset: 3}, {Step: 15, Offset: 4}, {Step: 20, Offset: 6}},
		LeftOut: []int{8, 16}, Added: []float64{1.5, 18.25}}, r.Only([]int{16, 48}, 16))
	require.Equal(t, &picture.Review{StepTime: 300 * ms, On: 25 * ms}, r.Only(nil, 16))
}

func TestFindingOfSilences(t *testing.T) {
	w := words(t)
	there := func(offset time.Duration) SilenceResult {
		return SilenceResult{Asked: 4, Tapped: 4, Back: Landing{true, offset}}
	}
	steadily := Result{Asked: 16, On: 14, Landed: 16, Measured: true}
	unsure := scoring.Estimated(.02, -.01, .05, 7, 6)
	slower, faster := scoring.Estimated(.012, .004, .02, 7, 6), scoring.Estimated(-.02, -.03, -.01, 7, 6)
	for _, c := range []struct {
		result   Result
		silences []SilenceResult
		without  scoring.Estimate
		slower   scoring.Estimate
		want     string
	}{
		{Result{Asked: 16, LeftOut: 16}, []SilenceResult{{Asked: 4}}, unknown, unknown, "No taps came. Tap each dum: space, any letter, or the drumhead."},
		{steadily, []SilenceResult{{Asked: 4}, {Asked: 4}}, unknown, unknown,
			"No taps came in the silence. Go on tapping there: nobody keeps the dums then but you."},
		{steadily, []SilenceResult{{Asked: 4, Tapped: 3}, {Asked: 4, Tapped: 1}}, unknown, unknown,
			"In the silence 4 of 8 dums are left out. Count on, and tap each of them."},
		{steadily, []SilenceResult{{Asked: 4, Tapped: 3}}, unknown, unknown,
			"You were not there yet, or no longer, when the drums came back. Count on through the silence to their 1."},
		// One or two silences tell what happened, and no habit.
		{steadily, []SilenceResult{there(62 * ms)}, unknown, slower,
			"When the drums came back you were 62 ms behind. One silence is too few to tell a habit."},
		{steadily, []SilenceResult{there(-62 * ms), {Asked: 4, Tapped: 4}}, unknown, unknown,
			"When the drums came back you were 62 ms ahead, then not there. That is too few to tell a habit."},
		{steadily, []SilenceResult{there(47 * ms)}, unknown, unknown, "You are steady: 14 of 16 on the dum."},
		// Three alike do, with her tempo where that is known to be off.
		{steadily, []SilenceResult{there(62 * ms), there(50 * ms), there(57 * ms)}, unknown, slower,
			"When the drums come back you are about 55 ms behind: by yourself you go about 1.2 % slower."},
		{steadily, []SilenceResult{there(-81 * ms), there(-77 * ms), there(-85 * ms)}, unknown, faster,
			"When the drums come back you are about 80 ms ahead: by yourself you go about 2.0 % faster."},
		{steadily, []SilenceResult{there(62 * ms), there(50 * ms), there(57 * ms)}, unknown, unsure,
			"When the drums come back you are about 55 ms behind."},
		{steadily, []SilenceResult{there(-62 * ms), there(-50 * ms), there(-57 * ms)}, unknown, slower,
			"When the drums come back you are about 55 ms ahead."},
		// Three that are not alike do not.
		{steadily, []SilenceResult{there(90 * ms), there(-50 * ms), there(4 * ms)}, unknown, unknown,
			"When the drums came back you were 90 ms behind, then 50 ms ahead, then 4 ms behind. That is too few to tell a habit."},
		{steadily, []SilenceResult{there(90 * ms), there(-50 * ms), there(4 * ms), there(0)}, unknown, unknown,
			"When the drums come back you are now up to 50 ms ahead, now up to 90 ms behind."},
		{steadily, []SilenceResult{there(90 * ms), there(5 * ms), there(0), there(2 * ms)}, unknown, unknown,
			"When the drums came back you were once up to 90 ms behind."},
		{steadily, []SilenceResult{there(-90 * ms), there(-5 * ms), there(0), there(-2 * ms)}, unknown, unknown,
			"When the drums came back you were once up to 90 ms ahead."},
		{steadily, []SilenceResult{there(20 * ms)}, scoring.Estimated(45, 31, 80, 9, 6), unknown,
			"In the silence your taps are spread by about 45 ms. Slower makes it easier to place them."},
		{steadily, []SilenceResult{there(20 * ms)}, scoring.Estimated(45, 29, 80, 9, 6), unknown,
			"You keep the dums through the silence, and are there when the drums come back."},
		{Result{Asked: 16, Landed: 12, On: 12, Added: 4, Measured: true}, []SilenceResult{there(10 * ms)}, unknown, unknown,
			"4 taps came where no dum is. Wait for the low strokes."},
		{Result{Asked: 16, On: 5, Landed: 16, Lean: scoring.Estimated(30, 12, 48, 16, 6)}, []SilenceResult{there(90 * ms)}, unknown, unknown,
			"All your taps come about 30 ms behind: probably your loudspeaker or headphones, not you. Set-up measures it once and takes it off. Apart from that: " +
				"When the drums came back you were 60 ms behind. One silence is too few to tell a habit."},
		{steadily, []SilenceResult{there(39 * ms)}, unknown, unknown, "You keep the dums through the silence, and are there when the drums come back."},
	} {
		s := Carry{Dums: Dums{Result: &c.result}, Silences: c.silences, Drummed: &c.result, Without: c.without,
			Own: OwnTime{Slower: c.slower}, Between: stat.Group{N: 12, Mean: 2, Spread: 20}}
		require.Equal(t, c.want, s.Finding(w))
	}
}

// unknown is a figure that is not known.
var unknown = scoring.Unknown(0, 6)

// Clock and hand are told with how sure they are, or it is told why not; never both.
func TestClockAndHandInWords(t *testing.T) {
	w := words(t)
	for why, begins := range map[Untold]string{
		UntoldShort:    "Clock or hand? An eight of wahda has too few dums",
		UntoldFew:      "Clock or hand? Which of them makes your taps uneven can be told from 40 gaps between dums in silence. There are 8 so far;",
		UntoldUnclear:  "Clock or hand? They cannot be told apart yet",
		UntoldDrifts:   "Clock or hand? They cannot be told apart, since your tempo wandered",
		UntoldCorrects: "Clock or hand? They cannot be told apart, since after a long gap you hurried",
	} {
		text := OwnTime{Clock: scoring.Unknown(8, 40), Hand: scoring.Unknown(8, 40), Why: why}.say(w, "wahda")
		require.True(t, strings.HasPrefix(text, begins), text)
		require.NotContains(t, text, " ms")
	}
	all := carryScreens(t)
	told := all["carry-review-told"]
	require.Equal(t, "Clock and hand: from dum to dum the clock in you varies by about 25 ms (17 to 30), your hand by about 11 ms (5 to 16). "+
		"That rests on 44 gaps between dums.", told.Find("own").Text)
	require.Equal(t, "1.2 % faster", told.Find("figure-own-tempo").Value)
	few := all["carry-review"]
	require.Nil(t, few.Find("figure-own-tempo"), "of two silences no tempo is told")
}
