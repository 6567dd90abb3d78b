package diaryview

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
)

// A count is said to come apart from the others only where its own interval, less the
// mean of its rhythm, leaves that no doubt; and on the side and as far as the model has it.
func TestCountApartIsBorneOut(t *testing.T) {
	w, told := words(t), map[bool]int{}
	everyDiary(t, func(t *testing.T, d *Diary) {
		text := d.findRound(w).text
		var may []string
		for _, f := range d.Figures.Fingers {
			for _, c := range f.Counts {
				by, count := c.Offset.Value-f.Bias.Value, picture.CountName(picture.CountsOf(d.rhythm(f.Rhythm).Base()), c.Step)
				side := map[bool]string{true: "later", false: "earlier"}[by > 0]
				doubt := c.Offset.Low <= f.Bias.Value && f.Bias.Value <= c.Offset.High
				if f.Bias.Known && c.Offset.Known && !doubt && math.Abs(by) >= 8 {
					may = append(may, fmt.Sprintf("In %s your %s comes about %.0f ms %s ", d.name(f.Rhythm), count, math.Abs(by), side))
				}
			}
		}
		if !strings.HasPrefix(text, "In ") {
			return
		}
		borne := false
		for _, begin := range may {
			borne = borne || strings.HasPrefix(text, begin)
		}
		require.True(t, borne, "%s\n%q", text, may)
		told[strings.Contains(text, "later")]++
	})
	require.Positive(t, told[true])
	require.Positive(t, told[false])
}

// Without a set-up one rhythm is said to be tapped later than another only where their
// intervals do not meet, and by as much as their means lie apart.
func TestLaterIsBorneOut(t *testing.T) {
	w, told := words(t), 0
	everyDiary(t, func(t *testing.T, d *Diary) {
		d.Figures.Output = ""
		text := d.findFingers(w).text
		if !strings.Contains(text, " later than ") {
			return
		}
		told++
		borne := false
		for _, late := range d.Figures.Fingers {
			for _, early := range d.Figures.Fingers {
				begin := fmt.Sprintf("You tap %s later than %s, by about %.0f ms", d.name(late.Rhythm), d.name(early.Rhythm), late.Bias.Value-early.Bias.Value)
				if strings.HasPrefix(text, begin) {
					borne = early.Bias.High < late.Bias.Low
				}
			}
		}
		require.True(t, borne, text)
	})
	require.Positive(t, told)
}

// Of many rhythms the one tapped latest beyond doubt is held against the one tapped
// earliest, wherever they stand among the others.
func TestEarliestAndLatest(t *testing.T) {
	w := words(t)
	some := []diary.Fingers{fingering("maqsum", 9, 90, -30, 4, 20), fingering("saidi", 9, 90, 2, 4, 20), fingering("malfuf", 9, 90, 40, 4, 20)}
	for range some {
		some = append(some[1:], some[0])
		f := withFigures(t, diary.Figures{Fingers: some}).findFingers(w)
		require.Equal(t, "You tap malfuf later than maqsum, by about 70 ms.", f.text)
		require.Empty(t, f.claims, "nothing of a side, which may be the output's")
	}
}
