package diaryview

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/roundview"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

func withFigures(t testing.TB, f diary.Figures) *Diary {
	d := mira(t)
	d.Figures = f
	return d
}

// A sentence is said only where the intervals allow it.
func TestFindRight(t *testing.T) {
	w := words(t)
	for _, c := range []struct {
		name string
		all  []diary.Accuracy
		want string
	}{
		{"nothing", nil, ""},
		{"too few", []diary.Accuracy{accuracy("maqsum", false, [2]int{5, 11})}, ""},
		{"one", []diary.Accuracy{accuracy("maqsum", false, [2]int{10, 12})}, "You are right about maqsum 55 to 95 % of the time."},
		{"intervals meet: no change", []diary.Accuracy{accuracy("maqsum", false, [2]int{8, 20}, [2]int{15, 20})},
			"You are right about maqsum 42 to 71 % of the time."},
		{"fewer right", []diary.Accuracy{accuracy("maqsum", false, [2]int{19, 20}, [2]int{8, 20})},
			"You are less sure of maqsum than at first: 95 % right then, 40 % now."},
		{"the larger change", []diary.Accuracy{accuracy("saidi", false, [2]int{8, 20}, [2]int{19, 20}), accuracy("maqsum", false, [2]int{2, 20}, [2]int{19, 20})},
			"You have become surer of maqsum: 10 % right at first, 95 % now."},
		{"two that differ", []diary.Accuracy{accuracy("saidi", false, [2]int{8, 20}), accuracy("maqsum", false, [2]int{19, 20})},
			"You are surest of maqsum, 95 % right, and least sure of sa'idi, 40 % right."},
		{"two that may be alike", []diary.Accuracy{accuracy("saidi", false, [2]int{12, 20}), accuracy("maqsum", false, [2]int{15, 20})},
			"You are about as sure of one rhythm as of another, as far as this tells."},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := withFigures(t, diary.Figures{Accuracy: c.all})
			require.Equal(t, c.want, d.findRight(w, false).text)
			require.Empty(t, d.findRight(w, true).text, "dums are another matter")
		})
	}
}

// Where less is right of what was harder, or more of what was easier, nothing is said of a
// change; where more is right of what was harder, it is.
func TestFindRightOfHarder(t *testing.T) {
	w := words(t)
	more, less := [][2]int{{8, 20}, {19, 20}}, [][2]int{{19, 20}, {8, 20}}
	const alike = "Of the dums of maqsum 52 to 80 % are not missed."
	const fewer = "Fewer dums of maqsum are not missed than at first: 95 % then, 40 % now."
	const better = "More dums of maqsum are not missed: 40 % at first, 95 % now."
	for _, c := range []struct {
		of         [][2]int
		full, fast [2]float64
		want       string
	}{
		{less, [2]float64{1, 3.2}, [2]float64{96, 96}, alike},
		{less, [2]float64{1, 1}, [2]float64{96, 110}, alike},
		{less, [2]float64{1, 1.4}, [2]float64{96, 99}, fewer},
		{less, [2]float64{3, 1}, [2]float64{110, 96}, fewer},
		{more, [2]float64{3, 1}, [2]float64{96, 96}, alike},
		{more, [2]float64{1, 1}, [2]float64{110, 96}, alike},
		{more, [2]float64{1, 3}, [2]float64{96, 110}, better},
	} {
		a := accuracy("maqsum", true, c.of...)
		for i := range a.Spans {
			a.Spans[i].Full, a.Spans[i].BPM = c.full[i], c.fast[i]
		}
		require.Equal(t, c.want, withFigures(t, diary.Figures{Accuracy: []diary.Accuracy{a}}).findRight(w, true).text, "%+v", c)
	}
}

func TestFindRightOfTaps(t *testing.T) {
	w := words(t)
	for _, c := range []struct {
		all  []diary.Accuracy
		want string
	}{
		{[]diary.Accuracy{accuracy("maqsum", true, [2]int{10, 12})}, "Of the dums of maqsum 55 to 95 % are not missed."},
		{[]diary.Accuracy{accuracy("maqsum", true, [2]int{19, 20}, [2]int{8, 20})},
			"Fewer dums of maqsum are not missed than at first: 95 % then, 40 % now."},
		{[]diary.Accuracy{accuracy("maqsum", true, [2]int{8, 20}, [2]int{19, 20})}, "More dums of maqsum are not missed: 40 % at first, 95 % now."},
		{[]diary.Accuracy{accuracy("saidi", true, [2]int{8, 20}), accuracy("maqsum", true, [2]int{19, 20})},
			"Most dums are not missed in maqsum, 95 %, and fewest in sa'idi, 40 %."},
		{[]diary.Accuracy{accuracy("saidi", true, [2]int{12, 20}), accuracy("maqsum", true, [2]int{15, 20})},
			"About as many dums of one rhythm as of another are not missed, as far as this tells."},
	} {
		require.Equal(t, c.want, withFigures(t, diary.Figures{Accuracy: c.all}).findRight(w, true).text)
	}
}

