package diaryview

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/coach"
	"groundbeat/game/picture"
	"groundbeat/game/riff"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// The ring of a plan is its parts: an arc as long as each lasts, one after another without
// overlap, numbered in order as the list beside it is.
func TestPlanRingIsItsParts(t *testing.T) {
	w := words(t)
	for _, days := range []int{0, 5} {
		p := planned(t, days)
		s := p.Screen(w)
		it, parts, all := s.Find("ring"), coach.Parts(p.Steps), 0
		for _, one := range p.Steps {
			all += one.Seconds
		}
		screenproof.RequireInside(t, it.Picture)
		arcs := shapes(it.Picture, func(s *picture.Shape) bool { return s.Kind == picture.KindArc && s.Ink == picture.InkBass })
		require.Len(t, arcs, len(parts))
		end := 0.0
		for i, part := range parts {
			requireDrawable(t, "ring", arcs[i])
			require.Greater(t, arcs[i].From, end)
			end = arcs[i].To
			require.InDelta(t, float64(part.Seconds())/float64(all), arcs[i].To-arcs[i].From+2*planApart, 1e-9)
			number := shapes(it.Picture, func(s *picture.Shape) bool { return s.Text == strconv.Itoa(i+1) })
			require.Len(t, number, 1)
			turn := math.Mod(math.Atan2(number[0].X-0.5, 0.5-number[0].Y)/(2*math.Pi)+1, 1)
			require.InDelta(t, (arcs[i].From+arcs[i].To)/2, turn, 1e-9, "in the middle of its arc")
			id := "part-" + strconv.Itoa(i+1)
			require.Contains(t, strings.ToLower(it.Text), strings.ToLower(s.Find(id+"-what").Text))
			require.Contains(t, it.Text, s.Find(id+"-long").Text)
		}
		require.InDelta(t, 1, end+planApart, 1e-9)
	}
}

// Each reason has a name of its own part, and says why, whatever is practised.
func TestEveryReasonIsSaid(t *testing.T) {
	w, p := words(t), &Plan{Rhythms: everyRhythm(t)}
	for r := range reasons {
		for _, ids := range [][]string{nil, {"maqsum"}, {"maqsum", "baladi"}, {"not-here"}} {
			step := coach.Step{Kind: history.Which, Reason: r, Rhythms: ids, Level: riff.Riffing, BPM: 93}
			why := p.why(w, coach.Part{Reason: r, Steps: []coach.Step{step}})
			require.NotEmpty(t, why, r)
			require.NotContains(t, why, "{")
			require.NotEmpty(t, sayPart(w, r, false))
			if len(ids) == 2 && r != coach.ReasonWell {
				require.Contains(t, strings.ToLower(why), "maqsum", r)
			}
			n := NextOf([]coach.Step{step, step})
			require.Equal(t, []int{93, 93}, n.Tempi)
			require.NotEmpty(t, (&Diary{Rhythms: p.Rhythms}).sayNext(w, n, nil), r)
		}
	}
	require.NotEqual(t, sayPart(w, coach.ReasonFirst, true), sayPart(w, coach.ReasonFirst, false))
}

// A lower rung is offered as one, whatever the reason, and of no rhythm.
func TestRungIsOfNoRhythm(t *testing.T) {
	n := NextOf([]coach.Step{{Kind: history.HowMany, Reason: coach.ReasonDue, Rhythms: []string{"maqsum"}}})
	require.Equal(t, ReasonRung, n.Reason)
	require.Empty(t, n.Rhythms)
	require.Empty(t, n.Tempi, "a tempo that is drawn with the question is none")
	n = NextOf([]coach.Step{{Kind: history.Which, Reason: coach.ReasonDue, Rhythms: []string{"maqsum", "baladi"}}})
	require.Equal(t, ReasonDue, n.Reason)
	require.Len(t, n.Rhythms, 2)
}

// The fullest riff of a part is that of any of its steps, wherever it stands.
func TestFullest(t *testing.T) {
	step := func(l riff.Level) coach.Step { return coach.Step{Level: l} }
	for _, of := range [][]coach.Step{{step(riff.Riffing), step(riff.Filled)}, {step(riff.Filled), step(riff.Riffing)}, {step(riff.Bare), step(riff.Riffing), step(riff.Bare)}} {
		require.Equal(t, view.LevelRiffing, fullest(coach.Part{Steps: of}))
	}
}

// What lasts longer is never said to be shorter, and is said to the half of a minute.
func TestSayLongIsNear(t *testing.T) {
	w, before := words(t), 0.0
	for seconds := 1; seconds < 1300; seconds++ {
		said := sayLong(w, seconds)
		minutes := 0.5
		if said != w.Say("long-half") {
			digits := strings.TrimRight(strings.Fields(strings.ReplaceAll(said, "\u00a0", " "))[0], "½")
			whole, err := strconv.Atoi(digits)
			require.NoError(t, err, said)
			minutes = float64(whole)
			if strings.Contains(said, "½") {
				minutes += 0.5
			}
		}
		require.GreaterOrEqual(t, minutes, before)
		require.True(t, seconds < 30 || math.Abs(60*minutes-float64(seconds)) <= 15, "%d s: %s", seconds, said)
		before = minutes
	}
}
