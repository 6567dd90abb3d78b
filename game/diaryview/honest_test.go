package diaryview

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/scoring"
)

// of is the figure of a rhythm, told by name or tapped.
func (d *Diary) of(t *testing.T, id string, tapped bool) diary.Accuracy {
	all := d.rights(tapped)
	i := slices.IndexFunc(all, func(a diary.Accuracy) bool { return a.Rhythm == id })
	require.GreaterOrEqual(t, i, 0, id)
	return all[i]
}

// What is said of accuracy its intervals bear out: of a change, that the first and the
// latest known do not meet; of two rhythms, that theirs do not; of all alike, that all meet.
func TestAccuracyIsBorneOut(t *testing.T) {
	w, told := words(t), map[says]int{}
	everyDiary(t, func(t *testing.T, d *Diary) {
		for _, tapped := range []bool{false, true} {
			f := d.findRight(w, tapped)
			for _, c := range f.claims {
				told[c.says]++
				d.requireBorneOut(t, f, c, tapped)
			}
			some := known(d.rights(tapped), func(a diary.Accuracy) bool { return a.All.Share.Known })
			require.Equal(t, len(some) > 0, f.text != "")
		}
	})
	for _, says := range []says{saysMore, saysLess, saysMost, saysLeast, saysAlike} {
		require.Positive(t, told[says], says)
	}
}

func (d *Diary) requireBorneOut(t *testing.T, f finding, c claim, tapped bool) {
	w := words(t)
	require.Equal(t, tapped, c.skill == skillDums, f.text)
	if c.says == saysAlike {
		for _, a := range d.rights(tapped) {
			for _, b := range d.rights(tapped) {
				require.False(t, a.All.Share.Known && b.All.Share.Known && a.All.Share.High < b.All.Share.Low, "%s: %s %s", f.text, a.Rhythm, b.Rhythm)
			}
		}
		return
	}
	a := d.of(t, c.rhythm, tapped)
	require.Contains(t, f.text, d.name(c.rhythm))
	require.Contains(t, f.text, sayShare(w, c.part))
	spans := known(a.Spans, func(s diary.Span) bool { return s.Share.Known })
	switch c.says {
	case saysMore:
		require.Less(t, spans[0].Share.High, spans[len(spans)-1].Share.Low, f.text)
	case saysLess:
		require.Greater(t, spans[0].Share.Low, spans[len(spans)-1].Share.High, f.text)
	case saysMost:
		require.Greater(t, a.All.Share.Low, d.of(t, f.claims[1].rhythm, tapped).All.Share.High, f.text)
	case saysLeast:
		require.Less(t, a.All.Share.High, d.of(t, f.claims[0].rhythm, tapped).All.Share.Low, f.text)
	}
}

// A lean is said only of taps whose interval has no dum in it, of every rhythm only where
// all lie on that side, and of none where one leans.
func TestLeanIsBorneOut(t *testing.T) {
	w, told := words(t), map[says]int{}
	everyDiary(t, func(t *testing.T, d *Diary) {
		f := d.findFingers(w)
		for _, c := range f.claims {
			told[c.says]++
			for _, x := range d.Figures.Fingers {
				e := x.Bias
				leans := e.Known && math.Abs(e.Value) >= 8 && (e.Low > 0 || e.High < 0)
				switch {
				case !e.Known || c.rhythm != "" && c.rhythm != x.Rhythm:
				case c.says == saysNoLean:
					require.False(t, leans, "%s: %s %+v", f.text, x.Rhythm, e)
				case c.says == saysAhead:
					require.Negative(t, e.Value, f.text)
				default:
					require.Positive(t, e.Value, f.text)
				}
				if c.rhythm == x.Rhythm {
					require.True(t, leans, "%s: %+v", f.text, e)
				}
			}
		}
	})
	require.Positive(t, told[saysAhead])
	require.Positive(t, told[saysBehind])
	require.Positive(t, told[saysNoLean])
}

