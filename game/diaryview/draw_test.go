package diaryview

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/coach"
	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

func shapes(p *picture.Picture, is func(*picture.Shape) bool) []picture.Shape {
	var all []picture.Shape
	for i := range p.Shapes {
		if is(&p.Shapes[i]) {
			all = append(all, p.Shapes[i])
		}
	}
	return all
}

// Words in the diary's pictures are whole, in inks that are read, and no smaller than
// in the other pictures: 12 pixels where a panel is 272 wide and a board 330.
func TestDiaryWordsAreRead(t *testing.T) {
	inks := []picture.Ink{picture.InkBone, picture.InkDim, picture.InkAhead, picture.InkBehind, picture.InkOnBass}
	for name, p := range diaryPictures(t) {
		least := 12. / 272
		if slices.Contains([]string{"diary-mixed", "diary-mixed-many", "diary-days"}, name) {
			least = 12. / 330
		}
		for _, s := range shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindText }) {
			require.GreaterOrEqual(t, s.Size, least, "%s: %s", name, s.Text)
			require.Contains(t, inks, s.Ink, "%s: %s", name, s.Text)
			require.Equal(t, float32(1), s.Opacity, "%s: %s", name, s.Text)
		}
		require.NotEmpty(t, p.Twin, name)
	}
}

// A mark stands at its share, its line goes from end to end of the interval, and what
// is not known is not drawn.
func TestTrendMarks(t *testing.T) {
	d, w := mira(t), words(t)
	a := accuracy("saidi", false, [2]int{5, 20}, [2]int{3, 5}, [2]int{18, 20})
	p := d.right(w, a, timeline{first: "2026-02-08", last: "2026-02-28"})
	dots := shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindDot })
	lines := shapes(p, func(s *picture.Shape) bool {
		return s.Kind == picture.KindLine && s.Ink == picture.InkBass && s.Opacity == 1
	})
	require.Len(t, dots, 2, "of five answers nothing is shown")
	require.Len(t, lines, 2)
	for i, span := range []diary.Span{a.Spans[0], a.Spans[2]} {
		y := func(part float64) float64 { return panelTop + panelDeep*(1-part) }
		require.InDelta(t, y(span.Share.Value), dots[i].Y, 1e-9)
		require.InDelta(t, y(span.Share.High), lines[i].Y, 1e-9)
		require.InDelta(t, y(span.Share.Low), lines[i].Y2, 1e-9)
		require.InDelta(t, dots[i].X, lines[i].X, 1e-9)
	}
	require.Less(t, dots[0].R, dots[1].R, "the latest is the largest")
}

// Where no stretch of days tells enough, all of them together may.
func TestTrendOfAllTogether(t *testing.T) {
	p := points(accuracy("saidi", false, [2]int{5, 9}, [2]int{7, 10}))
	require.Len(t, p, 1)
	require.Equal(t, []string{"2026-02-08", "2026-02-21"}, []string{p[0].from, p[0].to})
	require.InDelta(t, 12./19, p[0].Value, 1e-9)
}

// Stems stand at their offsets, as long as there are taps: ahead to the left.
func TestFingersStems(t *testing.T) {
	d, w := mira(t), words(t)
	f := fingering("maqsum", 9, 0, 12, 5, 20)
	f.Bins[0], f.Bins[len(f.Bins)/2], f.Bins[len(f.Bins)-1] = 1, 4, 2 // 150 to 145 ahead, 0 to 5 behind, 145 to 150 behind
	stems := shapes(d.fingers(w, f), func(s *picture.Shape) bool {
		return s.Kind == picture.KindLine && (s.Ink == picture.InkAhead || s.Ink == picture.InkBehind)
	})
	require.Len(t, stems, 3)
	require.Equal(t, []picture.Ink{picture.InkAhead, picture.InkBehind, picture.InkBehind}, []picture.Ink{stems[0].Ink, stems[1].Ink, stems[2].Ink})
	for i, ms := range []float64{-147.5, 2.5, 147.5} {
		require.InDelta(t, 0.5+ms*fingersWidth/300, stems[i].X, 1e-9)
	}
	long := func(s picture.Shape) float64 { return s.Y - s.Y2 }
	require.InDelta(t, 4*long(stems[0]), long(stems[1]), 1e-9)
	require.InDelta(t, 2*long(stems[0]), long(stems[2]), 1e-9)
}