func TestFindFingers(t *testing.T) {
	w := words(t)
	spread := func(rhythm string, low, high float64) diary.Fingers {
		f := fingering(rhythm, 9, 90, 1, 5, 20)
		f.Spread = scoring.Estimated((low+high)/2, low, high, 9, 6)
		return f
	}
	for _, c := range []struct {
		name string
		all  []diary.Fingers
		want string
	}{
		{"nothing", nil, ""},
		{"too few", []diary.Fingers{{Rhythm: "maqsum", Bias: scoring.Unknown(2, 6)}}, ""},
		{"behind", []diary.Fingers{fingering("maqsum", 9, 90, 12, 5, 20)}, "You tap maqsum about 12 ms behind (7 to 17 ms)."},
		{"ahead, the farther", []diary.Fingers{fingering("maqsum", 9, 90, 12, 5, 20), fingering("saidi", 9, 90, -30, 9, 20)},
			"You tap sa'idi about 30 ms ahead (21 to 39 ms)."},
		{"all ahead", []diary.Fingers{fingering("maqsum", 9, 90, -12, 5, 20), fingering("saidi", 9, 90, -30, 9, 20)},
			"You tap ahead in every rhythm: by 12 to 30 ms on the whole."},
		{"all behind", []diary.Fingers{fingering("maqsum", 9, 90, 22, 5, 20), fingering("saidi", 9, 90, 9, 8, 20)},
			"You tap behind in every rhythm: by 9 to 22 ms on the whole."},
		{"one perhaps on the dum", []diary.Fingers{fingering("maqsum", 9, 90, 22, 5, 20), fingering("saidi", 9, 90, 9, 10, 20)},
			"You tap maqsum about 22 ms behind (17 to 27 ms)."},
		{"too little to say", []diary.Fingers{fingering("maqsum", 9, 90, 7, 2, 20)}, "Your taps lean neither ahead nor behind, as far as this tells."},
		{"far, and yet perhaps on the dum", []diary.Fingers{fingering("maqsum", 9, 90, 20, 21, 20)}, "Your taps lean neither ahead nor behind, as far as this tells."},
		{"spreads differ", []diary.Fingers{spread("maqsum", 10, 15), spread("saidi", 16, 30), spread("malfuf", 12, 25)},
			"Your taps lie closest together in maqsum, and farthest apart in sa'idi."},
		{"spreads meet", []diary.Fingers{spread("maqsum", 10, 17), spread("saidi", 16, 30)}, "Your taps lean neither ahead nor behind, as far as this tells."},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, withFigures(t, diary.Figures{Output: "kitchen", Fingers: c.all}).findFingers(w).text)
		})
	}
}

// On an output without a set-up a lean is first told as its delay, with the way to
// Set-up; what two rhythms differ by is so whatever the delay is.
func TestFindFingersWithoutSetUp(t *testing.T) {
	w := words(t)
	for _, c := range []struct {
		name string
		all  []diary.Fingers
		want string
		way  bool
	}{
		{"all behind", []diary.Fingers{fingering("maqsum", 9, 90, 92, 5, 20), fingering("saidi", 9, 90, 79, 8, 20)}, roundview.SayUnmeasured(w, say.Millis(79), say.Millis(92)), true},
		{"one, behind", []diary.Fingers{fingering("maqsum", 9, 90, 42, 5, 20)}, roundview.SayUnmeasured(w, say.Millis(42), say.Millis(42)), true},
		{"one of two beyond doubt", []diary.Fingers{fingering("maqsum", 9, 90, 42, 5, 20), fingering("saidi", 9, 90, 30, 40, 20)}, roundview.SayUnmeasured(w, say.Millis(30), say.Millis(42)), true},
		{"all ahead", []diary.Fingers{fingering("maqsum", 9, 90, -12, 5, 20), fingering("saidi", 9, 90, -30, 9, 20)}, roundview.SayUnmeasured(w, say.Millis(-30), say.Millis(-12)), true},
		{"one behind, one ahead", []diary.Fingers{fingering("maqsum", 9, 90, -12, 5, 20), fingering("saidi", 9, 90, 30, 9, 20)}, "You tap sa'idi later than maqsum, by about 42 ms.", false},
		{"neither", []diary.Fingers{fingering("maqsum", 9, 90, 4, 5, 20)}, "Your taps lean neither ahead nor behind, as far as this tells.", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := withFigures(t, diary.Figures{Fingers: c.all})
			require.Equal(t, c.want, d.findFingers(w).text)
			s := d.Screen(w)
			require.Equal(t, c.way, s.Find("to-set-up") != nil)
			require.NotContains(t, c.want, "You tap behind")
			d.Figures.Output = "kitchen"
			s = d.Screen(w)
			require.Nil(t, s.Find("to-set-up"))
		})
	}
}

