package diaryview

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// rowsOf are the rows of a table that are of one rhythm, or of another first cell.
func rowsOf(s view.Screen, table, first string) (all [][]string) {
	if it := s.Find(table); it != nil {
		for _, row := range it.Rows {
			if row[0] == first {
				all = append(all, row)
			}
		}
	}
	return all
}

func dotsOf(p *picture.Picture, ink picture.Ink) []picture.Shape {
	return shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindDot && s.Ink == ink })
}

// hasText reports whether a picture writes something.
func hasText(p *picture.Picture, text string) bool {
	return len(shapes(p, func(s *picture.Shape) bool { return s.Kind == picture.KindText && s.Text == text })) > 0
}

// How often a rhythm was right is the same in the picture, in the table beside it, in the
// picture's words and in the model.
func TestAccuracyAgrees(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		s := d.Screen(w)
		for _, a := range d.Figures.Accuracy {
			matter := map[bool]string{false: "named", true: "tapped"}[a.Tapped]
			it := s.Find(matter + "-" + a.Rhythm)
			require.Equal(t, a.All.Share.Known, it != nil, "drawn where it is known")
			if it == nil {
				require.Contains(t, s.Find(matter+"-few").Text, d.name(a.Rhythm))
				continue
			}
			rows, dots := rowsOf(s, matter+"-table", d.name(a.Rhythm)), dotsOf(it.Picture, picture.InkBass)
			require.Len(t, rows, len(a.Spans))
			var told []diary.Span
			for i, span := range a.Spans {
				require.Equal(t, span.Share.Known, rows[i][2] == w.Say("of", "n", span.Right, "of", span.N), "%v", rows[i])
				if span.Share.Known {
					told = append(told, span)
					require.Contains(t, it.Text, rows[i][3], "what the table says of chance the picture's words say")
				}
			}
			if len(told) == 0 {
				told = []diary.Span{a.All}
			}
			require.Len(t, dots, len(told))
			for i, span := range told {
				shown := 1 - (dots[i].Y-panelTop)/panelDeep
				require.InDelta(t, float64(span.Right)/float64(span.N), shown, 1e-9)
				require.Contains(t, it.Text, strconv.Itoa(int(math.Round(100*shown)))+"\u00a0%")
			}
			last := told[len(told)-1]
			require.True(t, hasText(it.Picture, sayShare(w, float64(last.Right)/float64(last.N))), "the latest is the picture's figure")
		}
	})
}

// The stems of a rhythm's finger timing are its taps, and its mean is the same in picture,
// words and table.
func TestFingersAgree(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		s := d.Screen(w)
		for _, f := range d.Figures.Fingers {
			it := s.Find("fingers-" + f.Rhythm)
			require.Equal(t, f.Bias.Known, it != nil)
			if it == nil {
				require.Contains(t, s.Find("fingers-few").Text, d.name(f.Rhythm))
				continue
			}
			ahead, behind, longest, all := 0, 0, 0.0, 0.0
			for _, l := range shapes(it.Picture, func(s *picture.Shape) bool { return s.Kind == picture.KindLine }) {
				switch {
				case l.Ink == picture.InkAhead && l.X < 0.5:
					ahead++
				case l.Ink == picture.InkBehind && l.X > 0.5:
					behind++
				default:
					require.NotContains(t, []picture.Ink{picture.InkAhead, picture.InkBehind}, l.Ink, "on its own side")
					continue
				}
				longest, all = max(longest, l.Y-l.Y2), all+l.Y-l.Y2
			}
			most, early, late := 0, 0, 0
			for i, n := range f.Bins {
				if most = max(most, n); n > 0 && i < len(f.Bins)/2 {
					early++
				} else if n > 0 {
					late++
				}
			}
			require.Equal(t, []int{early, late}, []int{ahead, behind})
			require.InDelta(t, float64(f.Taps), all*float64(most)/max(longest, 1e-9), 1e-6, "as long as there are taps")
			require.True(t, f.Taps == 0 || math.Abs(longest+0.008-fingersTall) < 1e-9, "the longest as tall as there is room: %g", longest)
			row, mean := rowsOf(s, "fingers-table", d.name(f.Rhythm))[0], say.Offset(w, say.Millis(f.Bias.Value))
			require.Contains(t, it.Text, strconv.Itoa(f.Taps)+" taps, mean "+mean+" ("+row[2]+")")
			require.Equal(t, mean, row[1])
			require.Equal(t, f.Bias.Low > 0 || f.Bias.High < 0, hasText(it.Picture, mean), "a figure only beyond doubt")
			require.Equal(t, f.Spread.Known, row[3] != view.None)
			require.Equal(t, strconv.Itoa(f.Added), row[5])
		}
	})
}

