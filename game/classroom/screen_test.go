package classroom

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// The steps on which two rhythms differ are those on which their strokes do, whichever comes
// first; of two that are not as long there are none.
func TestStepsOnWhichRhythmsDiffer(t *testing.T) {
	r := newRoom(t, hands)
	all := r.Shared.Cycles()
	compared := 0
	for _, a := range all {
		require.Empty(t, unlike(a, a), a.ID)
		for _, b := range all {
			steps := unlike(a, b)
			require.Equal(t, steps, unlike(b, a), "%s and %s", a.ID, b.ID)
			if a.Steps() != b.Steps() || a.Beats() != b.Beats() {
				require.Empty(t, steps, "%s and %s", a.ID, b.ID)
				continue
			}
			differ := map[int]bool{}
			for _, s := range steps {
				differ[s] = true
			}
			for i := range a.Skeleton {
				require.Equal(t, a.Skeleton[i] != b.Skeleton[i], differ[i], "%s and %s, step %d", a.ID, b.ID, i)
			}
			compared++
		}
	}
	require.Greater(t, compared, len(all), "some are as long as one another")
}

// The page after a warm-up has a sheet of what was reached, each rhythm once, and tells how
// much was not.
func TestThePageAfterAWarmUp(t *testing.T) {
	r := begun(t, "five_bare_hands-up_10_5")
	tasks := r.class().run.Warmup.Tasks
	require.Greater(t, len(tasks), 3)
	r.next()
	r.Use(view.ActClassSkip, "")
	r.Wall.Set(evening.Add(2 * time.Hour))
	r.Use(view.ActClassSkip, "")
	require.Equal(t, warmup.After, r.stage(), "there is no time left for more")
	m := r.class().afterModel()
	require.Equal(t, len(tasks)-2, m.Left)
	seen := map[string]bool{}
	for _, c := range m.Sheet {
		require.False(t, seen[c.ID], c.ID)
		seen[c.ID] = true
	}
	require.Equal(t, map[string]bool{tasks[0].Rhythm.ID: true, tasks[1].Rhythm.ID: true}, seen)
	for _, c := range r.Shared.Cycles() {
		require.Equal(t, c.Name, m.Names[c.ID])
	}
	r.Use(view.ActClassGoOn, "")
	require.Equal(t, warmup.Asking, r.stage(), "what was left out can be gone on with")
	_, at := r.class().run.Task()
	require.Equal(t, 2, at)
}

// While something is heard the page shows at each moment what is to be shown then: the line
// that goes, the rhythm that comes, the cycle that is heard.
func TestThePageKeepsUpWithWhatIsHeard(t *testing.T) {
	for kind, stage := range map[warmup.Kind]warmup.Stage{
		warmup.SayIt: warmup.Asking, warmup.BaseOrRiff: warmup.Telling, warmup.WhatChanged: warmup.Telling,
	} {
		r := begun(t, setOf(kind))
		r.until(stage)
		if stage == warmup.Asking {
			r.next()
		}
		shows := r.Page.Shows
		for r.class().one {
			require.Equal(t, r.Screen(), *r.Page.Screen(), "%s at %v", kind, r.class().now)
			r.Ticks(100)
		}
		require.Greater(t, r.Page.Shows, shows)
	}
}

// A telephone's window is told from a wall.
func TestANarrowRoom(t *testing.T) {
	r := begun(t, hands)
	for width, narrow := range map[float64]bool{390: true, 599: true, 600: false, 1280: false} {
		r.Shared.Width = width
		require.Equal(t, narrow, r.class().model().Narrow, "%g", width)
	}
}