func TestFindRound(t *testing.T) {
	w := words(t)
	at := func(step int, value, half float64) diary.Count {
		return diary.Count{Step: step, Offset: estimate(value, half, 9)}
	}
	for _, c := range []struct {
		name string
		all  []diary.Fingers
		want string
	}{
		{"nothing", nil, ""},
		{"too few", []diary.Fingers{fingering("maqsum", 9, 90, 0, 5, 20, diary.Count{Offset: scoring.Unknown(1, 6)})}, ""},
		{"behind", []diary.Fingers{fingering("saidi", 9, 90, 5, 5, 20, at(0, -2, 4), at(3, 25, 9))}, "In sa'idi your 2 & comes about 20 ms later than its dums on the whole (9 to 31 ms)."},
		{"on time, where the others are behind", []diary.Fingers{fingering("saidi", 9, 90, 25, 5, 20, at(0, 4, 6), at(3, 30, 9))}, "In sa'idi your 1 comes about 21 ms earlier than its dums on the whole (14 to 28 ms)."},
		{"far, but of many one is", []diary.Fingers{fingering("saidi", 9, 90, 5, 5, 20, at(0, -2, 4), at(3, 15, 9.5)), fingering("baladi", 9, 90, 5, 5, 20, at(0, 2, 9), at(1, 6, 9), at(4, 7, 9))}, "No count comes farther ahead or behind than the others, as far as this tells."},
		{"no farther than the whole", []diary.Fingers{fingering("saidi", 9, 90, 20, 5, 20, at(0, 18, 4), at(3, 25, 9))}, "No count comes farther ahead or behind than the others, as far as this tells."},
		{"perhaps on the dum", []diary.Fingers{fingering("saidi", 9, 90, 0, 5, 20, at(3, -25, 26))}, "No count comes farther ahead or behind than the others, as far as this tells."},
		{"of a rhythm that is not here", []diary.Fingers{fingering("mine", 9, 90, 0, 5, 20, at(3, -25, 6))}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, withFigures(t, diary.Figures{Fingers: c.all}).findRound(w).text)
		})
	}
}

func TestFindMixed(t *testing.T) {
	w := words(t)
	mixed := func(n, of int) diary.Mixed {
		return diary.Mixed{Rhythms: []string{"maqsum", "saidi"}, Said: [][]int{{of - n, n}, {0, 0}},
			Worst: []diary.MixUp{{Played: "maqsum", Said: "saidi", Share: stat.Share(n, of)}}}
	}
	for _, c := range []struct {
		name string
		diary.Mixed
		want string
	}{
		{"nothing", diary.Mixed{}, ""},
		{"too few", mixed(9, 11), ""},
		{"often", mixed(9, 20), "You take maqsum for sa'idi about 45 % of the time (26 to 66 %)."},
		{"once may be a slip", mixed(1, 20), "No mix-up stands out, as far as this tells."},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, withFigures(t, diary.Figures{Mixed: c.Mixed}).findMixed(w, nil).text)
		})
	}
}

