package view

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
	"groundbeat/scoring/diary"
	"groundbeat/scoring/stat"
)

func findings(t testing.TB, f diary.Figures) *Diary {
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
		{"one", []diary.Accuracy{accuracy("maqsum", false, [2]int{10, 12})}, "You are right on maqsum 55 to 95 of 100 times."},
		{"intervals meet: no change", []diary.Accuracy{accuracy("maqsum", false, [2]int{8, 20}, [2]int{15, 20})},
			"You are right on maqsum 42 to 71 of 100 times."},
		{"fewer right", []diary.Accuracy{accuracy("maqsum", false, [2]int{19, 20}, [2]int{8, 20})},
			"You are less sure of maqsum than at first: 95 of 100 then, 40 now."},
		{"the larger change", []diary.Accuracy{accuracy("saidi", false, [2]int{8, 20}, [2]int{19, 20}), accuracy("maqsum", false, [2]int{2, 20}, [2]int{19, 20})},
			"You have become surer of maqsum: 10 of 100 at first, 95 now."},
		{"two that differ", []diary.Accuracy{accuracy("saidi", false, [2]int{8, 20}), accuracy("maqsum", false, [2]int{19, 20})},
			"You are surest of maqsum, 95 of 100, and least sure of sa'idi, 40 of 100."},
		{"two that may be alike", []diary.Accuracy{accuracy("saidi", false, [2]int{12, 20}), accuracy("maqsum", false, [2]int{15, 20})},
			"You are about as sure of one rhythm as of another, as far as this tells."},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := findings(t, diary.Figures{Accuracy: c.all})
			require.Equal(t, c.want, d.findRight(w, false))
			require.Empty(t, d.findRight(w, true), "dums are another matter")
		})
	}
}

// Where less is right of what was harder, or more of what was easier, nothing is said of a
// change; where more is right of what was harder, it is.
func TestFindRightOfHarder(t *testing.T) {
	w := words(t)
	more, less := [][2]int{{8, 20}, {19, 20}}, [][2]int{{19, 20}, {8, 20}}
	const alike = "You land on 52 to 80 of 100 dums of maqsum."
	const fewer = "You land on fewer dums of maqsum than at first: 95 of 100 then, 40 now."
	const better = "You land on more dums of maqsum: 40 of 100 at first, 95 now."
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
		require.Equal(t, c.want, findings(t, diary.Figures{Accuracy: []diary.Accuracy{a}}).findRight(w, true), "%+v", c)
	}
}

func TestFindRightOfTaps(t *testing.T) {
	w := words(t)
	for _, c := range []struct {
		all  []diary.Accuracy
		want string
	}{
		{[]diary.Accuracy{accuracy("maqsum", true, [2]int{10, 12})}, "You land on 55 to 95 of 100 dums of maqsum."},
		{[]diary.Accuracy{accuracy("maqsum", true, [2]int{19, 20}, [2]int{8, 20})},
			"You land on fewer dums of maqsum than at first: 95 of 100 then, 40 now."},
		{[]diary.Accuracy{accuracy("maqsum", true, [2]int{8, 20}, [2]int{19, 20})}, "You land on more dums of maqsum: 40 of 100 at first, 95 now."},
		{[]diary.Accuracy{accuracy("saidi", true, [2]int{8, 20}), accuracy("maqsum", true, [2]int{19, 20})},
			"You land on most dums of maqsum, 95 of 100, and on fewest of sa'idi, 40 of 100."},
		{[]diary.Accuracy{accuracy("saidi", true, [2]int{12, 20}), accuracy("maqsum", true, [2]int{15, 20})},
			"You land on about as many dums of one rhythm as of another, as far as this tells."},
	} {
		require.Equal(t, c.want, findings(t, diary.Figures{Accuracy: c.all}).findRight(w, true))
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
			require.Equal(t, c.want, findings(t, diary.Figures{Fingers: c.all}).findFingers(w))
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
		{"behind", []diary.Fingers{fingering("saidi", 9, 90, 5, 5, 20, at(0, -2, 4), at(3, 25, 9))}, "In sa'idi your 2 & comes about 25 ms behind (16 to 34 ms)."},
		{"no farther than the whole", []diary.Fingers{fingering("saidi", 9, 90, 20, 5, 20, at(0, 18, 4), at(3, 25, 9))}, "No count comes farther ahead or behind than the others, as far as this tells."},
		{"perhaps on the dum", []diary.Fingers{fingering("saidi", 9, 90, 0, 5, 20, at(3, -25, 26))}, "No count comes farther ahead or behind than the others, as far as this tells."},
		{"of a rhythm that is not here", []diary.Fingers{fingering("mine", 9, 90, 0, 5, 20, at(3, -25, 6))}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, findings(t, diary.Figures{Fingers: c.all}).findRound(w))
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
		{"often", mixed(9, 20), "You take maqsum for sa'idi about 45 of 100 times (26 to 66 of 100)."},
		{"once may be a slip", mixed(1, 20), "No mix-up stands out, as far as this tells."},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, findings(t, diary.Figures{Mixed: c.Mixed}).findMixed(w))
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
			require.Equal(t, c.want, findings(t, diary.Figures{Reach: c.all}).findReach(w))
		})
	}
}

func TestFindPractised(t *testing.T) {
	w := words(t)
	require.Empty(t, findings(t, diary.Figures{}).findPractised(w))
	day := func(day string, n int) diary.Practice { return diary.Practice{Day: day, Rounds: n} }
	require.Equal(t, "1 round, today.", findings(t, diary.Figures{Practised: []diary.Practice{day("2026-03-14", 1)}}).findPractised(w))
	require.Equal(t, "7 rounds on 2 days since yesterday.",
		findings(t, diary.Figures{Practised: []diary.Practice{day("2026-03-14", 5), day("2026-03-13", 2)}}).findPractised(w))
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
	s.Each(func(it *Item) {
		if it.Role == RolePicture {
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
		require.Equal(t, want, sayDay(w, day, diaryToday))
	}
	require.Equal(t, "yesterday", sayDay(w, "2025-12-31", "2026-01-01"))
	for _, c := range [][3]string{
		{"2026-03-01", "2026-03-07", "1 to 7 March"}, {"2026-02-26", "2026-03-04", "26 February to 4 March"},
		{"2026-03-08", "2026-03-14", "8 March to today"}, {"2026-03-07", "2026-03-07", "7 March"},
		{"2025-12-29", "2026-01-04", "29 December 2025 to 4 January"}, {"2026-03-13", "2026-03-14", "yesterday to today"},
	} {
		require.Equal(t, c[2], sayDays(w, c[0], c[1], diaryToday))
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
