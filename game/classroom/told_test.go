package classroom

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/classview"
	"groundbeat/game/host"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// told is a room to which the first question of a kind has been told, with its task.
func told(t *testing.T, kind warmup.Kind, seed int) (*room, *warmup.Task) {
	t.Helper()
	r := begun(t, fmt.Sprintf("five_bare_%s_2_%d", kind, seed))
	r.until(warmup.Telling)
	task, _ := r.class().run.Task()
	return r, task
}

// What is told of each kind is what was asked, under the name that the room was asked by;
// of what was danced nothing is told but the rhythm.
func TestWhatIsToldOfEachKind(t *testing.T) {
	for _, kind := range warmup.Kinds() {
		for seed := 1; seed < 4; seed++ {
			r, task := told(t, kind, seed)
			m := r.class().model()
			require.Equal(t, kind, m.Kind)
			if !kind.Counted() {
				require.Nil(t, m.Told, kind)
				require.Equal(t, task.Rhythm, m.Rhythm)
				require.False(t, r.class().one, "nothing sounds by itself")
				continue
			}
			right, ok := task.Choice(task.Right)
			require.True(t, ok)
			require.Equal(t, view.Option{Value: right.ID, Label: right.Name}, m.Told.Right)
			require.NotEqual(t, m.Told.Right, m.Told.Taken)
			require.Equal(t, task.Rhythm, m.Told.Sides[0])
			require.True(t, r.class().one, "it is heard at once")
		}
	}
}

// Of two versions the stroke that was moved is ringed where it was and where it came to; of
// a rhythm that broke off, the step on which it did, which is on the count that is told.
func TestWhatIsRinged(t *testing.T) {
	for seed := 1; seed < 6; seed++ {
		r, task := told(t, warmup.WhatChanged, seed)
		m := r.class().model().Told
		require.Equal(t, task.Other, m.Sides[1])
		require.ElementsMatch(t, task.Moved[:], m.Circled)
		require.NotEmpty(t, m.Differences)

		r, task = told(t, warmup.FindTheOne, seed)
		m = r.class().model().Told
		require.Equal(t, []int{task.Last}, m.Circled)
		require.Equal(t, task.Right, task.Rhythm.CountInEight(task.Last))
		require.Nil(t, m.Sides[1], "it is no other rhythm")
	}
}

// A rhythm that was taken for another stands beside it: the one for which most hands went
// up, with these hands.
func TestWhatItWasTakenFor(t *testing.T) {
	r := begun(t, hands)
	r.until(warmup.Counting)
	task, _ := r.class().run.Task()
	last := ""
	for r.stage() == warmup.Counting {
		at := r.class().run.Answer()
		require.Equal(t, task.Choices[at].ID, r.class().model().Answer.Value)
		if id := task.Choices[at].ID; id != task.Right {
			last = id
		}
		r.Use(view.ActClassHands, "1")
		r.Use(view.ActClassHands, fmt.Sprint(at))
		require.Equal(t, warmup.Hands(fmt.Sprintf("1%d", at)), r.class().model().Hands, "of this answer")
		r.next()
	}
	m := r.class().model()
	require.Equal(t, last, m.Told.Taken.Value, "the more hands the later")
	require.NotEmpty(t, m.Told.Hands)
	require.Equal(t, last, m.Told.Sides[1].ID)
	require.Equal(t, unlike(task.Rhythm, m.Told.Sides[1]), m.Told.Circled)
}

// While two are heard in turn the screen shows the one that is heard: of a change, first
// the one and then the other; of the lead drum, on the base and then off it.
func TestTheScreenShowsWhichIsHeard(t *testing.T) {
	r, task := told(t, warmup.WhatChanged, 5)
	var heard []string
	for r.class().one {
		x := r.class()
		if m := x.model(); len(heard) == 0 || m.Rhythm.Skeleton.String() != heard[len(heard)-1] {
			heard = append(heard, m.Rhythm.Skeleton.String())
		}
		r.Ticks(50)
	}
	require.Equal(t, []string{task.Rhythm.Skeleton.String(), task.Other.Skeleton.String()}, heard)

	r, task = told(t, warmup.HandsUp, 5)
	heard = nil
	for r.class().one {
		if id := r.class().model().Rhythm.ID; len(heard) == 0 || id != heard[len(heard)-1] {
			heard = append(heard, id)
		}
		r.Ticks(50)
	}
	require.Equal(t, []string{task.Right, r.class().model().Told.Taken.Value}, heard)

	r, _ = told(t, warmup.BaseOrRiff, 5)
	var turns []string
	for r.class().one {
		m := r.class().model()
		require.NotEmpty(t, m.Lead.Strokes)
		if len(turns) == 0 || m.Turn != turns[len(turns)-1] {
			turns = append(turns, m.Turn)
		}
		r.Ticks(50)
	}
	require.Equal(t, []string{warmup.OnBase, warmup.OffBase}, turns)
	m := r.class().model()
	require.Empty(t, m.Turn, "neither")
	require.NotEmpty(t, m.Lead.Strokes, "what was asked stands there still")
}

// What another window keeps is taken up where a warm-up is got ready, and not while a room
// looks at it.
func TestNothingChangesUnderARoom(t *testing.T) {
	r, other := newRoom(t, hands), newRoom(t, hands)
	other.Shared.Classes = r.Shared.Classes
	saves := func(name string) int {
		other.Use(view.ActClassSetName, name)
		other.Use(view.ActClassSave, "")
		r.Page.Add(host.Event{Kind: host.Told, Value: host.Things})
		r.Update()
		return len(r.class().readyModel().Sets)
	}
	before := len(r.class().readyModel().Sets)
	require.Equal(t, before+1, saves("Monday"))
	r.Use(view.ActClassBegin, classview.PutSet)
	before = len(r.class().readyModel().Sets)
	require.Equal(t, before, saves("Friday"))
	r.Use(view.ActClassLeave, "")
	require.Equal(t, before+2, len(r.class().readyModel().Sets), "it is there for who comes back, and what was begun last")
}

// A press on once more brings what belongs to the stage: what was asked, more slowly if it
// was, and of what was danced the question itself.
func TestOnceMoreAtEachStage(t *testing.T) {
	r := asked(t, warmup.WalkAndClap)
	whole := r.class().loop.Passage.End()
	r.Use(view.ActSlower, "")
	require.Greater(t, r.class().loop.Passage.End(), whole)
	r.Use(view.ActClassOnce, "stop")
	require.False(t, r.class().one)
	r.Use(view.ActClassOnce, "")
	require.Greater(t, r.class().loop.Passage.End(), whole, "as slowly as it was set")
	r.Use(view.ActClassSkip, "")
	r, task := told(t, warmup.CatchTheStop, 5)
	r.Use(view.ActClassOnce, "")
	require.True(t, r.class().one)
	p, _, err := task.Passage(100)
	require.NoError(t, err)
	require.Equal(t, p.End(), r.class().loop.Passage.End())

	r = begun(t, hands)
	require.True(t, r.class().loop.On)
	r.Use(view.ActClassOnce, "")
	require.False(t, r.class().loop.On, "the walk-in ends at the same key")
	r.Use(view.ActClassOnce, "")
	require.True(t, r.class().loop.On)
}