func TestFindReach(t *testing.T) {
	w := words(t)
	span := func(low, high float64) diary.Heard {
		return diary.Heard{From: "2026-03-01", To: "2026-03-07", Hide: scoring.Estimated((low+high)/2, low, high, 40, 30)}
	}
	reach := func(low, high float64, spans ...diary.Heard) []diary.Reach {
		return []diary.Reach{{Kind: "which", Now: span(low, high).Hide, Spans: spans}}
	}
	for _, c := range []struct {
		name string
		all  []diary.Reach
		want string
	}{
		{"nothing", nil, ""},
		{"too few", []diary.Reach{{Kind: "which", Now: scoring.Unknown(8, 30)}}, ""},
		{"one level", reach(0.3, 0.45), "In “Which rhythm?” you hear the bass drum through a lead drum that is riffing."},
		{"wide", reach(0.01, 0.6), "In “Which rhythm?” you hear the bass drum through a lead drum that is bare to solo."},
		{"more", reach(0.3, 0.45, span(0.1, 0.2), span(0.3, 0.45)), "In “Which rhythm?” you hear through more riff than at first: now riffing."},
		{"less", reach(0.16, 0.2, span(0.3, 0.45), span(0.16, 0.2)), "In “Which rhythm?” you hear through less riff than at first: now ornamented."},
		{"intervals meet", reach(0.3, 0.45, span(0.1, 0.35), span(0.3, 0.45)), "In “Which rhythm?” you hear the bass drum through a lead drum that is riffing."},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, withFigures(t, diary.Figures{Reach: c.all}).findReach(w).text)
		})
	}
}

func TestFindPractised(t *testing.T) {
	w := words(t)
	require.Empty(t, withFigures(t, diary.Figures{}).findPractised(w))
	day := func(day string, n int) diary.Practice { return diary.Practice{Day: day, Rounds: n} }
	require.Equal(t, "1 round, today.", withFigures(t, diary.Figures{Practised: []diary.Practice{day("2026-03-14", 1)}}).findPractised(w))
	require.Equal(t, "7 rounds on 2 days since yesterday.",
		withFigures(t, diary.Figures{Practised: []diary.Practice{day("2026-03-14", 5), day("2026-03-13", 2)}}).findPractised(w))
}

// What there is too little of is said with how much more would do, and nothing of it
// is drawn or told in figures.
func TestTooFewIsSaidAndNotShown(t *testing.T) {
	s := diaryScreens(t)["diary-beginning"]
	for id, want := range map[string]string{
		"named-few":   "Too few yet to tell: ayyub, 5 more rounds.",
		"tapped-few":  "Too few yet to tell: ayyub, 4 more rounds.",
		"fingers-few": "Too few yet to tell: ayyub, 4 more rounds.",
		"mixed-few":   "Too few yet to tell: 5 more rounds of one rhythm.",
		"reach-few":   "Too few yet to tell: Same or different?, 18 more rounds.",
	} {
		require.Equal(t, want, s.Find(id).Text)
	}
	s.Each(func(it *view.Item) {
		if it.Role == view.RolePicture {
			require.Equal(t, "days-picture", it.ID, "days are counted, not estimated")
		}
	})
	require.Nil(t, s.Find("named-table"))
}

func TestSayDay(t *testing.T) {
	w := words(t)
	for day, want := range map[string]string{
		"2026-03-14": "today", "2026-03-13": "yesterday", "2026-03-12": "12 March", "2026-01-01": "1 January",
		"2025-12-31": "31 December 2025", "2026-03-15": "15 March", "sometime": "sometime",
	} {
		require.Equal(t, want, say.Day(w, day, diaryToday))
	}
	require.Equal(t, "yesterday", say.Day(w, "2025-12-31", "2026-01-01"))
	for _, c := range [][3]string{
		{"2026-03-01", "2026-03-07", "1 to 7 March"}, {"2026-02-26", "2026-03-04", "26 February to 4 March"},
		{"2026-03-08", "2026-03-14", "8 March to today"}, {"2026-03-07", "2026-03-07", "7 March"},
		{"2025-12-29", "2026-01-04", "29 December 2025 to 4 January"}, {"2026-03-13", "2026-03-14", "yesterday to today"},
	} {
		require.Equal(t, c[2], say.Days(w, c[0], c[1], diaryToday))
	}
}

// Days lie on the line as far apart as they were.
func TestTimeline(t *testing.T) {
	l := timeline{left: 0.2, right: 0.8}
	l.span("2026-03-02", "2026-03-04")
	l.span("2026-03-01", "2026-03-01")
	l.span("2026-03-11", "2026-03-11")
	require.InDelta(t, 0.2, l.x("2026-03-01", "2026-03-01"), 1e-9)
	require.InDelta(t, 0.2+0.6*0.2, l.x("2026-03-02", "2026-03-04"), 1e-9)
	require.InDelta(t, 0.8, l.x("2026-03-11", "2026-03-11"), 1e-9)
	one := timeline{left: 0.2, right: 0.8}
	one.span("2026-03-02", "2026-03-02")
	require.InDelta(t, 0.5, one.x("2026-03-02", "2026-03-02"), 1e-9)
}