// Each dum of the drumhead is in the table, with the figure that stands on it.
func TestDrumheadAgrees(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		s := d.Screen(w)
		for _, f := range d.Figures.Fingers {
			it := s.Find("round-" + f.Rhythm)
			require.Equal(t, roundKnown(f), it != nil)
			if it == nil {
				continue
			}
			rows := rowsOf(s, "round-table", d.name(f.Rhythm))
			require.Len(t, rows, len(f.Counts))
			large := shapes(it.Picture, func(s *picture.Shape) bool { return s.Kind == picture.KindDot && s.R == roundSize })
			n := 0
			for i, c := range f.Counts {
				require.Contains(t, it.Text, "Your "+rows[i][1]+": ")
				if !c.Offset.Known {
					require.Equal(t, []string{w.Say("too-few-yet"), view.None}, rows[i][2:])
					continue
				}
				n++
				require.Equal(t, say.Offset(w, say.Millis(c.Offset.Value)), rows[i][2])
				require.Contains(t, it.Text, "mean "+rows[i][2]+" ("+rows[i][3]+")")
				require.True(t, hasText(it.Picture, picture.Milliseconds(say.Millis(c.Offset.Value))))
			}
			require.Len(t, large, n, "a disc for each dum that is known")
		}
	})
}

// What was said for what was played adds up: in the table to how often each was played, in
// the picture to the whole of a row, and each wrong answer is in its words.
func TestMixUpsAgree(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		s, m := d.Screen(w), d.Figures.Mixed
		it := s.Find("mixed-picture")
		for i, said := range m.Said {
			all := sum(said)
			if it == nil {
				require.Less(t, all, diary.LeastMixed)
				continue
			}
			rows, n := rowsOf(s, "mixed-table", d.name(m.Rhythms[i])), 0
			if all < diary.LeastMixed {
				require.Equal(t, [][]string{{d.name(m.Rhythms[i]), w.Say("too-few-yet"), strconv.Itoa(all)}}, rows)
				require.NotContains(t, it.Text, d.name(m.Rhythms[i])+" was taken for")
				continue
			}
			for _, row := range rows {
				one, err := strconv.Atoi(strings.Fields(row[2])[0])
				require.NoError(t, err)
				require.Contains(t, row[2], strconv.Itoa(all))
				n += one
				wrong := row[0] + " was taken for " + row[1] + " " + strconv.Itoa(one) + " of " + strconv.Itoa(all)
				require.Equal(t, row[0] != row[1], strings.Contains(it.Text, wrong), wrong)
			}
			require.Equal(t, all, n)
		}
	})
}

// The days that are drawn are those of the table, as many as are shown, and the beads, the
// figures and the sentence count the same rounds.
func TestDaysAgree(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		s, rounds, shown, tapped := d.Screen(w), 0, 0, 0
		it := s.Find("days-picture")
		require.Equal(t, len(d.Figures.Practised) > 0, it != nil)
		if it == nil {
			return
		}
		rows := s.Find("days-table").Rows
		require.Len(t, rows, len(d.Figures.Practised))
		for i, row := range rows {
			n, err := strconv.Atoi(row[1])
			require.NoError(t, err)
			rounds += n
			if i < daysShown {
				shown += n
				kinds := d.Figures.Practised[i].Kinds
				tapped += kinds["dums"] + kinds["stop"]
				require.True(t, hasText(it.Picture, row[0]) && hasText(it.Picture, row[1]), "%v", row)
				require.Contains(t, it.Text, row[0])
			}
		}
		full := dotsOf(it.Picture, picture.InkBass)
		open := shapes(it.Picture, func(s *picture.Shape) bool { return s.Kind == picture.KindRing })
		require.Len(t, full, tapped+1, "and one that says what it is")
		require.Len(t, open, shown-tapped+1)
		require.True(t, strings.HasPrefix(s.Find("days-finding").Text, w.Say("rounds", "n", rounds)))
		require.Contains(t, s.Find("days-finding").Text, rows[len(rows)-1][0], "since the first day")
	})
}
