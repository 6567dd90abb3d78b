package view

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

func carrying(t testing.TB, phase Phase) *Carry {
	c := &Carry{Dums: *dums(t, phase)}
	c.Core, c.Round, c.Eights = core(t), 3, 8
	c.Level, c.Levels = LevelBare, []string{LevelBare, LevelFilled}
	if phase == Reviewing {
		c.Review = played()
		c.Result = result(t, c.Review)
		c.Eight, c.InEight = slices.Repeat(c.Base, 2), inEight
		c.Alone = c.Review.Only([]int{16, 48}, 16)
		c.Silences = []SilenceResult{
			{Eight: 2, Tapped: 4, Asked: 4, Back: Landing{true, 62 * ms}, Slower: new(0.0144)},
			{Eight: 4, Tapped: 3, Asked: 4, Back: Landing{}, Slower: new(-0.0002)},
		}
		c.With, c.Without = new(18*ms), new(27*ms)
		c.Own = OwnTime{Clock: scoring.Unknown(8, 40), Hand: scoring.Unknown(8, 40), Why: UntoldFew}
	}
	return c
}

func carryScreens(t testing.TB) map[string]Screen {
	w := words(t)
	all := map[string]Screen{
		"carry-ready":   carrying(t, Ready).Screen(w),
		"carry-playing": carrying(t, Playing).Screen(w),
		"carry-review":  carrying(t, Reviewing).Screen(w),
		"carry-void":    carrying(t, Voided).Screen(w),
	}
	told := carrying(t, Reviewing)
	told.Own = OwnTime{Clock: scoring.Estimated(24.6, 17.2, 30.1, 44, 40), Hand: scoring.Estimated(11.4, 4.5, 16.2, 44, 40),
		Slower: scoring.Estimated(-0.012, -0.02, -0.004, 11, 6)}
	all["carry-review-told"] = told.Screen(w)
	nothing := carrying(t, Reviewing)
	nothing.Review = &Review{Steps: 64, StepTime: 400 * ms, On: 25 * ms}
	nothing.Result = &Result{Asked: 16, LeftOut: 16, Counts: nothing.Review.Tally(nothing.Base, nothing.Counts)}
	nothing.Alone = nothing.Review.Only([]int{16}, 16)
	nothing.Silences, nothing.With, nothing.Without = []SilenceResult{{Eight: 2, Asked: 4}}, nil, nil
	all["carry-review-nothing"] = nothing.Screen(w)
	return all
}

// Each silence has a line.
func TestTableOfSilences(t *testing.T) {
	s := carrying(t, Reviewing).Screen(words(t))
	require.Equal(t, [][]string{
		{"2", "4 of 4", "62 ms behind", "1.4 % slower"},
		{"4", "3 of 4", "left out", "as the drums"},
	}, s.Find("silences").Rows)
	nothing := carryScreens(t)["carry-review-nothing"]
	require.Equal(t, [][]string{{"2", "0 of 4", "left out", "–"}}, nothing.Find("silences").Rows)
}

// The line shows the silences alone, one below the other.
func TestOnlySilences(t *testing.T) {
	r := &Review{Steps: 64, StepTime: 300 * ms, On: 25 * ms,
		Landed:  []Landed{{12, 1}, {16, 2}, {20, 3}, {31, 4}, {32, 5}, {52, 6}},
		LeftOut: []int{8, 24, 48, 40}, Added: []float64{15.9, 17.5, 50.25, 47.9}}
	require.Equal(t, &Review{Steps: 32, StepTime: 300 * ms, On: 25 * ms,
		Landed:  []Landed{{0, 2}, {4, 3}, {15, 4}, {20, 6}},
		LeftOut: []int{8, 16}, Added: []float64{1.5, 18.25}}, r.Only([]int{16, 48}, 16))
	require.Equal(t, &Review{StepTime: 300 * ms, On: 25 * ms}, r.Only(nil, 16))
}

