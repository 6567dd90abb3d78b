package screens

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

// answered is a question of a kind that was answered, rightly or wrongly, in its review.
func answered(t *testing.T, ask string, seed int, right bool) *testGame {
	t.Helper()
	g, _, _ := newTestGame(t, fmt.Sprintf("?screen=which&ask=%s&from=five&answers=3&bpm=100&seed=%d", ask, seed))
	g.Use(view.ActBegin, "")
	g.Ticks(4000)
	q := g.which().question
	for _, c := range q.Choices {
		if (c.ID == q.Right) == right {
			g.Use(view.ActAnswer, c.ID)
			break
		}
	}
	require.Equal(t, view.Reviewing, g.which().Phase(), ask)
	return g
}

// sideIDs are the sides of a review.
func (g *testGame) sideIDs() (ids []string) {
	for _, s := range g.which().sides.all {
		ids = append(ids, s.ID)
	}
	return ids
}

// A review has the side that was right, and the one that was said where that is another
// that can be heard: of strokes both, of how many dums the rhythm alone, of two halves the
// second where it differs.
func TestTheSidesOfEachReview(t *testing.T) {
	differed := map[bool]int{}
	for seed := 1; seed < 7; seed++ {
		for _, right := range []bool{true, false} {
			require.Equal(t, []string{"dum", "tek"}, answered(t, "stroke", seed, right).sideIDs())

			g := answered(t, "how-many", seed, right)
			require.Equal(t, []string{g.which().question.Rhythm.ID}, g.sideIDs())

			g = answered(t, "same", seed, right)
			q := g.which().question
			differ := q.Other.Skeleton.String() != q.Rhythm.Skeleton.String()
			want := []string{"first"}
			if differ {
				want = []string{"first", "second"}
			}
			require.Equal(t, want, g.sideIDs(), "whatever was said")
			differed[differ]++

			g = answered(t, "which", seed, right)
			want = []string{g.which().question.Right}
			if !right {
				want = append(want, g.which().given.ID)
			}
			require.Equal(t, want, g.sideIDs())
		}
	}
	require.Len(t, differed, 2)
}

// Of one stroke each answer is heard as it sounds: one stroke of the base, low for a dum and
// for nothing else, whichever was right.
func TestEachStrokeIsHeardInItsReview(t *testing.T) {
	for seed := 1; seed < 5; seed++ {
		g := answered(t, "stroke", seed, seed%2 == 0)
		for _, id := range []string{"dum", "tek"} {
			from := g.begins()
			g.Use(view.ActHear, id)
			g.Ticks(2500)
			lows, others := 0, 0
			for _, s := range g.Sound.Strikes(from-1, g.Wall.Now()) {
				switch {
				case s.Base() && s.Low():
					lows++
				case s.Base():
					others++
				}
			}
			require.Equal(t, map[string][]int{"dum": {1, 0}, "tek": {0, 1}}[id], []int{lows, others}, id)
		}
	}
}

// What a review says is what was right and what was said, and it has both names; before it
// nothing of it stands on the screen.
func TestAReviewNamesBoth(t *testing.T) {
	for seed := 1; seed < 5; seed++ {
		g, _, _ := newTestGame(t, fmt.Sprintf("?screen=which&from=five&answers=3&bpm=100&seed=%d", seed))
		for _, action := range []string{view.ActBegin, view.ActRepeat} {
			g.Use(action, "")
			g.Ticks(1000)
			m := g.which().model()
			require.Equal(t, []view.Option{{}, {}}, []view.Option{m.Right, m.Said})
			require.Empty(t, m.Sides)
			require.Zero(t, m.BPM)
		}
		g = answered(t, "which", seed, false)
		m := g.which().model()
		require.Equal(t, g.which().question.Right, m.Right.Value)
		require.NotEqual(t, m.Right.Value, m.Said.Value)
		require.Equal(t, []string{m.Right.Value, m.Said.Value}, g.sideIDs())
		require.NotEmpty(t, m.Differences)
		said := texts(g.Screen())
		require.Contains(t, said, m.Right.Label)
		require.Contains(t, said, m.Said.Label)
		require.Equal(t, g.which().question.BPM, m.BPM)
	}
}

// Only the head of the side that is heard turns; the other stands, and so do both once it is
// over.
func TestOneHeadTurnsAtATime(t *testing.T) {
	g := answered(t, "which", 3, false)
	turning := func() [2]bool {
		for _, place := range []string{view.PlaceHeadA, view.PlaceHeadB} {
			require.NotEmpty(t, g.Controller.Draw(place).Shapes)
		}
		heads := &g.which().sides.heads
		return [2]bool{heads[0].Shown.Turning, heads[1].Shown.Turning}
	}
	require.Equal(t, [2]bool{}, turning())
	for i, id := range g.sideIDs() {
		g.Use(view.ActHear, id)
		g.Ticks(600)
		require.Equal(t, [2]bool{i == 0, i == 1}, turning())
	}
	g.Use(view.ActStop, "")
	g.Update()
	require.Equal(t, [2]bool{}, turning())
	require.Nil(t, g.which().sides.draw(view.PlaceLine))
}

// A side that has a gap is cut, and the review goes on; a question that is heard once more
// from its review has no sides again.
func TestASideIsCut(t *testing.T) {
	g := answered(t, "which", 3, false)
	g.Use(view.ActHear, g.sideIDs()[0])
	g.Ticks(500)
	g.Page.Add(host.Event{Kind: host.Stopped, Reason: host.WhyGap})
	g.Update()
	require.Zero(t, g.which().sides.hears)
	require.Equal(t, view.Reviewing, g.which().Phase())
	right := g.which().question.Right
	g.Use(view.ActSlowly, "yes")
	g.Use(view.ActDrums, roundview.DrumsLead)
	g.Use(view.ActOnce, "")
	require.Equal(t, right, g.which().question.Right, "the same question")
	require.Empty(t, g.sideIDs())
	require.Equal(t, []float64{1, 1}, []float64{g.Sound.Lead, g.Sound.Bass}, "both drums ask")
	require.Equal(t, g.which().question.BPM, g.which().track.Passage.BPM(), "at its tempo")
}
