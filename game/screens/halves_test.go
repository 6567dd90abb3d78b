package screens

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
)

// Two halves are as long as one another, and together as long as was asked for; which of
// them is heard is told as it is heard.
func TestWhichHalfIsHeard(t *testing.T) {
	for _, eights := range []int{2, 4} {
		g, _, _ := newTestGame(t, fmt.Sprintf("?screen=which&ask=same&from=maqsum&bpm=120&eights=%d&seed=3", eights))
		g.Use(view.ActBegin, "")
		x := g.which()
		start, end := x.round.Start(), x.round.End()
		require.Equal(t, float64(4*eights), (end - start).Seconds(), "an eight at 120 lasts 4 s")
		for x.round.UnderWay() {
			g.Ticks(50)
			if at := x.round.Heard(); x.round.UnderWay() {
				require.Equal(t, at >= start+(end-start)/2, x.model().Second, at)
			}
		}
	}
}

// In its review each half is heard with the riff that it was heard under: stroke for stroke
// what was played first, and then.
func TestEachHalfIsHeardAsItWas(t *testing.T) {
	differed := 0
	for seed := 1; seed < 5; seed++ {
		g, _, _ := newTestGame(t, fmt.Sprintf("?screen=which&ask=same&from=maqsum&bpm=120&eights=2&riff=riffing&seed=%d", seed))
		from := g.begins()
		g.Use(view.ActBegin, "")
		x := g.which()
		start, end := float64(x.round.Start())/1e6, float64(x.round.End())/1e6
		half := (end - start) / 2
		g.Ticks(int(end) + 500)
		halves := map[string][]beat{"first": g.heardIn(from+start, half), "second": g.heardIn(from+start+half, half)}
		g.Use(view.ActAnswer, x.question.Right)
		for _, id := range g.sideIDs() {
			from := g.begins()
			g.Use(view.ActHear, id)
			g.Ticks(int(half) + 300)
			again := g.heardIn(from, half)
			require.Len(t, again, len(halves[id]), "seed %d, %s", seed, id)
			for i, b := range halves[id] {
				require.Equal(t, b.voice, again[i].voice)
				require.InDelta(t, b.ms, again[i].ms, 1)
			}
		}
		differed += len(g.sideIDs()) - 1
	}
	require.Positive(t, differed)
}
