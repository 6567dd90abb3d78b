package classroom

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// setOf is a set of one kind alone, at the same questions each time.
func setOf(kind warmup.Kind) string { return "five_bare_" + string(kind) + "_2_5" }

// centre is the figure in the middle of the drumhead.
func (r *room) centre() string {
	for _, s := range r.Controller.Draw(view.PlaceHead).Shapes {
		if s.Kind == picture.KindText && s.X == picture.Middle && s.Y == picture.Middle {
			return s.Text
		}
	}
	return ""
}

// asked is a room in which the first question has begun to sound.
func asked(t *testing.T, kind warmup.Kind) *room {
	t.Helper()
	r := begun(t, setOf(kind))
	r.next()
	require.Equal(t, warmup.Asking, r.stage())
	r.next()
	return r
}

// What is counted in shows 5 6 7 8 in the middle of the drum, and nothing after it; what
// would give its tempo or its 1 away by a count-in has none.
func TestTheCountInStandsOnTheDrum(t *testing.T) {
	for _, kind := range warmup.Kinds() {
		r := asked(t, kind)
		var figures []string
		r.Controller.Draw(view.PlaceHead)
		for range 400 {
			r.Ticks(20)
			if c := r.centre(); c != "" && (len(figures) == 0 || figures[len(figures)-1] != c) {
				figures = append(figures, c)
			}
			require.False(t, r.centre() != "" && r.class().head.Shown.Turning, "either figures or the sweep")
		}
		want := []string{"5", "6", "7", "8"}
		if kind == warmup.HandsUp || kind == warmup.FindTheOne {
			want = nil
		}
		require.Equal(t, want, figures, kind)
	}
}

// While dum tek is spoken the marked step is the one that is heard: at each stroke of the
// base it stands on a step that has one, and it goes round step by step.
func TestTheMarkedStepIsTheOneThatIsHeard(t *testing.T) {
	r := asked(t, warmup.SayIt)
	p := r.class().loop.Passage
	base := p.Rhythm(0).Skeleton
	line := func() *picture.Wall {
		r.Controller.Draw(view.PlaceLine)
		return &r.class().line.Shown
	}
	require.False(t, line().Live)
	var steps []int
	strokes, since := 0, r.Wall.Now()
	for r.class().lined {
		r.Ticks(10)
		l := line()
		require.Equal(t, r.class().now >= p.Start(), l.Live, "not in the count-in")
		if l.Live && (len(steps) == 0 || steps[len(steps)-1] != l.Step) {
			steps = append(steps, l.Step)
		}
		for _, s := range r.Sound.Strikes(since, r.Wall.Now()) {
			if s.Base() && l.Live {
				require.True(t, base[l.Step].Sounds(), "step %d", l.Step)
				require.Equal(t, s.Low(), base[l.Step].Low(), "step %d", l.Step)
				strokes++
			}
		}
		since = r.Wall.Now()
	}
	require.GreaterOrEqual(t, strokes, 4)
	require.GreaterOrEqual(t, len(steps), len(base))
	for i, s := range steps {
		require.Equal(t, i%len(base), s, "one after the other")
	}
}

// A line that nothing moves on is drawn once; it is drawn anew at each step, and there is
// no picture in any other place.
func TestTheLineIsDrawnAnewAtEachStep(t *testing.T) {
	r := asked(t, warmup.SayIt)
	shapes := func() []picture.Shape { return slices.Clone(r.Controller.Draw(view.PlaceLine).Shapes) }
	before := shapes()
	require.NotEmpty(t, before)
	for !r.class().line.Shown.Live {
		r.Ticks(10)
		shapes()
	}
	first := shapes()
	require.NotEqual(t, before, first, "the mark has come")
	step := r.class().line.Shown.Step
	for r.class().line.Shown.Step == step {
		require.Equal(t, first, shapes(), "it stands while the step lasts")
		r.Ticks(10)
		r.Controller.Draw(view.PlaceLine)
	}
	require.NotEqual(t, first, shapes())
	require.Nil(t, r.Controller.Draw(view.PlaceHeadA))
}

// As people arrive the sweep turns once in a cycle and stops with the sound.
func TestTheDrumTurnsWithTheWalkIn(t *testing.T) {
	r := begun(t, hands)
	r.Controller.Draw(view.PlaceHead)
	require.False(t, r.class().head.Shown.Turning, "nothing is heard yet")
	length := r.class().loop.Passage.End()
	turns, last := 0, 0.
	for range 3 * int(length.Milliseconds()/10) {
		r.Ticks(10)
		r.Controller.Draw(view.PlaceHead)
		if !r.class().head.Shown.Turning {
			continue
		}
		turn := r.class().head.Shown.Turn
		if turn < last {
			turns++
		}
		last = turn
		require.Empty(t, r.class().head.Shown.Centre, "nobody counts in")
	}
	require.Equal(t, 2, turns)
	r.Use(view.ActClassOnce, "stop")
	r.Controller.Draw(view.PlaceHead)
	require.False(t, r.class().head.Shown.Turning)
}

// Who asked for less motion sees the same figures, and a sweep that stands from stroke to
// stroke.
func TestACalmRoom(t *testing.T) {
	for _, calm := range []bool{false, true} {
		r := begun(t, hands)
		r.Page.Still = calm
		r.Ticks(500)
		differ := 0
		var was []picture.Shape
		for range 100 {
			r.Ticks(10)
			is := slices.Clone(r.Controller.Draw(view.PlaceHead).Shapes)
			if was != nil && !slices.Equal(was, is) {
				differ++
			}
			was = is
		}
		if calm {
			require.Less(t, differ, 40)
			require.Positive(t, differ, "from stroke to stroke")
			continue
		}
		require.Greater(t, differ, 90)
	}
}