// Ahead lies before its dum and is a ring, behind lies after it and is a disc, and
// what may be on the dum is neither.
func TestRoundMarks(t *testing.T) {
	d, w := mira(t), words(t)
	turn := func(s picture.Shape) float64 {
		return picture.Wrap(math.Atan2(s.X-picture.Middle, -(s.Y-roundTitle-picture.Middle)) / (2 * math.Pi))
	}
	draw := func(ms, half float64) *picture.Picture {
		return d.round(w, d.rhythm("maqsum"), fingering("maqsum", 9, 0, 0, 5, 20, diary.Count{Step: 4, Offset: estimate(ms, half, 9)}))
	}
	ahead := shapes(draw(-20, 5), func(s *picture.Shape) bool { return s.Kind == picture.KindRing && s.Ink == picture.InkAhead })
	require.Len(t, ahead, 1)
	require.InDelta(t, 0.5-0.16*20/RoundReach, turn(ahead[0]), 1e-9)
	behind := shapes(draw(90, 5), func(s *picture.Shape) bool { return s.Kind == picture.KindDot && s.Ink == picture.InkBehind })
	require.Len(t, behind, 1)
	require.InDelta(t, 0.5+0.16, turn(behind[0]), 1e-9, "what lies farther is drawn at the end")
	perhaps := draw(20, 25)
	require.Empty(t, shapes(perhaps, func(s *picture.Shape) bool { return s.Ink == picture.InkBehind || s.Ink == picture.InkAhead }))
	require.Len(t, shapes(perhaps, func(s *picture.Shape) bool { return s.Kind == picture.KindText && s.Text == "+20" }), 1)
}

// A dot's area is its share of the row; right answers are rings.
func TestMixedDots(t *testing.T) {
	d, w := mira(t), words(t)
	d.Figures.Mixed = diary.Mixed{Rhythms: []string{"maqsum", "saidi"}, Said: [][]int{{12, 4}, {16, 0}}}
	p := d.mixed(w)
	dots := shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindDot })
	require.Len(t, dots, 2)
	require.InDelta(t, 2*dots[0].R, dots[1].R, 1e-9, "a quarter of the row, and all of it")
	require.Greater(t, dots[0].X, dots[1].X)
	require.Less(t, dots[0].Y, dots[1].Y)
	require.Len(t, shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindRing }), 1)
}

// Every round of a day is a bead, however many there were.
func TestBeadsAreRounds(t *testing.T) {
	w := words(t)
	for _, n := range []int{1, 5, 60} {
		d := withFigures(t, diary.Figures{Practised: []diary.Practice{{Day: diaryToday, Rounds: n + 2, Kinds: map[string]int{"dums": n, "same": 2}}}})
		p := d.practised(w)
		screenproof.RequireInside(t, p)
		require.Len(t, shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindDot }), n+1, "and one that says what it is")
		beads := shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindRing })
		require.Len(t, beads, 3)
		require.Less(t, beads[1].X+beads[1].R, 0.92, "clear of the figure")
	}
}

// Whatever the scale says of a level is what the riffs of that level do (package riff).
func TestReachLevels(t *testing.T) {
	for hide, want := range map[float64]string{0: view.LevelBare, 0.019: view.LevelBare, 0.02: view.LevelFilled, 0.149: view.LevelFilled,
		0.15: view.LevelOrnamented, 0.249: view.LevelOrnamented, 0.25: view.LevelRiffing, 0.49: view.LevelRiffing, 0.5: view.LevelSolo, 1: view.LevelSolo} {
		require.Equal(t, want, reachLevel(hide), hide)
	}
}

