package screens

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

// wronged is a question that was answered wrongly, in its review.
func wronged(t *testing.T, query string) *testGame {
	t.Helper()
	g, _, _ := newTestGame(t, query)
	g.Use(view.ActBegin, "")
	g.Ticks(2000)
	q := g.which().question
	for _, c := range q.Choices {
		if c.ID != q.Right {
			g.Use(view.ActAnswer, c.ID)
			break
		}
	}
	require.Equal(t, view.Reviewing, g.which().Phase())
	return g
}

// What was right and what was said are heard in turn, each as it would have been played,
// for an eight, on a head of its own.
func TestBothSidesAreHeard(t *testing.T) {
	g := wronged(t, whichLink)
	x := &g.which().sides
	require.Len(t, x.all, 2)
	require.False(t, x.all[0].ID == x.all[1].ID)
	for i, side := range x.all {
		g.Use(view.ActHear, side.ID)
		require.Equal(t, i+1, x.hears)
		p := x.track.Passage
		require.Equal(t, side.Rhythm.ID, p.Rhythm(0).ID)
		choice, ok := x.question.Choice(side.ID)
		require.True(t, ok)
		require.Equal(t, choice.BPM, p.BPM(), "at the tempo that it would have had")
		require.Equal(t, side.Rhythm.At(side.Rhythm.CyclesIn(1)*side.Rhythm.Steps(), p.BPM()), p.End())
		g.Ticks(500)
		require.True(t, x.heads[i].Shown.Turning)
		shown, _ := x.shown()
		require.Equal(t, []bool{i == 0, i == 1}, []bool{shown[0].Hearing, shown[1].Hearing})
		g.Ticks(int(p.End().Milliseconds()))
		require.Zero(t, x.hears, "an eight, and no more")
	}
}

func TestASideIsHeardAsItIsSet(t *testing.T) {
	g := wronged(t, whichLink)
	x := &g.which().sides
	g.Use(view.ActHear, "no side")
	require.Zero(t, x.hears)
	g.Use(view.ActDrums, roundview.DrumsBass)
	require.Equal(t, []float64{1, 1}, []float64{g.Sound.Lead, g.Sound.Bass}, "nothing is heard yet")
	g.Use(view.ActHear, x.all[0].ID)
	require.Equal(t, []float64{0, 1}, []float64{g.Sound.Lead, g.Sound.Bass})
	usual, bpm := x.track.Passage, x.track.Passage.BPM()
	g.Use(view.ActDrums, roundview.DrumsLead)
	require.Same(t, usual, x.track.Passage)
	require.Equal(t, []float64{1, 0}, []float64{g.Sound.Lead, g.Sound.Bass})
	g.Use(view.ActSlowly, "yes")
	require.Equal(t, max(40, bpm*2/3), x.track.Passage.BPM())
	require.Equal(t, 1, x.hears, "the same side, anew")
	g.Use(view.ActStop, "")
	require.Zero(t, x.hears)
	require.Equal(t, view.Reviewing, g.which().Phase())
	require.Equal(t, []float64{1, 1}, []float64{g.Sound.Lead, g.Sound.Bass})
	g.Use(view.ActHear, x.all[1].ID)
	g.Controller.Interrupt(host.WhyHidden)
	require.Zero(t, x.hears)
	require.Equal(t, view.Reviewing, g.which().Phase(), "what was answered stays answered")
	g.Use(view.ActHear, x.all[1].ID)
	g.Use(view.ActNext, "")
	require.Zero(t, x.hears)
	require.Empty(t, x.all, "nothing of the next question is seen before it is answered")
}

// A question of one stroke is heard alone with the stroke of an answer in it, and stays
// itself as it was asked.
func TestAStrokeAlone(t *testing.T) {
	g, _, _ := newTestGame(t, whichLink)
	q := g.which().question
	was := q.Rhythm.Skeleton[0]
	for id, want := range map[string]rhythm.Stroke{"dum": rhythm.Dum, "tek": rhythm.Tek} {
		one := alone(q, id)
		require.Equal(t, want, one.Rhythm.Skeleton[0])
		require.Equal(t, q.Rhythm.Skeleton[1:], one.Rhythm.Skeleton[1:])
	}
	require.Equal(t, was, q.Rhythm.Skeleton[0])
}