func TestFindingOfSilences(t *testing.T) {
	w := words(t)
	there := func(offset time.Duration, slower float64) SilenceResult {
		return SilenceResult{Asked: 4, Tapped: 4, Back: Landing{true, offset}, Slower: &slower}
	}
	steadily := Result{Asked: 16, On: 14, Landed: 16}
	for _, c := range []struct {
		result   Result
		silences []SilenceResult
		without  time.Duration
		want     string
	}{
		{Result{Asked: 16, LeftOut: 16}, []SilenceResult{{Asked: 4}}, 0, "No taps came. Tap each dum: space, any letter, or the drumhead."},
		{steadily, []SilenceResult{{Asked: 4}, {Asked: 4}}, 0,
			"No taps came in the silence. Go on tapping there: nobody keeps the dums then but you."},
		{steadily, []SilenceResult{{Asked: 4, Tapped: 3}, {Asked: 4, Tapped: 1}}, 0,
			"In the silence 4 of 8 dums are left out. Count on, and tap each of them."},
		{steadily, []SilenceResult{{Asked: 4, Tapped: 3}}, 0,
			"You were not there yet, or no longer, when the drums came back. Count on through the silence to their 1."},
		{steadily, []SilenceResult{there(62*ms, 0.0144), there(44*ms, 0.01)}, 0,
			"When the drums come back you are about 55 ms behind: by yourself you go about 1.2 % slower."},
		{steadily, []SilenceResult{there(-81*ms, -0.02)}, 0,
			"When the drums come back you are about 80 ms ahead: by yourself you go about 2.0 % faster."},
		{steadily, []SilenceResult{there(40*ms, 0.0049)}, 0, "When the drums come back you are about 40 ms behind."},
		{steadily, []SilenceResult{there(-45*ms, 0.01)}, 0, "When the drums come back you are about 45 ms ahead."},
		{steadily, []SilenceResult{there(70*ms, 0.01), there(-50*ms, -0.01)}, 0,
			"When the drums come back you are now up to 50 ms ahead, now up to 70 ms behind."},
		{steadily, []SilenceResult{there(60*ms, 0.01), there(5*ms, 0)}, 0, "Once you were about 60 ms behind when the drums came back."},
		{steadily, []SilenceResult{there(-60*ms, 0.01), there(-5*ms, 0)}, 0, "Once you were about 60 ms ahead when the drums came back."},
		{steadily, []SilenceResult{there(20*ms, 0.01), {Asked: 4, Tapped: 4}}, 45 * ms,
			"You are there when the drums come back. In the silence your taps are spread by about 45 ms."},
		{Result{Asked: 16, Landed: 12, On: 12, Added: 4}, []SilenceResult{there(10*ms, 0)}, 39 * ms,
			"4 taps came where no dum is. Wait for the low strokes."},
		{steadily, []SilenceResult{there(39*ms, 0.01)}, 39 * ms, "You keep the dums through the silence, and are there when the drums come back."},
	} {
		s := Carry{Dums: Dums{Result: &c.result}, Silences: c.silences}
		if c.without > 0 {
			s.Without = &c.without
		}
		require.Equal(t, c.want, s.Finding(w))
	}
}

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

func TestParseAddressOfCarry(t *testing.T) {
	carry := DefaultAddress(ScreenCarry)
	testAddresses(t, []addressCase{
		{"screen=carry", carry, ""},
		{"screen=carry&rhythm=karachi&bpm=120&eights=32&riff=filled&seed=5",
			Address{Screen: "carry", Rhythm: "karachi", BPM: 120, Eights: 32, Riff: "filled", Seed: 5}, ""},
		{"screen=carry&rhythm=any", carry, "rhythm=any: allowed is maqsum, saidi, malfuf, karachi"},
		{"screen=carry&eights=3", Address{Screen: "carry", Rhythm: "maqsum", Eights: 4, Riff: "bare"}, "eights=3: allowed is 4 to 32"},
		{"screen=carry&from=five", carry, "from: carry has only screen, rhythm, bpm, eights, riff, seed"},
	})
	dums := Address{Screen: "dums", Rhythm: "karachi", BPM: 90, Eights: 1, Riff: "filled"}
	require.Equal(t, Address{Screen: "carry", Rhythm: "karachi", BPM: 90, Eights: 4, Riff: "filled"}, dums.To(ScreenCarry))
}