// The strip stands on top of a screen, takes no focus, and is not there while a round
// is played.
func TestPracticeStrip(t *testing.T) {
	w := words(t)
	ready := dums(t, view.Ready).Screen(w)
	s := Practice{Part: 2, Parts: 7, Reason: coach.ReasonDue, Minutes: 6}.On(ready, w)
	require.Equal(t, "practice-strip", s.Items[0].ID)
	require.Equal(t, ready.FocusID(), s.FocusID())
	require.Equal(t, "Part 2 of 7 · Rested for a while · about 6 minutes left", s.Find("practice-where").Text)
	require.Equal(t, "Skip this", s.Find("practice-on").Name)

	playing := dums(t, view.Playing).Screen(w)
	require.Equal(t, playing, Practice{Part: 2, Parts: 7}.On(playing, w))

	done := Practice{Part: 2, Parts: 7, Reason: coach.ReasonDue, Minutes: 1, Done: true}.Strip(w)
	require.Equal(t, "Part 2 of 7 · Rested for a while · about 1 minute left", done.Children[0].Text)
	require.Equal(t, []string{"Next round", view.LookPrimary}, []string{done.Children[1].Name, done.Children[1].Look})
	last := Practice{Part: 7, Parts: 7, Reason: coach.ReasonSlow, Done: true, Last: true}.Strip(w)
	require.Equal(t, "Part 7 of 7 · To end with · nearly done", last.Children[0].Text)
	require.Equal(t, []string{"To your diary", view.LookPrimary}, []string{last.Children[1].Name, last.Children[1].Look})
}

// What cannot be taken back is asked; the answer that changes nothing has the focus,
// and is what Escape does.
func TestDiaryAsks(t *testing.T) {
	all := diaryScreens(t)
	for name, no := range map[string]string{"diary-erasing": view.ActDiaryEraseNo, "diary-erasing-all": view.ActDiaryEraseNo, "diary-merging": view.ActDiaryMergeNo} {
		s := all[name]
		require.Equal(t, no, s.Escape)
		require.Equal(t, no, s.Find(s.FocusID()).Action)
	}
	erasing, merging := all["diary-erasing"], all["diary-merging"]
	require.Equal(t, "Erase all 260 rounds of Mira?", erasing.Find("erase-ask").Name)
	require.Equal(t, "Put the rounds of Leila to those of Mira?", merging.Find("merge-ask").Name)
	require.Equal(t, "b", merging.Find("merge-yes").Value)
	require.Equal(t, "a", erasing.Find("erase-yes").Value)
	everybody := all["diary-erasing-all"]
	require.Equal(t, "Erase the rounds of everybody here?", everybody.Find("erase-ask").Name)
	require.Empty(t, everybody.Find("erase-yes").Value)
}

func TestDiaryImport(t *testing.T) {
	s := diaryScreens(t)["diary-import"]
	require.Equal(t, "Add 31 rounds", s.Find("take").Name)
	require.Equal(t, "line 12: no comma", s.Find("broken-1").Text)
	require.Equal(t, "2 more", s.Find("broken-more").Text, "seven lines, five of them told")
	nothing := diaryScreens(t)["diary-import-nothing"]
	require.True(t, nothing.Find("take").Disabled)
}

// A diary is drawn anew when something of it changes, not in every frame.
func BenchmarkDiary(b *testing.B) {
	d, w := mira(b), words(b)
	b.ReportAllocs()
	for b.Loop() {
		d.Screen(w)
	}
}

func TestNameProblems(t *testing.T) {
	w := words(t)
	require.Empty(t, NameFine.say(w))
	said := map[string]bool{}
	for p := NameMissing; p <= NameGone; p++ {
		said[p.say(w)] = true
	}
	require.Len(t, said, 4, "each is told by itself")
	require.False(t, said[""])
}