// mirrored is the same tapped as far on the other side of each dum.
func mirrored(e scoring.Estimate) scoring.Estimate {
	if e.Known {
		e.Value, e.Low, e.High = -e.Value, -e.High, -e.Low
	}
	return e
}

// Tapped as far on the other side, the same is told of the other side.
func TestOtherSideIsToldAlike(t *testing.T) {
	w := words(t)
	other := strings.NewReplacer("ahead or behind", "ahead or behind", "ahead nor behind", "ahead nor behind", "ahead", "behind", "behind", "ahead", "earlier", "later", "later", "earlier")
	everyDiary(t, func(t *testing.T, d *Diary) {
		d.Figures.Output = "kitchen" // of taps that are ahead without a set-up something else is told
		lean, round := d.findFingers(w).text, d.findRound(w).text
		for i := range d.Figures.Fingers {
			x := &d.Figures.Fingers[i]
			x.Bias = mirrored(x.Bias)
			for j := range x.Counts {
				x.Counts[j].Offset = mirrored(x.Counts[j].Offset)
			}
		}
		require.Equal(t, other.Replace(lean), d.findFingers(w).text)
		require.Equal(t, other.Replace(round), d.findRound(w).text)
	})
}

// What is told of rhythms does not hang on the order in which they come.
func TestOrderOfRhythmsTellsNothing(t *testing.T) {
	w := words(t)
	everyDiary(t, func(t *testing.T, d *Diary) {
		before := d.find(w)
		slices.Reverse(d.Figures.Accuracy)
		slices.Reverse(d.Figures.Fingers)
		after := d.find(w)
		require.Equal(t, before.named, after.named)
		require.Equal(t, before.tapped, after.tapped)
		require.Equal(t, before.fingers, after.fingers)
		require.Equal(t, before.round, after.round)
	})
}

// A mix-up that is told comes in one of twenty at the lowest, and none that is likelier
// is passed over but for what was said of its rhythm.
func TestMixUpIsBorneOut(t *testing.T) {
	w, told := words(t), map[says]int{}
	everyDiary(t, func(t *testing.T, d *Diary) {
		f := d.findMixed(w, nil)
		for _, c := range f.claims {
			told[c.says]++
			for _, m := range d.Figures.Mixed.Worst {
				sure := m.Share.Known && m.Share.Low >= 0.05
				require.False(t, sure && m.Share.Value > c.part, "%s %+v", f.text, m)
				if c.rhythm == m.Played && c.other == m.Said {
					require.True(t, sure, f.text)
					require.Contains(t, f.text, sayBetween(w, m.Share))
				}
			}
		}
	})
	require.Positive(t, told[saysTaken])
	require.Positive(t, told[saysNoneTaken])
}

// More riff is said to be heard through only where the first and the latest days do not
// meet, and what is heard through lies within the interval of now.
func TestReachIsBorneOut(t *testing.T) {
	w, told := words(t), map[says]int{}
	everyDiary(t, func(t *testing.T, d *Diary) {
		f := d.findReach(w)
		for _, c := range f.claims {
			told[c.says]++
			r := d.Figures.Reach[slices.IndexFunc(d.Figures.Reach, func(r diary.Reach) bool { return r.Kind == c.kind })]
			spans := known(r.Spans, func(h diary.Heard) bool { return h.Hide.Known })
			require.True(t, r.Now.Known)
			require.Contains(t, f.text, levelName(w, reachLevel(r.Now.Low)))
			require.Contains(t, f.text, levelName(w, reachLevel(r.Now.High)))
			if len(spans) == 0 {
				require.Equal(t, saysHeard, c.says)
				continue
			}
			first, last := spans[0].Hide, spans[len(spans)-1].Hide
			require.Equal(t, first.High < last.Low, c.says == saysHeardMore, f.text)
			require.Equal(t, last.High < first.Low, c.says == saysHeardLess, f.text)
		}
	})
	for says := saysHeard; says <= saysHeardLess; says++ {
		require.Positive(t, told[says], says)
	}
}
